package useup

import (
	"context"
	"errors"
	"fmt"
	"slices"

	"counterpour/flavor"
	"counterpour/flavor/guest"
	"counterpour/flavor/measure"
	"counterpour/flavor/riff/aim"
	"counterpour/flavor/riff/station"
	"counterpour/flavor/riff/wish"
	"counterpour/flavor/riff/wording"
	"counterpour/flavor/weigh"
)

// Bottle is the move that builds a drink around a bottle.
const Bottle station.Kind = "bottle"

// MaxBottles is the most bottles that may be asked to move at once.
const MaxBottles = 24

// Request asks for drinks that use bottles up.
type Request struct {
	Bottles  []*flavor.Profile // that must move
	Stock    []*flavor.Profile // what may be poured beside them
	Guest    guest.Guest
	Toward   []wish.Wish    // limits only; there is no drink to be more or less than
	Families []string       // ids of the families wanted; none means all
	System   measure.System // empty: imperial
	Limit    int            // most drafts, 1 to station.MaxLimit; 0 means station.DefaultLimit
	Seed     uint64
}

// Use is how much of a bottle one drink takes.
type Use struct {
	Profile *flavor.Profile
	ML      float64
}

// Draft is a balanced draft that uses at least one of the bottles.
type Draft struct {
	station.Listed
	Uses []Use // in the order of the request
}

// Result is the drafts found, the best first, and the bottles that none of
// them moves.
type Result struct {
	Drafts   []Draft
	Unused   []Unused
	Refused  station.Refused
	Labels   []*flavor.Profile // left off the shelf though their label may clear them for the guest
	CutShort bool              // the deadline of the context passed, so that better ones may be missing
}

// Find returns balanced drafts that use bottles up, over the families of
// drinks. Each stands on the frame of a proven drink: the bottle takes the place
// of a pour that plays its part, what is not in stock is replaced, and the pours
// are sized so that the whole has its family's fitted ratio before the amounts
// are settled over the jigger. Drafts that use a bottle no other one uses come
// first. It fails if the request is out of range, if a family is not known, or
// if ctx is cancelled; once its deadline passes, the best so far are returned.
func Find(ctx context.Context, st *station.Station, req Request) (*Result, error) {
	if req.Limit == 0 {
		req.Limit = station.DefaultLimit
	}
	if req.System == "" {
		req.System = measure.Imperial
	}
	if err := req.check(st); err != nil {
		return nil, err
	}
	limits, err := aim.NewLimits(&req.Guest, req.Toward)
	if err != nil {
		return nil, err
	}
	w := st.NewJob(slices.Concat(req.Bottles, req.Stock), limits, req.System, req.Seed)
	w.Must = map[string]bool{}
	for _, p := range req.Bottles {
		w.Must[p.ID] = true
	}
	u := &user{work: w, req: &req, why: map[string]Why{}}
	pool, err := u.pool(ctx)
	cutShort := errors.Is(err, context.DeadlineExceeded)
	if err != nil && !cutShort {
		return nil, err
	}
	out, err := u.result(u.choose(pool))
	if err == nil {
		out.CutShort = cutShort
	}
	return out, err
}

func (req *Request) check(st *station.Station) error {
	switch {
	case req.Limit < 1 || req.Limit > station.MaxLimit:
		return flavor.OutOfRange("limit", req.Limit, 1, station.MaxLimit, "ask for 1 to 100")
	case len(req.Bottles) < 1 || len(req.Bottles) > MaxBottles:
		return flavor.OutOfRange("bottles", len(req.Bottles), 1, MaxBottles, "name 1 to 24 bottles that must move")
	}
	for i := range req.Toward {
		if !req.Toward[i].Limit() {
			return &flavor.DataFault{Kind: flavor.ErrInvalid, Location: "toward", Value: req.Toward[i].Word,
				Message: "there is no draft here to compare with, so nothing can be more or less; ask for limits only, such as \"no nuts\" or \"below 12 %\""}
		}
	}
	for _, id := range req.Families {
		if _, err := st.Set.Centre(id); err != nil {
			return &flavor.DataFault{Kind: flavor.ErrUnknown, Location: "families", Value: id, Message: fmt.Sprintf("%q is not a family known here", id)}
		}
	}
	for i, p := range req.Bottles {
		if p == nil {
			return &flavor.DataFault{Kind: flavor.ErrInvalid, Location: fmt.Sprintf("bottles[%d]", i), Message: "has no ingredient"}
		}
	}
	return nil
}

