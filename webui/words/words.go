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

// Joined puts a figure, its spread and its unit on one line that does not break.
func Joined(parts ...string) string {
	return strings.Join(strings.Fields(strings.Join(parts, " ")), "\u00a0")
}

// Of turns words of any type into plain ones.
func Of[T ~string](list []T) []string {
	out := make([]string, len(list))
	for i, w := range list {
		out[i] = string(w)
	}
	return out
}

// Reading says what is read off a drink, with its spread and its unit, on one line
// that does not break.
func Reading(r *mix.Readout, d *mix.Drink) string {
	value, spread := Readout(r, d)
	return Joined(value, spread, r.Unit)
}

// Readout writes what is read off a drink, and its spread: empty where none is
// worked out.
func Readout(r *mix.Readout, d *mix.Drink) (value, spread string) {
	if r.Spread != nil {
		spread = PlusMinus(r.Spread(&d.PlusMinus), r.Digits)
	}
	return Figure(r.Shown(r.Value(d)), r.Digits), spread
}

// Percent never says that anything is certain.
func Percent(p float64) string {
	if p > 0.99 {
		return "over 99\u00a0%"
	}
	return Figure(100*p, 0) + "\u00a0%"
}

// Plain writes a number as it was given.
func Plain(v float64) string { return strconv.FormatFloat(v, 'f', -1, 64) }

// SentenceStart is a name with a capital.
func SentenceStart(s string) string { return strings.TrimSuffix(Sentence(s), ".") }

// Figure writes a number with a fixed count of decimals and a true minus sign;
// what rounds to zero has no sign.
func Figure(v float64, decimals int) string {
	s := strconv.FormatFloat(math.Abs(v), 'f', decimals, 64)
	if v < 0 && strings.Trim(s, "0.") != "" {
		return "−" + s
	}
	return s
}

// Signed is figure with a plus before what is above zero.
func Signed(v float64, decimals int) string {
	s := Figure(v, decimals)
	if v > 0 && strings.Trim(s, "0.") != "" {
		return "+" + s
	}
	return s
}

// Points writes a score, rounded down so that a number never stands beside a
// verdict that it has not reached.
func Points(score float64) string { return Figure(math.Floor(score), 0) }

// PlusMinus writes a spread to go with a figure, empty if there is none.
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

// Millilitres writes an amount: whole from ten, else with a decimal.
func Millilitres(ml float64) string { return Figure(ml, MillilitreDecimals(ml)) }

// MillilitreDecimals is how many decimals an amount is written with.
func MillilitreDecimals(ml float64) int {
	if math.Abs(ml) < 9.95 {
		return 1
	}
	return 0
}

// measured is an amount before its unit.
var measured = regexp.MustCompile(`([\d½¼¾⅓⅔⅛⅜⅝⅞]) (oz|mL|ml|cl|g|%|°C|tsp|barspoons?|dash(?:es)?|drops?|parts?|steps?)\b|([\d½¼¾⅓⅔⅛⅜⅝⅞]) (%)`)

// Bound keeps every amount of a text on one line with its unit.
func Bound(s string) string { return measured.ReplaceAllString(s, "$1$3\u00a0$2$4") }

// Sentence starts a text with a capital and ends it with a stop.
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

// Count says how many there are, in the words for one and for many.
func Count(n int, one, many string) string {
	if n == 1 {
		return "1 " + one
	}
	return strconv.Itoa(n) + " " + many
}

// List joins words as "a, b and c".
func List(words []string) string { return flavor.JoinAnd(words) }

// Verdict says a verdict as a heading.
func Verdict(v weigh.Verdict) string {
	switch v {
	case weigh.Balanced:
		return "Balanced"
	case weigh.Near:
		return "Nearly there"
	}
	return "Out of balance"
}

// VerdictSentence says how far out a drink sits among the good ones.
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

// Notice says whether a guest tells one drink from another.
func Notice(n sense.Notice) string { return "A guest " + string(n) + " notice" }

// Missed says of the variation that comes nearest to a wish what it lacks to be listed.
func Missed(what string) string {
	if what == string(station.MissesWish) {
		return "Nearest, but short of a wish"
	}
	return "Plainly, though the score counts it as out of balance"
}

// Steps counts noticeable steps.
func Steps(steps float64) string { return Figure(steps, 1) + " noticeable steps" }

// Axis is an axis as the trade says it, and what it is measured as.
type Axis struct{ Name, As, Sentence string }

// Axes are the axes in the order of [ratio.Axes].
var Axes = [ratio.NumAxes]Axis{
	ratio.Strong: {"Strong", "as 40 % spirit", "All the alcohol, as so much spirit of 40 % vol."},
	ratio.Sweet:  {"Sweet", "as 1:1 syrup", "All the sweetness, as so much syrup of equal weights of sugar and water."},
	ratio.Sour:   {"Sour", "as lemon juice", "All the acid, as so much fresh lemon juice."},
	ratio.Bitter: {"Bitter", "as red bitter aperitif", "All the bitterness, as so much red bitter aperitif."},
	ratio.Long:   {"Long", "as water", "What lengthens: the water, soda, tea or juice beyond what spirit, syrup and lemon would bring."},
}
