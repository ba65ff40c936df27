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
