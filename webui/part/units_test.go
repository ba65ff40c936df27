package part_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"counterpour/flavor"
	"counterpour/flavor/measure"
	"counterpour/webui/part"
)

// An amount that no jigger has goes to the mark beside it with which the drink scores best; others stay.
func TestOnOunceMarks(t *testing.T) {
	pour := func(p *flavor.Profile, oz float64) flavor.Pour {
		return flavor.Pour{Profile: p, Amount: oz, Unit: flavor.Ounce, ML: oz * measure.OunceML}
	}
	gin, lemon, syrup := &flavor.Profile{ID: "london-dry-gin", Class: flavor.ClassGin}, &flavor.Profile{ID: "lemon-juice", Class: flavor.ClassSourJuice}, &flavor.Profile{ID: "simple-syrup", Class: flavor.ClassSyrup}
	s := &flavor.Spec{Pours: []flavor.Pour{pour(gin, 2), pour(lemon, 0.875), pour(syrup, 0.375), {Profile: gin, Amount: 26, Unit: flavor.Millilitre, ML: 26}}}
	for wish, want := range map[float64]float64{1: 1, -1: 0.75} { // more lemon, or less
		got := part.OnOunceMarks(s, func(x *flavor.Spec) float64 { return wish * x.Pours[1].ML })
		assert.Equal(t, pour(lemon, want), got.Pours[1])
		assert.Equal(t, s.Pours[0], got.Pours[0])
		assert.Equal(t, s.Pours[2:], got.Pours[2:], "three eighths are a mark")
	}
	assert.Equal(t, 0.875, s.Pours[1].Amount, "the drink that was asked for is not changed")
}
