package station

import (
	"slices"

	"counterpour/flavor/riff/precedent"
	"counterpour/flavor/weigh"
)

// leastPlain is the score from which the plain way to a wish is told although it is not
// in balance: below it nobody would pour it. Common practice, no source.
const leastPlain = 50.0

// plain reports whether a drink is the one that wishes are held against in other amounts,
// or without something: what a bartender tries first.
func (j *Job) plain(s *Settled) bool {
	if !j.saysWhat() || s.Spec.Method != j.wished.Spec.Method || s.Spec.Service != j.wished.Spec.Service {
		return false
	}
	for i := range s.Spec.Pours {
		if !j.wished.Spec.HasProfile(s.Spec.Pours[i].Profile) {
			return false
		}
	}
	return true
}

// saysWhat reports whether a wish says what to change: more or less of something, or less
// strength by whichever words, of which that the guest drinks no alcohol is one.
func (j *Job) saysWhat() bool {
	dry := j.From != nil && j.Limits.Guest.NoAlcohol && j.From.Has(precedent.Carries)
	return len(j.Limits.Aims) > 0 || j.Limits.Lighter() || dry
}

// losesSpirit reports whether the drink asked about holds alcohol and its guest drinks none.
func (j *Job) losesSpirit() bool {
	return j.From != nil && j.Limits.Guest.NoAlcohol && j.From.Has(precedent.Carries)
}

// Miss says what a drink that is told beside a list lacks to be in it.
type Miss string

// What such a drink lacks.
const (
	MissesBalance Miss = "balance" // it meets the wishes, and its score is below what counts as balanced
	MissesWish    Miss = "wish"    // it is balanced, and falls short of a wish
	MissesSpirit  Miss = "spirit"  // it is a soft drink, which a score holds against drinks with alcohol
	MissesNothing Miss = "nothing" // it is hardly another drink: the wish is met without a riff
)

// NearestMiss returns what comes nearest to the wishes of the drinks that are not in a
// list: the plain way to them, where none in the list is plain, and if the list is empty,
// any other way, or else what falls short of them least. So it is without wishes where a guest who
// drinks no alcohol asks for a drink that holds some. A plain way that is balanced and
// hardly another drink says that the wish is met already. It is nil if there are no wishes,
// or nothing comes near.
func (j *Job) NearestMiss(pool, near []*Settled) (*Settled, Miss) {
	if !j.saysWhat() && !j.losesSpirit() {
		return nil, ""
	}
	listed := slices.ContainsFunc(pool, func(s *Settled) bool { return s.plain })
	var plain, met, short *Settled
	for _, s := range near {
		switch {
		case s.Score < leastPlain && !s.soft || !j.Fits(s) || !j.Limits.Keeps(&s.Spec, s.Drink) || j.lopsided(&s.Spec):
		case !j.meets(s):
			if s.Score >= weigh.BalancedFrom && (short == nil || s.short < short.short) {
				short = s
			}
		case s.plain && (plain == nil || s.Score > plain.Score):
			plain = s
		case !s.plain && (met == nil || s.better(met)):
			met = s
		}
	}
	switch {
	case listed && (plain == nil || !j.hardlyAnother(plain)):
		return nil, ""
	case plain != nil:
		return plain, missOf(plain)
	case len(pool) > 0:
		return nil, ""
	case met != nil:
		return met, missOf(met)
	case short != nil:
		return short, MissesWish
	}
	return nil, ""
}

// better reports whether a drink is told rather than another, neither of which is in balance: the
// one that scores more, but of soft drinks, which the score holds against drinks with alcohol, the
// one that keeps the rest of the drink, and that the trade would pour.
func (s *Settled) better(than *Settled) bool {
	if s.soft && than.soft && s.nearest != than.nearest {
		return s.nearest
	}
	if s.soft && than.soft && s.custom != than.custom {
		return s.custom > than.custom
	}
	return s.Score > than.Score
}

// hardlyAnother reports whether a drink is about the one asked about, which then meets the wishes
// as it is.
func (j *Job) hardlyAnother(s *Settled) bool {
	return j.From != nil && Apart(s.Glass, j.FromGlass) < j.LeastApart()
}

// missOf is what a drink lacks that meets every wish and limit.
func missOf(s *Settled) Miss {
	switch {
	case s.Score >= weigh.BalancedFrom:
		return MissesNothing
	case s.soft:
		return MissesSpirit
	}
	return MissesBalance
}
