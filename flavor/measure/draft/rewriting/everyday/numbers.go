package everyday

import (
	"math"
	"slices"
	"strconv"
	"strings"

	"counterpour/flavor/measure/draft/names/lexicon"
	"counterpour/flavor/measure/draft/words/aside"
	"counterpour/flavor/measure/draft/words/entry"
	"counterpour/flavor/measure/draft/words/parting"
	"counterpour/flavor/measure/draft/words/serving"
	"counterpour/flavor/measure/draft/words/title"
	"counterpour/flavor/measure/draft/words/token"
	"counterpour/flavor/measure/pattern"
	"counterpour/flavor/measure/vocabulary"
)

// A number in a remark counts or refers: it costs, dates, rates, numbers a page or a shelf, or counts
// people, hours or things. That is told by its shape and by the class of the word beside it. A number
// alone, or beside a word that may name something poured, is an amount.

// withoutNumbers returns the words of tokens without the numbers that count or refer, and the signs that
// stand beside them; false if some number may be an amount.
func withoutNumbers(toks []token.Token) ([]token.Token, bool) {
	var out []token.Token
	for i := 0; i < len(toks); {
		n := numberAt(toks, i)
		if n == 0 && figures(&toks[i]) {
			return nil, false
		}
		if n == 0 {
			out = append(out, toks[i])
			n = 1
		}
		i += n
	}
	return out, true
}

// mostShared is the most people for whom one list may be written.
const mostShared = 12

// shared reports whether tokens say no more than for how many the drink is: "for 2 guests". What is poured
// may be for all of them.
func shared(toks, words []token.Token) bool {
	few, people := false, false
	for i := range toks {
		few = few || toks[i].Kind == token.Numeral && toks[i].Value > 1 && toks[i].Value <= mostShared
		people = people || lexicon.Of(toks[i].Text)&(lexicon.Person|lexicon.Plural) == lexicon.Person|lexicon.Plural || eaters.Has(toks[i].Text)
	}
	return few && people && len(words) < leastTold
}

// Listed reports whether a clause stands on a line of its own as a pour without a unit does, "90 pros": a
// number and a word that is neither of people who are served nor of a time.
func (c *Clause) Listed(text string) bool {
	toks := token.Lex(nil, text, c.At.Start, c.At.End)
	if !c.Alone || len(toks) != 2 || toks[0].Kind != token.Numeral || toks[1].Kind != token.Word {
		return false
	}
	w := toks[1].Text
	return numberAt(toks, 0) != len(toks) && !eaters.Has(w) && lexicon.Of(w)&lexicon.Time == 0
}

// eaters are words for those who are served that no list of nouns has.
var eaters = vocabulary.Words(`pax covers ppl people heads guests`)

// Numbered reports whether a name holds a number that may be an amount, and is none of a card or a table.
func Numbered(name string) bool {
	toks := token.Lex(nil, name, 0, len(name))
	return slices.ContainsFunc(toks, func(t token.Token) bool { return t.Kind == token.Numeral }) && !title.OfCard(name, toks)
}

// figures reports whether a token is written in figures.
func figures(t *token.Token) bool {
	return t.Kind == token.Numeral || t.Kind == token.Ratio || t.Kind == token.Percent
}

