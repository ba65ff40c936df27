package riff

import (
	"math"
	"slices"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/mix"
	"counterpour/flavor/template"
)

// draft is a drink whose amounts are still to be solved.
type draft struct {
	spec   flavor.Spec
	kind   Kind
	moves  int     // how many moves made it
	lost   int     // pours left out without anything in their place
	likely float64 // how much it looks like a proven drink, 0 to 1
	rank   float64 // order in which drafts of a kind are solved
}

// key names what is in a draft and how it is served, whatever the amounts.
func keyOf(s *flavor.Spec) string {
	ids := make([]string, len(s.Pours))
	for i := range s.Pours {
		ids[i] = s.Pours[i].Profile.ID
	}
	slices.Sort(ids)
	return strings.Join(ids, " ") + "/" + string(s.Method) + "/" + string(s.Service)
}

// solved is a draft with its amounts, mixed and judged.
type solved struct {
	draft
	score float64
	drink *mix.Drink
	at    place
	short float64 // just-noticeable differences that the wishes still lack
	merit float64
}

// What the amounts are weighed by, in points of score.
const (
	enough        = 85.0 // a score beyond this is worth no more: the drink is its family's
	pointsPerJND  = 25.0 // what a just-noticeable difference short of a wish costs
	pointsPerABV  = 12.0 // what 1 % vol beyond a limit costs
	pointsPerMove = 0.6  // what a step of the jigger away from the draft costs
	pointsPerVol  = 40.0 // what the logarithm of the volume, beyond its room, costs
	maxClimb      = 14   // steps of the jigger that amounts may take in all
	roomSmaller   = 0.80 // of the volume before ice
	roomLarger    = 1.25
	aimBeyond     = 0.15 // just-noticeable differences aimed beyond a wish, so that rounding does not undo it
)

// solver seeks the amounts of one draft.
type solver struct {
	work   *work
	spec   *flavor.Spec
	build  *template.Build
	start  []float64
	ml     []float64
	amount []float64
	least  []float64
	steps  []int // taken by each pour, up and down
	water  float64
	ledger []mix.Ledger
	room   float64 // volume before ice that the draft set out with
}

// solve settles the amounts of a draft by climbing, one step of the jigger at a
// time, or two where one does not help, until nothing improves. It returns nil
// if the draft cannot be mixed.
func (w *work) solve(d *draft) (*solved, error) {
	drink, err := w.riffer.mixer.Mix(&d.spec)
	if err != nil {
		return nil, err
	}
	s := &solver{work: w, spec: &d.spec, water: drink.VolumeML - drink.BeforeML}
	if s.build, err = w.riffer.judge.Prepare(&d.spec); err != nil {
		return nil, nil // nothing in it to weigh: no drink
	}
	s.water /= drink.BeforeML
	s.begin()
	merit := s.climb()
	out := &solved{draft: *d, merit: merit}
	out.spec = s.result()
	if out.drink, err = w.riffer.mixer.Mix(&out.spec); err != nil {
		return nil, err
	}
	out.score = s.build.Score(s.ml)
	out.at = placeOf(&out.spec, out.drink)
	if w.spec != nil {
		out.short = w.limits.shortfall(&w.at, &out.at)
	}
	return out, nil
}

func (s *solver) begin() {
	s.ml = s.build.Amounts()
	s.start = slices.Clone(s.ml)
	s.steps = make([]int, len(s.ml))
	s.amount = make([]float64, len(s.ml))
	s.least = make([]float64, len(s.ml))
	s.ledger = make([]mix.Ledger, len(s.ml))
	for i := range s.spec.Pours {
		p := &s.spec.Pours[i]
		s.amount[i], s.least[i] = p.Amount, s.work.leastOf(p)
		s.room += p.ML
		if it, ok := s.work.has(p.Profile); ok {
			s.ledger[i] = it.ledger
		} else {
			s.ledger[i] = mix.PerML(p.Profile)
		}
	}
}

// merit weighs the amounts: the score, less what wishes and limits lack, less
// what it took to get there.
func (s *solver) merit() float64 {
	m := min(s.build.Score(s.ml), enough) - s.lacks()
	var volume float64
	for i := range s.ml {
		volume += s.ml[i]
		m -= pointsPerMove * math.Abs(float64(s.steps[i]))
	}
	ratio := volume / s.room
	m -= pointsPerVol * max(0, math.Log(roomSmaller/ratio), math.Log(ratio/roomLarger))
	return m
}

// lacks estimates, in points, how far wishes and strength limits are from met,
// with the water of the draft's own ice.
func (s *solver) lacks() float64 {
	l := s.work.limits
	if len(l.steps) == 0 && math.IsInf(l.maxABV, 1) && l.minABV == 0 {
		return 0
	}
	var volume, ethanol float64
	for i := range s.ml {
		volume += s.ml[i]
		ethanol += s.ml[i] * s.ledger[i].Ethanol
	}
	volume *= 1 + s.water
	abv := 100 * ethanol / mix.EthanolDensity / volume
	lack := pointsPerABV * max(0, abv-l.maxABV*abvMargin, l.minABV-abv*abvMargin)
	if s.work.spec == nil {
		return lack
	}
	for i := range l.steps {
		x := &l.steps[i]
		after := scales.on(x.row, s.raw(x.row, volume, abv))
		by := after - s.work.at[x.row]
		if !x.up {
			by = -by
		}
		lack += pointsPerJND * max(0, x.least+aimBeyond-by)
	}
	return lack
}

// abvMargin keeps an estimate of strength on the safe side of a limit.
const abvMargin = 0.98

// raw returns what a row of the finished drink would be.
func (s *solver) raw(row int, volume, abv float64) float64 {
	switch row {
	case rowStrong:
		return abv
	case rowVolume:
		return volume
	}
	var sum float64
	for i := range s.ml {
		l := &s.ledger[i]
		switch row {
		case rowSweet:
			sum += 100 * s.ml[i] * l.Sweet
		case rowSour:
			sum += 100 * s.ml[i] * l.Sour
		case rowBitter:
			sum += 1000 * s.ml[i] * l.Bitter
		default:
			sum += s.ml[i] * l.Aroma[row-rowAroma]
		}
	}
	return sum / volume
}

func (s *solver) result() flavor.Spec {
	out := s.spec.Clone()
	for i := range out.Pours {
		out.Pours[i].Amount, out.Pours[i].ML = s.amount[i], s.ml[i]
	}
	return out
}
