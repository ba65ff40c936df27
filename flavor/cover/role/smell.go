package role

import (
	"math"

	"counterpour/flavor"
	"counterpour/flavor/sense"
)

// Smell is what an ingredient smells of: the odorants of its materials, and beside
// them the families that people sort smells into. Two smells are alike as far as
// both are: violet and raspberry share an odorant, and nobody takes the one for the
// other; orange and lemon are one family, and not one smell.
type Smell struct {
	of       [sense.AromaDims + flavor.NumAromaFamilies]float64
	length   float64
	odorants float64 // length of these alone
}

func smellOf(p *flavor.Profile, holds *sense.Vector) Smell {
	var s Smell
	copy(s.of[:], holds[sense.Dims-sense.AromaDims:])
	copy(s.of[sense.AromaDims:], p.Aroma[:])
	s.length, s.odorants = length(s.of[:]), length(s.of[:sense.AromaDims])
	return s
}

// plainBelow is the intensity of aroma below which something smells of next to
// nothing: syrups of sugar, water, neutral spirits and vodkas do.
const plainBelow = 2.0

// Plain reports whether it is next to none.
func (s *Smell) Plain() bool { return s.odorants < plainBelow }

// How far apart two smells may be to be taken for one another, and from where on
// they are nothing like it: gins are apart by 0.4, gold and white rum by 0.6, vodka
// and white rum by 1.
const (
	AlikeTo    = 0.5
	unlikeFrom = 1.2
)

// Unlike is 0 for smells that are taken for one another and 1 for those that are
// nothing like it.
func Unlike(apart float64) float64 {
	return min(1, max(0, (apart-AlikeTo)/(unlikeFrom-AlikeTo)))
}

// Apart returns how far apart two smells are, as against the stronger one, when
// so many times as much of the first is poured as brings them nearest, within
// bounds: 0 for smells that are the same, 1 if one is nothing like it.
func Apart(a, b *Smell, least, most float64) float64 {
	x, y := a.length, b.length
	if x == 0 || y == 0 {
		return 1
	}
	times := min(most, max(least, y/x))
	square := times*times*x*x + y*y - 2*times*product(a.of[:], b.of[:])
	return math.Sqrt(max(0, square)) / max(times*x, y)
}

// Cosine is how alike two smells are, whatever their strength.
func Cosine(a, b *Smell) float64 {
	if x, y := a.length, b.length; x > 0 && y > 0 {
		return product(a.of[:], b.of[:]) / (x * y)
	}
	return 0
}

func product(a, b []float64) float64 {
	var s float64
	for i, x := range a {
		s += x * b[i]
	}
	return s
}

func length(v []float64) float64 { return math.Sqrt(product(v, v)) }
