package mix

import "counterpour/flavor"

// EthanolG returns the grams of ethanol in ml millilitres, at 20 °C, of abv
// per cent by volume.
func EthanolG(abv, ml float64) float64 { return ml * abv / 100 * EthanolDensity }

// Standard is the number of one country's standard drinks.
type Standard struct {
	Country string
	Grams   float64 // of ethanol in one standard drink
	Count   float64
	Origin  flavor.Origin
	Source  string
}

// Sources of the standard drinks.
const (
	kalinowski = "Kalinowski and Humphreys, Addiction 111:1293, 2016"
	niaaa      = "NIAAA, What is a standard drink"
)

// ukUnitML is the pure ethanol in a UK unit, in mL at 20 °C.
const ukUnitML = 10

// standards are the standard drinks of countries, in alphabetical order. Health
// authorities use them for counting; they are not limits.
var standards = []Standard{
	{"Australia", 10, 0, flavor.OriginPublished, kalinowski},
	{"Austria", 20, 0, flavor.OriginPublished, kalinowski},
	{"Canada", 13.45, 0, flavor.OriginPublished, "Canadian Centre on Substance Use and Addiction, Canada's Guidance on Alcohol and Health, 2023"},
	{"Chile", 14, 0, flavor.OriginPublished, kalinowski},
	{"China", 10, 0, flavor.OriginPublished, kalinowski},
	{"Denmark", 12, 0, flavor.OriginPublished, kalinowski},
	{"France", 10, 0, flavor.OriginPublished, kalinowski},
	{"Germany", 10, 0, flavor.OriginPublished, kalinowski},
	{"Iceland", 8, 0, flavor.OriginPublished, kalinowski},
	{"India", 10, 0, flavor.OriginPublished, kalinowski},
	{"Ireland", 10, 0, flavor.OriginPublished, kalinowski},
	{"Japan", 20, 0, flavor.OriginMemory, "Ministry of Health, Labour and Welfare, Japan: the traditional measure"},
	{"Luxembourg", 12.8, 0, flavor.OriginPublished, kalinowski},
	{"New Zealand", 10, 0, flavor.OriginPublished, kalinowski},
	{"Singapore", 10, 0, flavor.OriginPublished, kalinowski},
	{"Switzerland, high end", 12, 0, flavor.OriginPublished, kalinowski},
	{"Switzerland, low end", 10, 0, flavor.OriginPublished, kalinowski},
	{"United Kingdom", ukUnitML * EthanolDensity, 0, flavor.OriginPublished, kalinowski + "; there rounded to 8 g, defined as 10 mL of ethanol"},
	{"United States", 14, 0, flavor.OriginPublished, niaaa},
	{"Vietnam", 10, 0, flavor.OriginPublished, kalinowski},
	{"World Health Organization", 10, 0, flavor.OriginPublished, "WHO, AUDIT: the Alcohol Use Disorders Identification Test, 2nd ed., 2001"},
}

// StandardDrinks converts ethanolG grams of ethanol to the standard drinks of each
// country, in alphabetical order. A value that is not positive gives 0. The caller may
// keep the result.
func StandardDrinks(ethanolG float64) []Standard {
	if !(ethanolG > 0) {
		ethanolG = 0
	}
	out := make([]Standard, len(standards))
	for i, s := range standards {
		s.Count = ethanolG / s.Grams
		out[i] = s
	}
	return out
}
