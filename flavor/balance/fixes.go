package balance

import (
	"cmp"
	"math"
	"slices"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/balance/wording"
	"counterpour/flavor/measure"
	"counterpour/flavor/mix"
	"counterpour/flavor/ratio"
	"counterpour/flavor/technique"
	"counterpour/flavor/weigh"
)

// Change is one pour moved, added or left out.
type Change struct {
	Pour     int // index in the spec; len(spec.Pours) for a pour that is added
	Profile  *flavor.Profile
	Unit     flavor.Unit
	FromUnit flavor.Unit // of From, if it is another; empty if it is the same
	From, To float64     // in the units; From is 0 for a pour that is added, To for one left out
	FromML   float64
	ToML     float64
	Heat     flavor.Heat // how warm the draft pours it; empty if it does not say
}

// called returns the name of the ingredient with how warm it is poured.
func (c *Change) called() string {
	return (&flavor.Pour{Profile: c.Profile, Heat: c.Heat}).Called()
}

// Before says the amount that there was, empty for a pour that is added.
func (c *Change) Before() string {
	if c.FromML <= 0 {
		return ""
	}
	return measure.FormatAmount(c.From, cmp.Or(c.FromUnit, c.Unit))
}

// Fix is a change that mends a draft, and the score it would have.
type Fix struct {
	Changes []Change
	Spec    flavor.Spec // with the changes made; its method may be another too
	Score   float64
	Text    string
}

// MaxFixes is how many fixes are worth a bartender's time.
const MaxFixes = 3

// How many points a fix must bring, and if none brings as many.
const leastLift, someLift = 3.0, 0.1

// Fixes returns up to limit changes that mend a draft, the best first: first what puts back
// something forgotten; then whatever changes the fewest pours; then what the faults ask for, in
// their order; then the fewest steps of the jigger; then the highest score. The same draft always
// gives the same list. A balanced draft needs none.
//
// A pour moves as far as it takes to be balanced with room for a hand's error. A pour that is too
// much in itself is poured as proven drinks pour it, or left out if none does. The base stays
// within a quarter of what was ordered unless it is at fault. Nothing is added where an amount
// would do, except to a long drink so small for its kind that what lengthens it may be missing.
// A drink that is served up gets no length, and a draft without alcohol gets none.
func (j *Judge) Fixes(s *flavor.Spec, r *Result, limit int) ([]Fix, error) {
	if r.Verdict == weigh.Balanced || limit <= 0 {
		return nil, nil
	}
	build, err := j.set.Prepare(s)
	if err != nil {
		return nil, err
	}
	defer build.Done()
	return j.fixes(s, r, build, limit)
}

func (j *Judge) fixes(s *flavor.Spec, r *Result, build *weigh.Build, limit int) ([]Fix, error) {
	if r.Verdict == weigh.Balanced || limit <= 0 || build.Straight() { // to mix it would make another drink
		return nil, nil
	}
	f := &fixing{judge: j, spec: s, base: r.Judgement.Score, faults: r.Faults, build: build, ml: build.Amounts(), free: s.AlcoholFree()}
	f.byMethod()
	f.byFaults()
	f.leaveStrangeOut()
	f.byExchange()
	f.bySize()
	if f.short() {
		if err := f.byCompanions(); err != nil {
			return nil, err
		}
	}
	for i, try := range f.tries() {
		if f.mended() && (i > 0 || !f.forgets()) {
			break
		}
		if err := try(); err != nil {
			return nil, err
		}
	}
	out, err := f.list(limit, leastLift)
	if len(out) == 0 && err == nil { // better a little than to say nothing
		return f.list(limit, someLift)
	}
	return out, err
}

