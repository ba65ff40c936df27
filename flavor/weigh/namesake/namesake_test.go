package namesake_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"

	"counterpour/flavor"
	"counterpour/flavor/makeup"
	"counterpour/flavor/weigh/namesake"
)

var (
	gin     = &flavor.Profile{ID: "gin", Class: flavor.ClassGin, ABV: flavor.Figure{Value: 40}}
	rum     = &flavor.Profile{ID: "rum", Class: flavor.ClassRum, ABV: flavor.Figure{Value: 40}}
	lemon   = &flavor.Profile{ID: "lemon", Class: flavor.ClassSourJuice, Acid: flavor.Figure{Value: 60}, Acids: flavor.AcidBlend{Citric: 1}}
	cherry  = &flavor.Profile{ID: "cherry", Class: flavor.ClassLiqueur, ABV: flavor.Figure{Value: 32}, Sugar: flavor.Figure{Value: 350}, Sugars: flavor.SugarBlend{Sucrose: 1}}
	violet  = &flavor.Profile{ID: "violet", Class: flavor.ClassLiqueur, ABV: flavor.Figure{Value: 20}, Sugar: flavor.Figure{Value: 350}, Sugars: flavor.SugarBlend{Sucrose: 1}}
	pear    = &flavor.Profile{ID: "pear", Class: flavor.ClassLiqueur, ABV: flavor.Figure{Value: 20}, Sugar: flavor.Figure{Value: 350}, Sugars: flavor.SugarBlend{Sucrose: 1}}
	bitters = &flavor.Profile{ID: "bitters", Class: flavor.ClassCocktailBitters, ABV: flavor.Figure{Value: 44}}
)

// drink makes the parts of a drink and the mL of its pours.
func drink(profiles []*flavor.Profile, ml ...float64) ([]makeup.Part, []float64) {
	s := flavor.Spec{}
	for i, p := range profiles {
		s.Pours = append(s.Pours, flavor.Pour{Profile: p, ML: ml[i]})
	}
	return makeup.PartsIn(&s), ml
}

// bookOf takes in drinks of one name, the first of which is at place 0.
func bookOf(profiles []*flavor.Profile, versions ...[]float64) *namesake.Book {
	b := &namesake.Book{}
	for _, ml := range versions {
		parts, ml := drink(profiles, ml...)
		l := namesake.LessonOf(parts, ml)
		b.Add(&l)
	}
	return b
}

var flight = []*flavor.Profile{gin, lemon, cherry, violet}

// The published drink of gin, lemon, maraschino and violet is 45, 15, 15 and 7.5 mL (IBA, recalled); how
// much a bar may move it is common practice, no source.
func TestADrinkIsHeldAgainstItsName(t *testing.T) {
	book := bookOf(flight, []float64{45, 15, 15, 7.5})
	for _, c := range []struct {
		text     string
		called   []int
		profiles []*flavor.Profile
		ml       []float64
		out      bool
		by       *flavor.Profile
		more     bool
	}{
		{"as published", []int{0}, flight, []float64{45, 15, 15, 7.5}, false, nil, false},
		{"larger", []int{0}, flight, []float64{60, 20, 20, 10}, false, nil, false},
		{"a little drier", []int{0}, flight, []float64{60, 22.5, 15, 7.5}, false, nil, false},
		{"four times the violet", []int{0}, flight, []float64{60, 22.5, 15, 40}, true, violet, true},
		{"hardly any base", []int{0}, flight, []float64{15, 22.5, 15, 7.5}, true, gin, false},
		{"a liqueur of the same kind instead", []int{0}, []*flavor.Profile{gin, lemon, cherry, pear}, []float64{60, 22.5, 15, 40}, true, pear, true},
		{"another base", []int{0}, []*flavor.Profile{rum, lemon, cherry, violet}, []float64{60, 22.5, 15, 40}, true, violet, true},
		{"a dash of bitters more", []int{0}, append(flight[:4:4], bitters), []float64{60, 22.5, 15, 40, 0.8}, true, violet, true},
		{"another name", nil, flight, []float64{60, 22.5, 15, 40}, false, nil, false},
		{"without one of its parts", []int{0}, flight[:3], []float64{60, 5, 40}, false, nil, false},
		{"with much that it has not", []int{0}, append(flight[:4:4], pear), []float64{60, 22.5, 15, 40, 30}, false, nil, false},
	} {
		parts, ml := drink(c.profiles, c.ml...)
		own := book.OwnOf(c.called, parts, ml)
		edges, by, change := own.Edges(ml)
		assert.Equal(t, c.out, edges > 1, "%s: %.2f", c.text, edges)
		if c.out {
			assert.Equal(t, c.by, by, c.text)
			assert.Equal(t, c.more, change < 0, c.text)
		}
	}
}

// What any proven drink of the name has is within the edge, and so is all between two of them; the further
// beyond, the further out.
func TestBetweenItsNamesakesADrinkIsWithin(t *testing.T) {
	book := bookOf(flight, []float64{45, 15, 15, 7.5}, []float64{60, 15, 15, 15})
	rapid.Check(t, func(t *rapid.T) {
		between := rapid.Float64Range(0, 1).Draw(t, "between")
		size := rapid.Float64Range(0.5, 2).Draw(t, "size")
		parts, ml := drink(flight, size*(45+15*between), size*15, size*15, size*7.5*(1+between))
		own := book.OwnOf([]int{0, 1}, parts, ml)
		edges, _, _ := own.Edges(ml)
		assert.Less(t, edges, 0.2)
		last := edges
		for range 4 {
			ml[3] *= 1.5
			edges, _, _ = own.Edges(ml)
			assert.GreaterOrEqual(t, edges, last)
			last = edges
		}
		assert.Greater(t, last, 1.0)
		assert.False(t, math.IsInf(last, 0))
	})
}
