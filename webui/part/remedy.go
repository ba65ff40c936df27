package part

import (
	"errors"
	"slices"
	"strings"

	"counterpour/data/house"
	"counterpour/flavor"
	"counterpour/flavor/guest"
	"counterpour/flavor/measure"
	"counterpour/flavor/measure/draft"
	"counterpour/flavor/measure/draft/edit"
	"counterpour/flavor/measure/draft/entry"
	"counterpour/flavor/measure/draft/reading"
	"counterpour/webui/behind"
)

// Refused is a fault of a draft, with what mends it at a tap.
type Refused struct {
	Fault
	Mends   []Mend
	Unknown string // an unknown name, which may be a word of this house; empty for other faults
	Kinds   []Kind // what it may mean, the likeliest first
}

// Mend is several ways to mend a fault, each with the draft that it makes.
type Mend struct {
	Lead string
	Ways []Example
}

// Kind is an ingredient that a word of the house may mean.
type Kind struct{ ID, Name string }

// mostWays is how many ingredients are offered for an unknown name.
const mostWays = 4

// mender finds what mends the faults of a draft.
type mender struct {
	bar    behind.Bar
	shelf  *house.Shelf
	guest  guest.Guest // what the guest must not have is not offered
	text   string
	draft  draft.Draft
	rest   *reading.Reading // of the lines that can be read
	faults flavor.Faults    // of the draft as it stands
}

// RefusedOf returns the faults of a draft with their remedies; rest is the reading of its
// other lines. A remedy is offered only if the draft that it makes has fewer faults, and if
// the guest may have what it pours.
func RefusedOf(bar behind.Bar, shelf *house.Shelf, g guest.Guest, text string, faults flavor.Faults, rest *reading.Reading) ([]Refused, error) {
	m := &mender{bar, shelf, g, text, draft.Parse(text), rest, faults}
	var out []Refused
	for i, told := range FaultsOf(text, faults) {
		v := Refused{Fault: told}
		if told.Line > 0 {
			if err := v.remedies(m, faults[i]); err != nil {
				return nil, err
			}
		}
		out = append(out, v)
	}
	return out, nil
}

// remedies fills in what mends a fault of a line.
func (v *Refused) remedies(m *mender, f *flavor.Fault) error {
	beside, err := m.beside(f)
	if err != nil {
		return err
	}
	suggested := m.suggested(f)
	v.mend("Write", m.named(f, suggested))
	v.mend("Drinks like this one also pour", m.named(f, beside))
	v.mend("Pour", m.measured(f))
	v.mend("Or", slices.Concat(m.titled(f), m.without(f)))
	if isUnknown(f) {
		v.Unknown, v.Kinds = f.Value, kindsOf(slices.Concat(beside, suggested))
	}
	return nil
}

func (v *Refused) mend(lead string, ways []Example) {
	if len(ways) > 0 {
		v.Mends = append(v.Mends, Mend{lead, ways})
	}
}

// isUnknown reports whether a fault is that of the name of an ingredient that nobody knows.
func isUnknown(f *flavor.Fault) bool {
	return errors.Is(f.Kind, flavor.ErrUnknown) && (f.Field == "ingredient" || f.Location == "ingredient") && flavor.NormaliseName(f.Value) != ""
}

// kindsOf are ingredients that a word may mean, each once.
func kindsOf(likely []*flavor.Profile) (out []Kind) {
	for _, p := range likely {
		if kind := (Kind{p.ID, p.Name}); len(out) < mostWays && !slices.Contains(out, kind) {
			out = append(out, kind)
		}
	}
	return out
}

// keep appends a remedy if the draft that it makes has fewer faults.
func (m *mender) keep(ways []Example, name, text string) []Example {
	r, err := m.bar.ReadRest(text)
	if text == m.text || strings.TrimSpace(text) == "" || err != nil || len(r.Faults) >= len(m.faults) {
		return ways
	}
	return append(ways, Example{Name: name, Text: text})
}

