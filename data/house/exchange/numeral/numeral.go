// Package numeral reads figures as people write them in stock lists: numbers, prices,
// sizes, strengths and counts.
package numeral

import (
	"math"
	"slices"
	"strconv"
	"strings"

	"counterpour/flavor/measure"
	"counterpour/flavor/measure/pattern"

	"golang.org/x/text/currency"
)

var (
	numeral     = pattern.Of(`^[+-]?(?:[0-9][0-9.,'’ \x{a0}\x{202f}]*|[.,][0-9]+)$`)
	grouped     = pattern.Of(`^[+-]?[0-9]{1,3}(?:[.,'’ \x{a0}\x{202f}][0-9]{3})+$`)
	mixedNumber = pattern.Of(`^(?:([0-9]+)[ \x{a0}]+)?([0-9]+)\s*[/⁄]\s*([0-9]+)$`)
	withUnit    = pattern.Of(`^([0-9.,/⁄ ½¼¾⅓⅔⅛]+)\s*[-]?\s*([\p{L}%°".]+.*)?$`)
	packOf      = pattern.Of(`(?i)^([0-9]+)\s*(?:x|×|/|pk|pack of)\s*([0-9].*)$`)
	commaHalf   = pattern.Of(`[0-9],[0-9]{1,2}(?:[^0-9]|$)`)
	codeBeside  = pattern.Of(`[A-Z]{3}`)
	perOne      = pattern.Of(`(?i)\s*(?:/|per|a|an)?\s*(?:\bbtls?\b\.?|\bbottles?\b|\beach\b|\bea\b\.?|\bunits?\b|\bcans?\b)\s*$`)
)

var plainNumber = pattern.Of(`^[+-]?(?:[0-9]+(?:[.,][0-9]*)?|[.,][0-9]+)(?:[eE][+-]?[0-9]+)?$`)

// IsPlain reports whether a cell is a number in the form that programs write.
func IsPlain(cell string) bool { return plainNumber.MatchString(cell) }

var vulgar = strings.NewReplacer("½", " 1/2", "¼", " 1/4", "¾", " 3/4", "⅓", " 1/3", "⅔", " 2/3", "⅛", " 1/8")

// Number reads a number that may have digit groups or a fraction. If comma is true, a
// comma is the decimal mark and never groups digits. ok is false if the cell is no
// number.
func Number(cell string, comma bool) (float64, bool) {
	s := strings.TrimSpace(vulgar.Replace(strings.TrimSpace(cell)))
	if m := mixedNumber.FindStringSubmatch(s); m != nil {
		whole, _ := strconv.ParseFloat("0"+m[1], 64) // infinite if it is too large
		top, errTop := strconv.ParseFloat(m[2], 64)
		bottom, err := strconv.ParseFloat(m[3], 64)
		v := whole + top/bottom
		return v, errTop == nil && err == nil && bottom > 0 && !math.IsInf(v, 0)
	}
	if !numeral.MatchString(s) {
		v, err := strconv.ParseFloat(s, 64) // such as 1e-05, which programs write
		return v, err == nil && IsPlain(s)
	}
	v, err := strconv.ParseFloat(plainDigits(s, comma), 64)
	return v, err == nil
}

// plainDigits returns a number with a decimal point and without digit groups. The last
// mark is the decimal mark, unless it stands before exactly three digits and can only
// separate groups.
func plainDigits(s string, comma bool) string {
	s = strings.NewReplacer("'", "", "’", "", " ", "", "\u00a0", "", "\u202f", "").Replace(s)
	point, mark := strings.LastIndex(s, "."), strings.LastIndex(s, ",")
	switch {
	case mark < 0 && (!comma || !grouped.MatchString(s)):
		return s
	case mark < 0: // 1.234 with a decimal comma
		return strings.ReplaceAll(s, ".", "")
	case point > mark: // 1,234.50
		return strings.ReplaceAll(s, ",", "")
	case point >= 0: // 1.234,50
		return strings.Replace(strings.ReplaceAll(s, ".", ""), ",", ".", 1)
	case !comma && grouped.MatchString(s): // 1,234
		return strings.ReplaceAll(s, ",", "")
	}
	return strings.Replace(s, ",", ".", 1)
}

// UsesComma reports whether a number among the cells has a decimal comma.
func UsesComma(cells []string) bool {
	return slices.ContainsFunc(cells, func(s string) bool {
		return commaHalf.MatchString(s) && !strings.Contains(s, ".") || decimalAfterGroups.MatchString(s)
	})
}

var decimalAfterGroups = pattern.Of(`[0-9]\.[0-9]{3},[0-9]`)

// Nothing reports whether a cell says that there is no value.
func Nothing(s string) bool {
	return slices.Contains([]string{"", "-", "–", "—", "n/a", "na", "none", "nil", "?", "tbc", "tbd", "unknown", "x"}, strings.ToLower(strings.TrimSpace(s)))
}

