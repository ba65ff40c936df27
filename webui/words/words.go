package words

import (
	"fmt"
	"math"
	"regexp"
	"strconv"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/mix"
	"counterpour/flavor/ratio"
	"counterpour/flavor/riff/station"
	"counterpour/flavor/sense"
	"counterpour/flavor/weigh"
)

// Joined joins a figure, its spread and its unit with no-break spaces.
func Joined(parts ...string) string {
	return strings.Join(strings.Fields(strings.Join(parts, " ")), "\u00a0")
}

// Of converts a list of any string type to strings.
func Of[T ~string](list []T) []string {
	out := make([]string, len(list))
	for i, w := range list {
		out[i] = string(w)
	}
	return out
}

// Reading formats a readout of a drink, with spread and unit, without line breaks.
func Reading(r *mix.Readout, d *mix.Drink) string {
	value, spread := Readout(r, d)
	return Joined(value, spread, r.Unit)
}

// Readout formats a readout of a drink and its spread, which is "" if unknown.
func Readout(r *mix.Readout, d *mix.Drink) (value, spread string) {
	if r.Spread != nil {
		spread = PlusMinus(r.Spread(&d.PlusMinus), r.Digits)
	}
	return Figure(r.Shown(r.Value(d)), r.Digits), spread
}

// Percent formats a probability, 0 to 1. Above 0.99 it says so, since nothing is certain.
func Percent(p float64) string {
	if p > 0.99 {
		return "over 99\u00a0%"
	}
	return Figure(100*p, 0) + "\u00a0%"
}

// Plain formats a number with as many digits as it has.
func Plain(v float64) string { return strconv.FormatFloat(v, 'f', -1, 64) }

// SentenceStart returns a name with a capital first letter.
func SentenceStart(s string) string { return strings.TrimSuffix(Sentence(s), ".") }

// Figure formats a number with a fixed number of decimals and a true minus sign. Zero has
// no sign.
func Figure(v float64, decimals int) string {
	s := strconv.FormatFloat(math.Abs(v), 'f', decimals, 64)
	if v < 0 && strings.Trim(s, "0.") != "" {
		return "−" + s
	}
	return s
}

// Signed is like Figure, with a plus sign for positive numbers.
func Signed(v float64, decimals int) string {
	s := Figure(v, decimals)
	if v > 0 && strings.Trim(s, "0.") != "" {
		return "+" + s
	}
	return s
}

// Points formats a score, rounded down so that it never suggests a better verdict.
func Points(score float64) string { return Figure(math.Floor(score), 0) }

// PlusMinus formats the spread of a figure; "" if there is none.
func PlusMinus(spread float64, decimals int) string {
	least := math.Pow10(-decimals)
	switch {
	case !(spread > 0) || math.IsInf(spread, 0):
		return ""
	case spread < least/2:
		return "± under " + Figure(least, decimals)
	}
	return "± " + Figure(spread, decimals)
}

// Millilitres formats a volume: without decimals from 10 mL, otherwise with one.
func Millilitres(ml float64) string { return Figure(ml, MillilitreDecimals(ml)) }

// MillilitreDecimals returns the number of decimals of a volume.
func MillilitreDecimals(ml float64) int {
	if math.Abs(ml) < 9.95 {
		return 1
	}
	return 0
}

// measured matches an amount before its unit.
var measured = regexp.MustCompile(`([\d½¼¾⅓⅔⅛⅜⅝⅞])[ \x{00a0}](oz|mL|ml|cl|g|%|°C|tsp|barspoons?|dash(?:es)?|drops?|parts?|steps?)\b|([\d½¼¾⅓⅔⅛⅜⅝⅞]) (%)`)

