package paired

import (
	"slices"
	"strings"
	"unicode"

	"counterpour/flavor"
	"counterpour/flavor/measure/draft/names/naming"
	"counterpour/flavor/measure/draft/words/drinks"
	"counterpour/flavor/measure/draft/words/entry"
	"counterpour/flavor/measure/draft/words/title"
	"counterpour/flavor/measure/draft/words/token"
	"counterpour/flavor/measure/vocabulary"
)

// ratio is numbers that stand together, and the names that they are of.
type ratio struct {
	from, to int // tokens of the numbers, with their unit
	first    int // token where numbers and names begin
	numbers  []float64
	unit     flavor.Unit // that is written behind them
	last     flavor.Unit // that measures the last of them alone, as a dash does; empty if none does
	listed   bool        // words or signs of a list join them: "45 and 30", "30 + 30"
	apart    bool        // blanks alone part the numbers
	equal    bool        // all are alike, however many names follow
	names    [][2]int
	usual    []string // the pours that the numbers are of, where the drink is named in place of them
	title    [2]int   // words between the numbers and the names; empty if there are none
	end      int      // where numbers and names end
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
		if !s.takeNames(&r) && !s.namesBefore(&r) {
			return "", false
		}
		all, ok := s.totalOf(&r)
		if !ok || all == nil && (scaled || r.equal || len(r.numbers) == leastPours && !r.listed && !s.inParts(&r) && !s.millilitres(&r)) || s.ofSyrup(&r) || !s.entitled(r.first) {
			return "", false
		}
		if all == nil && s.short(&r) {
			all = &total{from: len(s.toks), to: len(s.toks), amount: amount{value: usualTotal, unit: flavor.Millilitre}}
			s.told = append(s.told, usualTold)
		}
		return s.parted(&r, all), true
	}
	return "", false
}

// usualTotal is how many millilitres two pours of a short drink come to; common practice, no source.
const usualTotal = 90

// usualTold tells that it was taken.
const usualTold = "a ratio does not say how much is poured; 90 ml in all are taken"

// short reports whether a ratio is one of two parts that nothing lengthens: of so few, a part of 30 ml is too
// much, "6:1 gin to dry vermouth".
func (s *script) short(r *ratio) bool {
	if len(r.numbers) > leastPours || !s.inParts(r) || r.measured() {
		return false
	}
	return !slices.ContainsFunc(r.names, func(at [2]int) bool {
		f := s.resolver.Find(s.written(at[0], at[1]), naming.Place{Unit: flavor.Ounce, Amount: 1})
		return f.Profile != nil && (f.Profile.Class.Part() == flavor.PartLength || f.Profile.Carbonated || f.Profile.Class == flavor.ClassWine)
	})
}

// entitled reports whether what stands before a ratio names nothing that is poured, or is the name of a
// drink, which a sign parts from it: "Mezcal Negroni: 2-1-1 ...", but not "gin martini 6:1, ...".
func (s *script) entitled(to int) bool {
	before := s.written(0, to)
	name := strings.TrimRight(before, " .:;/–—-\n")
	return len(s.resolver.Mentioned(before)) == 0 || name != before && drinks.Called(name)
}

// inParts reports whether a ratio can only be one of parts: "4:1", "three to one".
func (s *script) inParts(r *ratio) bool {
	written := s.written(r.from, r.to)
	return r.unit == "" && (strings.Contains(written, ":") || strings.Contains(strings.ToLower(written), "to"))
}

// leastMillilitres is from what number on two of a ratio are millilitres, as nobody mixes fifty parts with
// ten; common practice.
const leastMillilitres = 10

// Beside a number of so many, one as small as that is millilitres too: "50-15-10-5".
const manyMillilitres, leastOfMany = 20, 5

// millilitres reports whether the numbers of a ratio can only be millilitres: "70/10".
func (s *script) millilitres(r *ratio) bool {
	return r.measured() && strings.Contains(s.written(r.from, r.to), "/")
}

