package template

import (
	"strings"

	"counterpour/flavor"
)

// UsualBase returns the base that most proven drinks made like this one are poured
// on, those nearest in make-up counting most; nil if no proven drink is near.
func (b *Build) UsualBase() *flavor.Profile {
	near := b.habit().near
	votes := map[*flavor.Profile]float64{}
	var best *flavor.Profile
	for i := range near {
		p := b.set.bases[i]
		if p == nil {
			continue
		}
		votes[p] += near[i] * near[i]
		if best == nil || votes[p] > votes[best] || votes[p] == votes[best] && strings.Compare(p.ID, best.ID) < 0 {
			best = p
		}
	}
	return best
}

// baseOf returns the largest base of a spec, nil if it has none.
func baseOf(s *flavor.Spec) *flavor.Profile {
	var best *flavor.Profile
	var most float64
	for i := range s.Pours {
		if p := &s.Pours[i]; p.Profile.Class.Part() == flavor.PartBase && p.ML > most {
			best, most = p.Profile, p.ML
		}
	}
	return best
}
