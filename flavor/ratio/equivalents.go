package ratio

import (
	"fmt"

	"counterpour/flavor"
	"counterpour/flavor/mix"
)

// Axis is a direction in which a drink can be out of balance.
type Axis int

// The five axes of a ratio.
const (
	Strong Axis = iota
	Sweet
	Sour
	Bitter
	Long

	NumAxes = int(Long) + 1
)

// What a drink can have too much of beside its ratio, and what can be wrong with
// how it is made. No array of NumAxes has a place for these.
const (
	Salty Axis = Axis(NumAxes) + iota
	Umami
	Pungent
	Aroma
	Fat
	Foam
	Volume
	Temperature
	Method

	numNames = int(Method) + 1
)

var axisNames = [numNames]string{"strong", "sweet", "sour", "bitter", "long",
	"salty", "umami", "pungent", "aroma", "fat", "foam", "volume", "temperature", "method"}

var axisParts = [NumAxes]flavor.Part{Strong: flavor.PartBase, Sweet: flavor.PartSweetener, Sour: flavor.PartSour,
	Bitter: flavor.PartModifier, Long: flavor.PartLength}

// Part returns the part whose pours a bartender moves to move the axis: length for what is
// no axis of a ratio.
func (a Axis) Part() flavor.Part {
	if a < 0 || int(a) >= NumAxes {
		return flavor.PartLength
	}
	return axisParts[a]
}

// Axes lists the axes in order.
func Axes() [NumAxes]Axis { return [NumAxes]Axis{Strong, Sweet, Sour, Bitter, Long} }

// String returns the axis as the trade says it.
func (a Axis) String() string {
	if a < 0 || int(a) >= numNames {
		return fmt.Sprintf("axis(%d)", int(a))
	}
	return axisNames[a]
}

// Noun names one of [Axes] as a thing that there is more or less of; another axis has its
// own name.
func (a Axis) Noun() string {
	if a < 0 || int(a) >= NumAxes {
		return a.String()
	}
	return [NumAxes]string{"strength", "sweetness", "acid", "bitterness", "length"}[a]
}

// Measure names what one of [Axes] is counted in; empty for another axis.
func (a Axis) Measure() string {
	if a < 0 || int(a) >= NumAxes {
		return ""
	}
	return [NumAxes]string{"40 % spirit", "1:1 syrup", "lemon juice", "red bitter aperitif", "water"}[a]
}

// ParseAxis returns the axis of a ratio that a word names.
func ParseAxis(word string) (Axis, bool) {
	for i, n := range axisNames[:NumAxes] {
		if n == word {
			return Axis(i), true
		}
	}
	return 0, false
}

// What one millilitre of each equivalent carries, in grams (bitter in mg).
const (
	// SpiritEthanol is a 40 % vol spirit.
	SpiritEthanol = 0.40 * mix.EthanolDensity
	// SyrupSweet is syrup of equal weights of sugar and water: 614.8 g/L at
	// 50 Brix, CRC Handbook of Chemistry and Physics, aqueous sucrose.
	SyrupSweet = 0.6148
	// LemonSour is fresh lemon juice: citric acid 48.0 g/L (Penniston et al.,
	// J Endourol 22:567, 2008) and some malic, 50 g/L as citric.
	LemonSour = 0.050
	// AperitifBitter is a red bitter aperitif, 160 mg/L as quinine, judged
	// against tonic water.
	AperitifBitter = 0.160
)

// Equivalents is a drink in millilitres of the trade's own measures, before ice.
type Equivalents [NumAxes]float64

// Total returns the sum of all axes, in mL.
func (e *Equivalents) Total() float64 {
	var t float64
	for _, v := range e {
		t += v
	}
	return t
}

// Add adds times × o.
func (e *Equivalents) Add(o *Equivalents, times float64) {
	for i := range e {
		e[i] += times * o[i]
	}
}

// PerML returns what one millilitre of p adds. Its length is what is left of
// the millilitre once spirit, syrup and lemon juice that carry the same are
// taken away, and so may be negative; egg, dairy and foam thicken a drink and
// do not lengthen it.
func PerML(p *flavor.Profile) Equivalents {
	l := mix.PerML(p)
	e := Equivalents{
		Strong: l.Ethanol / SpiritEthanol,
		Sweet:  l.Sweet / SyrupSweet,
		Sour:   l.Sour / LemonSour,
		Bitter: l.Bitter / AperitifBitter,
	}
	if p.Class.Part() != flavor.PartTexture {
		e[Long] = 1 - e[Strong] - e[Sweet] - e[Sour]
	}
	return e
}

// EquivalentsOf restates the pours of a spec. Length is never negative: a
// drink of strong spirits and rich syrups has none.
func EquivalentsOf(s *flavor.Spec) Equivalents {
	var e Equivalents
	for i := range s.Pours {
		if s.Pours[i].Profile == nil {
			continue
		}
		per := PerML(s.Pours[i].Profile)
		e.Add(&per, s.Pours[i].ML)
	}
	e[Long] = max(0, e[Long])
	return e
}
