package reading

import (
	"cmp"
	"slices"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/measure/draft"
	"counterpour/flavor/measure/draft/names/naming"
	"counterpour/flavor/measure/draft/rewriting/subrecipe"
	"counterpour/flavor/measure/draft/words/entry"
)

// withoutMaking reads a draft without what it tells of how its syrups are made and of other
// versions, which is said of each stretch; false if it tells nothing of the kind, or nothing is
// poured without it.
func withoutMaking(d draft.Draft, f naming.Finder) (Reading, bool, error) {
	if d.PoursOnly() {
		return Reading{}, false, nil
	}
	text := d.String()
	told, restated := subrecipe.Of(text)
	if len(told) == 0 {
		return Reading{}, false, nil
	}
	rest := blanked(text, told)
	out, err := resolveAny(d.Anew(rest), f)
	if err != nil || len(out.Spec.Pours) == 0 {
		return Reading{}, false, err
	}
	if restated {
		batch, err := byRules(d, f)
		if err != nil || !slices.EqualFunc(out.Spec.Pours, batch.Spec.Pours, func(a, b flavor.Pour) bool { return a.Profile == b.Profile }) {
			return Reading{}, false, err
		}
	}
	out.told = cmp.Or(out.told, rest)
	out.passOver(text, told)
	if out.Draft.String() == rest {
		out.Draft = out.Draft.Restored(text, told)
	}
	return out, true, nil
}

// blanked returns a text with blanks in place of some stretches of it, as long as it was.
func blanked(text string, stretches []entry.Span) string {
	b := []byte(text)
	for _, s := range stretches {
		for i := s.Start; i < s.End; i++ {
			if b[i] != '\n' && b[i] != '\r' {
				b[i] = ' '
			}
		}
	}
	return strings.ToValidUTF8(string(b), " ")
}
