package meaning

import (
	"cmp"
	"math"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"counterpour/flavor"
	"counterpour/flavor/measure"
	"counterpour/flavor/measure/draft"
	"counterpour/flavor/measure/draft/names/counting"
	"counterpour/flavor/measure/draft/names/naming"
	"counterpour/flavor/measure/draft/words/drinks"
	"counterpour/flavor/measure/draft/words/entry"
	"counterpour/flavor/measure/draft/words/serving"
)

// The first line of a draft may name the drink, pour something, or say how it is made: only
// who knows the ingredients can tell.

// firstLine decides whether the first line is a pour or the name of the drink,
// where that depends on the ingredient, and makes a task of every line.
func (r *resolver) firstLine() {
	d := r.draft
	lines := make([]*entry.Line, 0, len(d.Lines)+1)
	if r.namePours() {
		lines = append(lines, d.PerhapsPour)
	}
	for i := range d.Lines {
		l := &d.Lines[i]
		heads := i == 0 && len(lines) == 0 && (r.takeSum(l) || r.takeKnownName(l) || r.takeNumberedName(l))
		if !heads && !r.takeNameLikePour(l, len(lines) > 0) {
			lines = append(lines, l)
		}
	}
	r.takeServingName()
	r.nameless()
	for _, l := range lines {
		r.tasks = append(r.tasks, taskOf(l))
	}
}

// namePours takes the name of the draft as a pour, where it may be one and names an ingredient that
// no line below pours, and says so.
func (r *resolver) namePours() bool {
	p := r.draft.PerhapsPour
	if p == nil {
		return false
	}
	f := r.resolver.Find(p.Name, naming.Place{Unit: p.Unit})
	if !f.Firm() || f.Fault != nil || p.Unit == flavor.Spritz && (!sprayed(f.Profile) || r.poursSparkling()) || r.pouredBelow(p, f.Profile) {
		return false
	}
	if r.nicknamed(p, f.Profile) {
		r.askName(p.Number, "%q may be the name of the drink or what fills it up; write \"top\" before it, or \"%s %s\" if it is the name of the drink")
		return false
	}
	r.name = ""
	r.note(measure.LineLocation(p.Number) + ": “" + p.Asked + "” is read as a pour; write \"" + draft.NamePrefix + " " + p.Asked + "\" if it is the name")
	return true
}

// nicknamed reports whether a first line of one word, with a capital and without an amount, names what fills a drink
// up by a short name, while all below is poured by amounts: "Champs" is a drink as well.
func (r *resolver) nicknamed(p *entry.Line, of *flavor.Profile) bool {
	first, _ := utf8.DecodeRuneInString(p.Asked)
	if !p.NoAmount || p.Unit != flavor.Top || !of.Carbonated || !unicode.IsUpper(first) || strings.Contains(p.Asked, " ") || len(r.draft.Lines) < 2 {
		return false
	}
	short := !slices.Contains(strings.Fields(flavor.NormaliseName(of.Name)), flavor.NormaliseName(p.Asked))
	return short && !slices.ContainsFunc(r.draft.Lines, func(l entry.Line) bool { return l.Number == p.Number || l.AmountAt.Empty() })
}

// takeSum takes a first line that says what the lines below come to as the name of the drink.
func (r *resolver) takeSum(l *entry.Line) bool {
	if r.name != "" || !r.sumsUp(l) {
		return false
	}
	r.name = draft.StripBullet(l.Asked)
	r.note(measure.LineLocation(l.Number) + ": “" + r.name + "” is read as the name of the drink: it is what the other pours come to")
	return true
}

// takeKnownName takes a first line that is the name of a known drink, and holds a number, as that:
// "French 75", "Ward 8".
func (r *resolver) takeKnownName(l *entry.Line) bool {
	if r.name != "" || l.AmountAt.Empty() || !l.UnitAt.Empty() || len(r.draft.Lines) < 2 || r.draft.Lines[1].Number == l.Number || !drinks.Known(l.Asked) {
		return false
	}
	r.name = l.Asked
	r.note(measure.LineLocation(l.Number) + ": “" + l.Asked + "” is read as the name of the drink")
	return true
}

// takeNumberedName takes a first line with a number that measures nothing as the name of the drink,
// or passes over it where the drink has one.
func (r *resolver) takeNumberedName(l *entry.Line) bool {
	if !l.PerhapsName || !r.isName(l) {
		return false
	}
	name := draft.StripBullet(l.Asked)
	switch {
	case r.name != "": // the name stands before the pours below
		r.note(measure.LineLocation(l.Number) + ": “" + name + "” is skipped: “" + r.name + "” is read as the name of the drink")
		return true
	case len(r.draft.Lines) > 1:
		r.note(measure.LineLocation(l.Number) + ": “" + name + "” is read as the name of the drink")
	}
	r.name = name
	return true
}

// takeNameLikePour takes a line that reads like a pour as the name of the drink; poured is true if
// pours stand above it.
func (r *resolver) takeNameLikePour(l *entry.Line, poured bool) bool {
	if poured || !r.namedLikePour(l) {
		return false
	}
	r.note(measure.LineLocation(l.Number) + ": “" + l.Asked + "” is read as the name of the drink; write an amount before it to have it poured")
	r.name = l.Asked
	return true
}