// Bound replaces the space between each amount and its unit by a no-break space, and writes
// millilitres as pages do. What is quoted stays as somebody wrote it.
func Bound(s string) string {
	return stretch.ReplaceAllStringFunc(s, func(part string) string {
		if strings.HasPrefix(part, "“") {
			return part
		}
		return millilitres.ReplaceAllString(measured.ReplaceAllString(part, "$1$3\u00a0$2$4"), "\u00a0mL")
	})
}

// BoundAll is [Bound] of each sentence.
func BoundAll(list []string) []string {
	out := make([]string, len(list))
	for i, s := range list {
		out[i] = Bound(s)
	}
	return out
}

// stretch matches what is quoted, and what is not.
var stretch = regexp.MustCompile(`“[^”]*”|[^“]+`)

// millilitres matches the unit as drafts have it, behind a bound amount.
var millilitres = regexp.MustCompile(`\x{00a0}ml\b`)

// Sentence capitalises the first letter and adds a full stop.
func Sentence(s string) string {
	s = strings.TrimSpace(s)
	if s == "" {
		return s
	}
	r := []rune(s)
	s = strings.ToUpper(string(r[0])) + string(r[1:])
	if !strings.HasSuffix(s, ".") && !strings.HasSuffix(s, "?") {
		s += "."
	}
	return s
}

// Count formats a number with the singular or plural word.
func Count(n int, one, many string) string {
	if n == 1 {
		return "1 " + one
	}
	return strconv.Itoa(n) + " " + many
}

// List joins words as "a, b and c".
func List(words []string) string { return flavor.JoinAnd(words) }

// Verdict formats a verdict as a heading.
func Verdict(v weigh.Verdict) string {
	switch v {
	case weigh.Balanced:
		return "Balanced"
	case weigh.Near:
		return "Nearly there"
	}
	return "Out of balance"
}

// VerdictSentence says how a drink compares with the good ones.
func VerdictSentence(v weigh.Verdict, tail float64) string {
	n := int(math.Round(10 * tail))
	var out string
	switch {
	case n <= 0:
		out = "Almost no known drink of the family is this far off."
	case n >= 10:
		out = "Nearly every known drink of the family is further off."
	case n == 1:
		out = "About 1 in 10 known drinks of the family is further off."
	default:
		out = fmt.Sprintf("About %d in 10 known drinks of the family are further off.", n)
	}
	switch v {
	case weigh.Balanced:
		return "It is where the good drinks of its family are. " + out
	case weigh.Near:
		return "It is at the edge of its family. " + out
	}
	return "It is outside its family. " + out
}

// Notice says whether a guest notices a difference.
func Notice(n sense.Notice) string { return "A guest " + string(n) + " notice" }

// Missed says why the variation nearest to a wish was not listed.
func Missed(what string) string {
	if what == string(station.MissesWish) {
		return "The nearest, but it misses a wish"
	}
	return "The simplest change, but the score counts it as out of balance"
}

// OfRest says what wishes are held against where a part of the draft cannot be poured.
const OfRest = "The wish is compared with the rest of the draft, without what cannot be poured"

// Steps formats a number of noticeable steps.
func Steps(steps float64) string { return Figure(steps, 1) + " noticeable steps" }

// Axis is an axis with the trade's word for it and what it is measured as.
type Axis struct{ Name, As, Sentence string }

// Axes are the axes in the order of [ratio.Axes].
var Axes = [ratio.NumAxes]Axis{
	ratio.Strong: {"Strong", "as 40 % spirit", "All the alcohol, as so much spirit of 40 % vol."},
	ratio.Sweet:  {"Sweet", "as 1:1 syrup", "All the sweetness, as so much syrup of equal weights of sugar and water."},
	ratio.Sour:   {"Sour", "as lemon juice", "All the acid, as so much fresh lemon juice."},
	ratio.Bitter: {"Bitter", "as red bitter aperitif", "All the bitterness, as so much red bitter aperitif."},
	ratio.Long:   {"Long", "as water", "What lengthens: the water, soda, tea or juice beyond what spirit, syrup and lemon would bring."},
}
