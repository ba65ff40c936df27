package template

import (
	"counterpour/flavor/makeup"
	"counterpour/flavor/ratio"
)

// Unknownness returns by how much the squared spread of a kind of drink differs
// where few drinks of its make-up are proven, near of them by likeness, or many: the
// mean of few is less sure, and what is odd strays further. Chosen by the trial.
func Unknownness(near float64) float64 { return LeastUnknown + 0.9/(0.7+near) }

// LeastUnknown is what it falls to where many are proven, MostUnknown what it is
// where none is.
const (
	LeastUnknown = 0.7
	MostUnknown  = LeastUnknown + 0.9/0.7
)

// Weights fills out with how much each of some drinks says of how one like it is poured, given
// the cosine of the angle between the two: its likeness, and more if it is of the very same
// make-up, since how one of those is poured says more than how all of its kind are.
func Weights(cosines []float64, t *Tuning, out []float64) {
	makeup.Likenesses(cosines, t.Bandwidth, out)
	for i, cosine := range cosines {
		if 1-cosine < noTwin*twinWidth {
			out[i] += t.Twin * makeup.Likeness(cosine, twinWidth)
		}
	}
}

// noTwin is how many widths apart drinks are twins by less than a billionth.
const noTwin = 25.0

// twinWidth is how far apart drinks of the same make-up are, in 1 − cosine: a
// dash of something, or one gin for another.
const twinWidth = 0.01

// Relative is a proven drink as one family sees it. What a score reads of it stands
// together, before the rest.
type Relative struct {
	At     int     // among the proven drinks of all families
	Size   float64 // logarithm of its mL before ice
	Coords Coords
	Kin    *makeup.Kinship // apart from the rest, which is read for each draft
}

// Coords are log-ratio coordinates in a family, as many as it has and then zeros.
type Coords [ratio.NumAxes - 1]float64

// CoordsOf returns coordinates, at most as many as there is room for.
func CoordsOf(z []float64) (c Coords) {
	copy(c[:], z)
	return c
}

// Middle is the middle of some good drinks.
type Middle struct {
	Coords Coords
	Size   float64 // logarithm of mL before ice
	Near   float64 // how many proven drinks it rests on, by likeness
}

// WeightFor returns what gives the weight of each relative for a drink, see [Weights].
func WeightFor(k *makeup.Kinship, t *Tuning) func(*Relative) float64 {
	return func(r *Relative) float64 {
		var w [1]float64
		Weights([]float64{k.Cosine(r.Kin)}, t, w[:])
		return w[0]
	}
}

// LocalMiddle pulls a family's middle toward the proven drinks made of the
// same things: partial pooling, with Tuning.Pull the weight in drinks of the
// family's own, and the weight of each relative but the one to skip as [Weights] has it.
func LocalMiddle(own Middle, relatives []Relative, weightOf func(*Relative) float64, skip int, t *Tuning) Middle {
	weight := t.Pull
	m := Middle{Size: t.Pull * own.Size}
	for j := range m.Coords {
		m.Coords[j] = t.Pull * own.Coords[j]
	}
	for i := range relatives {
		if i == skip {
			continue
		}
		w := weightOf(&relatives[i])
		weight += w
		m.Size += w * relatives[i].Size
		for j := range m.Coords {
			m.Coords[j] += w * relatives[i].Coords[j]
		}
	}
	m.Near = weight - t.Pull
	m.Size /= weight
	for j := range m.Coords {
		m.Coords[j] /= weight
	}
	return m
}