// signs are currency signs and the currency each usually stands for. The dollar, yen and
// krona signs are shared by several countries; another currency must be written as a
// code.
var signs = []struct{ sign, code string }{
	{"US$", "USD"}, {"A$", "AUD"}, {"C$", "CAD"}, {"NZ$", "NZD"}, {"S$", "SGD"}, {"HK$", "HKD"}, {"R$", "BRL"},
	{"€", "EUR"}, {"£", "GBP"}, {"$", "USD"}, {"¥", "JPY"}, {"₹", "INR"}, {"₩", "KRW"}, {"zł", "PLN"}, {"kr", "SEK"}, {"Fr.", "CHF"}, {"₪", "ILS"}, {"₺", "TRY"}, {"₫", "VND"}, {"฿", "THB"}, {"₱", "PHP"},
}

// sharedSigns are signs of more than one currency.
const sharedSigns = "$¥kr"

// Shares reports whether two currencies share the sign of the first.
func Shares(code, other string) bool {
	switch code {
	case "USD":
		return strings.HasSuffix(other, "D") || slices.Contains([]string{"MXN", "ARS", "CLP", "COP", "UYU", "CUP", "DOP"}, other) // dollars, such as AUD, and pesos
	case "SEK":
		return slices.Contains([]string{"SEK", "NOK", "DKK", "ISK"}, other)
	case "JPY":
		return slices.Contains([]string{"JPY", "CNY"}, other)
	}
	return code == other
}

// KnownCurrency reports whether code is a currency code of ISO 4217, in capitals.
func KnownCurrency(code string) bool {
	_, err := currency.ParseISO(code)
	return err == nil && len(code) == 3 && strings.ToUpper(code) == code
}

// Money reads a price and its currency: a code, or a sign; shared is true for a sign of
// several currencies. ok is false if the cell is no price.
func Money(cell string, comma bool) (sum float64, code string, shared, ok bool) {
	figure, code, shared := Priced(cell)
	sum, ok = Number(figure, comma)
	return sum, code, shared, ok
}

// HasCents reports whether a cell has the decimals of a price.
func HasCents(s string) bool { return cents.MatchString(s) }

var cents = pattern.Of(`[0-9][.,](?:[0-9]{2}|-)(?:[^0-9]|$)`)

// LooksLikeMoney reports whether a cell is a price with a currency.
func LooksLikeMoney(s string) bool {
	_, code, _, ok := Money(s, false)
	return ok && code != ""
}

// sizeUnit is how much a unit is in mL, or in g if it is a weight.
type sizeUnit struct {
	each   float64
	weight bool
}

// sizeUnits are the units of bottle sizes and their factors to mL or g.
var sizeUnits = map[string]sizeUnit{
	"ml": {1, false}, "millilitre": {1, false}, "milliliter": {1, false}, "mil": {1, false}, "cc": {1, false},
	"cl": {10, false}, "centilitre": {10, false}, "centiliter": {10, false}, "dl": {100, false},
	"l": {1000, false}, "lt": {1000, false}, "ltr": {1000, false}, "litre": {1000, false}, "liter": {1000, false}, "lit": {1000, false},
	"oz": {measure.OunceML, false}, "fl oz": {measure.OunceML, false}, "floz": {measure.OunceML, false}, "ounce": {measure.OunceML, false}, "fluid ounce": {measure.OunceML, false},
	"pt": {16 * measure.OunceML, false}, "pint": {16 * measure.OunceML, false}, "qt": {32 * measure.OunceML, false}, "quart": {32 * measure.OunceML, false},
	"gal": {128 * measure.OunceML, false}, "gallon": {128 * measure.OunceML, false},
	"g": {1, true}, "gr": {1, true}, "gram": {1, true}, "kg": {1000, true}, "kilo": {1000, true}, "lb": {453.592, true}, "pound": {453.592, true},
}

// Usual sizes of bottles, by the unit of a bare number. Common practice, no source.
var (
	centilitres = []float64{10, 18, 20, 25, 27.5, 33, 35, 37.5, 44, 50, 70, 75}
	ounces      = []float64{5, 6.7, 6.8, 8, 12, 12.7, 16, 16.9, 25, 25.3, 25.4, 32, 33.8, 59, 59.2, 64}
)

// Amount is the content of a full bottle, in mL or in g.
type Amount struct {
	ML, G float64
}

// Pack reads a size such as 24 x 200ml: the number of bottles, and the size of one as
// written. ok is false if it is no pack.
func Pack(written string) (bottles int, one string, ok bool) {
	s := strings.TrimSpace(written)
	m := packOf.FindStringSubmatch(s)
	if m == nil || mixedNumber.MatchString(s) {
		return 0, "", false
	}
	bottles, err := strconv.Atoi(m[1])
	return bottles, m[2], err == nil
}

