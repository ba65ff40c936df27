package tasting

import (
	"math"

	"counterpour/flavor"
	"counterpour/flavor/mix"
)

// marks are how far apart the marks are of the vessel that a bar measures up to so many mL in:
// a fine syringe, a syringe, a large one, measuring cylinders, a jug. They are finer than those
// of a batch to be sold, since in a tasting a step of sugar or acid must come out. Common
// practice, no source.
var marks = []struct{ upTo, step float64 }{{1, 0.1}, {10, 0.25}, {25, 0.5}, {100, 1}, {250, 2}, {1000, 5}, {math.Inf(1), 10}}

// Measured is the mark of a vessel that is nearest to a volume above 0, in mL; 0 for 0 and
// below.
func Measured(ml float64) float64 {
	if ml <= 0 {
		return 0
	}
	for _, m := range marks {
		if ml < m.upTo {
			per := math.Round(1 / m.step) // dividing is exact for quarters, and rounds once for tenths
			if m.step >= 1 {
				return m.step * max(1, math.Round(ml/m.step))
			}
			return max(1, math.Round(ml*per)) / per
		}
	}
	return ml
}

// SheetOf is a batch as it is measured: liquids in mL, to the marks of a vessel, solids as a
// scale tells them or in whole pieces; tops are for one glass.
func SheetOf(plan *mix.BatchPlan) BatchSheet {
	s := BatchSheet{Servings: plan.Servings, WaterML: plan.WaterML, TotalML: plan.BottleML}
	for _, p := range plan.Bottle.Pours {
		s.Pours = append(s.Pours, measured(p))
	}
	for _, p := range plan.Tops {
		s.Tops = append(s.Tops, measured(p))
	}
	s.settle(&plan.Bottle)
	return s
}

// settle rounds the water, and sums up what that and the pours, against those of a bottle as
// it was worked out, come to.
func (s *BatchSheet) settle(bottle *flavor.Spec) {
	was := s.WaterML
	s.WaterML = Measured(was)
	s.TotalML += s.WaterML - was
	for i := range s.Pours {
		s.TotalML += s.Pours[i].ML - bottle.Pours[i].ML
	}
	s.PourML = s.TotalML / s.Servings
}

// measured is a pour as it is measured out.
func measured(p flavor.Pour) flavor.Pour {
	if p.Profile.Class.Solid() {
		was := p.Amount
		p.Amount = counted(p.Amount, p.Unit)
		p.ML *= p.Amount / was
		return p
	}
	p.ML = Measured(p.ML)
	p.Amount, p.Unit = p.ML, flavor.Millilitre
	return p
}

// grainG is what a small scale tells apart, in g. Common practice, no source.
const grainG = 0.1

// counted is an amount of what is no liquid, above 0, as it is measured out: grams to those of
// a scale, pieces and leaves so that none is short, and else the nearest whole pinch or spoon.
func counted(amount float64, u flavor.Unit) float64 {
	switch {
	case u == flavor.Gram:
		per := math.Round(1 / grainG)
		return max(1, math.Round(amount*per)) / per
	case u.Counted():
		return max(1, math.Ceil(amount-1e-9))
	}
	return max(1, math.Round(amount))
}
