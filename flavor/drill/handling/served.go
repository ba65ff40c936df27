package handling

import (
	"math"

	"counterpour/flavor"
	"counterpour/flavor/mix"
	"counterpour/flavor/sense"
)

// Served is what can be seen and tasted of how a drink was made.
type Served struct {
	ABV          float64 // % vol
	VolumeML     float64
	TemperatureC float64 // as it is served
	WaterPct     float64 // of the ice, per cent of the volume that met it
	Look         Look
}

// Look is what a drink looks like once it was made.
type Look int

// What drinks look like.
const (
	Still     Look = iota // without air in it
	Airy                  // full of fine air
	Headed                // under a head of foam
	Headless              // without the head of foam that is its own
	Sparkling             // with its bubbles
	Flat                  // without them
)

// leastShown is how many noticeable steps a fault must show in the glass, and lookSteps how
// many another look is worth: nobody overlooks it. Common practice, no source.
const (
	leastShown = 1.0
	lookSteps  = 12.0
)

func servedOf(s *flavor.Spec, d *mix.Drink, flat bool) Served {
	return Served{ABV: d.ABV, VolumeML: d.VolumeML, TemperatureC: d.TemperatureC, WaterPct: d.DilutionPct, Look: lookOf(s, flat)}
}

func lookOf(s *flavor.Spec, flat bool) Look {
	airy := shaken(s.Method) || s.Method == flavor.Swizzle || s.Method == flavor.Blend
	switch foams := s.HasKin(flavor.KinFoam); {
	case flat:
		return Flat
	case foams && airy:
		return Headed
	case foams:
		return Headless
	case s.Has(fizzes):
		return Sparkling
	case airy:
		return Airy
	}
	return Still
}

// Steps is how many noticeable steps lie between two drinks, by what tells them best.
func (g *Served) Steps(o *Served) float64 {
	steps := 0.0
	if g.Look != o.Look {
		steps = lookSteps
	}
	return max(steps,
		math.Abs(sense.StepsBetween(sense.Ethanol, g.ABV, o.ABV)),
		math.Abs(sense.StepsBetween(sense.Volume, g.VolumeML, o.VolumeML)),
		math.Abs(sense.StepsBetween(sense.Temperature, g.TemperatureC, o.TemperatureC)))
}