// measured reports whether the numbers of a ratio are too many for parts.
func (r *ratio) measured() bool {
	if len(r.numbers) == 0 {
		return false
	}
	least := slices.Min(r.numbers)
	return least >= leastMillilitres || least >= leastOfMany && slices.Max(r.numbers) >= manyMillilitres
}

// between are what may stand between two names of a ratio.
var between = vocabulary.Words(`: , / + & - to and \n`)

// takeNames finds as many names behind a ratio as it has numbers. What stands before a colon there may
// be the name of the drink.
func (s *script) takeNames(r *ratio) bool {
	if r.listed && !s.opensList(r) {
		return false
	}
	i := r.to
	for i < len(s.toks) && s.separates(i) {
		i++
	}
	bracket := i < len(s.toks) && s.toks[i].Is("(")
	if bracket {
		i = s.unitFirst(i+1, r)
	}
	for k := i; k < len(s.toks) && k-i < mostName && s.word(k); k++ {
		if k+1 < len(s.toks) && (s.toks[k+1].Is(":") || s.toks[k+1].Is("(") || s.toks[k+1].Is("-") && !s.toks[k+1].Glued) && len(s.resolver.Mentioned(s.written(i, k+1))) == 0 {
			r.title = [2]int{i, k + 1}
			i = k + 2
			break
		}
	}
	if !s.namesFrom(i, len(s.toks), r) {
		return false
	}
	if r.end < len(s.toks) && s.toks[r.end].Is(")") && (bracket || r.title[1] > 0) {
		r.end++
	} else if bracket {
		return false
	}
	return r.end == len(s.toks) || s.toks[r.end].Kind == token.Mark || r.end < len(s.toks) && !s.separates(r.end) && s.nameAt(r.end, r.unit) == r.end
}

// unitFirst takes the unit of all numbers that a bracket begins with: "2:1:.75 (oz, white rum, lime, simple)".
func (s *script) unitFirst(i int, r *ratio) int {
	u, k := entry.UnitAt(s.line(i))
	if k == 0 || !u.Jigger() || r.unit != "" || i+k >= len(s.toks) || !s.toks[i+k].Is(",") {
		return i
	}
	r.unit = u
	return i + k + 1
}

// namesBefore finds as many names right before a ratio as it has numbers, from the first word on or behind
// a sign: "tequila, lime, agave - 2 / 1 / .5".
func (s *script) namesBefore(r *ratio) bool {
	for k := range r.from {
		if k > 0 && s.toks[k-1].Kind != token.Mark {
			continue
		}
		before := *r
		before.names, before.title, before.numbers = nil, [2]int{}, slices.Clone(r.numbers)
		if r.equal {
			before.numbers = nil
		}
		if !s.namesFrom(k, r.from, &before) {
			continue
		}
		i := before.end
		for i < r.from && (s.separates(i) || s.toks[i].Is("=") || s.toks[i].Is("(")) {
			i++
		}
		if i < r.from {
			continue
		}
		before.first, before.end = k, r.to
		if s.toks[r.from-1].Is("(") && before.end < len(s.toks) && s.toks[before.end].Is(")") {
			before.end++
		}
		*r = before
		return true
	}
	return false
}

// namesFrom takes as many names from a token on as a ratio has numbers, none beyond another token.
func (s *script) namesFrom(i, until int, r *ratio) bool {
	r.names = nil
	for r.equal || len(r.names) < len(r.numbers) {
		i = s.dashesFirst(i, r)
		to := i
		if i < until {
			to = s.bracketEnd(s.nameAt(i, r.unitOf(len(r.names))))
		}
		if to == i && r.equal && len(r.names) >= leastPours {
			break
		}
		if to == i || to > until {
			return false
		}
		if r.equal {
			r.numbers = append(r.numbers, 1)
		}
		r.names, r.end = append(r.names, [2]int{i, to}), to
		for i = to; i < until && s.separates(i); i++ {
			if s.toks[i].Text == "\n" && len(r.names) == len(r.numbers) {
				break
			}
		}
		if i == to && r.equal {
			return len(r.names) >= leastPours
		}
	}
	return true
}

