package mix

import (
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
