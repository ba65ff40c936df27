package remedy

import (
	"slices"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/measure"
	"counterpour/flavor/measure/draft"
	"counterpour/flavor/measure/draft/edit"
	"counterpour/flavor/measure/draft/meaning"
	"counterpour/flavor/measure/draft/words/gauge"
)

// Millilitres that one pour by the jigger holds; common practice.
const (
	leastPourML = 3.0
	mostPourML  = 150.0
)

// A shot is measured by country; common practice.
const shot = "shot"

var shotsML = []float64{25, 30, 45}

// measured gives a pour the unit or the amount that it lacks.
func (m *mender) measured(f *flavor.DataFault) (ways []Way) {
	switch at := m.lineOf(f); {
	case f.Field == "unit" && at >= 0 && m.draft.Lines[at].Measure == "":
		return m.inUnits(at)
	case f.Field == "unit" && slices.Equal(f.Suggest, measure.NearestUnits(f.Value)):
		for _, u := range f.Suggest {
			ways = m.keep(ways, Way{Kind: Measured, Says: u, Text: m.instead(f, u)})
		}
	case f.Field == "unit" && at < 0: // "2 glugs of gin"
		for _, u := range f.Suggest {
			ways = m.keep(ways, Way{Kind: Measured, Says: u, Text: m.instead(f, u)})
		}
	case f.Field == "unit" && f.Value == shot && at >= 0:
		shots := m.draft.Lines[at].Amount / gauge.Measures[shot].Stated
		for _, ml := range shotsML {
			ways = m.keep(ways, in(m.draft, at, ml*shots, flavor.Millilitre))
		}
	case f.Field == "amount" && len(f.Suggest) > 0:
		for _, amount := range f.Suggest {
			ways = m.keep(ways, Way{Kind: Measured, Says: amount, Text: m.instead(f, amount)})
		}
	case f.Field == "amount" && f.Value != "":
		if lines := m.usual(f.Value); lines != nil {
			ways = m.keep(ways, Way{Kind: Measured, Says: strings.Join(lines, ", "), Text: m.instead(f, strings.Join(lines, "\n"))})
		}
	}
	return ways
}

// in writes an amount into one line of a draft.
func in(d draft.Draft, at int, amount float64, u flavor.Unit) Way {
	return Way{Kind: Measured, Says: measure.FormatAmount(amount, u), Text: edit.SetAmount(d, at, amount, u).String()}
}

// inUnits writes a unit to a bare number that nothing tells the unit of. If there are
// several, the first is offered with all of them in one unit.
func (m *mender) inUnits(at int) (ways []Way) {
	var open []int
	for _, f := range m.Faults {
		if i := m.lineOf(f); i >= 0 && f.Field == "unit" && m.draft.Lines[i].Measure == "" {
			open = append(open, i)
		}
	}
	switch {
	case len(open) > 1 && open[0] != at:
		return nil
	case len(open) > 1:
		for _, u := range fitting(m.draft, open) {
			ways = m.keep(ways, allIn(m.pinned(), open, u))
		}
		return ways
	}
	amount := m.draft.Lines[at].Amount
	for _, u := range jiggers {
		if per, ok := measure.MLPerUnit(u, nil); ok && amount*per >= leastPourML && amount*per <= mostPourML {
			ways = m.keep(ways, in(m.pinned(), at, amount, u))
		}
	}
	return ways
}

// pinned is the draft with the units of the bare numbers that were read written out, so
// that another unit beside them changes none of them.
func (m *mender) pinned() draft.Draft {
	d := m.draft
	for _, i := range bareLines(m.Rest) {
		if i < len(d.Lines) {
			d = edit.SetAmount(d, i, d.Lines[i].Amount, m.Rest.Spec.Pours[m.Rest.Pours[i]].Unit)
		}
	}
	return d
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
	pour, err := meaning.ResolvePour(1, string(m.system()), name, "", m.bar.Known())
	if err != nil {
		return ""
	}
	ml := m.bar.UsualML(pour.Profile)
	unit, ok := pour.Profile.UsualUnit(m.system())
	if unit.Jigger() && ml < leastPourML {
		unit = flavor.Barspoon
	}
	amount := measure.Snap(ml, unit, pour.Profile)
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
