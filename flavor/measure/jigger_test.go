package measure_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"

	"counterpour/flavor"
	"counterpour/flavor/measure"
)

// Common practice, no source: what jiggers are marked with.
func TestJiggerMarks(t *testing.T) {
	assert.Equal(t, []float64{0.25, 0.5, 0.75, 1}, measure.JiggerMarks(flavor.Ounce, 0.25, 1))
	assert.Equal(t, []float64{5, 7.5, 10, 15, 20, 22.5, 25, 30}, measure.JiggerMarks(flavor.Millilitre, 5, 30))
	assert.Equal(t, []float64{0.5, 0.75, 1}, measure.JiggerMarks(flavor.Centilitre, 0.5, 1))
	assert.Empty(t, measure.JiggerMarks(flavor.Top, 1, 2))
	assert.Empty(t, measure.JiggerMarks(flavor.Ounce, 0, 2))
	assert.Equal(t, 22.5, measure.JiggerStep(20, flavor.Millilitre, true))
	assert.Equal(t, 15.0, measure.JiggerStep(20, flavor.Millilitre, false))
	assert.Zero(t, measure.JiggerStep(0.25, flavor.Ounce, false))
}

// One step after another is the list of the marks.
func TestJiggerStepsAreTheMarks(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		u := rapid.SampledFrom([]flavor.Unit{flavor.Ounce, flavor.Millilitre, flavor.Centilitre, flavor.Dash, flavor.Barspoon}).Draw(t, "unit")
		marks := measure.JiggerMarks(u, measure.Step(u), 60*measure.Step(u))
		for i := 1; i < len(marks); i++ {
			assert.InDelta(t, marks[i], measure.JiggerStep(marks[i-1], u, true), 1e-9)
			assert.InDelta(t, marks[i-1], measure.JiggerStep(marks[i], u, false), 1e-9)
		}
	})
}

// Common practice, no source: where a pour goes by one step of its jigger.
func TestJiggerSteps(t *testing.T) {
	for _, c := range []struct {
		amount   float64
		unit     flavor.Unit
		less, up float64
	}{
		{2, flavor.Ounce, 1.75, 2.25},
		{0.25, flavor.Ounce, 0, 0.5},
		{1.0 / 3, flavor.Ounce, 0.25, 0.5},
		{5, flavor.Millilitre, 2.5, 7.5},
		{7.5, flavor.Millilitre, 5, 10},
		{20, flavor.Millilitre, 15, 22.5},
		{22.5, flavor.Millilitre, 20, 25},
		{60, flavor.Millilitre, 55, 65},
		{17, flavor.Millilitre, 15, 20},
		{0.75, flavor.Centilitre, 0.5, 1},
		{2, flavor.Dash, 1, 3},
		{1, flavor.Barspoon, 0.5, 1.5},
		{1, flavor.Leaf, 0, 2},
		{1, "", 0, 2},
		{1, flavor.Top, 0, 0},
		{-1, flavor.Ounce, 0, 0},
	} {
		assert.InDelta(t, c.less, measure.JiggerStep(c.amount, c.unit, false), 1e-9, "less than %v %s", c.amount, c.unit)
		assert.InDelta(t, c.up, measure.JiggerStep(c.amount, c.unit, true), 1e-9, "more than %v %s", c.amount, c.unit)
	}
}

// A step up and a step down lead back to where the jigger has a mark.
func TestStepsLeadBack(t *testing.T) {
	units := measure.Units()
	rapid.Check(t, func(t *rapid.T) {
		unit := rapid.SampledFrom(units).Draw(t, "unit")
		if unit == flavor.Top {
			return
		}
		at := measure.JiggerStep(rapid.Float64Range(0.01, 500).Draw(t, "amount"), unit, true)
		up := measure.JiggerStep(at, unit, true)
		assert.Greater(t, up, at)
		assert.InDelta(t, at, measure.JiggerStep(up, unit, false), 1e-6)
	})
}
