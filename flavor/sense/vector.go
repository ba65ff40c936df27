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
const AromaDims = 64

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
	s.smell(p, func(d *direct, intensity float64) { add(v.aroma(), d.factor[:], intensity) })
	return v
}
