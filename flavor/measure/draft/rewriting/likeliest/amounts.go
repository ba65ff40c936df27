package likeliest

import (
	"math"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/measure"
	"counterpour/flavor/measure/draft/words/entry"
	"counterpour/flavor/measure/draft/words/gauge"
	"counterpour/flavor/measure/draft/words/serving"
	"counterpour/flavor/measure/draft/words/token"
	"counterpour/flavor/measure/pattern"
	"counterpour/flavor/measure/vocabulary"
)

// amount is how much is poured, as written.
type amount struct {
	value   float64
	unit    flavor.Unit // empty: none is written
	written string      // with its unit
	to      int         // where it ends
	each    bool        // of each of what follows
	article bool        // it is an "a"
}

// amountAt reads an amount with its unit at i.
func (s *script) amountAt(i int) (amount, bool) {
	if s.word(i, "each", "ea") && i+1 < len(s.toks) && s.toks[i+1].Kind == token.Numeral { // "ea 1oz gin/lemon"
		a, ok := s.amountAt(i + 1)
		a.each = true
		return a, ok
	}
	if s.word(i) && (token.LooseWords[s.toks[i].Text] || s.word(i, "abt", "bout")) && i+1 < len(s.toks) && s.toks[i+1].Kind == token.Numeral {
		return s.amountAt(i + 1)
	}
	if s.word(i-1, "a", "the") && s.word(i-2, "in", "into") { // "in a half pint"
		return amount{}, false
	}
	value, n := entry.AmountOf(s.line(i))
	if n == 0 {
		return s.oneOfEach(i)
	}
	if w := i + n; w < len(s.toks) && s.word(w) && s.toks[w].Glued && misread.MatchString(s.toks[w].Text) { // "6O gin", "5Oml"
		return amount{}, false
	}
	a := s.number(i, n, value)
	if s.word(a.to) && (serving.DegreeWords[s.toks[a.to].Text] && s.toks[a.to].Text != "d" || timesWords.Has(s.toks[a.to].Text)) {
		return amount{}, false
	}
	s.takeEach(&a)
	if u, k, written := s.unitWritten(a.to); k > 0 {
		a.unit = u
		a.written += " " + written
		a.to += k
	}
	if !a.each {
		s.takeEach(&a)
	}
	return s.saidAgain(a)
}

// oneOfEach reads a unit without a number before what is poured alike: "oz each gin, lemon".
func (s *script) oneOfEach(i int) (amount, bool) {
	u, k := entry.UnitAt(s.line(i))
	if k == 0 || !u.Jigger() || !s.word(i+k, "each", "ea") {
		return amount{}, false
	}
	return amount{value: 1, unit: u, written: "1 " + s.written(i, i+k), to: i + k + 1, each: true}, true
}

// number is an amount of n tokens at i, with the words that lead from it to its unit: "one full
// jigger", "half an oz". What is not written in figures alone is written so.
func (s *script) number(i, n int, value float64) amount {
	for s.word(i+n) && token.LooseWords[s.toks[i+n].Text] && entry.UnitWordsAt(s.line(i+n+1)) {
		n++
	}
	a := amount{value: value, to: i + n, article: n == 1 && s.word(i, "a", "an")}
	a.written = s.written(i, a.to)
	loose := n > 1 && s.word(a.to-1) && token.LooseWords[s.toks[a.to-1].Text]
	if loose || s.toks[i].Kind == token.Word || !strings.ContainsAny(a.written, "0123456789½¼¾⅓⅔⅛⅜⅝⅞") {
		a.written = token.Decimals(value)
	}
	for s.word(a.to, "of", "an", "a") && s.word(a.to+1) && entry.UnitWordsAt(s.line(a.to+1)) {
		a.to++
	}
	return a
}

// takeEach takes the word that says that an amount is one of each of what follows.
func (s *script) takeEach(a *amount) {
	if a.each = s.word(a.to, "each", "ea"); a.each {
		a.to++
	}
}

