package makeup

import (
	"slices"

	"counterpour/flavor"
)

// Service is a way to serve, by its place among those of the proven drinks: a judged drink
// is compared with all of them several times, and a number is compared sooner than a word.
type Service uint8

// otherwise is how no proven drink is served.
const otherwise Service = 255

// Services is how each proven drink is served. It is safe for concurrent use once all are added.
type Services struct {
	ways []flavor.Service // each once
	Of   []Service        // of each drink
}

// Add takes in the next proven drink.
func (s *Services) Add(way flavor.Service) {
	if s.Place(way) == otherwise {
		s.ways = append(s.ways, way)
	}
	s.Of = append(s.Of, s.Place(way))
}

// Place returns the place of a way to serve, one that no drink has if no proven drink is served so.
func (s *Services) Place(way flavor.Service) Service {
	if i := slices.Index(s.ways, way); i >= 0 {
		return Service(i)
	}
	return otherwise
}