// lineOf returns the pour that a fault is about, −1 if it is about none.
func (m *mender) lineOf(f *flavor.Fault) int {
	return slices.IndexFunc(m.draft.Lines, func(l entry.Line) bool {
		return l.Number == f.Place().Line && (l.Name == f.Value || l.Measure != "" && l.Measure == f.Value)
	})
}

// instead returns the draft with other words in place of the faulty ones.
func (m *mender) instead(f *flavor.Fault, words string) string {
	lines := strings.Split(m.text, "\n")
	at := f.Place().Line - 1
	lines[at] = strings.Replace(lines[at], f.Value, words, 1)
	return strings.Join(lines, "\n")
}

// suggested are the ingredients that a fault suggests and the guest may have.
func (m *mender) suggested(f *flavor.Fault) (out []*flavor.Profile) {
	for _, name := range f.Suggest {
		if p, _, err := m.shelf.Resolve(name); err == nil && m.guest.Accepts(p) {
			out = append(out, p)
		}
	}
	return out
}

// named puts ingredients in place of a name that is not known, or leaves a choice.
func (m *mender) named(f *flavor.Fault, likely []*flavor.Profile) (ways []Example) {
	if f.Value == "" || !isUnknown(f) && f.Field != "ingredient" {
		return nil
	}
	for _, p := range likely[:min(mostWays, len(likely))] {
		ways = m.keep(ways, p.Name, m.instead(f, p.Name))
	}
	return ways
}

// beside lists what drinks like the readable rest pour beside it and the guest may have,
// in about the amount of the line whose name is not known.
func (m *mender) beside(f *flavor.Fault) ([]*flavor.Profile, error) {
	if len(m.rest.Spec.Pours) == 0 || !isUnknown(f) {
		return nil, nil
	}
	ml := 0.0
	if at := m.lineOf(f); at >= 0 {
		if per, ok := measure.MLPerUnit(m.draft.Lines[at].Unit, nil); ok {
			ml = per * m.draft.Lines[at].Amount
		}
	}
	found, err := m.bar.Beside(&m.rest.Spec, ml, 2*mostWays)
	if len(flavor.FaultsOf(err)) > 0 { // nothing in the rest can be weighed
		return nil, nil
	}
	found = slices.DeleteFunc(found, func(p *flavor.Profile) bool { return !m.guest.Accepts(p) })
	return found[:min(mostWays, len(found))], err
}

// measured gives a pour the unit or the amount that it lacks.
func (m *mender) measured(f *flavor.Fault) (ways []Example) {
	switch at := m.lineOf(f); {
	case f.Field == "unit" && at >= 0 && m.draft.Lines[at].Measure == "":
		ways = m.inUnits(at)
	case f.Field == "unit" && slices.Equal(f.Suggest, measure.NearestUnits(f.Value)):
		for _, u := range f.Suggest {
			ways = m.keep(ways, u, m.instead(f, u))
		}
	case f.Field == "unit" && f.Value == shot && at >= 0:
		for _, ml := range shotsML {
			amount := ml * m.draft.Lines[at].Amount
			ways = m.keep(ways, measure.FormatAmount(amount, flavor.Millilitre), edit.SetAmount(m.draft, at, amount, flavor.Millilitre).String())
		}
	case f.Field == "amount" && f.Value != "":
		if lines := m.usual(f.Value); lines != nil {
			ways = m.keep(ways, strings.Join(lines, ", "), m.instead(f, strings.Join(lines, "\n")))
		}
	}
	return ways
}

// inUnits writes a unit to a bare number that nothing tells the unit of. If there are
// several, the first is offered with all of them in one unit.
func (m *mender) inUnits(at int) (ways []Example) {
	var open []int
	for _, f := range m.faults {
		if i := m.lineOf(f); i >= 0 && f.Field == "unit" && m.draft.Lines[i].Measure == "" {
			open = append(open, i)
		}
	}
	if len(open) > 1 {
		if open[0] != at {
			return nil
		}
		for _, u := range UnitsFitting(m.draft, open) {
			ways = m.keep(ways, "all in "+u.Name, InUnit(m.pinned(), open, u.Unit))
		}
		return ways
	}
	amount := m.draft.Lines[at].Amount
	for _, u := range poured(amount) {
		ways = m.keep(ways, measure.FormatAmount(amount, u), edit.SetAmount(m.pinned(), at, amount, u).String())
	}
	return ways
}

