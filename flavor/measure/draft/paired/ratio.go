package paired

import (
	"strconv"
	"strings"
	"unicode"

	"counterpour/flavor"
	"counterpour/flavor/measure/draft/drinks"
	"counterpour/flavor/measure/draft/entry"
	"counterpour/flavor/measure/draft/token"
	"counterpour/flavor/measure/pattern"
	"counterpour/flavor/measure/vocabulary"
)

// ratio is numbers that stand together, and the names that they are of.
type ratio struct {
	from, to int // tokens of the numbers, with their unit
	numbers  []float64
	unit     flavor.Unit // that is written behind them
	apart    bool        // blanks alone part the numbers
	equal    bool        // all are alike, however many names follow
	names    [][2]int
	end      int // where the last name ends
}

// total is what a whole drink comes to, and where that is said.
type total struct {
	from, to int
	amount   amount
}

// ratio reads a text whose only amounts are a ratio, and perhaps what the drink comes to; scaled asks for
// that.
func (s *script) ratio(scaled bool) (string, bool) {
	for i := range s.toks {
		r, ok := s.ratioAt(i)
		if !ok {
			continue
		}
		if !s.takeNames(&r) {
			return "", false
		}
		all, ok := s.totalOf(&r)
		if !ok || all == nil && (scaled || r.equal || len(r.numbers) == leastPours && !s.millilitres(&r)) || s.ofSyrup(&r) || !s.entitled(r.from) {
			return "", false
		}
		return s.parted(&r, all), true
	}
	return "", false
}

// entitled reports whether what stands before a ratio names nothing that is poured, or is the name of a
// drink, which a sign parts from it: "Mezcal Negroni: 2-1-1 ...", but not "gin martini 6:1, ...".
func (s *script) entitled(to int) bool {
	before := s.written(0, to)
	name := strings.TrimRight(before, " .:;/–—-\n")
	return len(s.resolver.Mentioned(before)) == 0 || name != before && drinks.Called(name)
}

// leastMillilitres is from what number on two of a ratio are millilitres, as nobody mixes fifty parts with
// ten; common practice.
const leastMillilitres = 10

// millilitres reports whether the numbers of a ratio can only be millilitres: "70/10".
func (s *script) millilitres(r *ratio) bool {
	for _, v := range r.numbers {
		if v < leastMillilitres {
			return false
		}
	}
	return strings.Contains(s.written(r.from, r.to), "/")
}

var (
	// joined are numbers in one word: "4:2:1", "1-1-1", "50/50", and number is one of them.
	joined = pattern.Of(`^(?:\d+(?:\.\d+)?|\.\d+)(?:[:/–-](?:\d+(?:\.\d+)?|\.\d+))+(?:[ \t.,:;–—-]|$|\n|oz|ml|cl)`)
	number = pattern.Of(`\d*\.\d+|\d+`)
)

// leastApart is the fewest numbers with blanks alone between them.
const leastApart = 3

// ratioAt reads the numbers of a ratio at i, or the words that make all alike.
func (s *script) ratioAt(i int) (ratio, bool) {
	r := ratio{from: i, to: i}
	written := joined.FindString(s.text[s.toks[i].Start:])
	switch {
	case s.equalAt(i):
		r.equal, r.to = true, i+2
		return r, true
	case s.toks[i].Kind == token.Mark || s.toks[i].Kind == token.Word:
		return ratio{}, false
	case written != "":
		for _, n := range number.FindAllString(written, -1) {
			v, _ := strconv.ParseFloat(n, 64)
			r.numbers = append(r.numbers, v)
		}
		for end := s.toks[i].Start + len(strings.TrimRight(written, " \t.,:;–—-\nozmlc")); r.to < len(s.toks) && s.toks[r.to].Start < end; {
			r.to++
		}
	case s.toks[i].Kind == token.Numeral && i+2 < len(s.toks) && s.toks[i+1].Text == "to" && s.toks[i+2].Kind == token.Numeral:
		r.numbers, r.to = []float64{s.toks[i].Value, s.toks[i+2].Value}, i+3
	default:
		for r.to < len(s.toks) && s.toks[r.to].Kind == token.Numeral && s.toks[r.to].Wrong == "" {
			r.numbers, r.to = append(r.numbers, s.toks[r.to].Value), r.to+1
		}
		r.apart = true
	}
	if u, k := entry.UnitAt(s.line(r.to)); k > 0 && u.Jigger() {
		r.unit, r.to = u, r.to+k
	}
	for _, v := range r.numbers {
		if !(v > 0) {
			return ratio{}, false
		}
	}
	return r, len(r.numbers) >= leastPours && (!r.apart || len(r.numbers) >= leastApart)
}

// equalAt reports whether "equal parts" stands at i.
func (s *script) equalAt(i int) bool {
	return s.word(i) && s.word(i+1) && strings.HasPrefix(s.toks[i].Text, "eq") && (strings.HasPrefix(s.toks[i+1].Text, "part") || s.toks[i+1].Text == "pts" || s.toks[i+1].Text == "pt")
}

// between are what may stand between two names of a ratio.
var between = vocabulary.Words(`: , / + & - to and \n`)

