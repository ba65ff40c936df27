package remedy

import (
	"errors"
	"slices"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/guest"
	"counterpour/flavor/measure"
	"counterpour/flavor/measure/draft"
	"counterpour/flavor/measure/draft/edit"
	"counterpour/flavor/measure/draft/names/naming"
	"counterpour/flavor/measure/draft/reading"
	"counterpour/flavor/measure/draft/words/entry"
)

// Request asks what mends the faults of a draft.
type Request struct {
	Text   string
	Faults flavor.DataFaults
	Rest   *reading.Reading // of the lines that can be read
	Guest  guest.Guest      // what the guest must not have is not offered
}

// Kind is how a draft is mended.
type Kind uint8

// The kinds of remedies, in the order in which they are offered.
const (
	Named    Kind = iota // the ingredient that a name which is not known is a slip of, or one of several that it names
	Near                 // one that such a name is only like, or that is likely beside the rest: somebody must know that it is meant
	Beside               // one that drinks like the rest of the draft also pour
	Measured             // a pour with the unit or the amount that it lacked
	AllIn                // all bare numbers in one unit
	Titled               // the words as the name of the drink
	LeftOut              // the draft without the pour
)

// Way is one way to mend a draft.
type Way struct {
	Kind Kind
	Says string      // what now stands there: a name, an amount or a unit; empty if Titled, LeftOut or AllIn
	Unit flavor.Unit // that all bare numbers are in, if AllIn
	Text string      // the whole draft
}

// Remedies are what mends one fault.
type Remedies struct {
	Ways    []Way             // by kind; of each kind the likeliest first
	Unknown string            // an unknown name, which may be a word of the house; empty for other faults
	Means   []*flavor.Profile // of which the unknown name is a slip, so that it may be kept at one tap; see [Keeps]
}

// For returns the remedies of each fault, in the order of the faults. A way is offered
// only if the draft that it makes has fewer faults, and if the guest may have what it
// pours. A fault that is about no line has none.
func For(bar Kitchen, r Request) ([]Remedies, error) {
	m := &mender{bar, r, draft.Parse(r.Text), strings.Split(r.Text, "\n")}
	out := make([]Remedies, len(r.Faults))
	for i, f := range r.Faults {
		if n := f.Place().Line; n < 1 || n > len(m.lines) {
			continue
		}
		var err error
		if out[i], err = m.remedies(f); err != nil {
			return nil, err
		}
	}
	return out, nil
}

// mender finds what mends the faults of a draft.
type mender struct {
	bar Kitchen
	Request
	draft draft.Draft
	lines []string
}

// remedies finds what mends a fault of a line.
func (m *mender) remedies(f *flavor.DataFault) (out Remedies, err error) {
	if isUnknown(f) && naming.Poisons(f.Value) {
		return Remedies{Ways: m.without(f)}, nil
	}
	suggested := m.suggested(f)
	var beside []*flavor.Profile
	if len(suggested) == 0 { // a name that is near is what was meant; what else would suit the drink is noise beside it
		if beside, err = m.beside(f); err != nil {
			return out, err
		}
	}
	meant, near := suggested, []*flavor.Profile(nil)
	if isUnknown(f) {
		meant, near = slips(f.Value, suggested)
	}
	out.Ways = slices.Concat(m.named(f, Named, meant), m.named(f, Near, near), m.named(f, Beside, beside), m.measured(f), m.titled(f), m.without(f))
	if isUnknown(f) {
		out.Unknown, out.Means = f.Value, firstOf(slices.DeleteFunc(keeping(f.Value, suggested), func(p *flavor.Profile) bool { return !Keeps(f.Value, p, m.Guest) }))
	}
	return out, nil
}

// slips parts the ingredients of which a name is a slip of the pen from those that it is not. What
// shares a word with a name or begins like it may be of another strength and carry other allergens.
func slips(name string, likely []*flavor.Profile) (of, not []*flavor.Profile) {
	for _, p := range likely {
		if naming.SlipOf(name, p) {
			of = append(of, p)
		} else {
			not = append(not, p)
		}
	}
	return of, not
}

// Keeps reports whether one tap may make a name mean an ingredient in the house from now on: it
// is a slip of the pen of the ingredient's own name, and the guest has nothing to avoid. What is
// only near by its letters may carry another allergen, which would be lost from every later
// drink; whoever knows what it is chooses its kind.
func Keeps(name string, p *flavor.Profile, g guest.Guest) bool {
	return !g.AvoidsAny() && naming.SlipOf(name, p)
}

// isUnknown reports whether a fault is that of the name of an ingredient that nobody knows.
func isUnknown(f *flavor.DataFault) bool {
	return errors.Is(f.Kind, flavor.ErrUnknown) && (f.Field == "ingredient" || f.Location == "ingredient") && flavor.NormaliseName(f.Value) != ""
}

