package balance

import (
	"slices"

	"counterpour/flavor"
	"counterpour/flavor/balance/change"
	"counterpour/flavor/balance/fault"
	"counterpour/flavor/balance/mend"
	"counterpour/flavor/ratio"
	"counterpour/flavor/technique"
	"counterpour/flavor/weigh"
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
func (j *Judge) faults(s *flavor.Spec, judged *weigh.Judgement, build *weigh.Build) ([]fault.Fault, error) {
	usual := fault.Of(s, judged, build, j.set)
	if build.Straight() || slices.ContainsFunc(usual, func(f fault.Fault) bool { return f.Axis == ratio.Temperature }) {
		return usual, nil
	}
	if out, err := j.inPlaceOf(s, judged, build, usual); err != nil || len(out) > 0 {
		return out, err
	}
	if out, err := j.lackedByName(s, judged, build, usual); err != nil || len(out) > 0 {
		return out, err
	}
	p, err := j.misplaced(s, judged, build, usual)
	if err != nil || p == nil {
		return usual, err
	}
	return append([]fault.Fault{fault.Misplaced(s, p)}, fault.Curdled(s, p, judged)...), nil
}

// misplaced returns the ingredient that alone takes a draft away from drinks that are known, nil if
// none does: without it the draft is balanced. Unless the draft is called after a drink that has no
// such thing, it may as well be meant where another amount of one pour, or another way to make the
// drink, balances it; if it is so called, where such an amount does so with room.
func (j *Judge) misplaced(s *flavor.Spec, judged *weigh.Judgement, build *weigh.Build, usual []fault.Fault) (*flavor.Profile, error) {
	candidates := build.Misplaced()
	if odd := build.OddByName(); odd != nil && !slices.ContainsFunc(candidates, func(x weigh.Misplaced) bool { return x.Profile == odd }) {
		candidates = append(candidates, weigh.Misplaced{Profile: odd, Alike: 1})
	}
	for _, x := range candidates {
		p := x.Profile
		called, has := build.Forgotten().Called(p)
		if has || !called && x.Alike < surelyAlike || ownBeyond(judged, p) && !turned(judged) {
			continue
		}
		rest := change.Apply(s, change.Without(s, func(o *flavor.Profile) bool { return o == p }))
		if _, ok, err := j.set.Reaches(&rest, surely); err != nil || !ok {
			continue // or nothing of it can be weighed
		}
		others := usual
		if called { // that it is not shaken for what does not belong in it says nothing
			others = slices.DeleteFunc(slices.Clone(usual), func(f fault.Fault) bool { return f.Method == technique.Unshaken && f.Profile == p })
		}
		least := weigh.BalancedFrom
		if called {
			least = mend.Surely
		}
		if !j.bench.Amends(&mend.Draft{Spec: s, Score: judged.Score, Faults: others, Build: build}, least) {
			return p, nil
		}
	}
	return nil, nil
}

// ownBeyond reports whether it is told of an ingredient how much of it the drinks have that pour it.
func ownBeyond(j *weigh.Judgement, p *flavor.Profile) bool {
	return slices.ContainsFunc(j.Beyond, func(x weigh.Beyond) bool { return x.Profile == p && x.Own && x.Edges >= 1 && !x.Strange })
}

// turned reports whether milk or cream curdles in a draft.
func turned(j *weigh.Judgement) bool {
	return slices.ContainsFunc(j.Method, func(x technique.Misstep) bool { return x.Flaw == technique.Curdled })
}

// inPlaceOf lists the faults of a draft that is, but for one pour in the place of another, a proven
// drink by whose name it is called; none if it is no such draft, or if less of a change balances it.
func (j *Judge) inPlaceOf(s *flavor.Spec, judged *weigh.Judgement, build *weigh.Build, usual []fault.Fault) ([]fault.Fault, error) {
	if build.Known() {
		return nil, nil
	}
	for _, x := range build.Forgotten().Exchanges() {
		for _, changes := range mend.Exchanged(s, &x) {
			spec := change.Apply(s, changes)
			if _, ok, err := j.set.Reaches(&spec, surely); err != nil {
				return nil, err
			} else if !ok {
				continue
			}
			if j.bench.Amends(&mend.Draft{Spec: s, Score: judged.Score, Faults: usual, Build: build}, weigh.BalancedFrom) {
				return nil, nil
			}
			out := append([]fault.Fault{fault.Misplaced(s, x.Out)}, fault.Curdled(s, x.Out, judged)...)
			return append(out, fault.Instead(x.In.Profile)), nil
		}
	}
	return nil, nil
}

// lackedByName lists what a draft lacks to be the proven drink by whose name it is called, if it is that
// but for one pour, and balanced with it: another amount of the rest makes another drink of it. Where more is
// wrong, that is told beside it. What is made the wrong way is told that first.
func (j *Judge) lackedByName(s *flavor.Spec, judged *weigh.Judgement, build *weigh.Build, usual []fault.Fault) ([]fault.Fault, error) {
	lacking := build.Forgotten().Lacking()
	if len(judged.Method) > 0 || len(lacking) == 0 {
		return nil, nil
	}
	for _, x := range lacking {
		for _, changes := range mend.Exchanged(s, &x) {
			spec := change.Apply(s, changes)
			if _, ok, err := j.set.Reaches(&spec, surely); err != nil {
				return nil, err
			} else if ok {
				return []fault.Fault{fault.Instead(x.In.Profile)}, nil
			}
		}
	}
	if build.Incomplete() < 1 {
		return nil, nil
	}
	amiss := slices.DeleteFunc(slices.Clone(usual), func(f fault.Fault) bool { return f.Profile == nil })
	return append([]fault.Fault{fault.Instead(lacking[0].In.Profile)}, amiss[:min(len(amiss), fault.MaxFaults-1)]...), nil
}
