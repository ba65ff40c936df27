// Package overlooked finds where the words around the pours of a draft do not agree with them: a
// step, the service or the rim may hold a pour that was not read as one.
package overlooked

import (
	"math"
	"slices"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/measure"
	"counterpour/flavor/measure/draft"
	"counterpour/flavor/measure/draft/names/naming"
	"counterpour/flavor/measure/draft/words/entry"
	"counterpour/flavor/measure/draft/words/joining"
	"counterpour/flavor/measure/draft/words/serving"
	"counterpour/flavor/measure/draft/words/token"
	"counterpour/flavor/measure/vocabulary"
)

// mostWords is the most words of a bottle amid words of serving.
const mostWords = 3

// Faults returns a fault for each stretch of a draft that pours something, or may, which is not
// among its pours, or that says of them what is not so.
func Faults(d *draft.Draft, pours []flavor.Pour, b *naming.Resolver) flavor.DataFaults {
	l := looker{text: d.String(), pours: pours, resolver: b}
	var out flavor.DataFaults
	for _, fault := range [...]func(*draft.Draft) *flavor.DataFault{l.held, l.pouredBefore, l.spritzed} {
		if f := fault(d); f != nil {
			out = append(out, f)
		}
	}
	for _, e := range d.Entries {
		var f *flavor.DataFault
		switch e.Kind {
		case draft.KindServing, draft.KindStep:
			toks := token.Lex(nil, l.text, e.Span.Start, e.Span.End)
			if f = l.step(toks); f == nil {
				f = l.bottle(toks)
			}
		case draft.KindRim:
			f = l.measured(token.Lex(nil, l.text, e.Span.Start, e.Span.End))
		}
		if f != nil {
			f.Location = measure.LineLocation(e.Line)
			out = append(out, f)
		}
	}
	return out
}

// vessels hold what is poured whole.
var vessels = vocabulary.Words(`bottle btl bottles bottled can canned tin pint draught draft`)

// held is the fault of a name of the drink that is what a bottle or a can holds, of which nothing is
// poured: "lager bottle", before the pours.
func (l *looker) held(d *draft.Draft) *flavor.DataFault {
	words := strings.Fields(d.Name)
	if d.Labelled || len(words) < 2 {
		return nil
	}
	rest := slices.DeleteFunc(slices.Clone(words), func(w string) bool { return vessels.Has(strings.ToLower(w)) })
	if len(rest) == len(words) || len(rest) == 0 {
		return nil
	}
	written := strings.Join(rest, " ")
	p, _, ok := l.resolver.Named(written)
	if !ok || !bottled(p) && !p.Carbonated || l.kin(p, written) {
		return nil
	}
	f := measure.Invalid("amount", d.Name, "%q may be how %s is poured, and has no amount; write one before it, such as \"330 ml %s\", or \"%s %s\" if it is the name of the drink", d.Name, p.Name, written, draft.NamePrefix, d.Name)
	f.Location = measure.LineLocation(1 + strings.Count(l.text[:d.NameAt.Start], "\n"))
	return f
}

// spritzed is the fault of a spritz of something that stands first and that is poured below as well: an order of
// a drink reads so too, "1 SPRITZ LIMONCELLO". Whoever writes out what the catalogue calls it, or a part of a
// spritz, orders nothing.
func (l *looker) spritzed(d *draft.Draft) *flavor.DataFault {
	if d.Labelled || len(d.Lines) < 2 || len(l.pours) < 2 || l.pours[0].Unit != flavor.Spritz || !slices.ContainsFunc(l.pours[1:], func(p flavor.Pour) bool { return p.Profile == l.pours[0].Profile }) {
		return nil
	}
	at := slices.IndexFunc(d.Lines, func(q entry.Line) bool { return q.Unit == flavor.Spritz })
	if at < 0 || l.pours[0].Match.Asked == l.pours[0].Profile.Name || l.pours[0].Amount != math.Trunc(l.pours[0].Amount) {
		return nil
	}
	said := token.OneLine(l.text[d.Lines[at].Span.Start:d.Lines[at].Span.End])
	f := measure.Invalid("amount", said, "%q may be the name of the drink or a spray over the glass; write \"%s %s\" if it is the name", said, draft.NamePrefix, said)
	f.Location = measure.LineLocation(d.Lines[at].Number)
	return f
}