// pinned is the draft with the units of the bare numbers that were read written out, so
// that another unit beside them changes none of them.
func (m *mender) pinned() draft.Draft {
	d := m.draft
	for _, i := range BareLines(m.rest) {
		if i < len(d.Lines) {
			d = edit.SetAmount(d, i, d.Lines[i].Amount, m.rest.Spec.Pours[m.rest.Pours[i]].Unit)
		}
	}
	return d
}

// A shot is measured by country; common practice.
const shot = "shot"

var shotsML = []float64{25, 30, 45}

// Millilitres that one pour of a drink holds; common practice.
const (
	leastPourML = 3.0
	mostPourML  = 150.0
)

// poured are the units of a jigger in which an amount fits one drink.
func poured(amount float64) (out []flavor.Unit) {
	for _, u := range []flavor.Unit{flavor.Ounce, flavor.Millilitre, flavor.Centilitre} {
		if per, ok := measure.MLPerUnit(u, nil); ok && amount*per >= leastPourML && amount*per <= mostPourML {
			out = append(out, u)
		}
	}
	return out
}

// usual writes each ingredient of some words with the amount that proven drinks mostly
// pour of it; nil if one of them is not known.
func (m *mender) usual(words string) (lines []string) {
	for name := range strings.SplitSeq(strings.NewReplacer(" and ", ",", " & ", ",", " + ", ",").Replace(words), ",") {
		name = strings.TrimSpace(name)
		amount := m.usualOf(name)
		if amount == "" {
			return nil
		}
		lines = append(lines, amount+" "+name)
	}
	return lines
}

// usualOf is how much proven drinks mostly pour of an ingredient, in the unit that a hand
// measures it in; empty if nothing tells.
func (m *mender) usualOf(name string) string {
	r, err := m.bar.ReadRest("1 " + string(m.system()) + " " + name)
	if err != nil || len(r.Faults) > 0 || len(r.Spec.Pours) != 1 {
		return ""
	}
	p := r.Spec.Pours[0].Profile
	ml := m.bar.UsualML(p)
	unit, ok := p.UsualUnit(m.system())
	if unit.Jigger() && ml < leastPourML {
		unit = flavor.Barspoon
	}
	amount := measure.Snap(ml, unit, p)
	if !ok || amount <= 0 {
		return ""
	}
	return measure.FormatAmount(amount, unit)
}

// system is the unit of the first pour that is poured by the jigger, else ounces.
func (m *mender) system() flavor.Unit {
	for _, l := range m.draft.Lines {
		if l.Unit.Jigger() {
			return l.Unit
		}
	}
	return flavor.Ounce
}

// titled takes words that were asked about as the name of the drink; what else stands in
// their line goes below it.
func (m *mender) titled(f *flavor.Fault) []Example {
	if f.Value == "" || f.Value != m.draft.Name {
		return nil
	}
	lines := strings.Split(m.text, "\n")
	at := f.Place().Line - 1
	before, after, _ := strings.Cut(lines[at], f.Value)
	lines[at] = draft.NamePrefix + " " + f.Value
	if more := strings.Trim(before+after, " ,;:\r"); more != "" {
		lines[at] += "\n" + more
	}
	return m.keep(nil, "It is the drink’s name", strings.Join(lines, "\n"))
}

// without leaves the pour out, or the line if nothing else stands in it.
func (m *mender) without(f *flavor.Fault) []Example {
	const name = "Leave it out"
	if at := m.lineOf(f); at >= 0 {
		return m.keep(nil, name, edit.Delete(m.draft, at).String())
	}
	in := 0
	for _, e := range m.draft.Entries {
		if e.Line == f.Place().Line {
			in++
		}
	}
	if in > 1 {
		return nil
	}
	lines := strings.Split(m.text, "\n")
	return m.keep(nil, name, strings.Join(slices.Delete(lines, f.Place().Line-1, f.Place().Line), "\n"))
}
