package mend

import (
	"slices"

	"counterpour/flavor"
	"counterpour/flavor/balance/change"
	"counterpour/flavor/balance/wording"
	"counterpour/flavor/guest"
	"counterpour/flavor/weigh"
)

// Fix is a change that mends a draft, and the score it would have.
type Fix struct {
	Changes []change.Change
	Spec    flavor.Spec // with the changes made; its method may be another too
	Score   float64
	Text    string
}

// Suits reports whether a draft, once mended so, pours nothing that the guest must not have, and
// has nothing of it laid on: less of it is still too much.
func (f *Fix) Suits(g *guest.Guest) bool {
	return g.MayHaveLaid(&f.Spec) && !slices.ContainsFunc(f.Spec.Pours, func(p flavor.Pour) bool { return !g.Accepts(p.Profile) })
}

// MaxFixes is how many fixes are worth a bartender's time.
const MaxFixes = 3

// How many points a fix must bring, and if none brings as many.
const leastLift, someLift = 3.0, 0.1

// Fixes returns up to limit changes that mend a draft, the best first: first what puts back
// something forgotten, from the right bottle where the wrong one stands in its place; then what leaves
// nothing that is worse; then whatever changes the fewest pours; then what the faults ask for, in
// their order; then the fewest steps of the jigger; then the highest score. The same draft always
// gives the same list. A balanced draft needs none.
//
// A pour moves as far as it takes to be balanced with room for a hand's error. A pour that is too
// much in itself is poured as proven drinks pour it, or left out if none does. The base stays
// within a quarter of what was ordered unless it is at fault. Nothing is added where an amount
// would do, except to a long drink so small for its kind that what lengthens it may be missing.
// A drink that is served up gets no length, and a draft without alcohol gets none.
func (b *Bench) Fixes(d *Draft, limit int) ([]Fix, error) {
	if weigh.VerdictOf(d.Score) == weigh.Balanced || limit <= 0 || d.Build.Straight() { // to mix it would make another drink
		return nil, nil
	}
	f := b.fixing(d)
	f.byMethod()
	f.byFaults()
	f.leaveStrangeOut()
	f.byExchange()
	f.byName()
	f.bySize()
	if f.short() {
		if err := f.byCompanions(); err != nil {
			return nil, err
		}
	}
	if err := f.byMistaken(f.carried()); err != nil {
		return nil, err
	}
	for i, try := range f.tries() {
		if f.mended() && (i > 0 || !f.forgets() || f.lacksByName()) {
			break
		}
		if err := try(); err != nil {
			return nil, err
		}
	}
	if f.leftWorse() {
		if err := f.byPairs(); err != nil {
			return nil, err
		}
	}
	if !f.mended() {
		if err := f.byMistaken(f.besideBases()); err != nil {
			return nil, err
		}
	}
	if err := f.byRebuilding(); err != nil {
		return nil, err
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
	case f.faults[0].Beside:
		return []func() error{f.byCompanions, f.byAdding, f.byOthers, f.byLeavingOut, f.byPairs, f.byLeavingMuchOut}
	}
	return []func() error{f.byAdding, f.byCompanions, f.byOthers, f.byLeavingOut, f.byPairs, f.byLeavingMuchOut}
}

// forgets reports whether something was forgotten before all else that is wrong.
func (f *fixing) forgets() bool { return len(f.faults) > 0 && f.faults[0].Forgotten() }

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
	f.withoutIdle()
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
			if fix.Score, ok, err = f.bench.Set.Reaches(&fix.Spec, least); err != nil {
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

// A change that is made beside others has to bring so many points where it does not balance the
// draft. Judged.
const worthMore = 15.0

// withoutIdle leaves out what does not balance the draft and does no more than another candidate but
// for a change that hardly brings anything.
func (f *fixing) withoutIdle() {
	all := slices.Clone(f.found)
	f.found = slices.DeleteFunc(f.found, func(c candidate) bool {
		return !c.balanced() && slices.ContainsFunc(all, func(o candidate) bool { return c.adds(&o) && c.score < o.score+worthMore })
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
