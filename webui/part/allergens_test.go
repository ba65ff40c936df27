package part_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"counterpour/flavor"
	"counterpour/webui/part"
)

// What a whole carries beside its parts is named after it, and what a part carries already is not named twice.
func TestWhatAWholeCarriesBeyondItsParts(t *testing.T) {
	almond := &flavor.Profile{ID: "almond-syrup", Name: "almond syrup", Class: flavor.ClassSpicedSyrup, AllergenMarks: []flavor.AllergenMark{{Allergen: flavor.TreeNuts, Certainty: flavor.Contains}}}
	v := part.AllergensOf(&flavor.Spec{Pours: []flavor.Pour{{Profile: almond, ML: 10}}}, nil)
	v.AddBeyond(&flavor.Profile{Name: "house nutty", AllergenMarks: []flavor.AllergenMark{
		{Allergen: flavor.TreeNuts, Certainty: flavor.Contains}, {Allergen: flavor.TreeNuts, Certainty: flavor.MayContain}, {Allergen: flavor.Soybeans, Certainty: flavor.MayContain}}})
	assert.Equal(t, []part.Allergen{{Allergen: flavor.TreeNuts, From: []string{"almond syrup"}}}, v.Contains)
	assert.Equal(t, []part.Allergen{{Allergen: flavor.Soybeans, From: []string{"house nutty"}}}, v.May)
}
