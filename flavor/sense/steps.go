package sense

import (
	"cmp"
	"math"
	"slices"
)

// Steps is how many just-noticeable differences lie between two glasses, for
// each [Sense]: above zero where the second has more. For [Colour] and [Aroma],
// which have a direction, it is the whole difference, never below zero.
type Steps [NumSenses]float64

// Between returns the steps from a to b. It does not depend on what was mixed
// in which order, is zero for equal glasses, and its total obeys the triangle
// inequality: each sense is a distance on a line or in a Euclidean space.
func Between(a, b *Percept) Steps {
	var out Steps
	for s := range numSingles {
		l := &laws[s]
		out[s] = l.at(b.Holds[s]) - l.at(a.Holds[s])
	}
	out[Colour] = colourSteps(&a.Holds, &b.Holds)
	out[Aroma] = aromaSteps(a.Holds.aroma(), b.Holds.aroma())
	out[Temperature] = (b.TemperatureC - a.TemperatureC) / degreesPerStep
	out[Volume] = laws[Volume].at(b.VolumeML) - laws[Volume].at(a.VolumeML)
	return out
}

// Total adds the steps up: the root of the sum of their squares, see the
// package comment.
func (s *Steps) Total() float64 {
	var sum float64
	for _, x := range s {
		sum += x * x
	}
	return math.Sqrt(sum)
}

// Largest lists the senses that differ by at least so many steps, the largest
// difference first.
func (s *Steps) Largest(atLeast float64) []Sense {
	var out []Sense
	for i, x := range s {
		if math.Abs(x) >= atLeast {
			out = append(out, Sense(i))
		}
	}
	slices.SortStableFunc(out, func(a, b Sense) int { return cmp.Compare(math.Abs(s[b]), math.Abs(s[a])) })
	return out
}

// bands is how many bands of light a colour has; they count as one sense, so
// their squares are averaged.
const bands = 3

func colourSteps(a, b *Vector) float64 {
	l := &laws[Colour]
	var sum float64
	for i := atRed; i <= atBlue; i++ {
		d := l.at(b[i]) - l.at(a[i])
		sum += d * d
	}
	return math.Sqrt(sum / bands)
}

// aromaSteps is the distance of two aromas once each has been brought to the
// length that Weber's law gives its intensity.
func aromaSteps(a, b []float64) float64 {
	l := &laws[Aroma]
	x, y := stretch(l, norm(a)), stretch(l, norm(b))
	var sum float64
	for i := range a {
		d := x*a[i] - y*b[i]
		sum += d * d
	}
	return math.Sqrt(sum)
}

// stretch is the factor that brings an aroma of intensity r to its length in
// steps; at nothing, its limit.
func stretch(l *law, r float64) float64 {
	if r < 1e-12 {
		return l.slope(0)
	}
	return l.at(r) / r
}
