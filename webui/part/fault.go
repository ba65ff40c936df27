package part

import (
	"errors"
	"slices"
	"strings"

	"counterpour/flavor"
	"counterpour/webui/words"
)

// Fault is a fault of a draft, as shown beside its text.
type Fault struct {
	Line    int    // from 1; 0 if it is not about a line
	Quote   string // the line as written
	Message string
	Instead []Example // the draft with a suggested name in place
	Unknown string    // an unknown name, which may be a word of this house; empty for other faults
	Kinds   []Kind    // what it may mean, the likeliest first
}

// Kind is an ingredient that a word of the house may mean.
type Kind struct{ ID, Name string }

// mostKinds is how many ingredients are offered for an unknown name.
const mostKinds = 5

// AskKinds adds to each fault of an unknown name the ingredients that it may mean: those
// that the fault suggests.
func AskKinds(out []Fault, faults flavor.Faults, find func(name string) (*flavor.Profile, bool)) {
	for i, f := range faults {
		if !errors.Is(f.Kind, flavor.ErrUnknown) || f.Field != "ingredient" && f.Location != "ingredient" || flavor.NormaliseName(f.Value) == "" || out[i].Line == 0 {
			continue
		}
		out[i].Unknown = f.Value
		for _, name := range f.Suggest {
			if p, ok := find(name); ok && len(out[i].Kinds) < mostKinds {
				out[i].Kinds = append(out[i].Kinds, Kind{p.ID, p.Name})
			}
		}
	}
}

// FaultsOf returns the faults of a draft, each with its line.
func FaultsOf(text string, faults flavor.Faults) []Fault {
	lines := strings.Split(text, "\n")
	var out []Fault
	for _, f := range faults {
		v := Fault{Message: words.Sentence(f.Message)}
		if n := f.Place().Line; n >= 1 && n <= len(lines) {
			v.Line, v.Quote = n, strings.TrimSpace(lines[n-1])
			v.Instead = insteadOf(lines, n-1, f)
		}
		out = append(out, v)
	}
	return out
}

// insteadOf returns the draft once for each suggestion, with the suggested name in place
// of the faulty word. It does so for names only: a unit or an amount may be missing
// there.
func insteadOf(lines []string, at int, f *flavor.Fault) []Example {
	if !errors.Is(f.Kind, flavor.ErrUnknown) || f.Value == "" || !strings.Contains(lines[at], f.Value) {
		return nil
	}
	var out []Example
	for _, name := range f.Suggest {
		mended := slices.Clone(lines)
		mended[at] = strings.Replace(mended[at], f.Value, name, 1)
		out = append(out, Example{Name: name, Text: strings.Join(mended, "\n")})
	}
	return out
}
