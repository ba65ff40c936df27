package shape

import (
	"counterpour/api/shape/figure"
	"counterpour/flavor"
)

// costOf returns what the pours of a drink cost, in the currency of prices; nil if one of
// them has no price.
func costOf(s *flavor.Spec, prices map[string]float64) *float64 {
	sum, unpriced := s.Cost(prices)
	if len(unpriced) > 0 {
		return nil
	}
	sum = figure.Round(sum, figure.Cost)
	return &sum
}

// newAllergens names the allergens that after has and before has not; see
// [flavor.Spec.NewAllergens].
func newAllergens(before, after *flavor.Spec) []string {
	return figure.List(after.NewAllergens(before), func(a flavor.Allergen) string { return string(a) })
}
