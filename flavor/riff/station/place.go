package station

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
	RowStrong = iota // % vol
	RowSweet         // g/100 mL
	RowSour          // g/100 mL
	RowBitter        // mg/L
	RowVolume        // mL
	RowBody          // g/100 mL
	RowFizz          // mL that sparkle in 100 mL
	RowAroma         // the first of NumFamilies

	NumRows = RowAroma + flavor.NumFamilies
)

// Place is a finished drink in just-noticeable differences: each row is
// ln(x + floor) over ln(1 + Weber fraction), so that equal steps of a place are
// equal steps of taste wherever they start, and near nothing the scale is even.
type Place [NumRows]float64

// scale is the floor and the Weber fraction of each row, and how much it
// weighs in a distance. The floors are those that covers are judged by.
type scale struct {
	floor, weber, weight [NumRows]float64
}

var scales = newScale(cover.DefaultWeights())

func newScale(w cover.Weights) *scale {
	s := &scale{}
	set := func(row int, floor, weber, weight float64) {
		s.floor[row], s.weber[row], s.weight[row] = floor, math.Log1p(weber), weight
	}
	set(RowStrong, w.EthanolFloor, w.Ethanol, 1)
	set(RowSweet, w.SweetFloor, w.Sweet, 1)
	set(RowSour, w.SourFloor, w.Sour, 1)
	set(RowBitter, 10*w.BitterFloorMG, w.Bitter, 1)
	set(RowVolume, 1, w.Volume, 1)
	set(RowBody, w.BodyFloor, w.Body, 1)
	set(RowFizz, w.FizzFloor, w.Fizz, 1)
	for f := range flavor.NumFamilies {
		set(RowAroma+f, w.AromaFloor, w.Aroma, w.AromaWeight)
	}
	return s
}

// on returns x on the scale of a row.
func (s *scale) on(row int, x float64) float64 {
	return math.Log(max(x, 0)+s.floor[row]) / s.weber[row]
}

// PlaceOf returns the place of a finished drink.
func PlaceOf(s *flavor.Spec, d *mix.Drink) (p Place) {
	per100 := 100 / d.VolumeML
	var fizz float64
	for i := range s.Pours {
		if s.Pours[i].Profile.Carbonated {
			fizz += s.Pours[i].ML
		}
	}
	raw := [NumRows]float64{RowStrong: d.ABV, RowSweet: d.SweetPer100, RowSour: d.AcidPer100, RowBitter: d.Bitter,
		RowVolume: d.VolumeML, RowBody: per100 * d.After.Texture, RowFizz: per100 * fizz}
	copy(raw[RowAroma:], d.Aroma[:])
	for row, x := range raw {
		p[row] = scales.on(row, x)
	}
	return p
}

// Distance is the length of the difference, the aromas weighing less so that
// two dozen families do not outvote the tongue.
func (p *Place) Distance(o *Place) float64 {
	var sum float64
	for row := range p {
		d := scales.weight[row] * (p[row] - o[row])
		sum += d * d
	}
	return math.Sqrt(sum)
}

// RowOf is the row that shows an axis in the finished drink.
func RowOf(a template.Axis) int {
	switch a {
	case template.Strong:
		return RowStrong
	case template.Sweet:
		return RowSweet
	case template.Sour:
		return RowSour
	case template.Bitter:
		return RowBitter
	}
	return RowVolume
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
	pa, pb := PlaceOf(a, da), PlaceOf(b, db)
	return pa.Distance(&pb), nil
}

// TellsAroma is how many just-noticeable differences of one family are said.
const TellsAroma = 1.5

// Told lists the families that grew and shrank enough to be told, those that
// were wished for first and then those that moved most.
func (j *Job) Told(after *mix.Drink) (more, less []flavor.Family) {
	floor := cover.DefaultWeights().AromaFloor
	var moved [flavor.NumFamilies]float64
	for f := range flavor.NumFamilies {
		was, is := j.FromDrink.Aroma[f], after.Aroma[f]
		moved[f] = (is - was) / (balance.WeberAroma * math.Max(was, floor))
		switch {
		case moved[f] >= TellsAroma:
			more = append(more, flavor.Family(f))
		case moved[f] <= -TellsAroma:
			less = append(less, flavor.Family(f))
		}
		for _, x := range j.Limits.Steps {
			if x.Row == RowAroma+f {
				moved[f] = math.Copysign(math.Inf(1), moved[f])
			}
		}
	}
	most := func(a, b flavor.Family) int { return cmp.Compare(math.Abs(moved[b]), math.Abs(moved[a])) }
	slices.SortStableFunc(more, most)
	slices.SortStableFunc(less, most)
	return more, less
}
