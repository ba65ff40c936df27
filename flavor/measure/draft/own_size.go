package draft

import (
	"slices"
	"strings"

	"counterpour/flavor/measure"
	"counterpour/flavor/measure/draft/entry"
	"counterpour/flavor/measure/draft/gauge"
)

// sizeOwn makes what is poured by a bar's own measure so much as a text says that one holds. Where it
// says two sizes of one of them, which the others have is asked for, and so is what a size is for that
// nothing is poured by.
func (r *reader) sizeOwn() {
	said, told := r.sizesSaid(), map[string]bool{}
	for i := range r.d.Lines {
		l := &r.d.Lines[i]
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
			r.fail(l.Number, measure.Invalid("unit", l.Measure, "a %s is said to be %s and %s; write the amount in oz, ml or cl", one, a, b))
			continue
		}
		l.OwnSize(size.Amount, size.Unit)
		if !told[one] {
			told[one] = true
			r.said.Notes = append(r.said.Notes, "a "+one+" is taken as "+measure.FormatAmount(size.Amount, size.Unit)+", as the text says")
		}
	}
	r.sizesOfNothing()
}

// sizesSaid are the sizes of a bar's own measures that a text tells, alone or beside a pour.
func (r *reader) sizesSaid() []entry.Line {
	var said []entry.Line
	for i := range r.sizes {
		said = append(said, r.sizes[i].Line)
	}
	for i := range r.d.Lines {
		if l := &r.d.Lines[i]; l.Sized && l.Many > 0 && !ofCoffee(l) {
			said = append(said, entry.Line{Amount: l.Amount / l.Many, Unit: l.Unit, Measure: gauge.Own(l.Measure)})
		}
	}
	return said
}

// sizesOfNothing says that the size of a measure is skipped which nothing is poured by; bare numbers may
// be so many of them.
func (r *reader) sizesOfNothing() {
	for i := range r.sizes {
		s := &r.sizes[i].Line
		if slices.ContainsFunc(r.d.Lines, func(l entry.Line) bool { return l.Many > 0 && gauge.Own(l.Measure) == s.Measure }) {
			continue
		}
		size := measure.FormatAmount(s.Amount, s.Unit)
		if slices.ContainsFunc(r.d.Lines, func(l entry.Line) bool { return l.Unit == "" && l.Figures }) {
			r.fail(s.Number, measure.Invalid("unit", s.Measure, "a %s is said to be %s, and nothing is poured by it; write a unit behind the numbers", s.Measure, size))
			continue
		}
		r.said.Notes = append(r.said.Notes, lineNote(s.Number, "the size of a "+s.Measure+", "+size+", is skipped: nothing is poured by it"))
	}
}

// ofCoffee reports whether a shot is one of coffee, which is no measure of the bar.
func ofCoffee(l *entry.Line) bool {
	name := strings.ToLower(l.Name)
	return strings.Contains(name, "espresso") || strings.Contains(name, "coffee") && !strings.Contains(name, "liqueur")
}