// user is one request to use bottles up.
type user struct {
	work *station.Job
	req  *Request
	why  map[string]Why // why a bottle is in no draft, by id
}

// pool solves the likeliest frames, of two bottles together before those of each, and
// keeps the balanced ones that move at least one; if ctx ends, those so far beside its
// error.
func (u *user) pool(ctx context.Context) ([]*station.Settled, error) {
	k := &gathering{user: u, seen: map[string]bool{}}
	var there []*station.Item
	for _, p := range u.req.Bottles {
		it, ok := u.work.Has(p)
		switch {
		case !ok:
			u.why[p.ID] = u.unpoured(p)
		case !slices.Contains(there, it):
			u.why[p.ID] = WhyNoPlace
			there = append(there, it)
		}
	}
	for i, a := range there[:min(len(there), mostPaired)] {
		for _, b := range there[i+1 : min(len(there), mostPaired)] {
			for _, frames := range [][]frame{u.together(a, b), u.together(b, a)} {
				if err := k.add(ctx, frames); err != nil {
					u.leave(u.req.Bottles)
					return k.pool, err
				}
			}
		}
	}
	for i, it := range there {
		if err := k.add(ctx, u.frames(it)); err != nil {
			for _, left := range there[i:] {
				u.leave([]*flavor.Profile{left.Profile})
			}
			return k.pool, err
		}
	}
	return k.pool, nil
}

// mostPaired is how many bottles are tried two by two; of more, those that meet do so
// where one lacks what the other stands for.
const mostPaired = 4

// gathering is the drafts that frames come to, each frame solved once.
type gathering struct {
	user *user
	seen map[string]bool
	pool []*station.Settled
}

func (k *gathering) add(ctx context.Context, frames []frame) error {
	for i := range frames {
		if err := station.Stopped(ctx); err != nil {
			return err
		}
		key := station.KeyOf(&frames[i].spec)
		if k.seen[key] {
			continue
		}
		k.seen[key] = true
		s, err := k.user.settle(&frames[i])
		if err != nil {
			return err
		}
		if s != nil {
			k.pool = append(k.pool, s)
		}
	}
	return nil
}

// settle settles the amounts of a frame, first from those of its proven drink and, if
// nothing comes of them, from those that have the ratio of its family; nil if what
// comes of it is not balanced, breaks a limit or moves no bottle. It notes what became
// of the bottles in it.
func (u *user) settle(f *frame) (*station.Settled, error) {
	if u.work.Shuns(&station.Sketch{Spec: f.spec, Frame: f.drink}) {
		u.noteAll(&f.spec)
		return nil, nil
	}
	own := station.Snapped(&f.spec)
	s, err := u.settleFrom(f, &own)
	if err != nil || s != nil {
		return s, err
	}
	sized, err := u.sized(f)
	if err != nil {
		return nil, err
	}
	return u.settleFrom(f, sized)
}

// noteAll notes that a draft which moves bottles is not poured as bars pour it.
func (u *user) noteAll(s *flavor.Spec) {
	for _, p := range u.req.Bottles {
		if s.HasProfile(p) {
			u.note(p, station.Unfit)
		}
	}
}

func (u *user) settleFrom(f *frame, spec *flavor.Spec) (*station.Settled, error) {
	d := station.Sketch{Spec: *spec, Kind: station.Kind(f.family), Moves: 1, Frame: f.drink, Likely: f.likely, Rank: f.rank(), Most: u.accents()}
	s, err := u.work.Settle(&d)
	if err != nil || s == nil {
		return nil, err
	}
	fate, err := u.work.Fate(s)
	if err != nil {
		return nil, err
	}
	moved := false
	for _, p := range u.req.Bottles {
		if u.uses(&s.Spec, p) > 0 {
			moved = true
			u.note(p, fate)
		}
	}
	if fate != station.Good || !moved {
		return nil, nil
	}
	return s, nil
}

// accents is the most that is poured of the bottles that only season a drink, by id.
func (u *user) accents() map[string]float64 {
	most := map[string]float64{}
	for _, p := range u.req.Bottles {
		if u.work.Accent(p) {
			most[p.ID] = u.work.UsualML(p)
		}
	}
	return most
}

// What a draft gains by a bottle that no chosen one moves, and by a full pour of
// one; of a bottle that others move already, it gains less with each.
const (
	newBottle = 0.4
	together  = 0.5 // by two bottles at once, once, less as they are strange to each other
	fullUse   = 0.3
	fullUseML = 60.0
	// That much less where a draft is hardly balanced: two bottles that only just stand
	// each other are better moved apart.
	nearBalance  = 4.0
	wellBalanced = 16.0
)