// tries are the ways to mend a draft, beside those that its faults ask for, in the order in
// which they are tried until one mends it. What is missing comes first, whatever else would
// do: nothing is too much until it is there.
func (f *fixing) tries() []func() error {
	switch {
	case f.strange():
		return []func() error{f.byTurns, f.byOthers, f.byLeavingOut, f.byPairs, f.byAdding, f.byCompanions, f.byLeavingMuchOut}
	case f.wants():
		return []func() error{f.byOthers, f.byLeavingOut, f.byAdding, f.byPairs, f.byTurns, f.byCompanions, f.byLeavingMuchOut}
	case !f.forgets():
		return []func() error{f.byServing, f.byOthers, f.byLeavingOut, f.byPairs, f.byTurns, f.byAdding, f.byCompanions, f.byLeavingMuchOut}
	case f.faults[0].beside:
		return []func() error{f.byCompanions, f.byAdding, f.byOthers, f.byLeavingOut, f.byPairs, f.byLeavingMuchOut}
	}
	return []func() error{f.byAdding, f.byCompanions, f.byOthers, f.byLeavingOut, f.byPairs, f.byLeavingMuchOut}
}

// forgets reports whether something was forgotten before all else that is wrong.
func (f *fixing) forgets() bool { return len(f.faults) > 0 && f.faults[0].forgotten() }

// wants reports whether the first that is wrong is that no pour brings enough of something:
// to add it is a smaller change than to move two others.
func (f *fixing) wants() bool {
	return len(f.faults) > 0 && !f.forgets() && !f.faults[0].High && f.faults[0].Profile == nil && f.faults[0].Method == ""
}

// list returns the best of what was found, each of another kind, with the
// score that the mended spec gets. While something mends the draft, what does not
// is not worth telling, nor what leaves it off while something brings it near.
func (f *fixing) list(limit int, lift float64) ([]Fix, error) {
	var out []Fix
	var told, failed []*candidate
	best := 0.0
	slices.SortStableFunc(f.found, func(a, b candidate) int { return a.compare(&b) })
	spared := f.sparesBase()
	for i := range f.found {
		c := &f.found[i]
		if len(out) == limit {
			break
		}
		if slices.ContainsFunc(told, func(o *candidate) bool { return c.sameIdea(o) }) || spared && c.takesBase() {
			continue
		}
		if slices.ContainsFunc(failed, func(o *candidate) bool { return c.same(o) }) {
			continue // what a fix must reach only rises
		}
		fix := Fix{Changes: c.changes, Text: c.text()}
		fix.Spec = c.apply(f.spec)
		least, ok := max(f.base+lift, worthBeside(best)), false
		if fix.Score, ok = c.score, c.score >= least; !c.sure {
			var err error
			if fix.Score, ok, err = f.judge.reaches(&fix.Spec, least); err != nil {
				return nil, err
			}
		}
		if !ok {
			failed = append(failed, c)
			continue
		}
		if still, err := f.curdles(&fix); err != nil {
			return nil, err
		} else if still {
			continue
		}
		if weigh.VerdictOf(fix.Score) == weigh.Off {
			fix.Text = wording.NotEnough(fix.Text)
		}
		best = max(best, fix.Score)
		told, out = append(told, c), append(out, fix)
	}
	return slices.DeleteFunc(out, func(x Fix) bool { return x.Score < worthBeside(best) }), nil
}

// sparesBase reports whether no fault is of the base, and something balances the draft
// that leaves all of it as it was ordered.
func (f *fixing) sparesBase() bool {
	if slices.ContainsFunc(f.faults, func(x Fault) bool {
		return x.Profile != nil && x.Profile.Base() || x.Axis == ratio.Strong && x.High
	}) {
		return false
	}
	return slices.ContainsFunc(f.found, func(c candidate) bool {
		return c.balanced() && !slices.ContainsFunc(c.changes, func(x Change) bool { return x.Profile.Base() })
	})
}

// takesBase reports whether a candidate takes a base further from what was ordered than a
// fix may that no fault asks for; a smaller drink of the same kind does not.
func (c *candidate) takesBase() bool {
	return !c.scales() && slices.ContainsFunc(c.changes, func(x Change) bool {
		return x.Profile.Base() && x.FromML > 0 && math.Abs(x.ToML-x.FromML) > strayShare*x.FromML+slack
	})
}

