package exchange

import (
	"io"
	"strings"

	"counterpour/data/house"
	"counterpour/data/house/exchange/grid"
	"counterpour/flavor"
	"counterpour/flavor/measure"
	"counterpour/flavor/measure/draft/names/naming"
	"counterpour/flavor/measure/draft/words/serving"
)

// specColumns are the columns of a file of specs, in the order in which they are written.
func specColumns() []string {
	return []string{"id", "name", "method", "service", "amount", "unit", "ingredient", "note", "after", "hot_c", "glass", "garnish", "rim", "steps"}
}

// WriteSpecs writes specs as CSV, one row per pour.
func WriteSpecs(w io.Writer, specs []house.Spec) error {
	var rows [][]string
	for _, s := range specs {
		for i, p := range s.Pours {
			head := []string{s.ID, s.Name, string(s.Method), string(s.Service)}
			tail := []string{unlessZero(s.HotC), s.Glass, s.Garnish, s.Rim, strings.Join(s.Steps, "\n")}
			note := s.Note
			if i > 0 {
				head, note, tail = []string{s.ID, "", "", ""}, "", make([]string, len(tail))
			}
			after := ""
			if p.After {
				after = "yes"
			}
			rows = append(rows, append(append(head, exact(p.Amount), string(p.Unit), p.Ingredient, note, after), tail...))
		}
	}
	return writeTable(w, specColumns(), rows)
}

// ReadSpecs reads specs from CSV. If one row of a spec is bad, the whole spec is. The
// finder is as in [ReadSheet].
func ReadSpecs(r io.Reader, f naming.Finder) (*Reading, error) {
	out := &Reading{}
	t, err := readTable(r, specColumns(), []string{"name", "amount", "unit", "ingredient"}, out)
	if err != nil {
		return nil, err
	}
	g := &gatherer{out: out}
	for _, row := range t.rows {
		g.row(row, &line{t: t, row: row.Cells}, f)
	}
	g.end()
	return out.done(), nil
}

// gatherer collects rows into specs.
type gatherer struct {
	out   *Reading
	spec  house.Spec
	rows  []grid.Row // of the current spec; empty before the first
	spoil bool
}

func (g *gatherer) row(row grid.Row, l *line, f naming.Finder) {
	id, name := l.word("id"), l.text("name")
	if id == "" {
		id = house.IDOf(house.KindSpec, name)
	}
	if len(g.rows) == 0 || id != "" && id != g.spec.ID {
		g.end()
		g.spec, g.spoil = house.Spec{ID: id, Name: name}, false
	}
	g.rows = append(g.rows, row)
	g.head(l)
	pour := house.Pour{Amount: l.numberOr("amount", 0), Ingredient: l.ingredient(f), After: l.yes("after")}
	unit, ok := measure.ParseUnit(l.word("unit"))
	if !ok {
		l.fail("unit: %q is not a unit of the bar; use one of %v", l.word("unit"), measure.Units())
	}
	pour.Unit = unit
	if l.err != nil {
		g.out.bad(row.Number, g.spec.ID, l.err)
		g.spoil = true
	}
	g.spec.Pours = append(g.spec.Pours, pour)
}

// head reads the fields that are given once per spec, on any of its rows.
func (g *gatherer) head(l *line) {
	if w := l.word("method"); w != "" {
		m, ok := serving.ParseMethod(w)
		if !ok {
			l.fail("method: %q is not known; use one of %v", w, flavor.Methods())
		}
		g.spec.Method = m
	}
	if w := l.word("service"); w != "" {
		s, ok := serving.ParseService(w)
		if !ok {
			l.fail("service: %q is not known; use one of %v", w, flavor.Services())
		}
		g.spec.Service = s
	}
	for column, field := range map[string]*string{"note": &g.spec.Note, "glass": &g.spec.Glass, "garnish": &g.spec.Garnish, "rim": &g.spec.Rim} {
		if n := l.text(column); n != "" {
			*field = n
		}
	}
	if n := l.text("steps"); n != "" {
		g.spec.Steps = strings.Split(n, "\n")
	}
	if v := l.number("hot_c"); v != nil {
		g.spec.HotC = *v
	}
	if n := l.text("name"); n != "" && n != g.spec.Name {
		if g.spec.Name != "" {
			l.fail("name: %q and %q share the id %q; give one another id", g.spec.Name, n, g.spec.ID)
		}
		g.spec.Name = n
	}
}

// end finishes the current spec. If it is bad, all its rows must be mended.
func (g *gatherer) end() {
	if len(g.rows) > 0 && (g.spoil || !g.out.add(g.rows[0].Number, g.spec)) {
		g.out.spoil(g.rows...)
	}
	g.rows = nil
}

// ingredient reads an id or a name.
func (l *line) ingredient(f naming.Finder) string {
	w := l.word("ingredient")
	if w == "" {
		l.fail("ingredient: is empty; write an id or a name")
		return ""
	}
	if f == nil {
		return w
	}
	p, _, err := f.Resolve(w)
	if err != nil {
		l.fail("ingredient: %s", faultText(err))
		return ""
	}
	return p.ID
}
