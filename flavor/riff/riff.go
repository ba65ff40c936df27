package riff

import (
	"context"
	"slices"

	"counterpour/flavor"
	"counterpour/flavor/balance"
	"counterpour/flavor/guest"
	"counterpour/flavor/measure"
	"counterpour/flavor/riff/aim"
	"counterpour/flavor/riff/station"
	"counterpour/flavor/riff/wish"
	"counterpour/flavor/riff/wording"
	"counterpour/flavor/sense"
)

// Limits of a request.
const (
	MaxLimit     = station.MaxLimit
	DefaultLimit = station.DefaultLimit
	// LeastDistance is the least distance between any two riffs, and between a
	// riff and the drink it came from, in just-noticeable differences; where a wish
	// says what to change, [station.LeastWished] is.
	LeastDistance = station.LeastDistance
)

// Request asks for riffs.
type Request struct {
	Spec  *flavor.Spec
	Stock []*flavor.Profile // what may be poured, and nothing else
	Out   []*flavor.Profile // what is marked as out, of what no bar takes stock of
	// Guest is who drinks it. What may hold an allergen that is avoided, or whose
	// allergens are unknown, is never poured. MaxCost is for the whole drink.
	Guest  guest.Guest
	Toward []wish.Wish // every riff meets all of them; see [wish.Parse]
	Limit  int         // most riffs, 1 to MaxLimit; 0 means DefaultLimit
	Seed   uint64      // another seed, another list of much the same quality
}

// Riff is a variation in balance.
type Riff struct {
	station.Listed
	Recipe   string           // what to pour otherwise
	Effect   string           // and what that does; the text joins both
	Notice   sense.Notice     // whether a guest will notice
	Distance float64          // from the drink asked about, in just-noticeable differences
	Changes  []balance.Change // Pour is an index into that drink; its length for a pour that came in
}

// Result is the riffs found, the best first.
type Result struct {
	Riffs []Riff
	// Nearest is what comes nearest to the wishes of what is not listed, and Misses what it
	// lacks; nil where the list has what a bartender would try first. See
	// [station.Job.NearestMiss].
	Nearest *Riff
	Misses  station.Miss
	Least   float64 // distance between any two of them and from the drink, in just-noticeable differences
	Refused station.Refused
	// LeftOut is what of the drink is not poured, and why; Labels is what else was there
	// to be poured but for its label: it may carry what the guest avoids, or nobody has stated it.
	LeftOut []station.LeftOut
	Labels  []*flavor.Profile
	// OfRest says that a riff of the list meets a wish for more or less only against the rest
	// of the drink, without what cannot be poured.
	OfRest   bool
	CutShort bool // the deadline of the context passed, so that better ones may be missing
}

// Vary returns variations of a drink. Fewer than the limit, or none, come back
// if no more are balanced, keep to every limit and differ enough; Refused says
// which it was. It fails if the request is out of range or if ctx is cancelled; once
// its deadline passes, the best so far are returned.
func Vary(ctx context.Context, st *station.Station, req Request) (*Result, error) {
	if req.Limit == 0 {
		req.Limit = DefaultLimit
	}
	if err := req.check(); err != nil {
		return nil, err
	}
	if alcoholFree(req.Spec) && !stronger(req.Toward) {
		req.Guest.NoAlcohol = true
	}
	limits, err := aim.NewLimits(&req.Guest, req.Toward)
	if err != nil {
		return nil, err
	}
	req.Spec = limits.Guest.Serve(req.Spec)
	startles := func(p *flavor.Profile) bool { return limits.Guest.Startles(p, req.Spec) }
	stock := slices.DeleteFunc(slices.Clone(req.Stock), startles)
	stock = append(stock, unstocked(st, limits, req.Spec, req.Out)...)
	w := &work{Job: st.NewJob(stock, limits, measure.SystemOf(req.Spec), req.Seed), each: draftsEach}
	if err := w.SetFrom(req.Spec); err != nil {
		return nil, err
	}
	if err := w.CheckWishes(); err != nil {
		return nil, err
	}
	found, cutShort, err := w.explore(ctx, req.Limit)
	if err != nil {
		return nil, err
	}
	out := &Result{Least: w.LeastApart(), CutShort: cutShort, LeftOut: w.leftOutOf(req.Spec), Labels: w.Labels}
	if s, misses := w.NearestMiss(found.pool, found.near); s != nil {
		if s, err = w.asWritten(s, misses); err != nil {
			return nil, err
		}
		riff, err := w.describe(s)
		if err != nil {
			return nil, err
		}
		out.Nearest, out.Misses = &riff, misses
	}
	for _, s := range w.Choose(found.pool, req.Limit) {
		riff, err := w.describe(s)
		if err != nil {
			return nil, err
		}
		out.Riffs = append(out.Riffs, riff)
		out.OfRest = out.OfRest || !s.Whole()
	}
	out.Refused = w.Left
	return out, nil
}

// asWritten returns the drink itself, in its own amounts, where a drink that misses nothing is
// hardly another and the drink keeps to every limit by itself; else the drink that it is given.
func (w *work) asWritten(s *station.Settled, misses station.Miss) (*station.Settled, error) {
	if misses != station.MissesNothing || len(w.Limits.Aims) > 0 || !w.Limits.Keeps(w.From, w.FromDrink) {
		return s, nil
	}
	same := w.portioned(w.ParentOf(ptr(station.Snapped(w.From)), KindPortion, 0))
	same.Least, same.Most = map[string]float64{}, map[string]float64{}
	for i := range same.Spec.Pours {
		p := &same.Spec.Pours[i]
		same.Least[p.Profile.ID], same.Most[p.Profile.ID] = p.ML, p.ML
	}
	return w.Settle(&same)
}

// leftOutOf lists what of a drink may not be poured and why, and whether anything here stands
// for it.
func (w *work) leftOutOf(s *flavor.Spec) []station.LeftOut {
	out := w.LeftOutOf(s)
	parent := w.ParentOf(ptr(station.Snapped(s)), KindPortion, 0)
	for i := range out {
		at := slices.IndexFunc(parent.Spec.Pours, func(p flavor.Pour) bool { return p.Profile == out[i].Profile })
		if at >= 0 && len(w.swaps(parent, at, 1)) == 0 && !w.fills(parent, at) {
			out[i].Why += wording.NothingStands
		}
	}
	return out
}

// alcoholFree reports whether nothing in a drink holds alcohol: then no riff of it
// does, unless somebody asks for it.
func alcoholFree(s *flavor.Spec) bool {
	return !slices.ContainsFunc(s.Pours, func(p flavor.Pour) bool { return p.Profile.ABV.Value > flavor.NoAlcoholABV })
}

func stronger(toward []wish.Wish) bool {
	return slices.ContainsFunc(toward, func(w wish.Wish) bool {
		return w.Kind == wish.Above || w.Kind == wish.With || w.Kind == wish.Sense && w.Sense == sense.Ethanol && w.More
	})
}

func (req *Request) check() error {
	if req.Limit < 1 || req.Limit > MaxLimit {
		return flavor.OutOfRange("limit", req.Limit, 1, MaxLimit, "ask for 1 to 100")
	}
	if len(req.Stock) == 0 {
		return flavor.Invalid("stock", "", "nothing is in stock; name what may be poured")
	}
	return station.CheckSpec(req.Spec)
}

// work is one request being worked on.
type work struct {
	*station.Job
	each int // drafts of one move that are settled
}