// numberAt returns how many tokens at i are a number that counts or refers, with its signs; 0 if none is.
func numberAt(toks []token.Token, i int) int {
	t := &toks[i]
	if t.Is("+") && i+1 < len(toks) { // "+£4"
		if from, to := aside.Price(toks, i+1); to > 0 && from == i+1 {
			return to - i
		}
	}
	if from, to := aside.Price(toks, i); to > 0 && from == i {
		return to - i
	}
	if i+1 < len(toks) {
		if from, to := aside.Price(toks, i+1); to > 0 && from == i { // "4€"
			return to - i
		}
	}
	if signs := strings.Contains("#@~≈≥≤=", t.Text) && t.Kind == token.Mark; signs && i+1 < len(toks) && figures(&toks[i+1]) {
		if t.Is("#") || numberAt(toks, i+1) > 0 {
			return 1 + max(1, numberAt(toks, i+1))
		}
		return 0
	}
	switch {
	case !figures(t):
		return 0
	case t.Kind == token.Ratio && clock.MatchString(t.Text), t.Kind == token.Percent && i+1 < len(toks) && toks[i+1].Text == "off":
		return 1
	case t.Kind == token.Numeral && t.Value == 0 && len(toks) == 1: // "0.0 | Gimlet"
		return 1
	case t.Kind == token.Numeral && (dated(toks, i) || pricedOrTimed(toks, i)):
		return 1
	case t.Kind != token.Numeral || t.Wrong != "":
		return 0
	case ordinal(wordAt(toks, i+1)) && toks[i+1].Glued: // "2nd", "11 pm"
		return 2
	case refers(toks, i) || rates(toks, i):
		return 1
	}
	return counts(toks, i)
}

// clock is an hour with its minutes.
var clock = pattern.Of(`^(?:[01]?\d|2[0-3]):[0-5]\d$`)

// numbered are words before the number of a place or of what is written, beside those of titles.
var numbered = vocabulary.Words(`p pg shelf shelves table tables page pages pp chapter ch section step steps question cabana room level floor zone door gate fridge drawer rack till seat row desk window
	pallet locker box line note fig figure plate post pass round heat course flight section side book volume vol edition part unit module lesson course group team year day week shift channel station tap kiosk stall booth tent pool deck terrace bed cell column map mark`)

// refers reports whether the number at i numbers what stands before it, or is a date or a year.
func refers(toks []token.Token, i int) bool {
	t := &toks[i]
	before, behind := wordAt(toks, i-1), wordAt(toks, i+1)
	if before == "" && i > 1 && toks[i-1].Is(".") { // "p. 8"
		before = wordAt(toks, i-2)
	}
	switch {
	case entry.UnitWordsAt(toks[i+1:]):
		return false
	case whole(t) && (numbered.Has(before) || title.Numbered(before) || len(before) == 1 && before != "x" && before != "a"):
		return true
	case months.MatchString(before) || months.MatchString(behind): // "12 May", "Jan 25"
		return whole(t)
	case years.MatchString(t.Text), strings.HasSuffix(t.Text, "pm"), strings.HasSuffix(t.Text, "am"):
		return true
	case slashed.MatchString(t.Text) && (when.Has(before) || dating.Has(before)): // "from 3/11"
		return true
	}
	return whole(t) && when.Has(before) && behind == "" && t.Value <= 12 && i > 0 // "see you at 9"
}

func wordAt(toks []token.Token, i int) string {
	if i < 0 || i >= len(toks) || toks[i].Kind != token.Word {
		return ""
	}
	return toks[i].Text
}

func ordinal(w string) bool {
	switch w {
	case "st", "nd", "rd", "th", "am", "pm":
		return true
	}
	return false
}

var (
	// months are those of the year, cut to three letters or not.
	months = pattern.Of(`^(?:jan(?:uary)?|feb(?:ruary)?|mar(?:ch)?|apr(?:il)?|may|june?|july?|aug(?:ust)?|sept?(?:ember)?|oct(?:ober)?|(?:nov|dec)(?:ember)?)$`)
	// years are those of this century and the last.
	years = pattern.Of(`^(?:19|20)\d\d$`)
	// slashed is a day and a month, or what was reached of a score.
	slashed = pattern.Of(`^(\d+)/(\d+)\.?$`)
	// when are words before a day or an hour.
	when = vocabulary.Words(`at by until till til since from before after on around`)
	// dating are words before the day of a version.
	dating = vocabulary.Words(`supersedes superseding superseded updated update revised rev edited amended effective dated replaces replacing valid`)
	// scores are what is reached of a score.
	scores = vocabulary.Words(`mark marks point points pts star stars score scores rating vote votes`)
)

