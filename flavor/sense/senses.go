package sense

import "math"

// Sense is one way in which two glasses can differ.
type Sense int

// The senses. Those up to Cloud are single concentrations, the same places of a
// [Vector].
const (
	Ethanol     Sense = iota // % vol
	Sweet                    // g/L of sucrose that tastes as sweet
	Sour                     // g/L of citric acid with as much acid hydrogen
	Salty                    // g/L of sodium chloride
	Bitter                   // mg/L of quinine that tastes as bitter
	Umami                    // g/L of monosodium glutamate
	Pungent                  // mg/L of capsaicin that bites as much
	Cooling                  // mg/L of menthol
	Astringent               // g/L of tannic acid
	Carbonation              // g/L of carbon dioxide
	Body                     // g/L of what thickens beyond sugar
	Fat                      // g/L
	Foam                     // g/L of egg-white protein that holds as much foam
	Cloud                    // absorbance per cm by scattering
	Colour                   // absorbance per cm in three bands
	Aroma                    // intensity, on the scale of [flavor.AromaFamilies]
	Temperature              // °C
	Volume                   // mL in the glass

	NumSenses = int(Volume) + 1
)

const numSingles = int(Cloud) + 1

// law is Weber's law for one sense, with its floor.
type law struct {
	id   string
	unit string
	// weber is the least relative change that most tasters notice.
	weber float64
	// threshold is the least amount that they notice in water, in unit.
	threshold float64
	// weight scales the steps: below 1 for what is seen beside what is tasted.
	weight float64
	source string
}

// The laws of all senses but temperature. Weber fractions named "comparable to
// thickness" are a reading of Camacho, Dop, de Graaf and Stieger, J Food Sci,
// 2015, doi 10.1111/1750-3841.12922. What is marked judged is from memory
// of tasting practice: no published figure is at hand.
var laws = [NumSenses]law{
	Ethanol: {"strong", "% vol", 0.10, 0.1, 1,
		"k: Yu and Pickering, Am J Enol Vitic 59:146, 2008, retronasal, in wine; threshold: published values for its odour in water go up to 990 mg/L, 0.13 % vol (van Gemert, Odour Thresholds, 2011; from memory); near the upper end, since other odours are in the glass"},
	Sweet: {"sweet", "g/L sucrose", 0.15, 3.4, 1,
		"k: McBride, Perception and Psychophysics, 1983; Schutz and Pilgrim, J Exp Psychol 54:41, 1957; threshold 0.01 mol/L: Guyton and Hall, Textbook of Medical Physiology (from memory)"},
	Sour: {"sour", "g/L citric acid", 0.25, 0.06, 1,
		"k: comparable to thickness, Camacho et al.; threshold 0.9 mmol/L of acid hydrogen: Guyton and Hall (from memory)"},
	Salty: {"salty", "g/L sodium chloride", 0.15, 0.58, 1,
		"k: as for sweetness (judged); threshold 0.01 mol/L: Guyton and Hall (from memory)"},
	Bitter: {"bitter", "mg/L quinine", 0.28, 2.6, 1,
		"k: comparable to thickness, Camacho et al.; threshold 8 µmol/L: Guyton and Hall (from memory)"},
	Umami: {"umami", "g/L monosodium glutamate", 0.20, 0.2, 1,
		"k: judged; threshold near 1 mmol/L (from memory)"},
	Pungent: {"pungent", "mg/L capsaicin", 0.25, 0.1, 1,
		"judged; thresholds of capsaicin in water are given between 0.06 and 0.3 mg/L (from memory)"},
	Cooling: {"cooling", "mg/L menthol", 0.25, 2, 1,
		"judged; cooling of menthol in water begins at a few mg/L (from memory)"},
	Astringent: {"astringent", "g/L tannic acid", 0.26, 0.1, 1,
		"k: as thickness (judged); threshold of tannic acid near 0.1 g/L (from memory)"},
	Carbonation: {"carbonation", "g/L carbon dioxide", 0.26, 0.4, 1,
		"k: as thickness (judged); threshold near 0.4 g/L (from memory)"},
	Body: {"body", "g/L", 0.26, 2.6, 1,
		"k: Camacho et al., oral thickness; threshold judged"},
	Fat: {"fat", "g/L", 0.26, 2.6, 1,
		"k: as thickness (judged); tasters tell skimmed from whole milk at a few g/L (from memory)"},
	Foam: {"foam", "g/L egg-white protein", 0.26, 0.8, 1,
		"judged: an eighth of an egg white in a drink shows"},
	Cloud: {"cloud", "absorbance per cm", 0.30, 0.03, 0.5,
		"judged"},
	Colour: {"colour", "absorbance per cm", 0.30, 0.045, 1,
		"judged, so that straw from pale gold is a step in a finger's depth; the eye tells far finer in two glasses held together"},
	Aroma: {"aroma", "intensity", 0.25, 0.1, 1,
		"k: Cain, Science 195:796, 1977, odour intensity (from memory); threshold a hundredth of a neat bottle's leading note (judged)"},
	Volume: {"volume", "mL", 0.10, 0.5, 1,
		"k: as ethanol, since more length is noticed as less strength (judged)"},
}

// degreesPerStep is a step of temperature in the mouth, °C: judged; thermal
// thresholds of lip and tongue are finer, near 1 °C (from memory).
const degreesPerStep = 2.0

// String returns the sense's identifier, such as "sweet".
func (s Sense) String() string {
	switch {
	case s == Temperature:
		return "temperature"
	case s < 0 || int(s) >= NumSenses:
		return "unknown"
	}
	return laws[s].id
}

// Unit returns the unit in which the sense is measured.
func (s Sense) Unit() string {
	switch {
	case s == Temperature:
		return "°C"
	case s < 0 || int(s) >= NumSenses:
		return ""
	}
	return laws[s].unit
}

// Weber returns the Weber fraction k of a sense, 0 for temperature, which has
// none.
func (s Sense) Weber() float64 { return laws[s].weber }

// Threshold returns the least amount that is noticed in water, in the sense's unit:
// one step from nothing, but for the weight of what is seen. For temperature, which
// has no nothing, it is a step.
func (s Sense) Threshold() float64 {
	if s == Temperature {
		return degreesPerStep
	}
	return laws[s].threshold
}

// Source says where the sense's constants come from.
func (s Sense) Source() string {
	if s == Temperature {
		return "a step is 2 °C in the mouth, judged"
	}
	return laws[s].source
}

// floor is x₀: the threshold over the Weber fraction.
func (l *law) floor() float64 { return l.threshold / l.weber }

// at places an amount on the line on which a step is a unit of length. Amounts
// below zero, which no glass has, count as zero.
func (l *law) at(x float64) float64 {
	return l.weight * math.Log1p(max(x, 0)/l.floor()) / math.Log1p(l.weber)
}

// slope is the steps per unit of amount near x.
func (l *law) slope(x float64) float64 {
	return l.weight / ((max(x, 0) + l.floor()) * math.Log1p(l.weber))
}

// StepsBetween returns how many steps lead from an amount of a sense to another,
// both in its unit, positive if there is more of it: ln((to+x₀)/(from+x₀)) /
// ln(1+k), times the weight of the sense. It is for the senses that are one number; for [Colour] and [Aroma] it
// is the same along one direction.
func StepsBetween(s Sense, from, to float64) float64 {
	if s == Temperature {
		return (to - from) / degreesPerStep
	}
	l := &laws[s]
	return l.at(to) - l.at(from)
}
