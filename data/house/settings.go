package house

import (
	"math"
	"regexp"
	"slices"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/measure"
	"counterpour/flavor/mix"
)

// SettingsID is the id of the settings: a house has one record of them.
const SettingsID = "house"

// Settings is how a house calls itself, and what it measures, pays and counts in.
// What is empty is not stated.
type Settings struct {
	Name     string         `json:"name,omitempty"`
	Units    measure.System `json:"units,omitempty"`    // of the amounts on cards; empty: as each spec is written
	Currency string         `json:"currency,omitempty"` // of prices that are written anew: three letters, as in ISO 4217
	Decimal  string         `json:"decimal,omitempty"`  // DecimalPoint or DecimalComma
	Country  string         `json:"country,omitempty"`  // whose standard drinks are counted, one of [Countries]
}

// What stands between the whole and its parts. Empty counts as the point.
const (
	DecimalPoint = "."
	DecimalComma = ","
)

// usualCountry is whose standard drinks are counted until the house says.
const usualCountry = "United States"

// Countries lists whose standard drinks can be counted, in alphabetical order.
func Countries() []string {
	var out []string
	for _, s := range mix.StandardDrinks(0) {
		out = append(out, s.Country)
	}
	return out
}

// Ref returns the name of the record.
func (s Settings) Ref() Ref { return Ref{KindSettings, SettingsID} }

func (s Settings) check() error {
	return checks(
		checkLine("name", s.Name, false),
		oneOf("units", s.Units, []measure.System{"", measure.Metric, measure.Imperial}),
		checkCurrency(s.Currency),
		oneOf("decimal", s.Decimal, []string{"", DecimalPoint, DecimalComma}),
		oneOf("country", s.Country, append(Countries(), "")),
	)
}

func (s Settings) clean() Item        { s.Name = tidy(s.Name); return s }
func (s Settings) withID(string) Item { return s }
func (s Settings) links() []Ref       { return nil }

// checkCurrency reports whether a currency is empty or three capital letters.
func checkCurrency(currency string) error {
	if currency == "" || len(currency) == 3 && strings.Trim(currency, "ABCDEFGHIJKLMNOPQRSTUVWXYZ") == "" {
		return nil
	}
	return invalid("currency", currency, "currency must be three capital letters, such as EUR")
}

// offMost is how far a pour may move, relative, when it is written in another
// unit; where no mark of a jigger is as near, it stays as it was written. Common
// practice, no source.
const offMost = 0.05

// Pour is a pour as the house writes it: what is measured in a jigger comes in the
// house's units, to the mark that is nearest, and its millilitres stay what they
// were. Anything else is returned as it is.
func (s Settings) Pour(p flavor.Pour) flavor.Pour {
	unit := s.Units.Unit()
	if s.Units == "" || p.Unit == unit || !slices.Contains([]flavor.Unit{flavor.Ounce, flavor.Millilitre, flavor.Centilitre}, p.Unit) {
		return p
	}
	per, ok := measure.MLPerUnit(unit, p.Profile)
	if !ok || !(p.ML > 0) {
		return p
	}
	marked := nearestMark(p.ML/per, unit)
	if math.Abs(marked*per-p.ML) > offMost*p.ML {
		return p
	}
	p.Amount, p.Unit = marked, unit
	return p
}

// nearestMark is the amount that stands on a jigger, the nearest to another: an
// eighth or a third of an ounce, or 2.5 mL, below 5 mL half of one.
func nearestMark(amount float64, unit flavor.Unit) float64 {
	steps := []float64{1. / 8, 1. / 3}
	if unit == flavor.Millilitre {
		steps = []float64{2.5}
		if amount < 5 {
			steps = []float64{0.5}
		}
	}
	var best float64
	for i, step := range steps {
		if mark := math.Round(amount/step) * step; i == 0 || math.Abs(mark-amount) < math.Abs(best-amount) {
			best = mark
		}
	}
	return best
}

var decimalPoint = regexp.MustCompile(`([0-9])\.([0-9])`)

// Figures puts the house's decimal sign into numbers that stand in a text with a
// point.
func (s Settings) Figures(text string) string {
	if s.Decimal != DecimalComma {
		return text
	}
	return decimalPoint.ReplaceAllString(text, "$1,$2")
}

// Standard is how many standard drinks of the house's country so many grams of
// ethanol are, those of the United States until it names one that is known.
func (s Settings) Standard(ethanolG float64) mix.Serving {
	var usual mix.Serving
	for _, x := range mix.StandardDrinks(ethanolG) {
		switch x.Country {
		case s.Country:
			return x
		case usualCountry:
			usual = x
		}
	}
	return usual
}
