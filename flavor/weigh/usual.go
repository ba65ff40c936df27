package weigh

import (
	"strings"

	"counterpour/flavor"
)

// UsualBase returns the base that most proven drinks with the same rest are poured
// on, those nearest counting most; nil if no proven drink is near.
func (b *Build) UsualBase() *flavor.Profile {
	return mostVoted(b.set.bases, b.nearUnbased())
}

// UsualSour returns what most proven drinks with the same rest are made sour with, as
// UsualBase does.
func (b *Build) UsualSour() *flavor.Profile {
	return mostVoted(b.set.sours, b.nearUnsoured())
}

// mostVoted returns the ingredient of the greatest weight, the first by its id of
// equals; nil votes for none.
func mostVoted(of []*flavor.Profile, weights []float64) *flavor.Profile {
	votes := map[*flavor.Profile]float64{}
	var best *flavor.Profile
	for i, p := range of {
		if p == nil {
			continue
		}
		votes[p] += weights[i]
		if best == nil || votes[p] > votes[best] || votes[p] == votes[best] && strings.Compare(p.ID, best.ID) < 0 {
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
