package mix

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"

	"counterpour/flavor"
)

// Hot drinks as bars pour them, and where they end; common practice, no source. A
// guest calls a drink hot from some 55 °C on and tepid below 45 °C.
func TestHotDrinkTemperatures(t *testing.T) {
	spirit := pour(made(t, 40, 0, 0), 60)
	syrup := pour(made(t, 0, 620, 0), 15)
	of := func(c flavor.Class, ml float64, h flavor.Heat) flavor.Pour {
		p := pour(made(t, 0, 0, 0), ml)
		p.Profile.Class, p.Heat = c, h
		return p
	}
	for _, c := range []struct {
		what        string
		pours       []flavor.Pour
		least, most float64
	}{
		{"a toddy, nothing said", []flavor.Pour{spirit, syrup, of(flavor.ClassWater, 120, "")}, 62, 75},
		{"with hot water", []flavor.Pour{spirit, syrup, of(flavor.ClassWater, 120, flavor.HeatHot)}, 62, 75},
		{"with cold water", []flavor.Pour{spirit, syrup, of(flavor.ClassWater, 120, flavor.HeatCold)}, 4, 20},
		{"coffee", []flavor.Pour{spirit, of(flavor.ClassCoffee, 120, "")}, 60, 70},
		{"cold coffee", []flavor.Pour{spirit, of(flavor.ClassCoffee, 120, flavor.HeatCold)}, 4, 20},
		{"an ounce of hot water", []flavor.Pour{spirit, syrup, of(flavor.ClassWater, 30, flavor.HeatHot)}, 35, 48},
		{"milk", []flavor.Pour{spirit, syrup, of(flavor.ClassDairy, 120, "")}, 52, 65},
		{"wine heated as a whole", []flavor.Pour{pour(made(t, 13, 2, 6), 150), syrup}, usualHotC, usualHotC},
	} {
		s := &flavor.Spec{Method: flavor.Build, Service: flavor.Hot, Pours: c.pours}
		got := HotC(s, nil)
		assert.GreaterOrEqual(t, got, c.least-1e-9, c.what)
		assert.LessOrEqual(t, got, c.most+1e-9, c.what)
		d, err := mixer(t).Mix(s)
		assert.NoError(t, err)
		assert.InDelta(t, got, d.TemperatureC, 1e-9, "%s: the drink is served so", c.what)
	}
}

// What a hundredth of a pour moves, °C: a hundredth of the 50 or so that lie between a drink
// that is heated as a whole and one that is hot by a shot of coffee, over the logarithm of
// how much more a shot is than a flavour.
const mostWarmed = 0.5

// However much of it there is, a little more of what heats a drink hardly moves where it ends.
func TestWhatHeatsIsNoCliff(t *testing.T) {
	spirit := pour(made(t, 40, 0, 0), 60)
	for _, c := range []flavor.Class{flavor.ClassCoffee, flavor.ClassTea, flavor.ClassWater, flavor.ClassDairy} {
		for _, others := range [][]flavor.Pour{{spirit}, {spirit, pour(heaterOf(t, flavor.ClassCoffee), 40)}, {spirit, pour(heaterOf(t, flavor.ClassDairy), 40)}} {
			s := &flavor.Spec{Method: flavor.Shake, Service: flavor.Hot, Pours: append(slices.Clone(others), pour(heaterOf(t, c), 1))}
			last := len(s.Pours) - 1
			ml := make([]float64, len(s.Pours))
			for i := range ml {
				ml[i] = s.Pours[i].ML
			}
			served, mixed := HotC(s, ml), MixedC(s, ml)
			for ml[last] < 150 {
				ml[last] *= 1.01
				assert.InDelta(t, served, HotC(s, ml), mostWarmed, "%s, %v mL", c, ml[last])
				assert.InDelta(t, mixed, MixedC(s, ml), mostWarmed, "%s, %v mL, before ice", c, ml[last])
				served, mixed = HotC(s, ml), MixedC(s, ml)
			}
			if len(others) == 1 {
				assert.Greater(t, served, 50.0, "%s: it heats the drink in the end", c)
			}
		}
	}
}

// heaterOf is an ingredient of a class that the trade heats.
func heaterOf(t *testing.T, c flavor.Class) *flavor.Profile {
	p := made(t, 0, 0, 0)
	p.Class = c
	return p
}