// dated reports whether the number at i is a day and a month: "02/11". No amount has a nought before it, nor
// is one poured by sevenths, ninths or elevenths.
func dated(toks []token.Token, i int) bool {
	m := slashed.FindStringSubmatch(toks[i].Text)
	if m == nil || entry.UnitWordsAt(toks[i+1:]) {
		return false
	}
	day, _ := strconv.Atoi(m[1])
	month, _ := strconv.Atoi(m[2])
	odd := month == 7 || month == 9 || month == 11 || strings.HasPrefix(m[1], "0") || strings.HasPrefix(m[2], "0")
	return odd && 0 < day && day <= 31 && 0 < month && month <= 12
}

// twoDecimals is an amount of money without its sign, or an hour with its minutes.
var twoDecimals = pattern.Of(`^\d{1,3}[.,]\d\d$`)

// leastPrice is the least price of a drink, above which two decimals are no ounces; common practice.
const leastPrice = 5

// leastBefore is the fewest words before a price or an hour without a sign, one of which is no name.
const leastBefore = 2

// pricedOrTimed reports whether the number at i, which ends its clause, is what the drink costs or an hour
// without its sign: "6.50", "doors open at 9.00".
func pricedOrTimed(toks []token.Token, i int) bool {
	if !twoDecimals.MatchString(toks[i].Text) || toks[i].Value < leastPrice || i+1 < len(toks) {
		return false
	}
	words, told := 0, false
	for k := range toks[:i] {
		c := lexicon.Of(toks[k].Text)
		if toks[k].Kind == token.Word {
			words++
			told = told || c&(lexicon.Time|lexicon.Adverb) != 0 || c&lexicon.Verb != 0 && c&(lexicon.Thing|lexicon.Adjective) == 0 || spoken.Has(toks[k].Text) || toks[k].Text == "tmrw"
		}
	}
	return words == 0 || words >= leastBefore && told
}

// references reports whether tokens hold a number of a card, a page, a place or a day, as no name of a
// drink does, or no more than a number.
func references(toks []token.Token) bool {
	if len(toks) == 1 && figures(&toks[0]) {
		return true
	}
	for i := range toks {
		if toks[i].Kind == token.Numeral && (dated(toks, i) || refers(toks, i)) {
			return true
		}
	}
	return false
}

// onlyRates reports whether every number of a clause is what of ten somebody gave: "lime 8/10".
func onlyRates(toks []token.Token) bool {
	found := false
	for i := range toks {
		if figures(&toks[i]) {
			m := slashed.FindStringSubmatch(toks[i].Text)
			if m == nil || m[2] != "10" && m[2] != "100" || entry.UnitWordsAt(toks[i+1:]) {
				return false
			}
			found = true
		}
	}
	return found
}

// mostScore is the most of ten that somebody gives a drink.
const mostScore = 10

// rates reports whether the number at i is a score: "7/10", "2/2 marks", "4 stars", "Jo says 8".
func rates(toks []token.Token, i int) bool {
	t := &toks[i]
	before, behind := wordAt(toks, i-1), wordAt(toks, i+1)
	if scores.Has(before) || scores.Has(behind) || said.Has(before) && behind == "" && t.Value <= mostScore {
		return true
	}
	if i > 1 && toks[i-1].Is(",") && toks[i-2].Kind == token.Numeral && behind == "" && t.Value <= mostScore && rates(toks, i-2) { // "score 7, 8, 6"
		return true
	}
	m := slashed.FindStringSubmatch(t.Text)
	if m == nil {
		return false
	}
	of, _ := strconv.Atoi(m[2])
	if m[1] == m[2] && behind == "" { // "5/5"
		return true
	}
	return (of == 10 || of == 20 || of == 100) && (behind == "" || !entry.UnitWordsAt(toks[i+1:]))
}

