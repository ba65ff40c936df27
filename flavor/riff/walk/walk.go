package walk

import (
	"context"
	"errors"
	"slices"

	"counterpour/flavor"
	"counterpour/flavor/balance"
	"counterpour/flavor/guest"
	"counterpour/flavor/measure"
	"counterpour/flavor/mix"
	"counterpour/flavor/riff/aim"
	"counterpour/flavor/riff/station"
	"counterpour/flavor/sense"
	"counterpour/flavor/weigh"
)

// Drinks that may lie between the two ends of a walk, and how many do if
// nobody says.
const (
	MaxSteps     = 8
	DefaultSteps = 3
)

// Request asks for a path from one drink to another.
type Request struct {
	From, To *flavor.Spec
	Between  int // drinks between the two, 1 to MaxSteps; 0 means DefaultSteps
	Guest    guest.Guest
	// Stock is what may be poured, beside what the two pour, in a proven drink that lies
	// between them; see [Find].
	Stock []*flavor.Profile
}

// Stop is one drink of a walk.
type Stop struct {
	Spec    flavor.Spec
	Score   float64
	Drink   *mix.Drink
	Hop     float64          // from the drink before, in just-noticeable differences; 0 for the first
	Changes []balance.Change // from the drink before
	Text    string
}

// Result is the path found.
type Result struct {
	Stops []Stop
	// Labels are what is poured that the guest may have only if the label clears it: nobody
	// has stated that it carries none of what the guest avoids. Without that no stop is safe.
	Labels []*flavor.Profile
}

// Find returns a path from one drink to another for a tasting menu: both ends as
// they are, and between them balanced drinks made of what the two hold, each
// pour of the first giving way to one of the second, by half and then in whole.
// Of all such paths it is one whose hops have the least sum of cubes, so that
// they are as even as the jigger lets them be. Where there are too few, or that leaves a long hop, as from
// the last drink with juice to the first without, proven drinks that the guest may have
// and the stock pours are stops too; such a stop bears its name. It fails if the request is out of
// range, if a pour is not for this guest whatever its label says, if ctx ends too early, or, with a fault that
// says how many there are and which, if fewer balanced drinks lie between the two than
// are asked for.
func Find(ctx context.Context, st *station.Station, req Request) (*Result, error) {
	if req.Between == 0 {
		req.Between = DefaultSteps
	}
	if req.Between < 1 || req.Between > MaxSteps {
		return nil, flavor.OutOfRange("between", req.Between, 1, MaxSteps, "ask for 1 to 8 drinks between the two")
	}
	req.From, req.To = req.Guest.Serve(req.From), req.Guest.Serve(req.To)
	shelf, err := gather(&req)
	if err != nil {
		return nil, err
	}
	faults, err := beyond(st, &req)
	if err != nil {
		return nil, err
	}
	if len(faults) > 0 {
		return nil, faults
	}
	own := req.Guest
	own.Avoid = nil // what the ends pour was looked at, and nothing else is poured
	limits, err := aim.NewLimits(&own, nil)
	if err != nil {
		return nil, err
	}
	k := &walker{work: st.NewJob(shelf.stock, limits, measure.SystemOf(req.From), 0), from: req.From, to: req.To}
	k.work.Given = []*flavor.Spec{req.From, req.To}
	k.work.WriteAs(req.From)
	k.pair()
	err = k.settle(ctx)
	if err != nil && !errors.Is(err, context.DeadlineExceeded) {
		return nil, err
	}
	stops, fault := k.path(req.Between)
	if err == nil && (fault != nil || longest(stops) > longHop) {
		if err := k.bridge(&req); err != nil {
			return nil, err
		}
		stops, fault = k.path(req.Between)
	}
	switch {
	case err != nil && fault != nil:
		return nil, err // there may have been enough drinks
	case fault != nil:
		return nil, fault
	}
	return &Result{Stops: stops, Labels: shelf.labels}, nil
}

// shelf is what the two ends pour.
type shelf struct {
	stock  []*flavor.Profile
	labels []*flavor.Profile // of these, what only its label clears for the guest
}