// Bottle reports whether words hold the name of a bottle, or of an egg, however short, that none of
// the pours is.
func Bottle(words string, pours []flavor.Pour, b *naming.Resolver) bool {
	l := looker{text: words, pours: pours, resolver: b}
	return l.bottle(token.Lex(nil, words, 0, len(words))) != nil
}

// looker holds what the words of a draft are held against.
type looker struct {
	text     string
	pours    []flavor.Pour
	resolver *naming.Resolver
}

// lacks is the fault of a name without an amount.
func lacks(written string) *flavor.DataFault {
	return measure.Invalid("amount", written, "%q has no amount; write one before it, such as \"2 oz\", or a # to have the line skipped", written)
}

// poured reports whether an ingredient is poured.
func (l *looker) poured(p *flavor.Profile) bool {
	return slices.ContainsFunc(l.pours, func(q flavor.Pour) bool { return q.Profile == p })
}

// places are where a bottle may be meant that has no amount: by the jigger, by the dash, and by the piece.
var places = []naming.Place{{Unit: flavor.Ounce, Amount: 1}, {Unit: flavor.Dash, Amount: 1}, {Unit: flavor.Piece, Amount: 1}}

// bottle finds a bottle amid words of serving: "shk up orange bitters", "st nn cherry ang bit".
func (l *looker) bottle(toks []token.Token) *flavor.DataFault {
	unknown := serving.Read(toks).Unknown
	says := func(i int) bool { // nothing known of serving
		return toks[i].Kind == token.Word && !serving.Fillers[toks[i].Text] && !serving.Known(toks[i].Text) && slices.ContainsFunc(unknown, func(t token.Token) bool { return t.Start == toks[i].Start })
	}
	known := 0 // where the name of a pour ends: "bitter aperitif" is no bitters
	for i := range toks {
		end := i
		for end < len(toks) && end-i < mostWords && says(end) {
			end++
		}
		for ; end > max(i, known); end-- {
			if i > 0 && refers.Has(toks[i-1].Text) || end < len(toks) && kinds.Has(toks[end].Text) {
				continue
			}
			written := token.OneLine(l.text[toks[i].Start:toks[end-1].End])
			if end-i > 1 && l.called(written) {
				known = end
				break
			}
			if p, _, ok := l.resolver.Named(written); ok && !bottled(p) || strings.EqualFold(written, "bit") { // "orange", "shake first bit"
				continue
			}
			for _, pl := range places {
				f := l.resolver.Find(written, pl)
				if f.Firm() && f.Dropped == "" && bottled(f.Profile) && !l.kin(f.Profile, written) {
					return lacks(written)
				}
			}
		}
	}
	return nil
}

var (
	// refers stand before what is spoken of and not poured: "like a gin fizz", "no bitters".
	refers = vocabulary.Words(`like as a an no not without the than if for`)
	// kinds stand behind what says which glass, drink or manner is meant: "sherry glass".
	kinds = vocabulary.Words(`glass glasses style way fashion bottle drink sour fizz`)
)

// kin reports whether a bottle is poured, or another of its class whose name holds the words
// that are written: "float the rum" speaks of the dark rum above.
func (l *looker) kin(p *flavor.Profile, written string) bool {
	words := strings.Fields(flavor.NormaliseName(written))
	return slices.ContainsFunc(l.pours, func(q flavor.Pour) bool {
		if q.Profile == p {
			return true
		}
		said := strings.Fields(flavor.NormaliseName(q.Profile.Name + " " + q.Match.Asked + " " + string(q.Profile.Class)))
		return q.Profile.Class == p.Class && !slices.ContainsFunc(words, func(w string) bool { return !slices.Contains(said, w) })
	})
}

// called reports whether the name of one pour holds all of some words.
func (l *looker) called(written string) bool {
	words := strings.Fields(flavor.NormaliseName(written))
	return slices.ContainsFunc(l.pours, func(q flavor.Pour) bool {
		said := strings.Fields(flavor.NormaliseName(q.Profile.Name))
		return !slices.ContainsFunc(words, func(w string) bool { return !slices.Contains(said, w) })
	})
}

