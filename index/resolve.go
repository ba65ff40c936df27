package index

import (
	"context"
	"fmt"
	"strings"
	"unicode/utf8"

	"counterpour/flavor"
	"counterpour/flavor/lookup"
)

// maxSuggest is how many names an unknown one is answered with.
const maxSuggest = 5

// Resolve returns the one ingredient that a written name means, and how it was
// met:
//
//   - exact: its own name or id, case, accents, plural and punctuation aside;
//   - alias: one of its aliases, the same words in another order, or the same
//     name in the other spelling of English;
//   - fuzzy: a slip of the pen, which is one letter added, dropped, replaced or
//     swapped in a name of four to seven letters, up to two from eight, or a
//     space left out or put in.
//
// It never guesses. A word that some other ingredient is called by is not a
// slip, numbers must agree, and a name equally near to two ingredients means
// neither. What it does not know is a [*flavor.Fault] of kind
// [flavor.ErrUnknown] without a location, with up to five nearest names. Only
// the first [lookup.MaxText] runes are looked at, and a longer text names nothing.
func (x *Index) Resolve(written string) (*flavor.Profile, flavor.Match, error) {
	if x.line.closed.Load() {
		return nil, flavor.Match{}, lookup.ErrClosed
	}
	if p, how, ok := x.lookUp(written); ok {
		return p, flavor.Match{Asked: written, How: how}, nil
	}
	return nil, flavor.Match{}, x.unknown(written)
}

func (x *Index) lookUp(written string) (*flavor.Profile, flavor.MatchHow, bool) {
	if i, ok := x.position[written]; ok {
		return x.profiles[i], flavor.MatchExact, true
	}
	if utf8.RuneCountInString(strings.TrimSpace(written)) > lookup.MaxText {
		return nil, "", false
	}
	key := fold(written)
	if key == "" {
		return nil, "", false
	}
	words := strings.Fields(key)
	n := x.names
	if c, ok := n.written[flavor.NormaliseName(written)]; ok {
		return c.profile, c.how, !c.contested
	}
	if c, ok := n.folded[key]; ok {
		return c.profile, flavor.MatchAlias, !c.contested
	}
	if c, ok := n.sorted[sortWords(words)]; ok {
		return c.profile, flavor.MatchAlias, !c.contested
	}
	if c, ok := n.closed[strings.Join(words, "")]; ok {
		return c.profile, flavor.MatchFuzzy, !c.contested
	}
	p, ok := n.slip(words)
	return p, flavor.MatchFuzzy, ok
}

// unknown is the fault of a name that nothing answers to.
func (x *Index) unknown(written string) *flavor.Fault {
	written = capText(written)
	names := x.suggest(written)
	return &flavor.Fault{Kind: flavor.ErrUnknown, Value: written, Suggest: names,
		Message: fmt.Sprintf("unknown ingredient %q; %s", written, nearestText(names))}
}

func nearestText(names []string) string {
	if len(names) == 0 {
		return "write the name of one, such as those the ingredient search lists"
	}
	return "nearest: " + strings.Join(names, ", ")
}

// suggest returns the names nearest to what was written: what the search
// finds, or else what takes the fewest changes of a letter.
func (x *Index) suggest(written string) []string {
	key := fold(written)
	if key == "" {
		return nil
	}
	var near []*flavor.Profile
	// A search that fails only costs the better suggestions.
	if r, err := x.Search(context.Background(), lookup.Query{Text: written, Limit: maxSuggest}); err == nil {
		for _, h := range r.Hits {
			near = append(near, h.Profile)
		}
	}
	if len(near) == 0 {
		near = x.names.nearest(key, maxSuggest)
	}
	names := make([]string, len(near))
	for i, p := range near {
		names[i] = p.Name
	}
	return names
}