// gather looks at what the two ends pour. It fails if an end cannot be worked on, or pours
// what the guest must not have, whatever its label says.
func gather(req *Request) (*shelf, error) {
	if err := req.Guest.Check(); err != nil {
		return nil, err
	}
	out, g := &shelf{}, req.Guest
	g.MaxCost = 0 // prices are looked at apart
	var faults flavor.DataFaults
	for _, end := range []struct {
		name string
		spec *flavor.Spec
	}{{"from", req.From}, {"to", req.To}} {
		if err := station.CheckSpec(end.spec); err != nil {
			return nil, placed(end.name, err)
		}
		if p := g.BarredLaid(end.spec); p != nil {
			faults = append(faults, flavor.Invalid(end.name, p.Name, "%s is not for this guest: it %s", p.Name, g.Objection(p)))
		}
		for i := range end.spec.Pours {
			p := end.spec.Pours[i].Profile
			out.stock = append(out.stock, p)
			switch {
			case g.MayHave(p):
			case !g.LabelDecides(p):
				faults = append(faults, flavor.Invalid(flavor.At(end.name+".pours", i), p.Name, "%s is not for this guest: it %s; find a cover for it first", p.Name, g.Objection(p)))
			case !slices.Contains(out.labels, p):
				out.labels = append(out.labels, p)
			}
		}
	}
	if len(faults) > 0 {
		return nil, faults
	}
	return out, nil
}

// beyond tells which of the ends are too strong or too dear for the guest.
func beyond(st *station.Station, req *Request) (faults flavor.DataFaults, err error) {
	g := &req.Guest
	for _, end := range []struct {
		name string
		spec *flavor.Spec
	}{{"from", req.From}, {"to", req.To}} {
		drink, err := st.Mixer.Mix(end.spec)
		if err != nil {
			return nil, placed(end.name, err)
		}
		if g.TooStrong(drink.ABV) {
			faults = append(faults, flavor.Invalid(end.name, drink.ABV, "this drink has %.1f %% vol, above the limit of %.1f; choose a weaker one", drink.ABV, g.MaxABV))
		}
		if g.MaxCost <= 0 {
			continue
		}
		for i := range end.spec.Pours {
			p := end.spec.Pours[i].Profile
			if !p.Priced(g.Prices) {
				faults = append(faults, flavor.Invalid(flavor.At(end.name+".pours", i), p.Name, "%s has no price, so a cost limit cannot be checked; give it a price, or leave the limit out", p.Name))
			}
		}
		if cost, _ := end.spec.Cost(g.Prices); cost > g.MaxCost {
			faults = append(faults, flavor.Invalid(end.name, cost, "this drink costs %.2f to pour, above the limit of %.2f; choose one that costs less", cost, g.MaxCost))
		}
	}
	return faults, nil
}

// walker seeks a path. A state says how far each pair of pours has changed over:
// not, by half, in whole. Nothing changes back.
type walker struct {
	work     *station.Job
	from, to *flavor.Spec
	pairs    []pairing
	states   []state
	hops     []float64 // how far apart each two states are, 0 for what is not worked out yet
}

// pairing is what gives way to what: indices of pours, −1 for nothing. The pair
// of the method and the service has neither.
type pairing struct{ from, to []int }

// state is one drink on the way; the first and the last are the two ends.
type state struct {
	turned []int // 0, 1, 2 for each pair
	spec   flavor.Spec
	score  float64
	drink  *mix.Drink
	at     *sense.Percept
	// progress is how far a proven drink, or one that leads to or from it, lies on the way,
	// 0 to 1; proven drinks have not turned.
	progress float64
	toll     float64 // cubed steps that a walk through it costs
}

// mostPairs bounds the search: 3⁵ drinks, twice for the method.
const mostPairs = 5

// pair puts each pour of the first drink beside the one of the second that does
// its work; seasonings, and what is more than mostPairs, turn over together.
func (k *walker) pair() {
	used := make([]bool, len(k.to.Pours))
	var small pairing
	for i := range k.from.Pours {
		p := k.from.Pours[i].Profile
		j := k.counterpart(p, used)
		if p.Class.Part() == flavor.PartSeasoning {
			small.from = append(small.from, i)
			if j >= 0 {
				used[j] = true
				small.to = append(small.to, j)
			}
			continue
		}
		x := pairing{from: []int{i}}
		if j >= 0 {
			used[j] = true
			x.to = []int{j}
		}
		k.pairs = append(k.pairs, x)
	}
	for j := range k.to.Pours {
		if used[j] {
			continue
		}
		if k.to.Pours[j].Profile.Class.Part() == flavor.PartSeasoning {
			small.to = append(small.to, j)
			continue
		}
		k.pairs = append(k.pairs, pairing{to: []int{j}})
	}
	if len(small.from)+len(small.to) > 0 {
		k.pairs = append(k.pairs, small)
	}
	for len(k.pairs) > mostPairs {
		last := k.pairs[len(k.pairs)-1]
		k.pairs = k.pairs[:len(k.pairs)-1]
		into := &k.pairs[len(k.pairs)-1]
		into.from, into.to = append(into.from, last.from...), append(into.to, last.to...)
	}
}

