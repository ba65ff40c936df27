package house

import (
	"math"
	"regexp"
	"slices"
	"strings"

	iso "golang.org/x/text/currency"

	"counterpour/flavor"
	"counterpour/flavor/measure"
	"counterpour/flavor/mix"
)

// SettingsID is the id of the only settings record.
const SettingsID = "house"

// Settings is the house's name, units, currency and other conventions. Empty fields are
// not set.
type Settings struct {
	Name     string         `json:"name,omitempty"`
	Units    measure.System `json:"units,omitempty"`    // of amounts on cards; empty: as each spec is written
	Currency string         `json:"currency,omitempty"` // of new prices: three letters, as in ISO 4217
	Decimal  string         `json:"decimal,omitempty"`  // DecimalPoint or DecimalComma
	Country  string         `json:"country,omitempty"`  // whose standard drinks are used, one of [Countries]
}

// Decimal marks. Empty counts as the point.
const (
	DecimalPoint = "."
	DecimalComma = ","
)

// usualCountry is the country whose standard drinks are used by default.
const usualCountry = "United States"

// Countries lists the countries with a standard drink, in alphabetical order.
func Countries() []string {
	var out []string
	for _, s := range mix.StandardDrinks(0) {
		out = append(out, s.Country)
	}
	return out
}

// Ref returns the kind and id of the record.
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

// checkCurrency returns an error unless a currency is empty or the three capital letters of
// one (ISO 4217).
func checkCurrency(currency string) error {
	switch {
	case currency == "":
		return nil
	case len(currency) != 3 || strings.Trim(currency, "ABCDEFGHIJKLMNOPQRSTUVWXYZ") != "":
		return invalid("currency", currency, "currency must be three capital letters, such as EUR")
	}
	if _, err := iso.ParseISO(currency); err != nil {
		return invalid("currency", currency, "no currency has the letters %s; write those of one, such as EUR", currency)
	}
	return nil
}

// offMost is the largest relative change of a pour that is converted to another unit. If
// no jigger mark is that close, the pour keeps its unit. Common practice, no source.
const offMost = 0.05

// Pour converts a pour to the house's units, rounded to the nearest jigger mark; its
// millilitres do not change. Pours that are not measured with a jigger are returned
// unchanged.
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

// ForList returns the settings with units for drinks that stand in one list: the house's,
// or, if it has none, those that most of the drinks are written in. A tie is for ounces.
func (s Settings) ForList(drinks []*flavor.Spec) Settings {
	if s.Units != "" {
		return s
	}
	metric := 0
	for _, d := range drinks {
		if measure.SystemOf(d) == measure.Metric {
			metric++
		}
	}
	s.Units = measure.Imperial
	if 2*metric > len(drinks) {
		s.Units = measure.Metric
	}
	return s
}

// roundMost is the largest relative distance at which a mark of 5 mL is taken, though one
// of 2.5 mL is nearer: 3 oz are poured as 90 mL. Common practice, no source.
const roundMost = 0.02

// nearestMark returns the amount on a jigger nearest to another: eighths and thirds of an
// ounce; steps of 2.5 mL, where one of 5 mL is not near enough, and below 5 mL of 0.5 mL.
func nearestMark(amount float64, unit flavor.Unit) float64 {
	if unit == flavor.Millilitre {
		if round := nearestOf(amount, 5); math.Abs(round-amount) <= roundMost*amount {
			return round
		}
		if amount < 5 {
			return nearestOf(amount, 0.5)
		}
		return nearestOf(amount, 2.5)
	}
	eighths, thirds := nearestOf(amount, 1./8), nearestOf(amount, 1./3)
	if math.Abs(thirds-amount) < math.Abs(eighths-amount) {
		return thirds
	}
	return eighths
}

// nearestOf returns the multiple of a step nearest to an amount.
func nearestOf(amount, step float64) float64 { return math.Round(amount/step) * step }

var decimalPoint = regexp.MustCompile(`([0-9])\.([0-9])`)

// Figures replaces decimal points in a text by the house's decimal mark.
func (s Settings) Figures(text string) string {
	if s.Decimal != DecimalComma {
		return text
	}
	return decimalPoint.ReplaceAllString(text, "$1,$2")
}

// Standard converts grams of ethanol to standard drinks of the house's country, or of
// [usualCountry] if none is set.
func (s Settings) Standard(ethanolG float64) mix.Standard {
	var usual mix.Standard
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
