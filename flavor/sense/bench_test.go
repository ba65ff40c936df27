package sense_test

import (
	"testing"

	"counterpour/flavor"
	"counterpour/flavor/sense"
)

func BenchmarkBetween(b *testing.B) {
	s := toySpace(b)
	p := &flavor.Profile{Materials: []flavor.MaterialShare{{Material: "lemon", Intensity: 8}, {Material: "mint", Intensity: 1}}}
	q := &flavor.Profile{Materials: []flavor.MaterialShare{{Material: "orange", Intensity: 8}}}
	x, y := s.Neat(p), s.Neat(q)
	for b.Loop() {
		d := sense.Between(x, y)
		_ = d.Total()
	}
}

func BenchmarkRow(b *testing.B) {
	s := toySpace(b)
	p := &flavor.Profile{Materials: []flavor.MaterialShare{{Material: "lemon", Intensity: 8}, {Material: "mint", Intensity: 1}}}
	near := s.Near(s.Neat(p))
	per := s.PerML(p)
	for b.Loop() {
		_ = near.RowOf(&per)
	}
}