// dashesFirst takes the word that measures the last number, before its name: "45/45/2: gin, vermouth, dashes bitters".
func (s *script) dashesFirst(i int, r *ratio) int {
	if r.equal || r.last != "" || len(r.names) != len(r.numbers)-1 {
		return i
	}
	u, k := entry.UnitAt(s.line(i))
	if k == 0 || u != flavor.Dash && !u.Spoon() {
		return i
	}
	r.last = u
	return i + k
}

// unitOf is the unit that is written of the number at i.
func (r *ratio) unitOf(i int) flavor.Unit {
	if r.last != "" && i == len(r.numbers)-1 {
		return r.last
	}
	return r.unit
}

// separates reports whether what stands at i parts two names of a ratio.
func (s *script) separates(i int) bool {
	return s.toks[i].Text == "\n" || between.Has(s.toks[i].Text)
}

// ofSyrup reports whether a ratio of two numbers may be that of a syrup: "2:1 honey syrup, lemon".
func (s *script) ofSyrup(r *ratio) bool {
	if len(r.numbers) > leastPours {
		return false
	}
	first := s.written(r.names[0][0], r.names[0][1])
	f := s.resolver.Find(first, naming.Place{Unit: flavor.Ounce, Amount: 1})
	return strings.Contains(strings.ToLower(first), "syrup") || f.Profile != nil && f.Profile.Class.Part() == flavor.PartSweetener
}

var (
	// whole are the words that say of an amount that it is that of the drink.
	whole = vocabulary.Words(`total totals whole altogether overall combined drink build volume serve all in for up the size of is = : at comes batch before dilution undiluted tin shaker mixing ice liquid the`)
	// comes are those of them of which one must stand beside it.
	comes = vocabulary.Words(`total totals whole altogether overall combined drink build volume batch all before`)
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
		if i == r.first {
			i = r.end - 1
			continue
		}
		if s.toks[i].Kind == token.Word || s.toks[i].Kind == token.Mark {
			continue
		}
		if i > 0 && i < r.first && title.Numbered(s.toks[i-1].Text) { // "no 4: ..."
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
		if k < 0 || k >= len(s.toks) || k >= r.first && k < r.end || !whole.Has(s.toks[k].Text) {
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
	rest(0, r.first)
	if title := strings.TrimRight(out.String(), " \n.,:;–—-"); title != "" {
		out.Reset()
		out.WriteString(title)
	}
	if title := s.written(r.title[0], r.title[1]); title != "" && out.Len() == 0 {
		out.WriteString(title)
	}
	for k, v := range r.numbers {
		a := amount{value: v, unit: r.unit}
		switch {
		case all != nil:
			a = amount{value: all.amount.value * v / sum, unit: all.amount.unit}
		case r.unit == "" && !r.apart && !r.listed && r.last == "" && !strings.Contains(s.written(r.from, r.to), "/") && !r.measured():
			a.unit = flavor.PartUnit
		}
		if r.last != "" && k == len(r.numbers)-1 {
			a.unit = r.last
		}
		out.WriteString("\n" + a.written() + " " + s.nameOf(r, k))
	}
	out.WriteString("\n")
	end := r.end
	for end < len(s.toks) && s.toks[end].Kind == token.Mark {
		end++
	}
	rest(end, len(s.toks))
	return strings.TrimLeft(out.String(), " \n:-–—,")
}

// nameOf is what the number at k is of.
func (s *script) nameOf(r *ratio, k int) string {
	if r.usual != nil {
		return r.usual[k]
	}
	return s.written(r.names[k][0], r.names[k][1])
}