// takeServingName takes a name that says how the drink is made as that, where the draft says nothing
// else of it.
func (r *resolver) takeServingName() {
	d := r.draft
	s := d.ServingName
	if s == nil || d.Method != "" || d.Service != "" && s.Service != "" {
		return
	}
	r.name = ""
	d.Method = s.Method
	d.Service = cmp.Or(d.Service, s.Service)
	d.Glass = cmp.Or(d.Glass, s.Glass)
	r.note("“" + d.Name + "” is read as the method; write \"" + draft.NamePrefix + " " + d.Name + "\" if it is the name")
}

// taskOf is a line on its way to a pour.
func taskOf(l *entry.Line) *counting.Task {
	t := &counting.Task{Line: l, Unit: l.Unit, Amount: l.Amount * cmp.Or(l.Times, 1)}
	if l.Guessed || l.NoAmount || l.Measure == "measure" || l.Measure == "measures" {
		t.Infer(flavor.InferredAmount)
	}
	if l.NoAmount {
		t.Notes = append(t.Notes, amountNote(l))
	}
	return t
}

// Where the first line comes to what all others do together, it may say what they make.
const (
	leastTotal  = 750  // mL that nobody pours into one drink
	leastSummed = 4    // lines below that hardly come to it by chance
	sumsWithin  = 0.02 // of the sum
)

// namedLikePour reports whether a line that reads like a pour, "Verjus Spritz", is the name of
// the drink instead: it stands above all pours, and what it names is poured below.
func (r *resolver) namedLikePour(l *entry.Line) bool {
	if r.draft.Labelled || l.Unit != flavor.Spritz || !l.AmountAt.Empty() || l.NameAt.Start != l.Span.Start {
		return false
	}
	key := " " + flavor.NormaliseName(l.Name) + " "
	return slices.ContainsFunc(r.draft.Lines, func(o entry.Line) bool {
		f := r.resolver.Find(o.Name, naming.PlaceOf(o.Unit, o.Amount, o.After))
		return !o.AmountAt.Empty() && f.Firm() && strings.Contains(" "+flavor.NormaliseName(f.Profile.Name)+" ", key)
	})
}

// sumsUp reports whether the first line has its amount behind its words, and this is what
// the lines below come to: "SANGRIA 4 L" above many of them, "Sangria (2 L)" above a few.
func (r *resolver) sumsUp(l *entry.Line) bool {
	d := r.draft
	total, ok := measure.MLPerUnit(l.Unit, nil)
	total *= l.Amount
	if ok && total >= leastHeaded && len(d.Lines) > 2 && headsByColon(d.String(), l) {
		return true
	}
	bracketed := strings.HasSuffix(strings.TrimSpace(d.String()[:l.AmountAt.Start]), "(")
	if !ok || total < leastTotal || l.AmountAt.Start < l.NameAt.Start || len(d.Lines) <= leastSummed && !(bracketed && len(d.Lines) > 2) || d.Lines[1].Number == l.Number {
		return false
	}
	sum := 0.0
	for i := range d.Lines[1:] {
		o := &d.Lines[1+i]
		u := o.Unit
		if u == "" && o.Amount >= counting.LeastMillis {
			u = flavor.Millilitre
		}
		if ml, ok := measure.MLPerUnit(u, nil); ok {
			sum += ml * o.Amount
		}
	}
	return math.Abs(sum-total) <= sumsWithin*total
}

// leastHeaded is from how many mL on a size in a bracket before a colon is that of all behind it; common practice.
const leastHeaded = 400

// headsByColon reports whether the amount of a line stands in a bracket between its name and a colon: "Sour mix
// (1 L): 400 ml lemon, ...".
func headsByColon(text string, l *entry.Line) bool {
	end := max(l.AmountAt.End, l.UnitAt.End)
	return l.AmountAt.Start >= l.NameAt.End && strings.HasSuffix(strings.TrimSpace(text[:l.AmountAt.Start]), "(") && strings.HasPrefix(strings.ReplaceAll(text[end:], " ", ""), "):")
}

// pouredBelow reports whether a line below the first pours what the first names without an
// amount: "Hot egg", above "1 whole egg", is the name of a drink.
func (r *resolver) pouredBelow(first *entry.Line, p *flavor.Profile) bool {
	return first.NoAmount && slices.ContainsFunc(r.draft.Lines, func(l entry.Line) bool {
		return !l.AmountAt.Empty() && r.resolver.Find(l.Name, naming.Place{Unit: l.Unit, Amount: l.Amount}).Profile == p
	})
}

// poursSparkling reports whether a line of the draft pours what sparkles: with that a "bitter spritz" is the drink.
func (r *resolver) poursSparkling() bool {
	return slices.ContainsFunc(r.draft.Lines, func(l entry.Line) bool {
		p := r.resolver.Find(l.Name, naming.Place{Unit: l.Unit, Amount: l.Amount}).Profile
		return p != nil && p.Carbonated
	})
}

