package cover

import (
	"context"
	"slices"

	"counterpour/flavor"
)

// whole is a drink that a task looks at a part of: what is left of it once it is poured
// without what it can spare.
type whole struct {
	*task
	spared []*flavor.Profile
	at     []int // by pour of the part, its place in the whole
}

// findSparing adds the covers of the rest of what went, in the drink without what it can
// spare; none if it is no drink in balance without.
func (t *task) findSparing(ctx context.Context, spared []*flavor.Profile, to *Result) error {
	r := *t.Req
	s := t.Req.Spec.Clone()
	s.Pours = nil
	w := &whole{task: t, spared: spared}
	for i := range t.Req.Spec.Pours {
		if p := t.Req.Spec.Pours[i]; !slices.Contains(spared, p.Profile) {
			s.Pours, w.at = append(s.Pours, p), append(w.at, i)
		}
	}
	if s.Method.Shaken() {
		s.Method = flavor.Shake // what wanted to be shaken dry is gone
	}
	r.Spec, r.Missing = &s, nil
	for m := range t.Gap.Gone {
		if p := t.Gap.Gone[m].Profile; !slices.Contains(spared, p) {
			r.Missing = append(r.Missing, p)
		}
	}
	rest, err := t.finder.newTask(&r, t.Gap.Asked.Labels)
	if err != nil || !t.Gap.Less && rest.ScoreBefore < t.LeastScore() {
		return err
	}
	defer rest.Done()
	if err := rest.AddCandidates(); err != nil {
		return err
	}
	rest.whole = w
	return rest.find(ctx, to)
}

// order returns the task of the whole drink that was ordered, and what it is poured without.
func (t *task) order() (*task, []*flavor.Profile) {
	if t.whole == nil {
		return t, nil
	}
	return t.whole.task, t.whole.spared
}

// placeInOrder is where pour i stands in the drink that was ordered.
func (t *task) placeInOrder(i int) int {
	if t.whole == nil {
		return i
	}
	return t.whole.at[i]
}
