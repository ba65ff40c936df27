package proportion_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"

	"counterpour/flavor"
	"counterpour/flavor/makeup"
	"counterpour/flavor/weigh/proportion"
)

// sour returns the parts of a plain sour.
func sour() []makeup.Part {
	gin := &flavor.Profile{ID: "gin", Class: flavor.ClassGin, ABV: flavor.Figure{Value: 40}}
	syrup := &flavor.Profile{ID: "syrup", Class: flavor.ClassSyrup, Sugar: flavor.Figure{Value: 615}, Sugars: flavor.SugarBlend{Sucrose: 1}}
	lemon := &flavor.Profile{ID: "lemon", Class: flavor.ClassSourJuice, Acid: flavor.Figure{Value: 60}, Acids: flavor.AcidBlend{Citric: 1}}
	return makeup.PartsIn(&flavor.Spec{Pours: []flavor.Pour{{Profile: gin, ML: 60}, {Profile: syrup, ML: 20}, {Profile: lemon, ML: 22.5}}})
}

var usualML = []float64{60, 20, 22.5}

// learnt returns what ten sours alike teach.
func learnt(parts []makeup.Part) *proportion.Usual {
	own := proportion.TasksOf(parts, usualML)
	drinks, says := make([]proportion.Tasks, 10), make([]float64, 10)
	for i := range drinks {
		drinks[i], says[i] = own, 1
	}
	out := proportion.Learn(&own, drinks, says)
	return &out
}

func TestAsUsualIsNotUneven(t *testing.T) {
	parts := sour()
	tasks := proportion.TasksOf(parts, usualML)
	assert.InDelta(t, 0, learnt(parts).Edges(&tasks), 1e-12)
	_, change := learnt(parts).Slip(parts, usualML)
	assert.InDelta(t, 0, change, 1e-12)
}

// What is poured otherwise alone is named, and the change that is told points back; the
// further it is out, the more uneven the drink is. Where hardly any of it is left, nothing does its
// task surely: the drink is far out then, wherever it is.
func TestWhatSlippedIsNamed(t *testing.T) {
	parts := sour()
	usual := learnt(parts)
	rapid.Check(t, func(t *rapid.T) {
		at := rapid.IntRange(0, len(parts)-1).Draw(t, "pour")
		u := rapid.Float64Range(0.2, 1.2).Draw(t, "logarithm")
		if rapid.Bool().Draw(t, "less") {
			u = -u
		}
		ml := append([]float64{}, usualML...)
		ml[at] *= math.Exp(u)
		by, change := usual.Slip(parts, ml)
		assert.Equal(t, parts[at].Profile, by)
		assert.Negative(t, change*u)
		near := proportion.TasksOf(parts, ml)
		ml[at] *= math.Exp(u / 4)
		far := proportion.TasksOf(parts, ml)
		if u < -0.8 {
			assert.Greater(t, min(usual.Edges(&near), usual.Edges(&far)), 2.0)
			return
		}
		assert.Greater(t, usual.Edges(&far), usual.Edges(&near))
	})
}

// Drinks that have no say teach nothing, and then nothing is uneven.
func TestWithoutASayNothingIsUneven(t *testing.T) {
	parts := sour()
	tasks := proportion.TasksOf(parts, []float64{600, 1, 1})
	usual := proportion.Learn(&tasks, []proportion.Tasks{proportion.TasksOf(parts, usualML)}, []float64{0})
	assert.Zero(t, usual.Edges(&tasks))
}

// Where bars pour the same sour larger and smaller, a large one is as usual, and the same syrup in one
// of the usual size is too much.
func TestALargerDrinkHasMoreOfAll(t *testing.T) {
	parts := sour()
	var drinks []proportion.Tasks
	var says []float64
	for _, size := range []float64{0.6, 0.75, 0.9, 1, 1.1, 1.3, 1.6} {
		drinks, says = append(drinks, proportion.TasksOf(parts, times(usualML, size))), append(says, 1)
	}
	own := proportion.TasksOf(parts, usualML)
	usual := proportion.Learn(&own, drinks, says)
	large, sweet := times(usualML, 1.5), times(usualML, 1)
	sweet[1] *= 1.5
	much, one := proportion.TasksOf(parts, large), proportion.TasksOf(parts, sweet)
	assert.Less(t, usual.Edges(&much), 0.5)
	assert.Greater(t, usual.Edges(&one), 1.0)
	by, change := usual.Slip(parts, sweet)
	assert.Equal(t, parts[1].Profile, by)
	const near = 0.1 // of a logarithm; what is learnt is drawn to what is usual
	assert.InDelta(t, -math.Log(1.5), change, near)
}

func times(ml []float64, factor float64) []float64 {
	out := make([]float64, len(ml))
	for i, x := range ml {
		out[i] = factor * x
	}
	return out
}
