package reading

import (
	"strings"

	"counterpour/flavor/measure/draft"
	"counterpour/flavor/measure/draft/names/naming"
	"counterpour/flavor/measure/draft/words/sheet"
	"counterpour/flavor/measure/draft/words/token"
)

// plainly reads a draft with wide figures as if they were plain ones, and a row of a sheet with
// the name of the drink on a line of its own; false if it is neither.
func plainly(d draft.Draft, f naming.Finder) (Reading, bool, error) {
	text, wide := token.Narrow(d.String())
	text, row := sheet.TitleApart(text)
	if row {
		title, _, _ := strings.Cut(text, "\n")
		if found := naming.NewResolver(f).Find(title, naming.Place{}); found.Firm() {
			return Reading{}, false, nil // it may be poured as well
		}
	}
	if !wide && !row {
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
