package measure

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"

	"counterpour/flavor"
	"counterpour/flavor/measure/measuretest"
)

func TestSnap(t *testing.T) {
	b := measuretest.Bar()
	for _, c := range []struct {
		ml   float64
		unit flavor.Unit
		name string
		want float64
	}{
		{22.5, flavor.Ounce, "gin", 0.75},
		{59, flavor.Ounce, "gin", 2},
		{0.1, flavor.Ounce, "gin", 0.25},
		{22.2, flavor.Millilitre, "gin", 22.5},
		{7.1, flavor.Millilitre, "gin", 7.5},
		{33, flavor.Millilitre, "gin", 35},
		{32, flavor.Millilitre, "gin", 30},
		{22, flavor.Centilitre, "gin", 2.25},
		{2.1, flavor.Dash, "bitters", 3},
		{5, flavor.Barspoon, "simple syrup", 1.5},
		{2.5, flavor.Leaf, "mint", 6},
		{45, flavor.Top, "soda water", 1},
		{1e9, flavor.Dash, "bitters", 100},
	} {
		got := Snap(c.ml, c.unit, b[flavor.NormaliseName(c.name)])
		assert.InDelta(t, c.want, got, 1e-9, "%v ml in %s", c.ml, c.unit)
	}
	assert.Zero(t, Snap(math.NaN(), flavor.Ounce, nil))
	assert.Zero(t, Snap(-1, flavor.Ounce, nil))
	assert.Zero(t, Snap(10, flavor.Leaf, b["london dry gin"]))
	assert.Zero(t, Snap(10, "bucket", nil))
}

// Common practice, no source.
func TestHandy(t *testing.T) {
	bitters := measuretest.Bar()["bitters"]
	for _, c := range []struct {
		drops float64
		unit  flavor.Unit
		most  float64
	}{
		{6, flavor.Drop, 6}, {10, flavor.Drop, 10}, {32, flavor.Dash, 3}, {100, flavor.Dash, 8}, {300, flavor.Barspoon, 4},
	} {
		ml := c.drops * DropML
		u, amount := Handy(ml, flavor.Drop, bitters)
		assert.Equal(t, c.unit, u, "%v drops", c.drops)
		assert.LessOrEqual(t, amount, c.most, "%v drops", c.drops)
		per, ok := MLPerUnit(u, bitters)
		assert.True(t, ok)
		assert.InDelta(t, ml, amount*per, Step(u)*per/2+1e-9, "%v drops are %v %s", c.drops, amount, u)
	}
	u, amount := Handy(45, flavor.Millilitre, bitters)
	assert.Equal(t, flavor.Millilitre, u)
	assert.InDelta(t, 45, amount, 1e-9)
	_, amount = Handy(math.NaN(), flavor.Drop, bitters)
	assert.Zero(t, amount)
}

func TestNeighbours(t *testing.T) {
	for _, c := range []struct {
		amount float64
		unit   flavor.Unit
		n      int
		want   []float64
	}{
		{0.75, flavor.Ounce, 2, []float64{0.25, 0.5, 1, 1.25}},
		{0.8, flavor.Ounce, 1, []float64{0.75, 1}},
		{0.25, flavor.Ounce, 3, []float64{0.5, 0.75, 1}},
		{22.5, flavor.Millilitre, 2, []float64{17.5, 20, 25, 27.5}},
		{30, flavor.Millilitre, 2, []float64{25, 27.5, 35, 40}},
		{33, flavor.Millilitre, 2, []float64{27.5, 30, 35, 40}},
		{2, flavor.Dash, 2, []float64{1, 3, 4}},
		{1, flavor.Barspoon, 1, []float64{0.5, 1.5}},
		{5, flavor.Gram, 1, []float64{4, 6}},
		{100, flavor.Dash, 1, []float64{99}},
		{1, flavor.Top, 2, nil},
		{1, "bucket", 2, nil},
		{1, flavor.Ounce, 0, nil},
		{math.NaN(), flavor.Ounce, 2, nil},
		{math.Inf(1), flavor.Ounce, 2, nil},
		{1e300, flavor.Ounce, 2, nil},
	} {
		got := Neighbours(c.amount, c.unit, c.n)
		if assert.Len(t, got, len(c.want), "%v %s", c.amount, c.unit) {
			for i := range got {
				assert.InDelta(t, c.want[i], got[i], 1e-9, "%v %s", c.amount, c.unit)
			}
		}
	}
	assert.Len(t, Neighbours(5000, flavor.Millilitre, 1<<30), 2*maxSteps)
	assert.Equal(t, 1.0, Step("bucket"))
	assert.Equal(t, 0.25, Step(flavor.Ounce))
}

// Neighbours ascend, lie within the limits, leave the amount out, and are
// amounts that a hand can pour: each snaps to itself.
func TestNeighboursProperty(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		u := rapid.SampledFrom(Units()).Draw(t, "unit")
		info, _ := infoOf(u)
		amount := rapid.Float64Range(MinAmount, info.most).Draw(t, "amount")
		n := rapid.IntRange(0, 9).Draw(t, "n")
		last := 0.0
		for _, x := range Neighbours(amount, u, n) {
			if x <= last || x > info.most || math.Abs(x-amount) < 1e-12 {
				t.Fatalf("%v is out of place beside %v %s", x, amount, u)
			}
			last = x
			if per, ok := MLPerUnit(u, nil); ok && math.Abs(Snap(x*per, u, nil)-x) > 1e-9 {
				t.Fatalf("%v %s snaps to %v", x, u, Snap(x*per, u, nil))
			}
		}
	})
}

// No pourable amount is nearer than the one that Snap returns.
func TestSnapProperty(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		u := rapid.SampledFrom([]flavor.Unit{flavor.Ounce, flavor.Millilitre, flavor.Centilitre, flavor.Dash, flavor.Barspoon}).Draw(t, "unit")
		per, _ := MLPerUnit(u, nil)
		ml := rapid.Float64Range(0.01, 300).Draw(t, "ml")
		got := Snap(ml, u, nil)
		if got < Step(u) {
			t.Fatalf("%v %s is less than a step", got, u)
		}
		for _, x := range Neighbours(got, u, 1) {
			if math.Abs(x-ml/per) < math.Abs(got-ml/per)-1e-9 {
				t.Fatalf("%v ml: %v %s is nearer than %v", ml, x, u, got)
			}
		}
	})
}
