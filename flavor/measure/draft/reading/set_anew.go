package reading

import (
	"slices"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/measure/draft"
	"counterpour/flavor/measure/draft/naming"
	"counterpour/flavor/measure/draft/overlooked"
	"counterpour/flavor/measure/draft/setting"
	"counterpour/flavor/measure/draft/token"
)

// setAnew reads a draft that no rule reads as it stands in the first way to set it anew that leaves
// nothing open. It returns what was read before if none does.
func setAnew(d draft.Draft, before Reading, f naming.Finder) (Reading, error) {
	if d.PoursOnly() || d.Labelled {
		return before, nil
	}
	b := naming.NewBook(f)
	for _, way := range setting.Ways(d.String(), b) {
		if b.Err() != nil {
			return before, b.Err()
		}
		out, err := asSet(d.Anew(way.Text), f)
		if err != nil {
			return before, err
		}
		if len(out.Faults) > 0 || out.several || way.Title != "" && !entitled(way.Title, &out, b) || len(overlooked.Said(way.Text, &out.Spec)) > 0 {
			continue
		}
		out.Spec.Notes = slices.Concat(way.Notes, out.Spec.Notes)
		if out.Draft.String() == way.Text {
			out.Draft = out.Draft.Restored(d.String(), nil)
		}
		return out, nil
	}
	return before, nil
}

// entitled reports whether a drink is called what its title says, and pours what that names: "rum
// punch" pours some rum.
func entitled(title string, r *Reading, b *naming.Book) bool {
	if !strings.EqualFold(token.OneLine(strings.Trim(r.Spec.Name, " :")), title) {
		return false
	}
	return setting.Called(title, b) || !slices.ContainsFunc(b.Mentioned(title), func(p *flavor.Profile) bool {
		return !slices.ContainsFunc(r.Spec.Pours, func(q flavor.Pour) bool { return q.Profile.Class == p.Class || shareWord(q.Profile.Name, p.Name) })
	})
}

// shareWord reports whether two names share a word.
func shareWord(one, other string) bool {
	words := strings.Fields(flavor.NormaliseName(one))
	return slices.ContainsFunc(strings.Fields(flavor.NormaliseName(other)), func(w string) bool { return slices.Contains(words, w) })
}
