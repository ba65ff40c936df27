package station

import (
	"slices"

	"counterpour/flavor"
	"counterpour/flavor/riff/aim"
)

// since holds a settled drink against another.
func (j *Job) since(from aim.Mixed, s *Settled) *aim.Comparison {
	return &aim.Comparison{Space: j.Station.Space, From: from, To: aim.Mixed{Spec: &s.Spec, Drink: s.Drink, Glass: s.Glass}}
}

// meets reports whether a finished drink meets every wish.
func (j *Job) meets(s *Settled) bool {
	if !j.Limits.PoursAsked(&s.Spec) {
		return false
	}
	if j.From == nil {
		return true
	}
	return j.Limits.Smaller(&s.Spec, j.From) && j.Limits.AsMild(s.Drink, j.wished.Drink) && j.since(j.wished, s).AsMeant(j.Limits.Aims) && s.short == 0
}

// CheckWishes fails with a fault if a wish names what is not on the shelf.
func (j *Job) CheckWishes() error {
	return j.Limits.Check(j.From, func(id string) bool { at, ok := j.byID[id]; return ok && at >= 0 })
}

// Carries reports whether a wish for more is met with an ingredient, by the table of
// what a bartender meets it with.
func (j *Job) Carries(p *flavor.Profile) bool {
	return slices.ContainsFunc(j.Limits.Aims, func(a aim.Aim) bool { return a.Carries(p) })
}

// Toward says how much nearer to the wishes an ingredient leads than what it
// takes the place of, which may be nil.
func (j *Job) Toward(it *Item, old *flavor.Profile) (sum float64) {
	for i := range j.Limits.Aims {
		sum += j.Limits.Aims[i].Leads(j.Station.Space, it.Profile, old)
	}
	if j.Limits.Wants(it.Profile) {
		sum++
	}
	return sum
}

// Tastes reports whether a wish for more of a taste or a smell leads to an ingredient; one
// for a longer drink asks for no taste.
func (j *Job) Tastes(p *flavor.Profile) bool {
	return slices.ContainsFunc(j.Limits.Aims, func(a aim.Aim) bool { return a.Tastes(j.Station.Space, p) })
}

// Serves reports whether an ingredient that comes in serves a wish for more or less; true if
// there are no such wishes.
func (j *Job) Serves(p *flavor.Profile) bool {
	return len(j.Limits.Aims) == 0 || slices.ContainsFunc(j.Limits.Aims, func(a aim.Aim) bool { return a.Serves(j.Station.Space, p) })
}

// heightened reports whether an ingredient of the drink asked about seasons it and is what a
// bartender meets a wish for more with: then more of it is poured than usual.
func (j *Job) heightened(p *flavor.Profile) bool {
	return j.From != nil && p.Class.Part() == flavor.PartSeasoning && j.From.HasProfile(p) && j.Carries(p)
}

// Brings reports whether an ingredient brings much of what there should be less of, in taste
// or smell.
func (j *Job) Brings(p *flavor.Profile) bool {
	return slices.ContainsFunc(j.Limits.Aims, func(a aim.Aim) bool { return a.Brings(j.Station.Space, p) })
}

// Lessens reports whether an ingredient of the drink asked about brings what there should
// be less of: no more of it is poured then.
func (j *Job) Lessens(p *flavor.Profile) bool {
	return j.From != nil && j.From.HasProfile(p) && slices.ContainsFunc(j.Limits.Aims, func(a aim.Aim) bool { return a.BringsTaste(j.Station.Space, p) })
}
