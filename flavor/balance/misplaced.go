package balance

import (
	"math"
	"slices"

	"counterpour/flavor"
	"counterpour/flavor/balance/wording"
	"counterpour/flavor/makeup"
	"counterpour/flavor/measure"
	"counterpour/flavor/ratio"
	"counterpour/flavor/technique"
	"counterpour/flavor/weigh"
	"counterpour/flavor/weigh/forgotten"
)

// surely is the score of the rest from which a pour without which it has that is what is wrong.
// Judged.
const surely = 75.0

// surelyAlike is how like a proven drink the rest has to be where no name says which drink is meant.
// Chosen by the trial.
const surelyAlike = 0.95

// faults lists what is worth telling of a draft that is not balanced. Where one pour alone takes
// it away from drinks that are known, that is what is wrong: all else would be said of a drink
// that nobody meant.
func (j *Judge) faults(s *flavor.Spec, judged *weigh.Judgement, build *weigh.Build) ([]Fault, error) {
	if build.Straight() {
		return []Fault{{Axis: ratio.Aroma, Odds: 1, Deviation: leastDeviation, Text: wording.Straight}}, nil
	}
	usual := faultsOf(s, judged, j.within(s, judged), build)
	if slices.ContainsFunc(usual, func(f Fault) bool { return f.Axis == ratio.Temperature }) {
		return usual, nil
	}
	if out, err := j.inPlaceOf(s, judged, build, usual); err != nil || len(out) > 0 {
		return out, err
	}
	p, err := j.misplaced(s, judged, build, usual)
	if err != nil || p == nil {
		return usual, err
	}
	return append([]Fault{misplacedFault(s, p)}, curdledBy(s, p, judged)...), nil
}

// misplaced returns the ingredient that alone takes a draft away from drinks that are known, nil if
// none does: without it the draft is balanced. Unless the draft is called after a drink that has no
// such thing, it may as well be meant where another amount of one pour, or another way to make the
// drink, balances it; if it is so called, where such an amount does so with room.
func (j *Judge) misplaced(s *flavor.Spec, judged *weigh.Judgement, build *weigh.Build, usual []Fault) (*flavor.Profile, error) {
	for _, x := range build.Misplaced() {
		p := x.Profile
		called, has := build.Forgotten().Called(p)
		if has || !called && x.Alike < surelyAlike || ownBeyond(judged, p) && !turned(judged) {
			continue
		}
		rest := apply(s, without(s, func(o *flavor.Profile) bool { return o == p }))
		if _, ok, err := j.reaches(&rest, surely); err != nil || !ok {
			continue // or nothing of it can be weighed
		}
		others := usual
		if called { // that it is not shaken for what does not belong in it says nothing
			others = slices.DeleteFunc(slices.Clone(usual), func(f Fault) bool { return f.Method == technique.Unshaken && f.Profile == p })
		}
		least := weigh.BalancedFrom
		if called {
			least = asSure
		}
		if !j.amends(s, judged, build, others, least) {
			return p, nil
		}
	}
	return nil, nil
}

// ownBeyond reports whether it is told of an ingredient how much of it the drinks have that pour it.
func ownBeyond(j *weigh.Judgement, p *flavor.Profile) bool {
	return slices.ContainsFunc(j.Beyond, func(x weigh.Beyond) bool { return x.Profile == p && x.Own && x.Edges >= 1 && !x.Strange })
}

// amends reports whether another way to make the drink balances a draft with everything left in it,
// or another amount of one pour that the faults name brings it to a score of least.
func (j *Judge) amends(s *flavor.Spec, judged *weigh.Judgement, build *weigh.Build, faults []Fault, least float64) bool {
	f := fixing{judge: j, spec: s, base: judged.Score, faults: faults, build: build, ml: build.Amounts(), free: s.AlcoholFree()}
	f.byMethod()
	f.byFaults()
	return slices.ContainsFunc(f.found, func(c candidate) bool {
		return c.balanced() && (len(c.changes) == 0 || c.score >= least) && !slices.ContainsFunc(c.changes, func(x Change) bool { return x.ToML == 0 })
	})
}

