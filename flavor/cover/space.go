package cover

import (
	"math"

	"counterpour/flavor"
	"counterpour/flavor/balance"
	"counterpour/flavor/mix"
)

// The rows of the space in which drinks are compared: what a drink carries in
// all, in just-noticeable differences of the original.
const (
	rowEthanol = iota
	rowSweet
	rowSour
	rowBitter
	rowBody
	rowFat // what tells cream from foam
	rowVolume
	rowFizz  // volume that sparkles
	rowAroma // the first of NumFamilies

	numRows = rowAroma + flavor.NumFamilies
)

// Weights says how much of each thing is a just-noticeable difference: a Weber
// fraction, and a floor below which differences are measured as if there were
// that much. Floors are per 100 mL of finished drink.
type Weights struct {
	Ethanol, Sweet, Sour, Bitter, Body, Volume, Fizz, Aroma                              float64 // Weber fractions
	EthanolFloor, SweetFloor, SourFloor, BitterFloorMG, BodyFloor, FizzFloor, AromaFloor float64
	// AromaWeight scales the aroma rows: two dozen families would otherwise
	// outvote the tongue.
	AromaWeight float64
	// PartCost, MoveCost: just-noticeable differences that a second or third
	// substitute, or a pour moved by one step, must earn.
	PartCost, MoveCost float64
	// RareCost: the same for a substitute that few bars stock, see
	// Request.Usual.
	RareCost float64
}

// DefaultWeights returns the weights that the program uses. The floors are
// judged (common practice, no source).
func DefaultWeights() Weights {
	return Weights{
		Ethanol: balance.WeberStrong, Sweet: balance.WeberSweet, Sour: balance.WeberSour,
		Bitter: balance.WeberBitter, Body: balance.WeberBody, Volume: balance.WeberLong, Fizz: balance.WeberBody, Aroma: balance.WeberAroma,
		EthanolFloor: 2, SweetFloor: 2, SourFloor: 0.2, BitterFloorMG: 2, BodyFloor: 1, FizzFloor: 10, AromaFloor: 0.4,
		AromaWeight: 0.6, PartCost: 0.6, MoveCost: 0.25, RareCost: 0.5,
	}
}

type vector [numRows]float64

// space turns what a drink carries into just-noticeable differences.
type space struct {
	scale vector // differences per unit
}

// newSpace measures differences from the drink that is to be kept.
func newSpace(spec *flavor.Spec, drink *mix.Drink, w *Weights) space {
	var fizz float64
	for i := range spec.Pours {
		if spec.Pours[i].Profile.Carbonated {
			fizz += spec.Pours[i].ML
		}
	}
	hundreds := drink.VolumeML / 100
	l := &drink.Before
	step := func(weber, amount, floor float64) float64 {
		return 1 / (weber * math.Max(amount, floor*hundreds))
	}
	var s space
	s.scale[rowEthanol] = step(w.Ethanol, l.Ethanol, w.EthanolFloor)
	s.scale[rowSweet] = step(w.Sweet, l.Sweet, w.SweetFloor)
	s.scale[rowSour] = step(w.Sour, l.Sour, w.SourFloor)
	s.scale[rowBitter] = step(w.Bitter, l.Bitter, w.BitterFloorMG)
	s.scale[rowBody] = step(w.Body, l.Texture, w.BodyFloor)
	s.scale[rowFat] = step(w.Body, l.Fat, w.BodyFloor)
	s.scale[rowVolume] = step(w.Volume, drink.VolumeML, 0)
	s.scale[rowFizz] = step(w.Fizz, fizz, w.FizzFloor)
	for f := range flavor.NumFamilies {
		s.scale[rowAroma+f] = w.AromaWeight * step(w.Aroma, l.Aroma[f], w.AromaFloor*100)
	}
	return s
}

// perML returns what a millilitre of p moves a drink by.
func (s *space) perML(p *flavor.Profile) vector {
	l := mix.PerML(p)
	v := vector{rowEthanol: l.Ethanol, rowSweet: l.Sweet, rowSour: l.Sour, rowBitter: l.Bitter,
		rowBody: l.Texture, rowFat: l.Fat, rowVolume: 1}
	if p.Carbonated {
		v[rowFizz] = 1
	}
	copy(v[rowAroma:], l.Aroma[:])
	for i := range v {
		v[i] *= s.scale[i]
	}
	return v
}

func (v *vector) add(o *vector, times float64) {
	for i := range v {
		v[i] += times * o[i]
	}
}

func dot(a, b *vector) float64 {
	var s float64
	for i := range a {
		s += a[i] * b[i]
	}
	return s
}