// sprayed reports whether bars spray an ingredient: a "rosé spritz" is a drink.
func sprayed(p *flavor.Profile) bool {
	part := p.Class.Part()
	return part == flavor.PartBase || part == flavor.PartSeasoning && !p.Class.Solid() || p.Class == flavor.ClassAniseSpirit
}

// amountNote says what an amount that goes without saying is taken as.
func amountNote(l *entry.Line) string {
	if l.Unit == flavor.Top && l.UnitAt.Empty() {
		return "“" + l.Asked + "” has no amount and is read as topping up"
	}
	return "“" + l.Asked + "” is read as one"
}

// isName reports whether a first line whose amount has no unit is a name.
func (r *resolver) isName(l *entry.Line) bool {
	if r.titled(l) {
		return true
	}
	if r.poursIn(l.Asked) {
		return false
	}
	if l.Whole != "" {
		if _, _, ok := r.resolver.Named(l.Whole); ok {
			return false
		}
	}
	name := l.Name
	if words := strings.Fields(name); len(words) > 1 && serving.OtherMeasures[strings.ToLower(words[len(words)-1])] {
		name = strings.Join(words[:len(words)-1], " ") // "1 lager bottle"
	}
	f := r.resolver.Find(name, naming.Place{Unit: flavor.Piece, Amount: l.Amount})
	if near, _, _ := r.slippedUnit(l); f.Firm() || near != nil {
		return false
	}
	f = r.resolver.Find(l.Name, naming.Place{Unit: flavor.Ounce, Amount: l.Amount})
	if f.Firm() || f.Fault != nil && f.Fault.Kind == flavor.ErrInvalid {
		return false
	}
	switch {
	case l.Amount >= leastNumberName && f.Profile == nil && r.smallBelow():
		return true // "151 Swizzle"
	case !l.Figures:
		return true
	case f.Profile != nil:
		return false
	case l.Amid:
		return !r.resolver.Mentions(strings.ReplaceAll(l.Name, ",", " "))
	case len(r.draft.Lines) > 1 && r.draft.Lines[1].Number == l.Number && r.resolver.Mentions(l.Name): // "vodka soda 1.5 + ..."
		return false
	case l.AmountAt.Start > l.NameAt.Start: // "try #3"
		return !r.behind() && !r.listedWith(l)
	}
	return !r.bareBelow() && !r.resolver.EndsInName(l.Name)
}

// listedWith reports whether other pours with bare numbers stand on the line of the first, which
// may be one of them: "fruit cup 50, 150 lemonade".
func (r *resolver) listedWith(l *entry.Line) bool {
	lines := r.draft.Lines
	return l.Amount >= counting.LeastMillis && len(lines) > 1 && lines[1].Number == l.Number && lines[1].Figures && lines[1].UnitAt.Empty() && strings.HasPrefix(strings.TrimSpace(r.draft.String()[l.Span.End:]), ",")
}

// titled reports whether a first line is written like a name and has a number behind it,
// "Cherry 22", while every line below states its amount first, and its unit: who lists so
// pours nothing in another way. Where nothing below is a base the line pours it.
func (r *resolver) titled(l *entry.Line) bool {
	first, _ := utf8.DecodeRuneInString(l.Name)
	below := r.draft.Lines[1:]
	based := slices.ContainsFunc(below, func(o entry.Line) bool {
		f := r.resolver.Find(o.Name, naming.Place{Unit: o.Unit, Amount: o.Amount})
		return f.Profile != nil && f.Profile.Base()
	})
	return based && len(below) > 1 && unicode.IsUpper(first) && l.AmountAt.Start > l.NameAt.Start && !slices.ContainsFunc(below, func(o entry.Line) bool {
		return o.Number == l.Number || !o.NoAmount && (o.AmountAt.Start > o.NameAt.Start || o.UnitAt.Empty() && !o.AmountAt.Empty())
	})
}

// leastNumberName is a number from which the first line is no pour of a drink whose other
// numbers are ounces; common practice.
const leastNumberName = 100

// smallBelow reports whether every number below the first line is one of ounces.
func (r *resolver) smallBelow() bool {
	d := r.draft
	return len(d.Lines) > 1 && !slices.ContainsFunc(d.Lines[1:], func(l entry.Line) bool { return l.Amount > counting.MostOunces })
}

// behind reports whether a line below the first has its amount behind its name.
func (r *resolver) behind() bool {
	d := r.draft
	return slices.ContainsFunc(d.Lines[1:], func(l entry.Line) bool { return l.AmountAt.Start > l.NameAt.Start && l.UnitAt.Empty() && !l.Amid })
}

// bareBelow reports whether a line below the first has a bare number too, so that
// the first is more likely one of them than a name.
func (r *resolver) bareBelow() bool {
	d := r.draft
	for i := range d.Lines[1:] {
		if l := &d.Lines[1+i]; l.Figures && l.UnitAt.Empty() && l.Measure == "" {
			if f := r.resolver.Find(l.Name, naming.Place{Unit: flavor.Ounce, Amount: l.Amount}); f.Firm() {
				return true
			}
		}
	}
	return false
}