// takeNames finds as many names behind a ratio as it has numbers. What stands before a colon there may
// be the name of the drink.
func (s *script) takeNames(r *ratio) bool {
	i := r.to
	for i < len(s.toks) && s.separates(i) {
		i++
	}
	for k := i; k < len(s.toks) && k-i < mostName && s.word(k); k++ {
		if k+1 < len(s.toks) && s.toks[k+1].Is(":") && len(s.resolver.Mentioned(s.written(i, k+1))) == 0 {
			i = k + 2
			break
		}
	}
	for r.equal || len(r.names) < len(r.numbers) {
		to := s.nameAt(i, r.unit)
		if to == i && r.equal && len(r.names) >= leastPours {
			break
		}
		if to == i {
			return false
		}
		if r.equal {
			r.numbers = append(r.numbers, 1)
		}
		r.names, r.end = append(r.names, [2]int{i, to}), to
		for i = to; i < len(s.toks) && s.separates(i); i++ {
			if s.toks[i].Text == "\n" && len(r.names) == len(r.numbers) {
				break
			}
		}
		if i == to && (r.equal || len(r.names) < len(r.numbers)) {
			return r.equal && len(r.names) >= leastPours
		}
	}
	return r.end == len(s.toks) || s.toks[r.end].Kind == token.Mark || r.end < len(s.toks) && !s.separates(r.end) && s.nameAt(r.end, r.unit) == r.end
}

// separates reports whether what stands at i parts two names of a ratio.
func (s *script) separates(i int) bool {
	return s.toks[i].Text == "\n" || between.Has(s.toks[i].Text)
}

// ofSyrup reports whether a ratio of two numbers may be that of a syrup: "2:1 honey syrup, lemon".
func (s *script) ofSyrup(r *ratio) bool {
	return len(r.numbers) == leastPours && strings.Contains(strings.ToLower(s.written(r.names[0][0], r.names[0][1])), "syrup")
}

var (
	// whole are the words that say of an amount that it is that of the drink.
	whole = vocabulary.Words(`total totals whole altogether overall combined drink build volume serve all in for up the size of is = : at comes batch before dilution undiluted`)
	// comes are those of them of which one must stand beside it.
	comes = vocabulary.Words(`total totals whole altogether overall combined drink build volume batch all`)
)

// saysTotal reports whether a text has a word that says what a drink comes to.
func saysTotal(text string) bool {
	for w := range strings.FieldsFuncSeq(strings.ToLower(text), func(c rune) bool { return !unicode.IsLetter(c) }) {
		if comes.Has(w) {
			return true
		}
	}
	return false
}

// totalOf finds what the drink comes to, with every word that says so; nil if nothing does. It is false if
// another amount stands beside the ratio that is more than a dash.
func (s *script) totalOf(r *ratio) (*total, bool) {
	var found *total
	for i := 0; i < len(s.toks); i++ {
		if i == r.from {
			i = r.end - 1
			continue
		}
		if s.toks[i].Kind == token.Word || s.toks[i].Kind == token.Mark {
			continue
		}
		a, ok := s.amountAt(i)
		if !ok {
			return nil, false
		}
		if a.unit != "" && !a.unit.Jigger() { // "2 dashes orange bitters"
			i = a.to - 1
			continue
		}
		t, said := s.totalAt(i, &a, r)
		if !said || found != nil || r.unit != "" {
			return nil, false
		}
		found = &t
		i = t.to - 1
	}
	return found, true
}

// totalAt takes the words around an amount that say that the drink comes to it; false if none do.
func (s *script) totalAt(i int, a *amount, r *ratio) (total, bool) {
	t := total{from: i, to: a.to, amount: *a}
	told := false
	take := func(k int) bool {
		if k < 0 || k >= len(s.toks) || k >= r.from && k < r.end || !whole.Has(s.toks[k].Text) {
			return false
		}
		told = told || comes.Has(s.toks[k].Text)
		return true
	}
	for take(t.from - 1) {
		t.from--
	}
	for take(t.to) {
		t.to++
	}
	return t, told && a.unit != ""
}

// parted is a text with a line for each number and its name in place of a ratio, and without what the
// drink comes to.
func (s *script) parted(r *ratio, all *total) string {
	sum := 0.0
	for _, v := range r.numbers {
		sum += v
	}
	var out strings.Builder
	begin := func(i int) int {
		if i < len(s.toks) {
			return s.toks[i].Start
		}
		return len(s.text)
	}
	rest := func(from, to int) { // without what all comes to
		if all != nil && all.from >= from && all.to <= to {
			out.WriteString(s.text[begin(from):begin(all.from)])
			from = all.to
		}
		if from < to {
			out.WriteString(s.text[begin(from):begin(to)])
		}
	}
	rest(0, r.from)
	if title := strings.TrimRight(out.String(), " \n.,:;–—-"); title != "" {
		out.Reset()
		out.WriteString(title)
	}
	for k, v := range r.numbers {
		a := amount{value: v, unit: r.unit}
		switch {
		case all != nil:
			a = amount{value: all.amount.value * v / sum, unit: all.amount.unit}
		case r.unit == "" && !r.apart && !strings.Contains(s.written(r.from, r.to), "/"):
			a.unit = flavor.PartUnit
		}
		out.WriteString("\n" + a.written() + " " + s.written(r.names[k][0], r.names[k][1]))
	}
	out.WriteString("\n")
	end := r.end
	for end < len(s.toks) && s.toks[end].Kind == token.Mark {
		end++
	}
	rest(end, len(s.toks))
	return strings.TrimLeft(out.String(), " \n:-–—,")
}
