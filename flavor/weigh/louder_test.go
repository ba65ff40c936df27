package weigh_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"counterpour/flavor"
	"counterpour/flavor/weigh"
)

// More of what is too much is no better: once a pour beside what a drink is made of takes it
// out of balance, the score does not rise again for pouring still more of it. Where a drink
// turns into one of another kind on the way, as a dry stirred drink does into a wetter one,
// it may.
func TestMoreOfAFaultIsNoBetter(t *testing.T) {
	const (
		atMost = 3.0  // points that it may rise, where a drink passes from one family to the next
		share  = 0.03 // of the pours, that may turn a drink into another
	)
	k := newKitchen(t)
	pours, better := 0, 0
	for i := range k.book {
		s := &k.book[i].Spec
		for at := range s.Pours {
			if !beside(s, at) {
				continue
			}
			pours++
			if k.rises(t, s, at, atMost) {
				better++
			}
		}
	}
	assert.Greater(t, pours, 300)
	assert.LessOrEqual(t, float64(better), share*float64(pours))
}

// A spice that proven drinks pour by the barspoon does not lead a drink for being poured as
// large as its base: common practice.
func TestLoudAccentsNeverLead(t *testing.T) {
	k := newKitchen(t)
	for _, accent := range []string{"allspice dram", "absinthe", "falernum"} {
		for _, ounces := range []string{"1", "1 1/2", "2 1/2"} {
			s := k.read(t, "1 1/2 oz dark rum\n1 oz lime juice\n1/2 oz simple syrup\n"+ounces+" oz "+accent+"\nshake, crushed ice")
			assert.Less(t, k.score(t, s), weigh.BalancedFrom, "%s oz %s", ounces, accent)
		}
	}
}

// rises reports whether the score, once it is out of balance, rises by more than some points
// for several times as much of one pour.
func (k *kitchen) rises(t *testing.T, s *flavor.Spec, at int, points float64) bool {
	lowest := 100.0
	for _, times := range []float64{1, 2, 3, 4, 6} {
		score := k.score(t, poured(s, at, times*s.Pours[at].ML))
		if lowest < weigh.BalancedFrom && score > lowest+points {
			t.Logf("%s: %g × %s scores %.1f, less of it %.1f", s.Name, times, s.Pours[at].Profile.Name, score, lowest)
			return true
		}
		lowest = min(lowest, score)
	}
	return false
}

// beside reports whether a pour flavours or seasons a drink that is made of something larger.
func beside(s *flavor.Spec, at int) bool {
	switch s.Pours[at].Profile.Class.Part() {
	case flavor.PartModifier, flavor.PartSeasoning, flavor.PartSweetener:
	default:
		return false
	}
	for i := range s.Pours {
		if s.Pours[i].Profile.Class.Part() == flavor.PartBase && s.Pours[i].ML > s.Pours[at].ML {
			return true
		}
	}
	return false
}

// poured is a spec with another amount of one pour.
func poured(s *flavor.Spec, at int, ml float64) *flavor.Spec {
	out := s.Clone()
	out.Pours[at].Amount *= ml / out.Pours[at].ML
	out.Pours[at].ML = ml
	return &out
}
