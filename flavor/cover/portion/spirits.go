package portion

import "counterpour/flavor"

// Spirits is an amount of spirits, and the alcohol in it, both in mL.
type Spirits struct {
	ML, Alcohol float64
	Bottles     int
}

// Add adds so many mL of p, if it is a spirit.
func (s *Spirits) Add(p *flavor.Profile, ml float64) {
	if p.Class.Kin() == flavor.KinSpirit {
		s.ML, s.Alcohol, s.Bottles = s.ML+ml, s.Alcohol+ml*p.ABV.Value/100, s.Bottles+1
	}
}

// measureSlack is the share by which what stands for something in its measure may be more or
// less.
const measureSlack = 0.1

// SameMeasure reports whether so many mL are the measure of others.
func SameMeasure(ml, was float64) bool {
	return ml >= (1-measureSlack)*was && ml <= (1+measureSlack)*was
}

// MeasureOf reports whether the spirits are a full measure in place of others, in volume or
// in alcohol.
func (s *Spirits) MeasureOf(was *Spirits) bool {
	volume, alcohol := s.ML/was.ML, s.Alcohol/was.Alcohol
	return max(volume, alcohol) >= 1-measureSlack && min(volume, alcohol) <= 1+measureSlack
}