// choose picks drafts as riffs are picked, but lifts those that move a bottle
// which is still waiting, and those that move much.
func (u *user) choose(pool []*station.Settled) []*station.Settled {
	times := map[string]int{} // that a bottle is moved by what is chosen
	met := false              // two of them at once
	chosen := 0
	return u.work.Pick(u.familiar(pool), u.req.Limit, func(s *station.Settled) float64 {
		sits := min(1, (s.Score-weigh.BalancedFrom+nearBalance)/wellBalanced)
		var most, all float64 // that one bottle gains, and that all do
		moved := u.moved(&s.Spec)
		for _, p := range moved {
			gain := fullUse * sits * min(1, u.uses(&s.Spec, p)/fullUseML) / float64(1+times[p.ID])
			if times[p.ID] == 0 {
				gain += newBottle * sits
			}
			most, all = max(most, gain), all+gain
		}
		if len(moved) < 2 {
			return all
		}
		if !met {
			all += together
		}
		return most + (all-most)*max(akin(s), min(1, float64(chosen)/float64(waits)))
	}, func(s *station.Settled) {
		met = met || len(u.moved(&s.Spec)) > 1
		chosen++
		for _, p := range u.req.Bottles {
			if u.uses(&s.Spec, p) > 0 {
				times[p.ID]++
			}
		}
	})
}

// A list has company that proven drinks keep, once there is so much of it: what is stranger
// is left out then, since it would fill the list and not be poured. Judged on lists of the
// trade.
const (
	strangeFrom = 0.6
	enoughUsual = 5
)

// familiar leaves out the drafts of strange company, if there are enough others; those that
// move two bottles at once stay.
func (u *user) familiar(pool []*station.Settled) []*station.Settled {
	usual := slices.DeleteFunc(slices.Clone(pool), func(s *station.Settled) bool { return s.Odd() >= strangeFrom && len(u.moved(&s.Spec)) < 2 })
	if len(usual) < enoughUsual {
		return pool
	}
	return usual
}

// moved lists which of the bottles a drink moves.
func (u *user) moved(s *flavor.Spec) (out []*flavor.Profile) {
	for _, p := range u.req.Bottles {
		if u.uses(s, p) > 0 && !slices.Contains(out, p) {
			out = append(out, p)
		}
	}
	return out
}

// akin is 1 for a draft whose pours go together, and falls to nothing with how strange the
// company is that they keep.
func akin(s *station.Settled) float64 { return max(0, 1-max(0, s.Odd())/strangers) }

// strangers is how strange a draft is that gains nothing by moving two bottles at once until
// waits others are chosen: it is listed where it can be, and not first.
const (
	strangers = 0.5
	waits     = 5
)

func (u *user) result(chosen []*station.Settled) (*Result, error) {
	out, used := &Result{}, map[string]bool{}
	for _, s := range chosen {
		r, err := u.work.List(s)
		if err != nil {
			return nil, err
		}
		d := Draft{Listed: r}
		d.Kind = Bottle
		for _, p := range u.req.Bottles {
			if ml := u.uses(&s.Spec, p); ml > 0 && !slices.ContainsFunc(d.Uses, func(x Use) bool { return x.Profile.ID == p.ID }) {
				used[p.ID] = true
				d.Uses = append(d.Uses, Use{p, ml})
			}
		}
		d.Text = useText(&d)
		out.Drafts = append(out.Drafts, d)
	}
	for _, p := range u.req.Bottles {
		if !used[p.ID] {
			used[p.ID] = true // asked for twice, told once
			out.Unused = append(out.Unused, Unused{p, u.why[p.ID], u.work.Limits.Guest.Objection(p)})
		}
	}
	out.Refused, out.Labels = u.work.Left, u.work.Labels
	return out, nil
}

// useText says a draft in one line: what it moves, and what it is.
func useText(d *Draft) string {
	parts := make([]string, len(d.Uses))
	for i, u := range d.Uses {
		parts[i] = amountOf(&d.Spec, u.Profile) + " " + u.Profile.Name
	}
	text := wording.Uses(parts, d.Family, d.Drink.ABV)
	if top := wording.Topped(&d.Spec); top != "" {
		text += "; " + top
	}
	return text
}

// amountOf says how much of p a drink pours, in the unit of the pour.
func amountOf(s *flavor.Spec, p *flavor.Profile) string {
	for i := range s.Pours {
		if x := &s.Pours[i]; x.Profile.ID == p.ID {
			return measure.FormatAmount(x.Amount, x.Unit)
		}
	}
	return ""
}