// bottled reports whether an ingredient is a spirit, what goes with one, bitters, or an egg: none
// of them is laid on a drink.
func bottled(p *flavor.Profile) bool {
	part := p.Class.Part()
	return part == flavor.PartBase || part == flavor.PartModifier || p.Class == flavor.ClassCocktailBitters || p.Class == flavor.ClassEgg
}

// measured finds an amount of what is poured amid words of the rim: ".75 lem shk sugr rim".
func (l *looker) measured(toks []token.Token) *flavor.DataFault {
	for i := range toks {
		t := &toks[i]
		if t.Kind != token.Numeral || t.Wrong != "" || t.Value == 0.5 || i+1 >= len(toks) {
			continue
		}
		at := i + 1
		u, n := entry.UnitAt(toks[at:])
		at += n
		for end := min(len(toks), at+mostWords); end > at; end-- {
			written := token.OneLine(l.text[toks[at].Start:toks[end-1].End])
			if f := l.resolver.Find(written, naming.PlaceOf(unitOr(u), t.Value, false)); f.Firm() && !f.Profile.Class.Solid() && !l.poured(f.Profile) {
				whole := token.OneLine(l.text[t.Start:toks[end-1].End])
				return measure.Invalid("amount", whole, "%q stands amid the rim; write it on a line of its own", whole)
			}
		}
	}
	return nil
}

// unitOr is a unit, and the ounce where none is written.
func unitOr(u flavor.Unit) flavor.Unit {
	if u == "" {
		return flavor.Ounce
	}
	return u
}

var (
	// overWords stand before what a drink is strained over: ice, or something that is poured.
	overWords = vocabulary.Words(`over onto`)
	// dissolving stand before what goes into the drink as a step tells.
	dissolving = vocabulary.Words(`dissolve dissolving infuse`)
)

// step finds what a step tells to pour and no line has an amount of.
func (l *looker) step(toks []token.Token) *flavor.DataFault {
	at := slices.IndexFunc(toks, func(t token.Token) bool {
		return joining.PourSteps[t.Text] || overWords.Has(t.Text) || dissolving.Has(t.Text)
	})
	if at < 0 {
		at = serving.MixedWith(toks) - 1
	}
	if at < 0 {
		return nil
	}
	name := l.unpoured(toks[at+1:])
	if name == "" {
		return nil
	}
	return measure.Invalid("amount", name, "this step pours %q, but no line states an amount of it; write it on a line of its own, such as \"1 oz %s\"", name, name)
}

// unpoured returns the first name of an ingredient in the words of a step that
// no pour has a word of.
func (l *looker) unpoured(toks []token.Token) string {
	poured := map[string]bool{}
	for i := range l.pours {
		p := &l.pours[i]
		for _, n := range []string{p.Profile.Name, p.Match.Asked, string(p.Profile.Class)} {
			for _, w := range strings.Fields(flavor.NormaliseName(n)) {
				poured[w] = true
			}
		}
	}
	for i := 0; i < len(toks); i++ {
		for n := min(naming.LongestName, len(toks)-i); n > 0; n-- {
			if toks[i].Kind != token.Word || serving.Fillers[toks[i].Text] || poured[flavor.NormaliseName(toks[i].Text)] {
				break
			}
			name := token.OneLine(l.text[toks[i].Start:toks[i+n-1].End])
			key := flavor.NormaliseName(name)
			if l.resolver.Has(name) && !poured[key] && !strings.Contains(" "+key+" ", " ice ") && !mentioned(poured, key) && !harmless.Has(key) {
				return name
			}
		}
	}
	return ""
}

// harmless are ingredients that a step may name without pouring them.
var harmless = vocabulary.Words(`water salt sugar cocktail coffee peel zest`)

// mentioned reports whether a word of a name is one of what is poured.
func mentioned(poured map[string]bool, key string) bool {
	return slices.ContainsFunc(strings.Fields(key), func(w string) bool { return poured[w] })
}
