package words

import (
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
	"counterpour/webui/say"
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
		return say.It("words.over-99-percent")
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
		return say.It("words.within", "Least", Figure(least, decimals))
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

// List joins words as "a, b and c".
func List(words []string) string { return flavor.JoinAnd(words) }

// Verdict formats a verdict as a heading.
func Verdict(v weigh.Verdict) string {
	switch v {
	case weigh.Balanced:
		return say.It("words.balanced")
	case weigh.Near:
		return say.It("words.nearly-there")
	}
	return say.It("words.out-of-balance")
}

// VerdictSentence says how a drink compares with the good ones; tail is the share of them
// that is further off by its ratio, 0 to 1. What is balanced may be so by little, and what is not
// may have the ratio of its family and another fault: then the sentence says so.
func VerdictSentence(v weigh.Verdict, tail float64) string {
	const few, many = 1, 3 // of ten drinks
	further, n := "", int(math.Round(10*tail))
	switch {
	case n <= 0:
		further = say.It("words.almost-none-further-off")
	case n >= 10:
		further = say.It("words.nearly-all-further-off")
	default:
		further = say.It("words.some-further-off", "N", n, "One", n == 1)
	}
	switch {
	case v == weigh.Balanced && n <= 0: // what is in balance is not so far off, however rare its ratio
		return say.It("words.rare-inside")
	case v == weigh.Balanced && n <= few:
		return say.It("words.just-inside", "Further", further)
	case v == weigh.Balanced:
		return say.It("words.where-the-good-are", "Further", further)
	case n >= many:
		return say.It("words.ratio-is-inside", "Further", further)
	case v == weigh.Near:
		return say.It("words.at-the-edge", "Further", further)
	}
	return say.It("words.outside", "Further", further)
}

// Notice says whether a guest notices a difference.
func Notice(n sense.Notice) string { return say.It("words.notice", "Notice", n) }

// Missed says why the variation nearest to a wish was not listed.
func Missed(what string) string {
	switch what {
	case string(station.MissesWish):
		return say.It("words.misses-a-wish")
	case string(station.MissesSpirit):
		return say.It("words.a-soft-drink")
	case string(station.MissesNothing):
		return say.It("words.met-already")
	}
	return say.It("words.out-of-balance-yet-simplest")
}

// OfRest says what wishes are held against where a part of the draft cannot be poured.
func OfRest() string { return say.It("words.of-the-rest") }

// Steps formats a number of noticeable steps.
func Steps(steps float64) string { return say.It("words.steps", "Steps", Figure(steps, 1)) }

// Axis is an axis with the trade's word for it and what it is measured as.
type Axis struct{ Name, As, Sentence string }

// Axes are the axes in the order of [ratio.Axes].
func Axes() [ratio.NumAxes]Axis {
	return [ratio.NumAxes]Axis{
		ratio.Strong: {say.It("words.strong"), say.It("words.as-spirit"), say.It("words.strong-is")},
		ratio.Sweet:  {say.It("words.sweet"), say.It("words.as-syrup"), say.It("words.sweet-is")},
		ratio.Sour:   {say.It("words.sour"), say.It("words.as-lemon-juice"), say.It("words.sour-is")},
		ratio.Bitter: {say.It("words.bitter"), say.It("words.as-red-bitter"), say.It("words.bitter-is")},
		ratio.Long:   {say.It("words.long"), say.It("words.as-water"), say.It("words.long-is")},
	}
}