// worthBeside returns the score that a fix has to reach beside the best there is.
func worthBeside(best float64) float64 {
	switch weigh.VerdictOf(best) {
	case weigh.Balanced:
		return weigh.BalancedFrom
	case weigh.Near:
		return weigh.NearFrom
	}
	return 0
}

// What a fix may do to how much a guest drinks: beyond two standard drinks of 14 g
// (as the United States count them), no more than half as much ethanol again.
// Judged.
const (
	plentyG       = 28.0
	strongerTimes = 1.5
)

// heady reports whether changes make much more alcohol in the glass than in the draft.
func (f *fixing) heady(changes []Change) bool {
	before := ethanol(f.spec)
	g := before
	for i := range changes {
		x := &changes[i]
		g += (x.ToML - x.FromML) * x.Profile.ABV.Value / 100 * mix.EthanolDensity
	}
	return g > plentyG && g > strongerTimes*before
}

// spikes reports whether changes pour what holds alcohol into a draft without.
func (f *fixing) spikes(changes []Change) bool {
	return f.free && slices.ContainsFunc(changes, func(x Change) bool { return x.ToML > x.FromML && x.Profile.ABV.Value > flavor.NoAlcoholABV })
}

// bursts reports whether a candidate still shakes what is hot, if that is what is wrong:
// to pour less of it is no way to make that safe.
func (f *fixing) bursts(c candidate) bool {
	if !c.making.Stays() || !slices.ContainsFunc(f.faults, func(x Fault) bool { return x.Method == technique.HotOnIce }) {
		return false
	}
	spec := c.apply(f.spec)
	return technique.HotInside(&spec)
}

// curdles reports whether milk or cream still turns in a mended draft, if that is what is
// wrong: less of it is as full of curds.
func (f *fixing) curdles(x *Fix) (bool, error) {
	if weigh.VerdictOf(x.Score) == weigh.Balanced || !slices.ContainsFunc(f.faults, func(x Fault) bool { return x.Method == technique.Curdled }) {
		return false, nil
	}
	build, err := f.judge.set.Prepare(&x.Spec)
	if err != nil {
		return false, err
	}
	defer build.Done()
	judged := build.Judge(build.Amounts())
	return slices.ContainsFunc(judged.Method, func(s technique.Misstep) bool { return s.Flaw == technique.Curdled }), nil
}

// ethanol returns the g of it in a spec.
func ethanol(s *flavor.Spec) float64 {
	var ml float64
	for i := range s.Pours {
		ml += s.Pours[i].ML * s.Pours[i].Profile.ABV.Value / 100
	}
	return ml * mix.EthanolDensity
}

// candidate is something that may mend a draft.
type candidate struct {
	changes []Change
	making  technique.Making
	portion portion // of everything, if that is what is poured
	asked   int     // place of the fault that asks for it, unasked if none does
	steps   int     // of the jigger
	score   float64
	small   bool // it leaves less than half of the draft
	puts    bool // it puts back what was forgotten, or leaves out what is strange, which is the first fault
	sure    bool // the score is that of the mended spec, and not of the draft with other amounts
}

// unasked is the place of no fault.
const unasked = MaxFaults

// balanced reports whether the candidate balances the draft.
func (c *candidate) balanced() bool { return c.score >= weigh.BalancedFrom }

// scales reports whether a portion of everything is poured.
func (c *candidate) scales() bool { return c.portion != (portion{}) }

// size is how many things are done.
func (c *candidate) size() int {
	switch {
	case c.scales():
		return 1
	case c.making.Glass != "" && c.making.Service != "": // ice, beside another glass
		return len(c.changes) + 2
	case !c.making.Stays():
		return len(c.changes) + 1
	}
	return len(c.changes)
}

