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

// daisy returns the parts of a drink of gin, liqueur and lemon juice.
func daisy() []makeup.Part {
	gin := &flavor.Profile{ID: "gin", Class: flavor.ClassGin, ABV: flavor.Figure{Value: 40}}
	liqueur := &flavor.Profile{ID: "liqueur", Class: flavor.ClassLiqueur, ABV: flavor.Figure{Value: 40}, Sugar: flavor.Figure{Value: 250}, Sugars: flavor.SugarBlend{Sucrose: 1}}
	lemon := &flavor.Profile{ID: "lemon", Class: flavor.ClassSourJuice, Acid: flavor.Figure{Value: 60}, Acids: flavor.AcidBlend{Citric: 1}}
	return makeup.PartsIn(&flavor.Spec{Pours: []flavor.Pour{{Profile: gin, ML: 50}, {Profile: liqueur, ML: 25}, {Profile: lemon, ML: 25}}})
}

// precedents returns what ten daisies alike say of one.
func precedents(parts []makeup.Part, ml []float64) (*proportion.Precedents, *proportion.Usual) {
	own, tasks := proportion.QuantitiesOf(parts, ml), proportion.TasksOf(parts, ml)
	drinks, alike, says := make([]proportion.Quantities, 10), make([]proportion.Tasks, 10), make([]float64, 10)
	for i := range drinks {
		drinks[i], alike[i], says[i] = own, tasks, 1
	}
	room := func(n int) []float64 { return make([]float64, n) }
	known, usual := proportion.NewBook(drinks).PrecedentsFor(&own, says, false, room), proportion.Learn(&tasks, alike, says)
	return &known, &usual
}

// Of a liqueur that is poured twice there is too much; of a base that is poured by a third
// there is too little, though the liqueur outweighs it all the more. What is as usual is no
// fault, and excused.
func TestPrecedentsTellWhichOfTwoIsWrong(t *testing.T) {
	parts := daisy()
	for _, c := range []struct {
		what   string
		ml     []float64
		by     string // of the fault; empty if there is none
		change float64
	}{
		{"as usual", []float64{50, 25, 25}, "", 0},
		{"twice the liqueur", []float64{50, 50, 25}, "liqueur", -math.Ln2},
		{"a third of the base", []float64{50.0 / 3, 25, 25}, "gin", math.Log(3)},
		{"a batch", []float64{500, 250, 250}, "", 0},
	} {
		known, usual := precedents(parts, []float64{50, 25, 25})
		poured, tasks := proportion.QuantitiesOf(parts, c.ml), proportion.TasksOf(parts, c.ml)
		edges, excused := known.Beyond(&poured)
		by, change, worst := known.Worst(&poured, usual, &tasks)
		if c.by == "" {
			assert.Less(t, worst, 1.0, c.what)
			continue
		}
		if assert.NotNil(t, by, c.what) {
			assert.Equal(t, c.by, by.ID, c.what)
		}
		assert.Greater(t, edges, 1.0, c.what)
		assert.LessOrEqual(t, excused, 0.22, "%s: by no more than that others are made of the same", c.what)
		assert.InDelta(t, c.change, change, 0.35, "%s: near the amount it had", c.what)
	}
}

// More of a liqueur is never less beyond precedent, nor excused the more; and what was asked
// before changes no answer.
func TestPrecedentsGrowWithThePour(t *testing.T) {
	parts := daisy()
	kept, _ := precedents(parts, []float64{50, 25, 25})
	rapid.Check(t, func(t *rapid.T) {
		less := rapid.Float64Range(5, 100).Draw(t, "less")
		more := less * rapid.Float64Range(1, 2).Draw(t, "times")
		at := func(ml float64) (edges, excused float64) {
			q := proportion.QuantitiesOf(parts, []float64{50, ml, 25})
			edges, excused = kept.Beyond(&q)
			anew, _ := precedents(parts, []float64{50, 25, 25})
			e, x := anew.Beyond(&q)
			assert.InDelta(t, e, edges, 1e-12)
			assert.InDelta(t, x, excused, 1e-12)
			return edges, excused
		}
		fewer, sooner := at(less)
		most, later := at(more)
		assert.LessOrEqual(t, fewer, most+1e-9)
		assert.LessOrEqual(t, later, sooner+0.1, "but for how surely it is there")
	})
}

// Beside a sparkling wine a liqueur is held against the rest as beside a base; beside soda it
// stands for a base, and has no precedent to be too much by.
func TestAWineCarriesALiqueur(t *testing.T) {
	liqueur := &flavor.Profile{ID: "liqueur", Class: flavor.ClassLiqueur, ABV: flavor.Figure{Value: 20}, Sugar: flavor.Figure{Value: 350}, Sugars: flavor.SugarBlend{Sucrose: 1}}
	wine := &flavor.Profile{ID: "wine", Class: flavor.ClassSparklingWine, ABV: flavor.Figure{Value: 11}}
	soda := &flavor.Profile{ID: "tonic", Class: flavor.ClassSoda, Sugar: flavor.Figure{Value: 80}, Sugars: flavor.SugarBlend{Sucrose: 1}}
	for long, out := range map[*flavor.Profile]bool{wine: true, soda: false} {
		parts := makeup.PartsIn(&flavor.Spec{Pours: []flavor.Pour{{Profile: liqueur, ML: 30}, {Profile: long, ML: 120}}})
		known, _ := precedents(parts, []float64{30, 120})
		usual, twice := proportion.QuantitiesOf(parts, []float64{30, 120}), proportion.QuantitiesOf(parts, []float64{75, 120})
		edges, _ := known.Beyond(&usual)
		assert.Less(t, edges, 1.0, long.ID)
		edges, _ = known.Beyond(&twice)
		assert.Equal(t, out, edges >= 1, "%s: %v", long.ID, edges)
	}
}

// Without precedents nothing is beyond them, and nothing is excused by them.
func TestNoPrecedents(t *testing.T) {
	parts := daisy()
	q := proportion.QuantitiesOf(parts, []float64{50, 250, 25})
	b := proportion.NewBook(nil)
	assert.False(t, b.Known())
	none := b.PrecedentsFor(&q, nil, false, func(n int) []float64 { return make([]float64, n) })
	edges, excused := none.Beyond(&q)
	assert.Zero(t, edges)
	assert.Zero(t, excused)
}
