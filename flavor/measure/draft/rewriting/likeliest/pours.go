package likeliest

import (
	"math"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/measure"
	"counterpour/flavor/measure/draft/names/naming"
	"counterpour/flavor/measure/draft/words/entry"
	"counterpour/flavor/measure/draft/words/laid"
	"counterpour/flavor/measure/draft/words/serving"
	"counterpour/flavor/measure/draft/words/token"
	"counterpour/flavor/measure/vocabulary"
)

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
