package reading

import (
	"strings"

	"counterpour/flavor/measure/draft"
	"counterpour/flavor/measure/draft/naming"
	"counterpour/flavor/measure/draft/token"
)

// narrowed reads a draft with wide figures as if they were plain ones; false if it has none.
func narrowed(d draft.Draft, f naming.Finder) (Reading, bool, error) {
	text, ok := token.Narrow(d.String())
	if !ok {
		return Reading{}, false, nil
	}
	out, err := Resolve(d.Anew(text), f)
	if at := out.Draft.NameAt; err == nil && out.Draft.String() == text && !at.Empty() { // the name is kept to the letter
		end := len(text)
		if n := strings.IndexAny(text[at.Start:], "\r\n"); n >= 0 {
			end = at.Start + n
		}
		if token.OneLine(text[at.Start:end]) == out.Spec.Name {
			out.Spec.Name = token.OneLine(d.String()[at.Start:end])
			out.Draft.Name = out.Spec.Name
		}
	}
	if err == nil && out.Draft.String() == text {
		out.Draft = out.Draft.Restored(d.String(), nil)
	}
	return out, true, err
}
