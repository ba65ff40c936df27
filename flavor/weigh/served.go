package weigh

import (
	"slices"

	"counterpour/flavor"
)

// service is a way to serve, by its place among those of the proven drinks: a judged drink
// is compared with all of them several times, and a number is compared sooner than a word.
type service uint8

// otherwise is how no proven drink is served.
const otherwise service = 255

// served is how each proven drink is served.
type served struct {
	ways []flavor.Service // each once
	of   []service        // of each drink
}

// add takes in the next proven drink.
func (s *served) add(way flavor.Service) {
	if s.place(way) == otherwise {
		s.ways = append(s.ways, way)
	}
	s.of = append(s.of, s.place(way))
}

// place returns the place of a way to serve, otherwise if no proven drink is served so.
func (s *served) place(way flavor.Service) service {
	if i := slices.Index(s.ways, way); i >= 0 {
		return service(i)
	}
	return otherwise
}