// Size reads the content of one bottle. unit is the unit of a bare number; if it is
// empty, 100 and more are mL, up to 5 are L, and numbers between are ambiguous, for which
// open is true.
func Size(cell, unit string, comma bool) (a Amount, open, ok bool) {
	s := strings.TrimSpace(cell)
	if _, one, ok := Pack(s); ok {
		s = one
	}
	m := withUnit.FindStringSubmatch(s)
	if m == nil {
		v, isNumber := Number(s, comma) // such as 1e-05
		return inUnit(v, unit, isNumber)
	}
	v, isNumber := Number(m[1], comma)
	if !isNumber || v <= 0 {
		return a, false, false
	}
	said := unitWord(m[2])
	if said == "" {
		return inUnit(v, unit, true)
	}
	u, known := sizeUnitOf(said)
	return scaled(v, u.each, u.weight), false, known
}

// inUnit reads a bare number in the unit of its column.
func inUnit(v float64, unit string, isNumber bool) (a Amount, open, ok bool) {
	switch {
	case !isNumber:
		return a, false, false
	case unit == ExactML || unit == ExactG:
		return scaled(v, 1, unit == ExactG), false, true
	case v <= 0:
		return a, false, false
	case unit == "g" || unit == "kg":
		return scaled(v, sizeUnits[unit].each, true), false, true
	case v <= 5 && unit != "oz":
		return scaled(v, 1000, false), false, true
	case unit == "cl" && v > 300, unit == "l" && v >= 100, unit == "" && v >= 100: // larger than any bottle in that unit
		return Amount{ML: v}, false, true
	case unit == "cl" || unit == "oz" || unit == "ml" || unit == "l":
		return scaled(v, sizeUnits[unit].each, false), false, true
	}
	return a, true, false
}

// Units of the columns size_ml and size_g, whose numbers are taken literally.
const (
	ExactML = "size_ml"
	ExactG  = "size_g"
)

func scaled(v, each float64, weight bool) Amount {
	if each != 1 {
		v = math.Round(v*each*1000) / 1000
	}
	if weight {
		return Amount{G: v}
	}
	return Amount{ML: v}
}

// LooksLikeSize reports whether a cell is a size with a unit.
func LooksLikeSize(s string) bool {
	_, isBare := Number(s, false)
	a, _, ok := Size(s, "", false)
	return ok && !isBare && (a.ML >= 5 || a.G >= 5)
}

// ColumnUnit returns the unit of bare numbers in a column of sizes, or "" if they are
// ambiguous.
func ColumnUnit(cells []string, comma bool) string {
	var bare []float64
	for _, c := range cells {
		if v, ok := Number(c, comma); ok && v > 5 && v < 100 {
			bare = append(bare, v)
		}
	}
	all := func(list []float64) bool {
		return len(bare) > 0 && !slices.ContainsFunc(bare, func(v float64) bool { return !slices.Contains(list, v) })
	}
	switch inCL, inOz := all(centilitres), all(ounces); {
	case inCL && !inOz:
		return "cl"
	case inOz && !inCL:
		return "oz"
	}
	return ""
}

// Strength reads % vol, or US proof, which is twice the % vol.
func Strength(cell, unit string, comma bool) (pct float64, ok bool) {
	s := strings.ToLower(strings.TrimSpace(cell))
	proof := unit == "proof"
	for _, word := range []string{"abv", "alc", "vol", "by", "/", "°", "."} {
		s = strings.TrimSpace(strings.TrimSuffix(s, word))
	}
	if rest, found := strings.CutSuffix(s, "proof"); found {
		s, proof = strings.TrimSpace(rest), true
	}
	s = strings.TrimSpace(strings.TrimSuffix(s, "%"))
	if pct, ok = Number(s, comma); proof {
		pct /= 2
	}
	return pct, ok
}

// LooksLikeShare reports whether a cell is a strength with a unit.
func LooksLikeShare(s string) bool {
	_, ok := Strength(s, "", false)
	return ok && (strings.Contains(s, "%") || strings.Contains(strings.ToLower(s), "proof"))
}

// Count reads a number of bottles. said is false if the cell leaves it open, as an empty
// one does: nobody counted, which is another thing than that there is none. ok is false if
// the cell is no number.
func Count(cell string, comma bool) (n float64, said, ok bool) {
	s := strings.ToLower(strings.TrimSpace(cell))
	switch {
	case slices.Contains(noneLeft, s):
		return 0, true, true
	case Nothing(s):
		return 0, false, true
	}
	s = strings.TrimSpace(perOne.ReplaceAllString(s, ""))
	if part, found := strings.CutSuffix(s, "%"); found {
		n, ok = Number(part, comma)
		return n / 100, true, ok
	}
	n, ok = Number(s, comma)
	return n, true, ok
}

// noneLeft are words for a count of none, and the dashes that spreadsheets show a nought
// as. Common practice, no source.
var noneLeft = []string{"none", "nil", "out", "empty", "zero", "-", "–", "—"}