// counterpart returns the pour of the second drink that is the same ingredient,
// else plays the same part, or −1.
func (k *walker) counterpart(p *flavor.Profile, used []bool) int {
	part := -1
	for j := range k.to.Pours {
		q := k.to.Pours[j].Profile
		switch {
		case used[j]:
		case q.ID == p.ID:
			return j
		case part < 0 && q.Class.Part() == p.Class.Part():
			part = j
		}
	}
	return part
}

// settle works out every drink between the two that is balanced; if ctx ends, those
// so far beside its error.
func (k *walker) settle(ctx context.Context) error {
	n := len(k.pairs)
	if k.from.Method != k.to.Method || k.from.Service != k.to.Service {
		n++
	}
	first, err := k.end(k.from, n, 0)
	if err != nil {
		return err
	}
	last, err := k.end(k.to, n, 2)
	if err != nil {
		return err
	}
	k.states = append(k.states, first)
	turned := make([]int, n)
	for next(turned, len(k.pairs)) {
		if err = station.Stopped(ctx); err != nil {
			break
		}
		if sum(turned) == 2*n {
			continue
		}
		s, ok, err := k.between(turned)
		if err != nil {
			return err
		}
		if ok {
			k.states = append(k.states, s)
		}
	}
	k.states = append(k.states, last)
	return err
}

// next counts through the states in base three; the last digit, if it is the
// method, has no half. It is false after the last one.
func next(turned []int, pairs int) bool {
	for i := range turned {
		turned[i]++
		if i >= pairs {
			turned[i]++
		}
		if turned[i] <= 2 {
			return true
		}
		turned[i] = 0
	}
	return false
}

func sum(v []int) (t int) {
	for _, x := range v {
		t += x
	}
	return t
}

func (k *walker) end(s *flavor.Spec, n, turned int) (state, error) {
	drink, err := k.work.Station.Mixer.Mix(s)
	if err != nil {
		return state{}, err
	}
	score, err := k.work.Station.Judge.ScoreOnly(s)
	if err != nil {
		return state{}, err
	}
	return state{turned: slices.Repeat([]int{turned}, n), spec: s.Clone(), score: score, drink: drink, at: k.work.Station.Space.Percept(s, drink)}, nil
}

// between returns the drink of a state, if it can be balanced.
func (k *walker) between(turned []int) (state, bool, error) {
	d := station.Sketch{Spec: k.specOf(turned)}
	if len(d.Spec.Pours) == 0 {
		return state{}, false, nil
	}
	s, err := k.work.Settle(&d)
	if err != nil || s == nil {
		return state{}, false, err
	}
	if s.Score < weigh.BalancedFrom || !k.work.Fits(s) || !k.work.Limits.Keeps(&s.Spec, s.Drink) {
		return state{}, false, nil
	}
	return state{turned: slices.Clone(turned), spec: s.Spec, score: s.Score, drink: s.Drink, at: s.Glass, toll: oddToll*k.work.Uneasy(&s.Spec) + k.crossing(&s.Spec)}, true, nil
}

// crossing is what a drink costs a walk that pours the juice which only one end sours with
// beside the vermouth, sherry or port that only the other has: where a sour turns into a
// stirred drink the juice goes first. In cubed steps; common practice, no source.
func (k *walker) crossing(s *flavor.Spec) float64 {
	only := func(a, b *flavor.Spec) bool {
		return pours(s, a, sours) && !b.Has(sours) && pours(s, b, wine) && !a.Has(wine)
	}
	if only(k.from, k.to) || only(k.to, k.from) {
		return crossToll
	}
	return 0
}

// crossToll is the toll of a drink that [walker.crossing] names: as much as a hop of eight
// steps, so that a longer one around it is preferred.
const crossToll = 512.0

func sours(p *flavor.Profile) bool { return p.Class.Part() == flavor.PartSour }

func wine(p *flavor.Profile) bool {
	return p.Class.Part() == flavor.PartModifier && p.Class.Kin() == flavor.KinWine && !p.Carbonated
}

// pours reports whether a drink pours something of an end that is so.
func pours(s, end *flavor.Spec, so func(*flavor.Profile) bool) bool {
	return end.Has(func(p *flavor.Profile) bool { return so(p) && s.HasProfile(p) })
}

// placed returns a fault with its place at one end of a walk.
func placed(end string, err error) error {
	var f *flavor.DataFault
	if !errors.As(err, &f) {
		return err
	}
	own := *f
	own.Location = end
	if f.Location != "spec" {
		own.Location += "." + f.Location
	}
	return &own
}
