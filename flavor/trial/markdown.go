package trial

import (
	"fmt"
	"io"
)

// WriteMarkdown writes the report as tables: the proven drinks, with those apart
// that were read in their source; the spoilt ones by degree, for all families and
// for the sours apart; and what was done to drinks beyond ratio.
func (r *Report) WriteMarkdown(w io.Writer) error {
	t := table{w: w}
	t.row("families", "proven drinks", "balanced", "balanced or near", "family first", "family in first two")
	t.rule(6)
	for _, g := range append(r.groups(), group{"read in their source", &r.Read}) {
		s := g.summary
		t.row(g.name, count(s.Drinks), percent(s.Balanced), percent(s.BalancedOrNear), percent(s.FamilyFirst), percent(s.FamilyInTwo))
	}
	t.line("")
	t.row("families", "spoilt by", "drinks", "area", "below their own", "noticed", "first fault right", "first two", "first fix balances", "first fix undoes")
	t.rule(10)
	for _, g := range r.groups() {
		for _, s := range g.summary.Spoilt {
			fixes, undoes := "not tried", "not tried"
			if r.Advised {
				fixes, undoes = percent(s.FirstFixes), percent(s.FirstUndoes)
			}
			t.row(g.name, fmt.Sprintf("× %g or × %g", s.Up, s.Down), count(s.Drinks), fmt.Sprintf("%.3f", s.Area),
				percent(s.OwnBelow), percent(s.Noticed), percent(s.FirstNames), percent(s.TwoName), fixes, undoes)
		}
	}
	if len(r.Pranks) > 0 {
		t.line("")
		t.row("spoilt beyond ratio", "drinks", "noticed", "in first two faults", "first fix undoes")
		t.rule(5)
		all := MischiefReport{Name: "all"}
		for _, m := range append(r.Mischiefs, all.sum(r.Mischiefs)) {
			undone := "not tried"
			if r.Advised {
				undone = percent(m.Undone)
			}
			t.row(m.Name, count(m.Drinks), percent(m.Noticed), percent(m.Named), undone)
		}
	}
	t.line("")
	t.line("Area: how often a proven drink scores above a spoilt one. Noticed: not called balanced; where")
	t.line("a ratio is spoilt, the faults and what the first fix undoes are shares of those, beyond ratio")
	t.line("of all. A drink that is called balanced needs no fix, and counts as balanced by the first.")
	return t.err
}

type group struct {
	name    string
	summary *Summary
}

func (r *Report) groups() []group { return []group{{"all", &r.Summary}, {"sours", &r.Sours}} }

// table writes a Markdown table; the first error is kept and ends the writing.
type table struct {
	w   io.Writer
	err error
}

func (t *table) line(text string) {
	if t.err == nil {
		_, t.err = fmt.Fprintln(t.w, text)
	}
}

func (t *table) row(cells ...string) {
	text := "|"
	for _, c := range cells {
		text += " " + c + " |"
	}
	t.line(text)
}

// rule writes the line under the heading: words to the left, numbers to the
// right.
func (t *table) rule(columns int) {
	text := "| --- |"
	for range columns - 1 {
		text += " ---: |"
	}
	t.line(text)
}

func count(n int) string { return fmt.Sprint(n) }

func percent(share float64) string { return fmt.Sprintf("%.1f %%", 100*share) }
