package forgotten

import (
	"cmp"
	"strings"

	"counterpour/flavor"
)

// UsualBase returns the base of the proven drinks that the draft is called after or, if it is
// called after none, that most with the same rest are poured on, those nearest counting most;
// nil if no proven drink is near. If that has alcohol and
// the draft has none, it is the one of sober, bases without, that smells most like it, nil if
// there is none.
func (d *Draft) UsualBase(sober []*flavor.Profile) *flavor.Profile {
	p := cmp.Or(d.namedBase(), mostVoted(d.book.bases, d.nearUnbased()))
	if p == nil || d.allows(p) {
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
func (d *Draft) UsualLength() *flavor.Profile {
	if p := mostVoted(d.book.lengths, d.nearUnlengthened()); p != nil && d.allows(p) {
		return p
	}
	return nil
}

// UsualSour returns what most proven drinks with the same rest are made sour with, as
// UsualBase does.
func (d *Draft) UsualSour() *flavor.Profile {
	return mostVoted(d.book.sours, d.nearUnsoured())
}

// mostVoted takes the class with the greatest weight, and returns the ingredient with the greatest
// weight in it: where some pour rye and some bourbon, a whiskey is missing. Equals go by class
// and id; nil votes for none.
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
