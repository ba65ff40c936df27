package paired

import (
	"slices"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/measure/draft/names/naming"
	"counterpour/flavor/measure/draft/words/drinks"
	"counterpour/flavor/measure/draft/words/token"
	"counterpour/flavor/measure/vocabulary"
)

// A ratio may stand beside the name of a drink in place of the names of its pours: "daiquiri 60/30/20". Where the
// proven drinks of that name agree on what such a ratio measures, and bars on the order, it is read so.

// besideName are words between the name of a drink and its ratio.
var besideName = vocabulary.Words(`but at in is as the our house my a an goes ratio ratios specs spec of with by w for`)

// OfDrink returns a text whose ratio is that of a drink of which everybody knows the pours, with a line for each, and
// what it took for granted; a fault if the drink is known and its pours, or their order, are not. It is false for a
// text of another kind.
func OfDrink(text string, b *naming.Resolver) (out string, told []string, ask *flavor.DataFault, ok bool) {
	if len(text) > mostText {
		return "", nil, nil, false
	}
	s := newScript(text, b)
	for i := range s.toks {
		r, found := s.ratioAt(i)
		if !found {
			continue
		}
		named := r
		if s.takeNames(&named) || s.namesBefore(&named) {
			return "", nil, nil, false
		}
		name, found := s.drinkBeside(&r)
		if !found || s.amountsBeside(&r) {
			return "", nil, nil, false
		}
		topped := strings.HasSuffix(s.written(r.from, r.to), topping)
		r.usual = s.usualPours(name, &r, topped)
		if slices.ContainsFunc(r.usual, func(pour string) bool { return s.partOf(pour) == "" }) {
			return "", nil, nil, false
		}
		if r.usual == nil || !s.inOrder(&r) || s.poursMore(&r) {
			ask = flavor.Invalid("", token.OneLine(s.written(r.from, r.to)), "bars do not agree on which pours of %s the numbers %q measure, or in which order; write each pour with its amount", name, s.written(r.from, r.to))
			return "", nil, ask, b.Err() == nil
		}
		told = append(told, "“"+s.written(r.from, r.to)+"” is read as "+name+" is poured: "+strings.Join(r.usual, ", "))
		if more := s.unmeasured(name, &r); len(more) > 0 {
			told = append(told, "the numbers say nothing of "+strings.Join(more, ", ")+", which all bars pour in "+name+" as well")
		}
		return s.ofDrink(&r, topped), append(told, s.told...), nil, b.Err() == nil
	}
	return "", nil, nil, false
}

// drinkBeside finds the name of the drink that a ratio is of: before it, with nothing else on its line, or right
// behind it, up to a sign. It is marked as the title, or the ratio begins behind it.
func (s *script) drinkBeside(r *ratio) (string, bool) {
	from := r.from
	for from > 0 && s.toks[from-1].Text != "\n" {
		from--
	}
	to := r.from
	for to > from && (s.toks[to-1].Kind == token.Mark || s.word(to-1) && besideName.Has(s.toks[to-1].Text)) {
		to--
	}
	for from < to && s.word(from) && besideName.Has(s.toks[from].Text) {
		from++
	}
	if from < to {
		r.first, r.end = r.from, r.to
		name := s.written(from, to)
		return name, s.isDrink(name)
	}
	end := r.to
	for s.word(end) && end-r.to < drinks.MostWords && !(end > r.to && besideName.Has(s.toks[end].Text)) {
		end++
	}
	if end == r.to || end < len(s.toks) && s.toks[end].Kind != token.Mark {
		return "", false
	}
	r.first, r.end, r.title = r.from, end, [2]int{r.to, end}
	name := s.written(r.to, end)
	return name, s.isDrink(name)
}

// isDrink reports whether everybody orders a drink by a name, with its spirit before it or without.
func (s *script) isDrink(name string) bool {
	_, rest := s.spirit(name)
	return drinks.Called(name) || rest != "" && drinks.Called(rest)
}

// spirit is the spirit that a name of a drink begins with, and the words behind it: "vodka martini".
func (s *script) spirit(name string) (spirit, rest string) {
	words := strings.Fields(name)
	for n := min(len(words)-1, mostName); n > 0; n-- {
		spirit = strings.Join(words[:n], " ")
		if f := s.resolver.Find(spirit, naming.Place{Unit: flavor.Ounce, Amount: 1}); f.Firm() && f.Dropped == "" && f.Profile.Base() {
			return spirit, strings.Join(words[n:], " ")
		}
	}
	return "", ""
}

