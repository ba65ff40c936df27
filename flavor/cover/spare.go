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

// mayDo reports whether the drink may do without removed m, where nothing stands for it:
// what only seasons it, or makes it soft.
func (t *task) mayDo(m int) bool {
	p := t.gap.Gone[m].Profile.Class.Part()
	return p == flavor.PartSeasoning || p == flavor.PartTexture
}

// stoodFor reports whether some candidate may stand for removed m: it is of its kin, or the
// trade pours it.
func (t *task) stoodFor(m int) bool {
	was := t.gap.Gone[m].Profile
	if slices.ContainsFunc(t.cands, func(c candidate) bool { return c.Profile.Class.Kin() == was.Class.Kin() }) {
		return true
	}
	return slices.ContainsFunc(t.gap.CustomsFor(was), func(x flavor.Custom) bool {
		_, all := t.placesOf(x.Parts)
		return all
	})
}

// spare returns what of several things that went the drink may do without: what nothing
// stands for or, with all, whatever stands for it. It is none if all of them are so.
func (t *task) spare(all bool) (out []*flavor.Profile) {
	for m := range t.gap.Gone {
		if t.mayDo(m) && (all || !t.stoodFor(m)) {
			out = append(out, t.gap.Gone[m].Profile)
		}
	}
	if len(out) == len(t.gap.Gone) {
		return nil
	}
	return out
}

// findSparing adds the covers of the rest of what went, in the drink without what it can
// spare; none if it is no drink in balance without.
func (t *task) findSparing(ctx context.Context, spared []*flavor.Profile, to *Result) error {
	r := *t.req
	s := t.req.Spec.Clone()
	s.Pours = nil
	w := &whole{task: t, spared: spared}
	for i := range t.req.Spec.Pours {
		if p := t.req.Spec.Pours[i]; !slices.Contains(spared, p.Profile) {
			s.Pours, w.at = append(s.Pours, p), append(w.at, i)
		}
	}
	if s.Method.Shaken() {
		s.Method = flavor.Shake // what wanted to be shaken dry is gone
	}
	r.Spec, r.Missing = &s, nil
	for m := range t.gap.Gone {
		if p := t.gap.Gone[m].Profile; !slices.Contains(spared, p) {
			r.Missing = append(r.Missing, p)
		}
	}
	rest, err := t.finder.newTask(&r, t.gap.Asked.Labels)
	if err != nil || !t.gap.Less && rest.scoreBefore < t.leastScore() {
		return err
	}
	defer rest.done()
	if err := rest.addCandidates(); err != nil {
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
