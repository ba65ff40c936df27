package sense

import (
	"counterpour/flavor"
	"counterpour/flavor/mix"
)

// Places of a [Vector] after the single senses.
const (
	atRed   = numSingles
	atGreen = atRed + 1
	atBlue  = atRed + 2
	atAroma = atRed + 3
)

// AromaDims is how many numbers the aroma of a material is factored to.
const AromaDims = 48

// Dims is the length of a [Vector].
const Dims = atAroma + AromaDims

// Vector is what a liquid holds, in the units of [Sense]: a place for each
// single sense, three for the colour, [AromaDims] for the aroma. Liquids mix by
// volume, and so do their vectors.
type Vector [Dims]float64

// Add adds times × o to v.
func (v *Vector) Add(o *Vector, times float64) {
	for i := range v {
		v[i] += times * o[i]
	}
}

// aroma returns the aroma of v.
func (v *Vector) aroma() []float64 { return v[atAroma:] }

// PerML returns what p holds, so that a drink of pours pᵢ of mᵢ mL in a finished
// volume V has the concentrations Σ mᵢ PerML(pᵢ) / V. A material that the
// space does not know, and aroma that no material accounts for, count by
// family.
func (s *Space) PerML(p *flavor.Profile) Vector {
	l := mix.PerML(p)
	n := &p.Senses
	v := Vector{
		Ethanol: p.ABV.Value,
		Sweet:   1000 * l.Sweet, Sour: 1000 * l.Sour, Salty: 1000 * l.Salt, Bitter: 1000 * l.Bitter,
		Umami: n.UmamiGPerL, Pungent: n.PungentMGPerL, Cooling: n.CoolingMGPerL, Astringent: n.AstringentGPerL,
		Carbonation: n.CarbonationGPerL, Body: 1000 * l.Texture, Fat: 1000 * l.Fat, Foam: n.FoamGPerL,
		Cloud: n.Colour.Cloud, atRed: n.Colour.Red, atGreen: n.Colour.Green, atBlue: n.Colour.Blue,
	}
	s.addAroma(&v, p)
	return v
}

// addAroma adds the aroma of a profile to v.
func (s *Space) addAroma(v *Vector, p *flavor.Profile) {
	rest := p.Aroma
	for _, m := range p.Materials {
		row, ok := s.materials[m.Material]
		if !ok {
			continue
		}
		for i, x := range row.factor {
			v[atAroma+i] += m.Intensity * x
		}
		for f, share := range row.shares {
			rest[f] -= m.Intensity * share
		}
	}
	for f, left := range rest {
		if left < leastFamily {
			continue // the materials account for it, but for rounding
		}
		for i, x := range s.families[f] {
			v[atAroma+i] += left * x
		}
	}
}

// leastFamily is the intensity of a family below which what the materials leave
// over is rounding.
const leastFamily = 1e-6