// amountsBeside reports whether a text states any other amount than those of a ratio that is more than a dash.
func (s *script) amountsBeside(r *ratio) bool {
	for i := 0; i < len(s.toks); i++ {
		if i == r.from {
			i = r.to - 1
			continue
		}
		if s.toks[i].Kind == token.Word || s.toks[i].Kind == token.Mark {
			continue
		}
		a, ok := s.amountAt(i)
		if !ok || a.unit == "" || a.unit.Jigger() {
			return true
		}
		i = a.to - 1
	}
	return false
}

// topping is what tops a drink in place of a number: "60/30/20/top".
const topping = "/top"

// usualPours are the pours of a drink that a ratio measures, with the spirit that its name tells; nil if they are not
// known. What all bars pour in it beside them is told.
func (s *script) usualPours(name string, r *ratio, topped bool) []string {
	counts := []int{len(r.numbers)}
	switch {
	case r.equal:
		counts = []int{2, 3, 4, 5}
	case topped:
		counts[0]++
	}
	spirit, rest := s.spirit(name)
	var found []string
	for _, n := range counts {
		pours := drinks.Measured(name, n)
		if pours == nil && rest != "" {
			pours = drinks.Measured(rest, n)
		}
		if pours == nil {
			continue
		}
		if found != nil {
			return nil
		}
		found = slices.Clone(pours)
	}
	if found == nil {
		return nil
	}
	if spirit != "" {
		if s.partOf(found[0]) != flavor.PartBase {
			return nil
		}
		found[0] = spirit
	}
	if r.equal {
		r.numbers = slices.Repeat([]float64{1}, len(found))
	}
	return found
}

// poursMore reports whether a text names a spirit, a liqueur or a syrup beside those that a ratio measures.
func (s *script) poursMore(r *ratio) bool {
	begin, end := s.toks[r.from].Start, s.toks[max(r.end, r.to)-1].End
	for r.first > 0 && begin > 0 && s.text[begin-1] != '\n' { // the name stands before it
		begin--
	}
	return slices.ContainsFunc(s.resolver.Mentioned(s.text[:begin]+"\n"+s.text[end:]), func(p *flavor.Profile) bool {
		part := p.Class.Part()
		return part == flavor.PartBase || part == flavor.PartModifier || part == flavor.PartSweetener && !p.Class.Solid()
	})
}

// unmeasured are the pours of a drink that all bars pour in it and neither its ratio measures nor its text names.
func (s *script) unmeasured(name string, r *ratio) []string {
	all, _ := drinks.Pours(name)
	mentioned := s.resolver.Mentioned(s.text)
	return slices.DeleteFunc(slices.Clone(all), func(pour string) bool {
		part := s.partOf(pour)
		return slices.Contains(r.usual, pour) || part != "" && slices.Contains(drinks.InRatio, part) ||
			slices.ContainsFunc(mentioned, func(p *flavor.Profile) bool { return p.Name == pour })
	})
}

// partOf is the part that a pour of a list has in the drink.
func (s *script) partOf(name string) flavor.Part {
	f := s.resolver.Find(name, naming.Place{Unit: flavor.Ounce, Amount: 1})
	if f.Profile == nil {
		return ""
	}
	return f.Profile.Class.Part()
}

// inOrder reports whether bars agree on the order of the numbers of a ratio: the spirit comes first and is the most,
// what sours comes before what sweetens and is no less, and what lengthens comes last. Numbers that are alike may
// be in any order.
func (s *script) inOrder(r *ratio) bool {
	fixed := func(a, b flavor.Part) bool {
		switch {
		case a == b:
			return false
		case a == flavor.PartBase, b == flavor.PartLength:
			return true
		}
		return a == flavor.PartSour && b == flavor.PartSweetener
	}
	for i := range r.numbers {
		for k := i + 1; k < len(r.numbers); k++ {
			a, b := s.partOf(r.usual[i]), s.partOf(r.usual[k])
			switch {
			case r.numbers[i] == r.numbers[k]:
			case a == "" || b == "" || !fixed(a, b), r.numbers[i] < r.numbers[k] && b != flavor.PartLength:
				return false
			}
		}
	}
	return true
}

// ofDrink is a text with a line for each number of a ratio and the pour that it is usually of.
func (s *script) ofDrink(r *ratio, topped bool) string {
	var all *total
	lengthened := slices.ContainsFunc(r.usual, func(name string) bool { return s.partOf(name) == flavor.PartLength })
	if len(r.numbers) == leastPours && !lengthened && !r.equal && s.inParts(r) && !r.measured() {
		all = &total{from: len(s.toks), to: len(s.toks), amount: amount{value: usualTotal, unit: flavor.Millilitre}}
		s.told = append(s.told, usualTold)
	}
	out := s.parted(r, all)
	if topped {
		last := r.usual[len(r.numbers)-1] + "\n"
		out = strings.Replace(out, last, last+"top "+r.usual[len(r.usual)-1]+"\n", 1)
	}
	return out
}
