package draft

import (
	"cmp"
	"math"
	"slices"

	"counterpour/flavor"
	"counterpour/flavor/measure"
	"counterpour/flavor/measure/draft/words/entry"
	"counterpour/flavor/measure/draft/words/sheet"
	"counterpour/flavor/measure/draft/words/token"
	"counterpour/flavor/measure/vocabulary"
)

// A drink may be written as percentages of all of it: "50% gin, 25% lemon, 25% simple,
// total 90 ml". They are parts, and the total says how much one is.

// asParts writes percentages as parts, and takes the total out of a line that states it.
func (r *reader) asParts(toks []token.Token) []token.Token {
	if !r.shares {
		return toks
	}
	toks = r.totalOf(toks)
	out := make([]token.Token, 0, len(toks)+2)
	for _, t := range toks {
		v := 0.0
		if t.Kind == token.Percent {
			v = sheet.Percent(&t)
		}
		if v <= 0 {
			out = append(out, t)
			continue
		}
		t.Kind, t.Value = token.Numeral, v
		out = append(out, t, token.Token{Kind: token.Word, Start: t.End, End: t.End, Text: "parts"})
	}
	return out
}

// leastTotalML is the least mL that all of a drink comes to; common practice.
const leastTotalML = 15.0

// totals name all of a drink.
var totals = vocabulary.Words(`total totals batch volume vol yield yields makes sum altogether overall all whole`)

// totalOf takes the total of a drink off its line, "total: 90 ml", "100 ml batch".
func (r *reader) totalOf(toks []token.Token) []token.Token {
	for i := range toks {
		if toks[i].Kind != token.Numeral || toks[i].Wrong != "" {
			continue
		}
		u, n := entry.UnitAt(toks[i+1:])
		if per, ok := measure.MLPerUnit(u, nil); n == 0 || !u.Jigger() || !ok || per*toks[i].Value < leastTotalML || per*toks[i].Value > measure.MaxPourML {
			continue
		}
		from, to := i, i+1+n
		for from > 0 && (totals.Has(toks[from-1].Text) || toks[from-1].Is(":") || toks[from-1].Is("=") || toks[from-1].Text == "of" || toks[from-1].Text == "in" || toks[from-1].Text == "for") {
			from--
		}
		for to < len(toks) && (totals.Has(toks[to].Text) || toks[to].Text == "in") {
			to++
		}
		if !slices.ContainsFunc(toks[from:to], func(t token.Token) bool { return totals.Has(t.Text) }) {
			continue
		}
		r.part = &entry.Written{Line: entry.Line{Amount: toks[i].Value / 100, Unit: u}}
		r.said.Notes = append(r.said.Notes, "percentages are taken of "+measure.FormatAmount(toks[i].Value, u))
		rest := toks[to:]
		for len(rest) > 0 && (rest[0].Is(":") || rest[0].Is(",") || rest[0].Is(";")) {
			rest = rest[1:]
		}
		return slices.Concat(toks[:from], rest)
	}
	return toks
}

// sizeParts makes what is written in parts so much as a text says that a part is.
func (r *reader) sizeParts() {
	told := cmp.Or(r.part, r.partTold())
	if r.part = cmp.Or(told, r.partOfTotal()); r.part == nil {
		return
	}
	for i := range r.d.Lines {
		if l := &r.d.Lines[i]; l.Unit == flavor.PartUnit {
			l.Amount, l.Unit = l.Amount*r.part.Amount, r.part.Unit
		}
	}
	switch {
	case told == nil:
		r.said.Notes = append(r.said.Notes, "the parts are taken of "+measure.FormatAmount(r.total.Amount, r.total.Unit)+" in all")
	case !r.shares:
		r.said.Notes = append(r.said.Notes, "a part is taken as "+measure.FormatAmount(r.part.Amount, r.part.Unit)+", as the text says")
	}
}

// partOfTotal is what one part comes to of all that a line says that the drink does, where nothing else is poured by
// the jigger; nil where none does. Fractions that make one whole are parts of it: "2/3 gin, 1/3 vermouth, total 4 oz".
func (r *reader) partOfTotal() *entry.Written {
	if r.total == nil || !r.total.Unit.Jigger() || r.total.Fault != nil {
		return nil
	}
	parts, fractions := 0.0, 0.0
	for i := range r.d.Lines {
		switch l := &r.d.Lines[i]; {
		case l.Unit == flavor.PartUnit:
			parts += l.Amount
		case l.Unit == "" && l.Amount < 1 && !l.AmountAt.Empty():
			fractions += l.Amount
		case l.Unit == "" || l.Unit.Jigger() || l.Unit == flavor.Top:
			return nil
		}
	}
	if parts == 0 && math.Abs(fractions-1) > nearWhole || parts > 0 && fractions > 0 {
		return nil
	}
	for i := range r.d.Lines {
		if l := &r.d.Lines[i]; l.Unit == "" {
			l.Unit = flavor.PartUnit
		}
	}
	return &entry.Written{Line: entry.Line{Amount: r.total.Amount / (parts + fractions), Unit: r.total.Unit}}
}

// nearWhole is how far fractions that make one whole may add up to more or less, as ".33" and ".66" do.
const nearWhole = 0.02

// partTold is what one part comes to where one pour alone says so beside others in parts: "1 part gin (45 ml), 1
// part lemon"; nil where none or several do.
func (r *reader) partTold() *entry.Written {
	told, others := -1, false
	for i := range r.d.Lines {
		switch l := &r.d.Lines[i]; {
		case l.Parts > 0 && told >= 0:
			return nil
		case l.Parts > 0:
			told = i
		case l.Unit == flavor.PartUnit:
			others = true
		}
	}
	if told < 0 || !others {
		return nil
	}
	l := &r.d.Lines[told]
	return &entry.Written{Line: entry.Line{Amount: l.Amount / l.Parts, Unit: l.Unit}}
}
