package edit

import (
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"counterpour/flavor"
	"counterpour/flavor/measure"
	"counterpour/flavor/measure/draft"
	"counterpour/flavor/measure/draft/meaning"
	"counterpour/flavor/measure/draft/names/counting"
	"counterpour/flavor/measure/draft/names/naming"
	"counterpour/flavor/measure/draft/words/token"
)

// Format returns s in the text form, a pour a line, then the method and the
// service, and a line each for glass, rim, garnish and steps. [Read] reads it as
// the same spec, as long as the names of its ingredients are names that the
// finder knows and s is within the limits of this package. The notes are not
// written, and pours that go in afterwards by their unit are marked so.
func Format(s flavor.Spec) string {
	var b strings.Builder
	name := token.OneLine(s.Name)
	if name != "" {
		b.WriteString(formatName(name) + "\n")
	}
	for i := range s.Pours {
		again := slices.ContainsFunc(s.Pours[:i], func(p flavor.Pour) bool { return p.Profile == s.Pours[i].Profile })
		b.WriteString(formatPour(&s.Pours[i], name == "" && i == 0, again) + "\n")
	}
	said := measure.Names([]flavor.Method{s.Method})
	said = append(said, serviceWords(s.Method, s.Service))
	if s.HotC > 0 {
		said = append(said, token.Number(s.HotC)+" °C")
	}
	if line := joinNonEmpty(said, ", "); line != "" {
		b.WriteString(line + "\n")
	}
	for _, l := range []struct{ label, text string }{{"glass", s.Glass}, {"rim", s.Rim}, {"garnish", s.Garnish}} {
		if text := token.OneLine(l.text); text != "" {
			b.WriteString(l.label + ": " + text + "\n")
		}
	}
	for _, step := range s.Steps {
		if text := token.OneLine(step); text != "" {
			b.WriteString("step: " + text + "\n")
		}
	}
	return b.String()
}

// serviceWords names a service after a method: neat after ice would be read as
// strained.
func serviceWords(m flavor.Method, v flavor.Service) string {
	if v == flavor.Neat && m != "" && m != flavor.Build {
		return "room temperature"
	}
	return string(v)
}

func joinNonEmpty(words []string, sep string) string {
	var kept []string
	for _, w := range words {
		if w != "" {
			kept = append(kept, w)
		}
	}
	return strings.Join(kept, sep)
}

// formatName marks a name that would be read as something else, or as something
// beside.
func formatName(name string) string {
	d := draft.Parse(name + "\n1 oz x")
	says := d.Glass != "" || d.Garnish != "" || d.Rim != "" || d.Method != "" || d.Service != "" || d.HotC != 0 || len(d.Steps) > 0
	if first, _ := utf8.DecodeRuneInString(name); unicode.IsLower(first) || unicode.IsNumber(first) {
		return draft.NamePrefix + " " + name // else it may be a pour that lost its amount, or whose amount cannot be read
	}
	if d.Name == name && len(d.Lines) == 1 && !d.NameInDoubt() && len(d.Faults) == 0 && !says {
		return name
	}
	return draft.NamePrefix + " " + name
}

// FormatPour returns a pour as a line that reads back as it.
func FormatPour(p flavor.Pour) string { return formatPour(&p, false, false) }

// formatPour writes the most natural line that reads back as p. A drink that
// pours the same again states the amount, or to top with it would speak of the
// pour before.
func formatPour(p *flavor.Pour, first, again bool) string {
	name := token.OneLine(p.Match.Asked)
	if p.Profile != nil {
		name = token.OneLine(p.Called())
	}
	if p.Unit == "" {
		return measure.ExactNumber(p.Amount, p.Unit) + " " + name
	}
	plain := measure.ExactNumber(p.Amount, p.Unit) + " " + measure.UnitWord(p.Amount, p.Unit) + " " + name
	if p.After && !p.Unit.After() {
		plain = "top " + plain
	}
	natural := naturalLines(p, name)
	if again && p.Unit.After() || p.Unit == flavor.Float && dashedOn(p.Profile) {
		natural = nil
	}
	for _, line := range append(natural, plain) {
		if readsAs(line, p, name, first) {
			return line
		}
	}
	// The name would be read as another in this place: say what it is.
	if p.Profile != nil {
		return strings.TrimSuffix(plain, name) + name + " (" + naming.PlainMark + ")"
	}
	return plain
}

// dashedOn reports whether an ingredient that is said to top a drink is dashed on it.
func dashedOn(p *flavor.Profile) bool {
	return p != nil && (p.Class == flavor.ClassCocktailBitters || p.Class == flavor.ClassTincture)
}

// readsAs reports whether a line is read as the amount, the unit and the name
// of a pour, and the place makes nothing else of the name.
func readsAs(line string, p *flavor.Pour, name string, first bool) bool {
	text := line
	if !first {
		text = "name: x\n" + line
	}
	d := draft.Parse(text)
	if len(d.Lines) != 1 || len(d.Faults) > 0 || len(d.Entries) != map[bool]int{true: 1, false: 2}[first] {
		return false
	}
	l := &d.Lines[0]
	if l.Amount != p.Amount || l.Name != name || l.Times != 0 || l.Measure != "" || l.Squeezed || l.Muddled || l.NoAmount || l.Note != "" {
		return false
	}
	if l.After != (p.After || p.Unit.After()) {
		return false
	}
	if l.Unit != p.Unit && !(l.Unit == "" && p.Unit == flavor.Piece && counting.CountedBare(p)) {
		return false
	}
	return !naming.Movable(name, p)
}

// naturalLines are the ways to write p that a bartender would prefer.
func naturalLines(p *flavor.Pour, name string) []string {
	amount := measure.ExactNumber(p.Amount, p.Unit)
	word := measure.UnitWord(p.Amount, p.Unit)
	switch {
	case p.Unit.After() && p.Amount == 1 && !(p.Unit == flavor.Top && !meaning.Fills(p.Profile)):
		return []string{string(p.Unit) + " " + name}
	case p.After && !p.Unit.After():
		return []string{"top " + amount + " " + word + " " + name}
	case p.Unit == flavor.Piece:
		return []string{amount + " " + name}
	case p.Unit.Counted() && !endsInUnit(name):
		return []string{amount + " " + name + " " + word}
	}
	return []string{amount + " " + word + " " + name}
}

func endsInUnit(name string) bool {
	_, ok := measure.ParseUnit(name[strings.LastIndexByte(name, ' ')+1:])
	return ok
}
