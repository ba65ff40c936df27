package riff

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/data/bartest"
	"counterpour/flavor"
	"counterpour/flavor/riff/station"
	"counterpour/flavor/weigh"
)

// long is what lengthens a drink, strong what it is poured on.
func lengthOf(s *flavor.Spec) (long, strong float64) {
	return s.MLOf(func(p *flavor.Profile) bool { return p.Class.Part() == flavor.PartLength }),
		s.MLOf((*flavor.Profile).Base)
}

var longDrinks = []string{
	"2 oz gin\n5 oz tonic water\nbuild, long",
	"2 oz blended Scotch\n4 oz soda water\nbuild, long",
	"2 oz vodka\n1/2 oz lime juice\n5 oz ginger beer\nbuild, long",
	"2 oz gin\n1 oz lemon juice\n3/4 oz simple syrup\n4 oz soda water\nshake, long",
	"60 ml aged rum\n10 ml lime juice\n150 ml cola\nbuild, long",
}

// A long drink that is made shorter has much less of what lengthens it, at least three tenths, and
// no short measure of its spirit. First of all it is the drink itself. Common practice, no source.
func TestAShorterDrinkHasLessLengthAndAFullMeasure(t *testing.T) {
	const cut, splits = 0.3, 0.75 // of the length; of the spirit, where another one is stronger
	b := bartest.New(t)
	for _, text := range longDrinks {
		from, res := wishing(t, b, text, "shorter")
		require.NotEmpty(t, res.Riffs, text)
		long, strong := lengthOf(from)
		first := &res.Riffs[0]
		assert.True(t, ofItsOwn(&first.Spec, from), first.Text)
		for i := range res.Riffs {
			r := &res.Riffs[i]
			isLong, isStrong := lengthOf(&r.Spec)
			assert.LessOrEqual(t, isLong, (1-cut)*long+bartest.Rounding, r.Text)
			assert.GreaterOrEqual(t, isStrong, splits*strong, r.Text)
			assert.GreaterOrEqual(t, r.Score, weigh.BalancedFrom, r.Text)
			if ofItsOwn(&r.Spec, from) {
				assert.GreaterOrEqual(t, isStrong, strong-bartest.Rounding, r.Text)
			}
		}
	}
}

// A long drink that is made longer keeps what lengthens it, has more on top that holds no
// alcohol, and no more spirit. Common practice, no source.
func TestALongerDrinkKeepsItsLength(t *testing.T) {
	b := bartest.New(t)
	for _, text := range longDrinks {
		from, res := wishing(t, b, text, "longer")
		require.NotEmpty(t, res.Riffs, text)
		long, strong := lengthOf(from)
		for i := range res.Riffs {
			r := &res.Riffs[i]
			isLong, isStrong := lengthOf(&r.Spec)
			assert.GreaterOrEqual(t, isLong, 1.15*long-bartest.Rounding, r.Text)
			if ofItsOwn(&r.Spec, from) {
				assert.LessOrEqual(t, isStrong, strong+bartest.Rounding, r.Text)
			}
			for _, p := range r.Spec.Pours {
				came := p.Profile.Class.Part() == flavor.PartLength && !from.HasProfile(p.Profile)
				assert.False(t, came && p.Profile.ABV.Value > flavor.NoAlcoholABV, r.Text)
			}
			for _, p := range from.Pours {
				if station.Lengthens(&p) {
					assert.GreaterOrEqual(t, r.Spec.MLOf(p.Profile.Is), p.ML-bartest.Rounding, r.Text)
				}
			}
		}
	}
}

// What makes a drink longer is the soda that does not sweeten, else the largest that lengthens.
func TestWhatADrinkIsLengthenedBy(t *testing.T) {
	b := bartest.New(t)
	for _, c := range []struct {
		text, by string
	}{
		{"2 oz gin\n2 oz tonic water\n1 1/2 oz soda water\nbuild, long", "soda-water"},
		{"2 oz gin\n5 oz tonic water\nbuild, long", "tonic-water"},
		{"2 oz vodka\n3 oz cranberry juice\n1 1/2 oz grapefruit juice\nbuild, long", "cranberry-juice"},
		{"2 oz gin\n3/4 oz lemon juice\n3/4 oz simple syrup\nshake, up", ""},
		{"2 oz gin\n1 oz soda water\nbuild, rocks", ""}, // a splash
	} {
		spec := b.Spec(t, c.text)
		at := lengthenedBy(spec)
		if c.by == "" {
			assert.Negative(t, at, c.text)
			continue
		}
		require.GreaterOrEqual(t, at, 0, c.text)
		assert.Equal(t, c.by, spec.Pours[at].Profile.ID, c.text)
	}
}