// firstOf returns the first ingredients that a word may mean, each once.
func firstOf(likely []*flavor.Profile) (out []*flavor.Profile) {
	for _, p := range likely {
		if len(out) < mostNames && !slices.ContainsFunc(out, func(q *flavor.Profile) bool { return q.ID == p.ID }) {
			out = append(out, p)
		}
	}
	return out
}

// keep appends a way if the draft that it makes has fewer faults.
func (m *mender) keep(ways []Way, w Way) []Way {
	r, err := m.bar.ReadRest(w.Text)
	if w.Text == m.Text || strings.TrimSpace(w.Text) == "" || err != nil || len(r.Faults) >= len(m.Faults) {
		return ways
	}
	return append(ways, w)
}

// lineOf returns the pour that a fault is about, −1 if it is about none.
func (m *mender) lineOf(f *flavor.DataFault) int {
	return slices.IndexFunc(m.draft.Lines, func(l entry.Line) bool {
		return l.Number == f.Place().Line && (l.Name == f.Value || l.Measure != "" && l.Measure == f.Value)
	})
}

// with returns the draft with other words in place of one line.
func (m *mender) with(line string, f *flavor.DataFault) string {
	lines := slices.Clone(m.lines)
	lines[f.Place().Line-1] = line
	return strings.Join(lines, "\n")
}

// instead returns the draft with other words in place of the faulty ones.
func (m *mender) instead(f *flavor.DataFault, words string) string {
	return m.with(strings.Replace(m.lines[f.Place().Line-1], f.Value, words, 1), f)
}

// suggested are the ingredients that a fault suggests and the guest may have.
func (m *mender) suggested(f *flavor.DataFault) (out []*flavor.Profile) {
	for _, name := range f.Suggest {
		if p, match, err := m.bar.Known().Resolve(name); err == nil && match.How != flavor.MatchFuzzy && m.Guest.Accepts(p) {
			out = append(out, p)
		}
	}
	return out
}

// keeping returns those of some ingredients that carry whatever a name says that there is.
func keeping(name string, likely []*flavor.Profile) []*flavor.Profile {
	return slices.DeleteFunc(slices.Clone(likely), func(p *flavor.Profile) bool { return naming.Loses(name, p) != "" })
}

// named puts ingredients in place of a name that is not known, or leaves a choice.
func (m *mender) named(f *flavor.DataFault, kind Kind, likely []*flavor.Profile) (ways []Way) {
	if f.Value == "" || !isUnknown(f) && f.Field != "ingredient" {
		return nil
	}
	likely = keeping(f.Value, likely)
	for _, p := range likely[:min(mostNames, len(likely))] {
		ways = m.keep(ways, Way{Kind: kind, Says: p.Name, Text: m.instead(f, p.Name)})
	}
	return ways
}

// beside lists what drinks like the readable rest pour beside it and the guest may have,
// in about the amount of the line whose name is not known.
func (m *mender) beside(f *flavor.DataFault) ([]*flavor.Profile, error) {
	if len(m.Rest.Spec.Pours) == 0 || !isUnknown(f) {
		return nil, nil
	}
	ml := 0.0
	if at := m.lineOf(f); at >= 0 {
		if per, ok := measure.MLPerUnit(m.draft.Lines[at].Unit, nil); ok {
			ml = per * m.draft.Lines[at].Amount
		}
	}
	found, err := m.bar.Beside(&m.Rest.Spec, ml, 2*mostNames)
	if len(flavor.DataFaultsOf(err)) > 0 { // nothing in the rest can be weighed
		return nil, nil
	}
	found = slices.DeleteFunc(found, func(p *flavor.Profile) bool { return !m.Guest.Accepts(p) })
	return found[:min(mostNames, len(found))], err
}

// titled takes words that were asked about as the name of the drink; what else stands in
// their line goes below it.
func (m *mender) titled(f *flavor.DataFault) []Way {
	if f.Value == "" || f.Value != m.draft.Name {
		return nil
	}
	before, after, _ := strings.Cut(m.lines[f.Place().Line-1], f.Value)
	line := draft.NamePrefix + " " + f.Value
	if more := strings.Trim(before+after, " ,;:\r"); more != "" {
		line += "\n" + more
	}
	return m.keep(nil, Way{Kind: Titled, Text: m.with(line, f)})
}

// without leaves the pour out, or the line if nothing else stands in it.
func (m *mender) without(f *flavor.DataFault) []Way {
	if at := m.lineOf(f); at >= 0 {
		return m.keep(nil, Way{Kind: LeftOut, Text: edit.Delete(m.draft, at).String()})
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
	lines := slices.Delete(slices.Clone(m.lines), f.Place().Line-1, f.Place().Line)
	return m.keep(nil, Way{Kind: LeftOut, Text: strings.Join(lines, "\n")})
}
