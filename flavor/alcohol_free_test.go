package flavor_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"counterpour/flavor"
)

// What is meant without alcohol; common practice, no source.
func TestAlcoholFree(t *testing.T) {
	pour := func(ml, abv float64, c flavor.Class) flavor.Pour {
		return flavor.Pour{Profile: &flavor.Profile{Class: c, ABV: flavor.Figure{Value: abv}}, ML: ml}
	}
	soda, bitters := pour(150, 0, flavor.ClassSoda), flavor.ClassCocktailBitters
	for _, c := range []struct {
		name  string
		pours []flavor.Pour
		want  bool
	}{
		{"nothing", nil, false},
		{"soda", []flavor.Pour{soda}, true},
		{"juice and syrup of a sour", []flavor.Pour{pour(25, 0, flavor.ClassSourJuice), pour(20, 0, flavor.ClassSyrup)}, false},
		{"a sour of an alcohol-free spirit", []flavor.Pour{pour(25, 0, flavor.ClassSourJuice), pour(45, 0.5, flavor.ClassAlcoholFree)}, true},
		{"an alcohol-free spirit", []flavor.Pour{soda, pour(50, 0.5, flavor.ClassAlcoholFree)}, true},
		{"five dashes of bitters", []flavor.Pour{soda, pour(4, 44, bitters)}, true},
		{"a jigger of bitters", []flavor.Pour{soda, pour(45, 44, bitters)}, false},
		{"a teaspoon of gin", []flavor.Pour{soda, pour(5, 40, flavor.ClassGin)}, false},
		{"a drop of gin", []flavor.Pour{soda, pour(0.05, 40, flavor.ClassGin)}, true},
		{"gin", []flavor.Pour{soda, pour(50, 40, flavor.ClassGin)}, false},
		{"gin and bitters", []flavor.Pour{soda, pour(50, 40, flavor.ClassGin), pour(1, 44, bitters)}, false},
		{"a light cider", []flavor.Pour{soda, pour(100, 4, flavor.ClassCider)}, false},
	} {
		assert.Equal(t, c.want, (&flavor.Spec{Pours: c.pours}).AlcoholFree(), c.name)
	}
}