// curdledBy lists the faults that an ingredient curdles milk, or is what curdles.
func curdledBy(s *flavor.Spec, p *flavor.Profile, j *weigh.Judgement) []Fault {
	return slices.DeleteFunc(methodFaults(s, j), func(f Fault) bool {
		return f.Method != technique.Curdled || f.with != p && f.Profile != p
	})
}

// turned reports whether milk or cream curdles in a draft.
func turned(j *weigh.Judgement) bool {
	return slices.ContainsFunc(j.Method, func(x technique.Misstep) bool { return x.Flaw == technique.Curdled })
}

// misplacedFault says that an ingredient is out of place.
func misplacedFault(s *flavor.Spec, p *flavor.Profile) Fault {
	const touch = 0.04 // of a drink; judged
	ml, _ := makeup.SameBottle(s, indexOf(s, p))
	x := weigh.Beyond{Profile: p, Strange: true, Foreign: true, Amount: ml / s.VolumeML(), Usual: touch / 2, Most: touch, Edges: 1}
	f := Fault{Axis: x.Axis(), High: true, Odds: 1, Profile: p, Beyond: true, strange: true, foreign: true}
	f.Deviation = math.Max(leastDeviation, JND(f.Axis, math.Log(math.Max(x.Amount, touch)/touch)))
	f.Text = beyondText(s, &x)
	f.mostML, f.usualML = mostML(ml, &x), atShare(ml, &x, x.Usual)
	return f
}

// inPlaceOf lists the faults of a draft that is, but for one pour in the place of another, a proven
// drink by whose name it is called; none if it is no such draft, or if less of a change balances it.
func (j *Judge) inPlaceOf(s *flavor.Spec, judged *weigh.Judgement, build *weigh.Build, usual []Fault) ([]Fault, error) {
	if build.Known() {
		return nil, nil
	}
	for _, x := range build.Forgotten().Exchanges() {
		for _, changes := range exchanged(s, &x) {
			spec := apply(s, changes)
			if _, ok, err := j.reaches(&spec, surely); err != nil {
				return nil, err
			} else if !ok {
				continue
			}
			if j.amends(s, judged, build, usual, weigh.BalancedFrom) {
				return nil, nil
			}
			lack := Fault{Axis: axisFor(x.In.Profile), Odds: 1, Deviation: leastDeviation, missing: true, beside: true}
			lack.Text = wording.Missing(x.In.Profile.Name)
			out := append([]Fault{misplacedFault(s, x.Out)}, curdledBy(s, x.Out, judged)...)
			return append(out, lack), nil
		}
	}
	return nil, nil
}

// exchanged returns the changes that pour what a proven drink has in the place of what it has not,
// as much as that drink pours, or a little less or more.
func exchanged(s *flavor.Spec, x *forgotten.Exchange) [][]Change {
	jigger := flavor.Ounce
	if measure.SystemOf(s) == measure.Metric {
		jigger = flavor.Millilitre
	}
	u, ok := x.In.Profile.UsualUnit(jigger)
	if !ok {
		return nil
	}
	per, ok := measure.MLPerUnit(u, x.In.Profile)
	if !ok {
		return nil
	}
	var out [][]Change
	for _, times := range []float64{1, 0.75, 1.3} {
		if amount := measure.Snap(x.In.ML*times, u, x.In.Profile); amount > 0 {
			out = append(out, append(without(s, func(o *flavor.Profile) bool { return o == x.Out }),
				Change{Pour: len(s.Pours), Profile: x.In.Profile, Unit: u, To: amount, ToML: amount * per}))
		}
	}
	return out
}

// byExchange pours what the drink that the draft is called after has in the place of what is
// strange.
func (f *fixing) byExchange() {
	if !f.strange() {
		return
	}
	for _, x := range f.build.Forgotten().Exchanges() {
		if x.Out != f.faults[0].Profile {
			continue
		}
		for k, changes := range exchanged(f.spec, &x) {
			f.keep(candidate{changes: changes, asked: 0, steps: k + 1, sure: true, score: f.scoreWith(changes, weigh.BalancedFrom)})
		}
	}
}
