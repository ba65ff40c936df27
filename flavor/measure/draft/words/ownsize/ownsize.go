// Package ownsize tells how much a bar's own measures hold, where a draft says so, and which pours go on in
// the measure of the one before them.
package ownsize

import (
	"slices"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/measure"
	"counterpour/flavor/measure/draft/words/entry"
	"counterpour/flavor/measure/draft/words/gauge"
)

// Fault is what is wrong with a line of a text, counted from 1.
type Fault struct {
	Line int
	*flavor.DataFault
}

// Set makes what is poured by a bar's own measure so much as the text of the lines says that one holds, and
// returns what is to be told of it. Stated are the sizes that stand apart from every pour. Where the text says
// two sizes of one measure, which the others have is a fault, and so is what a size is for that nothing is
// poured by.
func Set(text string, lines []entry.Line, stated []entry.Written) (notes []string, faults []Fault) {
	notes = continued(text, lines)
	said, told := sizesSaid(lines, stated), map[string]bool{}
	for i := range lines {
		l := &lines[i]
		if l.Many == 0 || l.Sized || ofCoffee(l) {
			continue
		}
		one := gauge.Own(l.Measure)
		sizes := slices.DeleteFunc(slices.Clone(said), func(s entry.Line) bool { return s.Measure != one })
		if len(sizes) == 0 {
			continue
		}
		size := &sizes[0]
		if other := slices.IndexFunc(sizes, func(s entry.Line) bool { return !size.SameAmount(&s) }); other > 0 {
			a, b := measure.FormatAmount(size.Amount, size.Unit), measure.FormatAmount(sizes[other].Amount, sizes[other].Unit)
			faults = append(faults, Fault{l.Number, measure.Invalid("unit", l.Measure, "a %s is said to be %s and %s; write the amount in oz, ml or cl", one, a, b)})
			continue
		}
		l.OwnSize(size.Amount, size.Unit)
		if !told[one] {
			told[one] = true
			notes = append(notes, "a "+one+" is taken as "+measure.FormatAmount(size.Amount, size.Unit)+", as the text says")
		}
	}
	more, wrong := sizesOfNothing(lines, stated)
	return append(notes, more...), append(faults, wrong...)
}

// continued gives a bare number before "of" the measure or the part of the pour before it, which it goes on
// in, and says so: "one measure of brandy, one of curaçao". Ounces and millilitres are told by the draft as a
// whole.
func continued(text string, lines []entry.Line) (notes []string) {
	for i := range lines {
		l := &lines[i]
		if i == 0 || l.Unit != "" || l.AmountAt.Empty() || l.AmountAt.Start >= l.NameAt.Start || !strings.HasSuffix(strings.TrimSpace(text[l.AmountAt.Start:l.NameAt.Start]), " of") {
			continue
		}
		number := l.Amount
		switch before := &lines[i-1]; {
		case ofCoffee(before):
			continue
		case before.Many > 0:
			l.Measure, l.Many = before.Measure, number
			l.Amount, l.Unit = number*before.Amount/before.Many, before.Unit
		case before.Parts > 0 || before.Unit == flavor.PartUnit:
			l.Unit = flavor.PartUnit
		default:
			continue
		}
		of := gauge.Own(l.Measure)
		if of == "" {
			of = string(flavor.PartUnit)
		}
		notes = append(notes, measure.LineLocation(l.Number)+": “"+strings.Join(strings.Fields(text[l.AmountAt.Start:l.NameAt.End]), " ")+"” is taken by the "+of+", as the pour before it is")
	}
	return notes
}

// sizesSaid are the sizes of a bar's own measures that a text tells, alone or beside a pour.
func sizesSaid(lines []entry.Line, stated []entry.Written) []entry.Line {
	var said []entry.Line
	for i := range stated {
		said = append(said, stated[i].Line)
	}
	for i := range lines {
		if l := &lines[i]; l.Sized && l.Many > 0 && !ofCoffee(l) {
			said = append(said, entry.Line{Amount: l.Amount / l.Many, Unit: l.Unit, Measure: gauge.Own(l.Measure)})
		}
	}
	return said
}

// sizesOfNothing says that the size of a measure is skipped which nothing is poured by; bare numbers may
// be so many of them.
func sizesOfNothing(lines []entry.Line, stated []entry.Written) (notes []string, faults []Fault) {
	for i := range stated {
		s := &stated[i].Line
		if slices.ContainsFunc(lines, func(l entry.Line) bool { return l.Many > 0 && gauge.Own(l.Measure) == s.Measure }) {
			continue
		}
		size := measure.FormatAmount(s.Amount, s.Unit)
		if slices.ContainsFunc(lines, func(l entry.Line) bool { return l.Unit == "" && l.Figures }) {
			faults = append(faults, Fault{s.Number, measure.Invalid("unit", s.Measure, "a %s is said to be %s, and nothing is poured by it; write a unit behind the numbers", s.Measure, size)})
			continue
		}
		notes = append(notes, measure.LineLocation(s.Number)+": the size of a "+s.Measure+", "+size+", is skipped: nothing is poured by it")
	}
	return notes, faults
}

// ofCoffee reports whether a shot is one of coffee, which is no measure of the bar.
func ofCoffee(l *entry.Line) bool {
	name := strings.ToLower(l.Name)
	return strings.Contains(name, "espresso") || strings.Contains(name, "coffee") && !strings.Contains(name, "liqueur")
}