// unitWritten is the unit at i, how many tokens it takes and how a list writes it; 0 tokens if there
// is none.
func (s *script) unitWritten(i int) (u flavor.Unit, k int, written string) {
	if u, k = s.unitAt(i); k > 0 {
		if entry.UnitWordsAt(s.line(i)) {
			return u, k, s.written(i, i+k)
		}
		return u, k, string(u)
	}
	if !s.word(i) {
		return "", 0, ""
	}
	w := s.toks[i].Text
	if _, other := gauge.Measures[w]; other {
		return measured(w), 1, w
	}
	return "", 0, ""
}

// saidAgain is an amount with what is said of it in brackets behind it: "half a jigger (1 oz)"
// says how much this bar's jigger holds, "1 oz (30 ml)" says the same twice; false if they differ.
func (s *script) saidAgain(a amount) (amount, bool) {
	if !s.sign(a.to, "(") || s.toks[a.to-1].Kind != token.Word {
		return a, true
	}
	b, ok := s.amountAt(a.to + 1)
	if !ok || !s.sign(b.to, ")") || !b.unit.Jigger() {
		return a, true
	}
	x, okA := measure.MLPerUnit(a.unit, nil)
	y, okB := measure.MLPerUnit(b.unit, nil)
	own := barMeasures.Has(s.toks[a.to-1].Text)
	if !own && (!okA || !okB || math.Abs(a.value*x-b.value*y) > sameAmount*a.value*x) {
		return amount{}, false
	}
	switch {
	case own && s.pouredAgain(a.to-1): // its size counts for the others as well
		a.unit, a.written = b.unit, a.written+" ("+b.written+")"
	case own:
		a.value, a.unit, a.written = b.value, b.unit, b.written
	}
	a.to = b.to + 1
	return a, true
}

// pouredAgain reports whether the bar's own measure at a token stands elsewhere too.
func (s *script) pouredAgain(at int) bool {
	one := gauge.Own(s.toks[at].Text)
	for i := range s.toks {
		if one != "" && i != at && s.word(i) && gauge.Own(s.toks[i].Text) == one {
			return true
		}
	}
	return false
}

// barMeasures are measures that hold what a bar's own jigger does.
var barMeasures = vocabulary.Words(`jigger jiggers pony ponies shot shots measure measures pour side glug glugs splash top float`)

// misread are letters that were typed for figures.
var misread = pattern.Of(`^[oil](ml|cl|oz)?$`)

// smallUnits are units that are known without their vowels.
var smallUnits = func() map[string]flavor.Unit {
	m := map[string]flavor.Unit{}
	for _, u := range []flavor.Unit{flavor.Dash, flavor.Splash, flavor.Pinch, flavor.Barspoon, flavor.Drop, flavor.Scoop} {
		m[bones(string(u))] = u
	}
	return m
}()

// unitAt is the unit in words at i, mended if it is shortened, and how many tokens it takes.
func (s *script) unitAt(i int) (flavor.Unit, int) {
	if u, k := entry.UnitAt(s.line(i)); k > 0 {
		return u, k
	}
	if s.word(i) && len(s.toks[i].Text) >= leastMended {
		if u := smallUnits[bones(s.toks[i].Text)]; u != "" && bones(s.toks[i].Text) == s.toks[i].Text { // "punch" is no pinch
			return u, 1
		}
	}
	return "", 0
}

// measured is the unit by whose place a measure of another kind is looked up.
func measured(w string) flavor.Unit {
	if w == "d" || w == "shakes" {
		return flavor.Dash
	}
	return flavor.Ounce
}

// line are the tokens from i to the end of its line.
func (s *script) line(i int) []token.Token {
	if i >= len(s.toks) {
		return nil
	}
	return s.toks[i:s.end(i)]
}

// leastMillis is a bare number from which it is millilitres; common practice.
const leastMillis = 5

// places are the units by which a name may be meant behind an amount.
func (a *amount) places() []flavor.Unit {
	switch {
	case a.unit != "":
		return []flavor.Unit{a.unit}
	case a.value >= leastMillis:
		return []flavor.Unit{flavor.Millilitre, flavor.Piece}
	}
	return []flavor.Unit{flavor.Ounce, flavor.Piece}
}

// cost is what an amount costs beside its name.
func (a *amount) cost() float64 {
	if a.article {
		return costPour + costWithout
	}
	return costPour
}
