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

// How far a pour may be from the mark that it is converted to, as a share of the pour: common
// practice, no source.
const (
	offMost     = 0.05 // without a word
	roundedMost = 0.25 // if it is shown as rounded
)

// Pour converts a pour to the house's units, rounded to the nearest mark of a jigger, or of a
// spoon where that is nearer; its millilitres do not change. A jigger for ounces has few marks,
// so that such a pour may be [Rounded]. A pour keeps its unit if no mark is near enough, or if it
// is not measured with a jigger.
func (s Settings) Pour(p flavor.Pour) flavor.Pour {
	unit := s.Units.Unit()
	if s.Units == "" || p.Unit == unit || !slices.Contains([]flavor.Unit{flavor.Ounce, flavor.Millilitre, flavor.Centilitre}, p.Unit) {
		return p
	}
	if unit == flavor.Millilitre {
		if to, near := onMark(p, unit, millilitreMark, offMost); near {
			return to
		}
		return p
	}
	if to, near := onMark(p, unit, ounceMark, offMost); near {
		return to
	}
	if spoon, near := onMark(p, flavor.Teaspoon, func(n float64) float64 { return math.Min(nearestOf(n, 0.5), 1) }, offMost); near {
		return spoon
	}
	if to, near := onMark(p, unit, ounceMark, roundedMost); near {
		return to
	}
	return p
}

// onMark writes a pour in a unit, at the mark nearest to it. near is false if that is farther
// off than most, as a share of the pour.
func onMark(p flavor.Pour, u flavor.Unit, mark func(float64) float64, most float64) (to flavor.Pour, near bool) {
	per, ok := measure.MLPerUnit(u, p.Profile)
	if !ok || !(p.ML > 0) {
		return p, false
	}
	to = p
	to.Amount, to.Unit = mark(p.ML/per), u
	return to, to.Amount > 0 && math.Abs(to.Amount*per-p.ML) <= most*p.ML
}

// Rounded reports whether the amount of a pour in ounces is farther from its millilitres than
// goes without a word.
func Rounded(p flavor.Pour) bool {
	per, ok := measure.MLPerUnit(p.Unit, p.Profile)
	return ok && p.Unit == flavor.Ounce && p.ML > 0 && math.Abs(p.Amount*per-p.ML) > offMost*p.ML
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

// millilitreMark returns the amount on a metric jigger nearest to another: in steps of 2.5 mL,
// where one of 5 mL is not near enough, and below 5 mL of 0.5 mL.
func millilitreMark(ml float64) float64 {
	if round := nearestOf(ml, 5); math.Abs(round-ml) <= roundMost*ml {
		return round
	}
	if ml < 5 {
		return nearestOf(ml, 0.5)
	}
	return nearestOf(ml, 2.5)
}

// ounceMark returns the amount on a jigger for ounces nearest to another: quarters, and below
// half an ounce eighths. Common practice, no source.
func ounceMark(oz float64) float64 {
	if oz < 0.5 {
		return nearestOf(oz, 1./8)
	}
	return nearestOf(oz, 1./4)
}

// OunceMarks returns the marks of a jigger for ounces next below and above an amount in oz; both are
// the amount if it is a mark.
func OunceMarks(oz float64) (below, above float64) {
	if mark := ounceMark(oz); math.Abs(mark-oz) < sameMark {
		return oz, oz
	}
	step := 1. / 4
	if oz < 0.5 {
		step = 1. / 8
	}
	return math.Floor(oz/step) * step, math.Ceil(oz/step) * step
}

// sameMark is the difference of two amounts in oz that are one mark.
const sameMark = 1e-6

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