// counted are what a number counts beside the pours, and no list of nouns has.
var counted = vocabulary.Words(`pax covers cover ppl people heads guests portions portion servings serves orders rounds
	min mins sec secs hr hrs wk wks yr yrs am pm quid bucks dollars pounds euros pence cents psi mph kph rpm hz khz watts volts km metres meters steps times places minutes seconds`)

// mostBetween is the most words between a number and what it counts: "2 shot glasses".
const mostBetween = 1

// counts returns how many tokens at i are a number with what it counts, if that is poured nowhere: one
// person or one tool, and several of any other thing that people make. It is 1 if the words are to be
// looked at beside the others, 0 if nothing is counted.
func counts(toks []token.Token, i int) int {
	t := &toks[i]
	one, next := wordAt(toks, i+1), wordAt(toks, i+2)
	switch {
	case counted.Has(one):
		return 2
	case one == "per", one == "each" && i+2 == len(toks):
		if lexicon.Of(next)&lexicon.Person != 0 && whole(t) {
			return 1
		}
		return 0
	}
	for k := i + 1; k <= i+1+mostBetween && k < len(toks); k++ {
		w := wordAt(toks, k)
		c := lexicon.Of(w)
		switch {
		case w == "" || withheld.Has(w):
			return 0
		case tools.Has(w) || k == i+1 && lone(toks, k):
			if k == i+1 || k+1 == len(toks) || wordAt(toks, k+1) == "" {
				return k + 1 - i
			}
			return 0
		case k == i+1 && stocked.Has(w) && inStock(toks): // "we have 9 btl"
			return 2
		case parting.Measured(&toks[k]) || serving.OtherMeasures[w]:
			if k > i+1 || !tools.Has(next) {
				return 0
			}
		case c&lexicon.Time != 0, c&lexicon.Person != 0 && (c&lexicon.Verb == 0 || c&lexicon.Common != 0): // "grinds" of pepper are no students
			if c&lexicon.Time != 0 || (t.Value == 1) == (c&lexicon.Plural == 0) {
				return 1
			}
			return 0
		case c&lexicon.Thing != 0 && c&lexicon.Plural != 0 && c&(lexicon.Verb|lexicon.Adjective) == 0:
			if t.Value > 1 {
				return 1
			}
			return 0
		case c&(lexicon.Adjective|lexicon.Notion|lexicon.Thing) == 0:
			return 0
		}
	}
	return 0
}

// stocked are what stock is counted in.
var stocked = vocabulary.Words(`bottle bottles btl btls case cases keg kegs crate crates box boxes can cans sleeve sleeves`)

// inStock reports whether a clause speaks of what there is of something, or is to be ordered.
func inStock(toks []token.Token) bool {
	for i := range toks {
		switch toks[i].Text {
		case "we", "left", "stock", "order", "ordered", "par", "remaining", "downstairs", "cellar", "backup":
			return true
		}
	}
	return false
}

// whole reports whether a number is one of ones, or goes from one to another.
func whole(t *token.Token) bool {
	return t.Value == math.Trunc(t.Value) || strings.Contains(t.Text, "-")
}

// lone reports whether a measure that is a tool too stands alone among tools: "1 shaker, 1 jigger".
func lone(toks []token.Token, k int) bool {
	if toks[k].Text != "jigger" && toks[k].Text != "barspoon" || k+1 < len(toks) && !toks[k+1].Is(",") {
		return false
	}
	for i := range toks {
		if i != k && tools.Has(toks[i].Text) {
			return true
		}
	}
	return false
}

// tools are what stands or lies on a bar, and goes into no drink.
var tools = vocabulary.Words(`shaker shakers strainer strainers tin tins muddler muddlers peeler knife board card cards coaster coasters napkin napkins tray trays towel towels
	glass glasses coupe coupes flute flutes tumbler tumblers mug mugs goblet goblets copa copas highballs straw straws pick picks umbrella umbrellas stirrer stirrers swizzle tongs funnel scale scales
	whisk candle candles lighter torch spoon spoons jug jugs pitcher pitchers tub tubs sleeve sleeves bin bins`)
