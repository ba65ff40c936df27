package reading

import (
	"slices"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/measure/draft"
	"counterpour/flavor/measure/draft/entry"
	"counterpour/flavor/measure/draft/likeliest"
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
		if len(out.Faults) > 0 || out.several || len(overlooked.Said(way.Text, &out.Spec)) > 0 || !holds(&way, d.String(), &out, b) {
			continue
		}
		for _, p := range slices.Backward(slices.Concat(way.Denied, way.Passed)) {
			out.Spec.Notes = slices.Insert(out.Spec.Notes, 0, "“"+token.OneLine(p)+"” is skipped")
		}
		if out.Draft.String() == way.Text {
			out.Draft = out.Draft.Restored(d.String(), nil)
		}
		return out, nil
	}
	return before, nil
}

// holds reports whether a way to set a draft anew says what is so: its title is the name of what is
// read, what is passed over names nothing that is not poured, and nothing but amounts parts the
// title from the pours only where it can be none of them.
func holds(way *setting.Set, text string, r *Reading, b *naming.Book) bool {
	for _, w := range way.Passed {
		if slices.ContainsFunc(b.Mentioned(w), func(p *flavor.Profile) bool { return !poursLike(p, r.Spec.Pours) }) {
			return false
		}
		if f := b.Find(firstWord(w), naming.Place{Unit: flavor.Ounce, Amount: 1}); f.Firm() && !poursLike(f.Profile, r.Spec.Pours) {
			return false
		}
	}
	if way.Title == "" {
		return true
	}
	if way.Bare && !setting.Called(way.Title, b) {
		f := b.Find(way.Title, naming.Place{Unit: flavor.Ounce, Amount: 1})
		at := strings.Index(text, way.Title)
		if f.Profile != nil || f.Fault.Kind == flavor.ErrInvalid || at < 0 || likeliest.MayPour(text, entry.Span{Start: at, End: at + len(way.Title)}, len(r.Spec.Pours), b) {
			return false
		}
	}
	return entitled(way.Title, r, b)
}

// firstWord is the first word of what is passed over: "OJ first" speaks of orange juice.
func firstWord(words string) string {
	first, _, _ := strings.Cut(words, " ")
	return first
}

// poursLike reports whether an ingredient is poured, one of its class, or one whose name shares a
// word with its own.
func poursLike(p *flavor.Profile, pours []flavor.Pour) bool {
	return slices.ContainsFunc(pours, func(q flavor.Pour) bool { return q.Profile.Class == p.Class || shareWord(q.Profile.Name, p.Name) })
}

// entitled reports whether a drink is called what its title says, and pours what that names: "rum
// punch" pours some rum.
func entitled(title string, r *Reading, b *naming.Book) bool {
	if !strings.EqualFold(token.OneLine(strings.Trim(r.Spec.Name, " :")), title) {
		return false
	}
	return setting.Called(title, b) || !slices.ContainsFunc(b.Mentioned(title), func(p *flavor.Profile) bool { return !poursLike(p, r.Spec.Pours) })
}

// shareWord reports whether two names share a word that says what they are of.
func shareWord(one, other string) bool {
	words := strings.Fields(flavor.NormaliseName(one))
	return slices.ContainsFunc(strings.Fields(flavor.NormaliseName(other)), func(w string) bool { return !forms[w] && slices.Contains(words, w) })
}

// forms are words that say in which form something is, and not of what.
var forms = token.Words(`juice syrup liqueur bitters cordial puree purée water wine spirit 1 2`)
