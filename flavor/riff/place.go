package riff

import (
	"cmp"
	"math"
	"slices"

	"counterpour/flavor"
	"counterpour/flavor/balance"
	"counterpour/flavor/cover"
	"counterpour/flavor/mix"
	"counterpour/flavor/template"
)

// The rows of a place: what is noticed of a finished drink.
const (
	rowStrong = iota // % vol
	rowSweet         // g/100 mL
	rowSour          // g/100 mL
	rowBitter        // mg/L
	rowVolume        // mL
	rowBody          // g/100 mL
	rowFizz          // mL that sparkle in 100 mL
	rowAroma         // the first of NumFamilies

	numRows = rowAroma + flavor.NumFamilies
)

// place is a finished drink in just-noticeable differences: each row is
// ln(x + floor) over ln(1 + Weber fraction), so that equal steps of a place are
// equal steps of taste wherever they start, and near nothing the scale is even.
type place [numRows]float64

// scale is the floor and the Weber fraction of each row, and how much it
// weighs in a distance. The floors are those that covers are judged by.
type scale struct {
	floor, weber, weight [numRows]float64
}

var scales = newScale(cover.DefaultWeights())

func newScale(w cover.Weights) *scale {
	s := &scale{}
	set := func(row int, floor, weber, weight float64) {
		s.floor[row], s.weber[row], s.weight[row] = floor, math.Log1p(weber), weight
	}
	set(rowStrong, w.EthanolFloor, w.Ethanol, 1)
	set(rowSweet, w.SweetFloor, w.Sweet, 1)
	set(rowSour, w.SourFloor, w.Sour, 1)
	set(rowBitter, 10*w.BitterFloorMG, w.Bitter, 1)
	set(rowVolume, 1, w.Volume, 1)
	set(rowBody, w.BodyFloor, w.Body, 1)
	set(rowFizz, w.FizzFloor, w.Fizz, 1)
	for f := range flavor.NumFamilies {
		set(rowAroma+f, w.AromaFloor, w.Aroma, w.AromaWeight)
	}
	return s
}

// on returns x on the scale of a row.
func (s *scale) on(row int, x float64) float64 {
	return math.Log(max(x, 0)+s.floor[row]) / s.weber[row]
}

// placeOf returns the place of a finished drink.
func placeOf(s *flavor.Spec, d *mix.Drink) (p place) {
	per100 := 100 / d.VolumeML
	var fizz float64
	for i := range s.Pours {
		if s.Pours[i].Profile.Carbonated {
			fizz += s.Pours[i].ML
		}
	}
	raw := [numRows]float64{rowStrong: d.ABV, rowSweet: d.SweetPer100, rowSour: d.AcidPer100, rowBitter: d.Bitter,
		rowVolume: d.VolumeML, rowBody: per100 * d.After.Texture, rowFizz: per100 * fizz}
	copy(raw[rowAroma:], d.Aroma[:])
	for row, x := range raw {
		p[row] = scales.on(row, x)
	}
	return p
}

// distance is the length of the difference, the aromas weighing less so that
// two dozen families do not outvote the tongue.
func (p *place) distance(o *place) float64 {
	var sum float64
	for row := range p {
		d := scales.weight[row] * (p[row] - o[row])
		sum += d * d
	}
	return math.Sqrt(sum)
}

// rowOf is the row that shows an axis in the finished drink.
func rowOf(a template.Axis) int {
	switch a {
	case template.Strong:
		return rowStrong
	case template.Sweet:
		return rowSweet
	case template.Sour:
		return rowSour
	case template.Bitter:
		return rowBitter
	}
	return rowVolume
}

// Distance returns how far apart two drinks are in the glass, in just-noticeable
// differences over strength, sweetness, acid, bitterness, volume, body, sparkle
// and every aroma family. It is symmetric, and zero for a drink and itself.
func Distance(m *mix.Mixer, a, b *flavor.Spec) (float64, error) {
	da, err := m.Mix(a)
	if err != nil {
		return 0, err
	}
	db, err := m.Mix(b)
	if err != nil {
		return 0, err
	}
	pa, pb := placeOf(a, da), placeOf(b, db)
	return pa.distance(&pb), nil
}

// tellsAroma is how many just-noticeable differences of one family are said.
const tellsAroma = 1.5

// told lists the families that grew and shrank enough to be told, those that
// were wished for first and then those that moved most.
func (w *work) told(after *mix.Drink) (more, less []flavor.Family) {
	floor := cover.DefaultWeights().AromaFloor
	var moved [flavor.NumFamilies]float64
	for f := range flavor.NumFamilies {
		was, is := w.drink.Aroma[f], after.Aroma[f]
		moved[f] = (is - was) / (balance.WeberAroma * math.Max(was, floor))
		switch {
		case moved[f] >= tellsAroma:
			more = append(more, flavor.Family(f))
		case moved[f] <= -tellsAroma:
			less = append(less, flavor.Family(f))
		}
		for _, x := range w.limits.steps {
			if x.row == rowAroma+f {
				moved[f] = math.Copysign(math.Inf(1), moved[f])
			}
		}
	}
	most := func(a, b flavor.Family) int { return cmp.Compare(math.Abs(moved[b]), math.Abs(moved[a])) }
	slices.SortStableFunc(more, most)
	slices.SortStableFunc(less, most)
	return more, less
}
