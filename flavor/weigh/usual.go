package weigh

import (
	"cmp"
	"math"
	"slices"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/habit"
	"counterpour/flavor/makeup"
)

// UsualBase returns the base that most proven drinks with the same rest are poured
// on, those nearest counting most; nil if no proven drink is near. If that has alcohol and
// the draft has none, it is the one of sober, bases without, that smells most like it, nil if
// there is none.
func (b *Build) UsualBase(sober []*flavor.Profile) *flavor.Profile {
	p := mostVoted(b.set.bases, b.nearUnbased())
	if p == nil || b.allows(p) {
		return p
	}
	var best *flavor.Profile
	nearest := 0.0
	for _, o := range sober {
		if x := p.Aroma.Cosine(o.Aroma); best == nil || x > nearest || x == nearest && o.ID < best.ID {
			best, nearest = o, x
		}
	}
	return best
}

// UsualLength returns what most proven drinks with the same rest, served alike, are lengthened
// with, as UsualBase does.
func (b *Build) UsualLength() *flavor.Profile {
	if p := mostVoted(b.set.lengths, b.nearUnlengthened()); p != nil && b.allows(p) {
		return p
	}
	return nil
}

// UsualSour returns what most proven drinks with the same rest are made sour with, as
// UsualBase does.
func (b *Build) UsualSour() *flavor.Profile {
	return mostVoted(b.set.sours, b.nearUnsoured())
}

// UsualPour returns how many mL of the ingredient of a pour are in the middle of good
// drinks, beside the rest of the drink with other amounts. How much that is depends on
// whether the drink is made of it, which is told by the answer.
func (b *Build) UsualPour(pour int, ml []float64) float64 {
	i := slices.IndexFunc(b.parts, func(p makeup.Part) bool { return slices.Contains(p.Pours, pour) })
	b.habit()
	at := slices.Clone(ml)
	for range usualRounds {
		size := b.sizeOf(at)
		share := size.share(&b.parts[i], at)
		r := b.reachOf(i, b.leading(i, at, b.largest(at), &size))
		rest := b.parts[i].Amount(at) / habit.Dose(share)
		at[pour] = max(0, at[pour]+rest*habit.Dose(math.Exp(r.Usual))-b.parts[i].Amount(at))
	}
	return at[pour]
}

// usualRounds is how often what is usual is asked anew, with what was.
const usualRounds = 3

// mostVoted returns the ingredient of the greatest weight, of the class of the greatest
// weight: where some pour rye and some bourbon, what is missing is a whiskey. Of equals it is
// the first by its class and id; nil votes for none.
func mostVoted(of []*flavor.Profile, weights []float64) *flavor.Profile {
	votes, classes := map[*flavor.Profile]float64{}, map[flavor.Class]float64{}
	for i, p := range of {
		if p != nil {
			say := weights[i] * weights[i] // few drinks have the very rest, and should be heard before many that resemble it
			votes[p] += say
			classes[p.Class] += say
		}
	}
	var best *flavor.Profile
	for p := range votes {
		if best == nil || cmp.Or(cmp.Compare(classes[p.Class], classes[best.Class]), strings.Compare(string(best.Class), string(p.Class)),
			cmp.Compare(votes[p], votes[best]), strings.Compare(best.ID, p.ID)) > 0 {
			best = p
		}
	}
	return best
}

// largestOf returns the largest ingredient of a part in a spec, nil if it has none.
func largestOf(s *flavor.Spec, part flavor.Part) *flavor.Profile {
	var best *flavor.Profile
	var most float64
	for i := range s.Pours {
		if p := &s.Pours[i]; p.Profile.Class.Part() == part && p.ML > most {
			best, most = p.Profile, p.ML
		}
	}
	return best
}
