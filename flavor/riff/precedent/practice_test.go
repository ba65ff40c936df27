package precedent

import (
	"math"
	"testing"

	"counterpour/flavor"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// The most that is poured holds for the drinks that the trade has proven, all but a
// few: a share counted on them, with room for one drink in a hundred.
func TestProvenDrinksPourNoMore(t *testing.T) {
	const rounding = 0.05 // mL
	_, book := provenBook(t)
	p := NewPractice(book)
	beyond, pours := 0, 0
	for i := range book {
		for _, x := range book[i].Spec.Pours {
			pours++
			if x.ML > p.MostML(x.Profile)+rounding {
				beyond++
			}
		}
	}
	assert.Less(t, float64(beyond)/float64(pours), 0.03, "poured beyond the most")
}

// What is strong in taste is poured by the spoon and the half ounce at most,
// what carries a drink by two and a half: common practice, no source.
func TestMostThatIsPoured(t *testing.T) {
	c, book := provenBook(t)
	p := NewPractice(book)
	for _, x := range []struct {
		id          string
		least, most float64 // mL
	}{
		{"allspice-dram", 7, 22}, {"absinthe", 5, 20}, {"creme-de-violette", 7, 30}, {"clove-tincture", 0.05, 3},
		{"aromatic-bitters", 1.6, 12}, {"orange-flower-water", 0.5, 5}, {"london-dry-gin", 58, 76}, {"bourbon", 58, 80},
		{"triple-sec", 22, 50}, {"simple-syrup", 20, 40}, {"soda-water", 100, 210}, {"lemon-juice", 22, 52},
	} {
		profile, ok := c.ByID(x.id)
		require.True(t, ok, x.id)
		got := p.MostML(profile)
		assert.GreaterOrEqual(t, got, x.least, x.id)
		assert.LessOrEqual(t, got, x.most, x.id)
	}
	novel := &flavor.Profile{ID: "new", Class: flavor.ClassCider}
	assert.InDelta(t, beyondMost*flavor.ClassCider.MostML(), p.MostML(novel), 1e-9, "no proven drink pours one: common practice alone")
}

// Beside a base a sweet liqueur is poured by the ounce at most, and where nothing sour or
// long answers it by no more than the base. Both are counted on the proven drinks.
func TestLiqueurBesideABase(t *testing.T) {
	const jigger = 29.6 // mL
	_, book := provenBook(t)
	p := NewPractice(book)
	assert.InDelta(t, jigger, p.MostBesideBase(), 6)
	beside, beyond, cloying := 0, 0, 0
	for i := range book {
		s := &book[i].Spec
		if Cloying(s) {
			cloying++
		}
		for _, x := range s.Pours {
			if SweetBesideBase(s, x.Profile) {
				beside++
				if x.ML > p.MostBesideBase() {
					beyond++
				}
			}
		}
	}
	require.Greater(t, beside, 100)
	assert.Less(t, float64(beyond)/float64(beside), 0.05)
	assert.Less(t, float64(cloying)/float64(len(book)), 0.01)
	assert.True(t, math.IsInf(NewPractice(nil).MostBesideBase(), 1), "nothing is known without proven drinks")
}
