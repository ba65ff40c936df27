package likeliest

import (
	"math"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/measure"
	"counterpour/flavor/measure/draft/entry"
	"counterpour/flavor/measure/draft/laid"
	"counterpour/flavor/measure/draft/naming"
	"counterpour/flavor/measure/draft/serving"
	"counterpour/flavor/measure/draft/token"
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
	if _, other := entry.Measures[w]; other {
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
	if own {
		a.value, a.unit, a.written = b.value, b.unit, b.written
	}
	a.to = b.to + 1
	return a, true
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

// tails say behind a name how it goes in, and stay there.
var tails = [][]string{{"to", "the", "top"}, {"on", "top"}, {"to", "top"}, {"top"}, {"full", "up"}, {"fill", "up"}, {"fill"}, {"float"}, {"floated"}, {"muddled"}, {"squeezed"}}

// pieces say into what fruit is cut.
var pieces = vocabulary.Words(`quarters eighths wedges halves chunks pieces slices cubes sixths`)

// cutAt is where words end behind a name that say how it is cut: "1 lime in 8ths".
func (s *script) cutAt(i int) int {
	switch {
	case s.word(i, "in", "into") && s.word(i+1) && pieces.Has(s.toks[i+1].Text):
		return i + 2
	case s.word(i, "in", "into") && i+2 < len(s.toks) && s.toks[i+1].Kind == token.Numeral && s.word(i+2, "ths", "th"):
		return i + 3
	}
	return i
}

// tailAt is where what is said behind a name ends.
func (s *script) tailAt(i int) int {
	if s.sign(i, ",(") {
		if end := s.behind(i+1, tails); end > i+1 && (s.ends(end) || s.sign(end, ").;,")) {
			return end
		}
	}
	return s.behind(i, tails)
}

// behind is where the first of some turns of speech ends that stands at i, i if none does.
func (s *script) behind(i int, turns [][]string) int {
	for _, t := range turns {
		k := 0
		for k < len(t) && s.word(i+k, t[k]) {
			k++
		}
		if k == len(t) {
			return i + k
		}
	}
	return i
}

// poured are pours that start with their amount at i: "2 oz gin", "1peach schnapps".
func (s *script) poured(i int) []stretch {
	a, ok := s.amountAt(i)
	if !ok || a.each {
		return nil
	}
	from := a.to
	for s.word(from, "of", "the") || s.sign(from, "-") && from == a.to && !s.ends(from+1) {
		from++
	}
	var out []stretch
	if a.unit == "" && a.value <= mostWhites && s.word(from, "white", "whites") && (s.ends(from+1) || s.sign(from+1, partingSigns)) {
		if n := s.eggWhite(); n.ok {
			out = append(out, s.pour(i, from+1, &a, &n))
		}
	}
	for _, to := range s.named(from) {
		for _, u := range a.places() {
			n := s.nameAt(from, to, u, a.value)
			if n.either {
				break
			}
			if !n.ok || s.goesOn(from, to) {
				continue
			}
			if a.article && s.word(i-1, "with", "w") && laid.Ends(s.toks[from:to]) { // "neat with an orange slice"
				break
			}
			end := s.tailAt(to)
			if rest, ok := entry.OnTop(s.toks[i:end]); ok && end > to && countedOnly(a.unit) { // "a sprig of thyme on top"
				out = append(out, stretch{kind: aLaid, from: i, to: end, cost: costLaid, told: true, lines: []string{"garnish: " + s.written(i, i+len(rest))}})
				break
			}
			t := s.pour(i, to, &a, &n)
			if t.to = s.cutAt(to); t.to > to {
				t.lines[0] += " " + s.written(to, t.to)
			}
			out = append(out, t)
			if end > to {
				t.to, t.lines = end, []string{t.lines[0] + " " + s.written(to, end)}
				if s.word(end-1, "top", "float", "floated", "fill", "up") {
					t.lines = []string{tops(s.toks[end-1].Text) + " " + a.written + " " + n.written}
				}
				out = append(out, t)
			}
			break
		}
	}
	return out
}

// countedOnly reports whether a unit counts what is laid on a drink.
func countedOnly(u flavor.Unit) bool {
	return u == "" || u == flavor.Piece || u == flavor.Slice || u == flavor.Wedge || u == flavor.Sprig || u == flavor.Leaf
}

// mostWhites is how many whites of eggs go into a drink at most; common practice.
const mostWhites = 2

// eggWhite is what "one white" names.
func (s *script) eggWhite() name {
	f := s.resolver.Find("egg white", naming.PlaceOf(flavor.Piece, 1, false))
	return name{ok: f.Profile != nil, cost: costShort, written: "egg white", mended: "white", profile: f.Profile, whole: true}
}

// goesOn reports whether a name begins words of making that go on behind it: "1 dry shake".
func (s *script) goesOn(from, to int) bool {
	var words []string
	for k := from; k < len(s.toks) && s.word(k) && k-from < serving.LongestTerm; k++ {
		words = append(words, plain(s.toks[k].Text))
	}
	if len(words) == 0 {
		return false
	}
	_, n := serving.TermAt(words)
	return n > to-from
}

// tops is the verb of what goes in last.
func tops(w string) string {
	if strings.HasPrefix(w, "float") {
		return "float"
	}
	return "top"
}

// pour is the pour of an amount and a name between two tokens.
func (s *script) pour(from, to int, a *amount, n *name) stretch {
	t := stretch{kind: aPour, from: from, to: to, cost: a.cost() + n.cost, lines: []string{a.written + " " + n.written}, pours: []*flavor.Profile{n.profile}, bare: a.unit == ""}
	if n.mended != "" {
		t.said = "“" + n.mended + "” is read as " + n.written
	}
	return t
}

// pouredBehind are pours that start with their name at i, with the amount behind it: "lem 1",
// "amontillado ...... .75", "prosecco top 60".
func (s *script) pouredBehind(i int) []stretch {
	var out []stretch
	for _, to := range s.named(i) {
		at, verb := to, ""
		if s.word(at, "top", "float") {
			verb = s.toks[at].Text + " "
			at++
		}
		for s.sign(at, ".-:=…|•_") {
			at++
		}
		if s.sign(at, ",") && (s.loosely(at+1) || s.oneEgg(i, at+1)) {
			at++
		}
		if s.word(at, "say") {
			at++
		}
		a, ok := s.amountAt(at)
		if !ok || a.each || a.article || s.counts(at) && !s.oneEgg(i, at) {
			continue
		}
		if small[a.unit] && a.value < 1 && !s.toks[a.to-1].Glued { // "lime .5 pinch salt"
			a = amount{value: a.value, written: strings.TrimSuffix(a.written, " "+s.written(a.to-1, a.to)), to: a.to - 1}
		}
		for _, u := range a.places() {
			n := s.nameAt(i, to, u, a.value)
			if n.either {
				break
			}
			if n.ok {
				t := s.pour(i, s.again(&a), &a, &n)
				t.lines[0] = verb + t.lines[0]
				t.behind = true
				if end := s.tailAt(a.to); end > a.to && verb == "" && !s.word(end-1, "muddled", "squeezed") {
					u := t
					u.to, u.lines = end, []string{tops(s.toks[end-1].Text) + " " + t.lines[0]}
					out = append(out, u)
				}
				out = append(out, t)
				break
			}
		}
	}
	return out
}

// loosely reports whether an amount at i is led in by "about" or "say".
func (s *script) loosely(i int) bool {
	return s.word(i) && (token.LooseWords[s.toks[i].Text] || s.word(i, "say"))
}

// oneEgg reports whether an egg is named at i and counted behind it, at the token at: "egg white, one".
func (s *script) oneEgg(i, at int) bool {
	return s.word(i, "egg", "eggs", "ew", "aquafaba") && at < len(s.toks) && s.ends(at+1) || s.word(i, "egg", "eggs", "ew") && s.sign(at+1, ".,;/")
}

// counts reports whether a bare "one" at i stands for the drink, "the bitter one", and is no amount.
func (s *script) counts(i int) bool {
	written := s.written(i, i+1)
	_, n := entry.UnitAt(s.line(i + 1))
	return strings.EqualFold(written, "one") && n == 0
}

// sameAmount is how far two amounts of one pour lie apart at most, as a share: they are rounded.
const sameAmount = 0.08

// again is where an amount ends that is said once more in another unit: "1 1/2 oz | 45 ml".
func (s *script) again(a *amount) int {
	at := a.to
	for s.sign(at, "|/=(") {
		at++
	}
	b, ok := s.amountAt(at)
	if !ok || at == a.to || !a.unit.Jigger() || !b.unit.Jigger() || a.unit == b.unit {
		return a.to
	}
	x, _ := measure.MLPerUnit(a.unit, nil)
	y, _ := measure.MLPerUnit(b.unit, nil)
	if math.Abs(a.value*x-b.value*y) > sameAmount*a.value*x {
		return a.to
	}
	return b.to
}

// small are the units of which one goes without saying.
var small = map[flavor.Unit]bool{flavor.Dash: true, flavor.Splash: true, flavor.Pinch: true, flavor.Barspoon: true, flavor.Drop: true, flavor.Teaspoon: true}

// each are pours of one amount, "3/4 ea gin, lime, green herbal": the longest list.
func (s *script) each(i int) []stretch {
	a, ok := s.amountAt(i)
	if !ok || !a.each {
		return nil
	}
	t := stretch{kind: aPour, from: i, cost: 0}
	at := a.to
	for s.word(at, "of") || s.sign(at, ":-,") {
		at++
	}
	for {
		next := stretch{}
		for _, to := range s.named(at) {
			n := s.nameAt(at, to, a.places()[0], a.value)
			if p := s.pour(at, to, &a, &n); n.ok && (next.to == 0 || p.cost <= next.cost) {
				next = p
			}
		}
		if next.to == 0 {
			break
		}
		t.to, t.cost = next.to, t.cost+next.cost
		t.lines, t.pours = append(t.lines, next.lines...), append(t.pours, next.pours...)
		if next.said != "" {
			t.said = strings.TrimPrefix(t.said+"; "+next.said, "; ")
		}
		at = next.to
		if s.sign(at, ",/+&") || s.word(at, "and") {
			at++
			if s.word(at, "and") {
				at++
			}
			continue
		}
		break
	}
	if len(t.lines) < leastPours {
		return nil
	}
	return []stretch{t}
}
