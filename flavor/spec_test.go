package flavor

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestWhatADrinkHolds(t *testing.T) {
	s := Spec{Pours: []Pour{{Profile: &Profile{Class: ClassAlcoholFree}}, {Profile: &Profile{Class: ClassSourJuice}}}}
	assert.True(t, s.HasPart(PartBase), "what stands for a spirit is a base")
	assert.True(t, s.HasPart(PartSour))
	assert.False(t, s.HasPart(PartSweetener))
	assert.True(t, s.HasKin(KinSourJuice))
	assert.False(t, s.HasKin(KinSharp), "another kin of the same part")
	assert.True(t, s.HasClass(ClassSourJuice))
	assert.False(t, s.HasClass(ClassJuice))
	assert.True(t, s.Has((*Profile).Base))
	assert.False(t, Spec{}.Has(func(*Profile) bool { return true }), "a drink of nothing")
}