// compare orders candidates, the best first; no two are equal.
func (c *candidate) compare(o *candidate) int {
	if d := cmp.Or(-compareBool(c.balanced(), o.balanced()), cmp.Compare(o.nearness(), c.nearness()), -compareBool(c.puts, o.puts), cmp.Compare(c.size(), o.size()),
		-compareBool(c.roomy(), o.roomy()), cmp.Compare(c.asked, o.asked), cmp.Compare(c.steps, o.steps),
		cmp.Compare(o.score, c.score)); d != 0 {
		return d
	}
	return strings.Compare(c.text(), o.text())
}

// roomy is the score from which a fix leaves room for a hand's error: among fixes of as
// many pours it comes before one that hardly balances the draft.
const roomy = 80.0

// roomy reports whether a candidate leaves such room. To leave a pour out always does,
// and is no reason to do so.
func (c *candidate) roomy() bool {
	return c.score >= roomy && !c.small && !slices.ContainsFunc(c.changes, func(x Change) bool { return x.ToML == 0 })
}

// nearness is how near a candidate that does not balance the draft brings it, in tens
// of points; less is no reason to change one more pour.
func (c *candidate) nearness() float64 {
	if c.balanced() {
		return 0
	}
	return math.Floor(c.score / 10)
}

// compareBool puts false before true.
func compareBool(x, y bool) int {
	switch {
	case x == y:
		return 0
	case x:
		return 1
	}
	return -1
}

// same reports whether two candidates do the very same: two ways to search may find one.
func (c *candidate) same(o *candidate) bool {
	return c.portion == o.portion && c.making.Same(&o.making) && slices.Equal(c.changes, o.changes)
}

// sameIdea reports whether one of two candidates does what the other does, and
// perhaps more.
func (c *candidate) sameIdea(o *candidate) bool {
	if c.scales() && o.scales() {
		return true
	}
	if !c.making.Same(&o.making) || c.scales() || o.scales() {
		return false
	}
	if len(c.changes) > len(o.changes) {
		c, o = o, c
	}
	for _, a := range c.changes {
		if !slices.ContainsFunc(o.changes, func(b Change) bool {
			return a.Profile.ID == b.Profile.ID && (a.ToML > a.FromML) == (b.ToML > b.FromML)
		}) {
			return false
		}
	}
	return true
}

// apply returns the spec with the candidate's changes made.
func (c *candidate) apply(s *flavor.Spec) flavor.Spec {
	out := apply(s, c.changes)
	c.making.Apply(&out)
	return out
}

// apply returns the spec with changes made.
func apply(s *flavor.Spec, changes []Change) flavor.Spec {
	out := s.Clone()
	for _, c := range changes {
		if c.Pour == len(out.Pours) {
			out.Pours = append(out.Pours, flavor.Pour{Profile: c.Profile,
				Match: flavor.Match{Asked: c.Profile.Name, How: flavor.MatchExact}})
		}
		p := &out.Pours[c.Pour]
		p.Amount, p.Unit, p.ML = c.To, c.Unit, c.ToML
	}
	out.Pours = slices.DeleteFunc(out.Pours, func(p flavor.Pour) bool { return p.ML == 0 })
	return out
}

// text says what is done.
func (c *candidate) text() string {
	if c.scales() {
		return wording.OfEverything(c.portion.some, c.portion.parts)
	}
	var steps []string
	for i := range c.changes {
		x := &c.changes[i]
		to := measure.FormatAmount(x.To, x.Unit)
		switch {
		case x.FromML == 0:
			steps = append(steps, wording.Add(to, x.Profile.Name))
		case x.ToML == 0:
			steps = append(steps, wording.LeaveOut(x.Profile.Name))
		default:
			steps = append(steps, wording.Instead(to, x.called(), x.Before()))
		}
	}
	if !c.making.Stays() {
		steps = append(steps, wording.Making(&c.making))
	}
	return wording.All(steps)
}
