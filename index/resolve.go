package index

import (
	"cmp"
	"context"
	"fmt"
	"iter"
	"slices"
	"strings"
	"unicode/utf8"

	"counterpour/flavor"
	"counterpour/flavor/lookup"
	"counterpour/flavor/measure/draft/names/naming"
)

// maxSuggest is how many names are suggested for an unknown one.
const maxSuggest = 5

// Resolve returns the one ingredient that a written name means, and how it was
// met:
//
//   - exact: its own name or id, case, accents, plural and punctuation aside;
//   - alias: one of its aliases, the same words in another order, or the same
//     name in the other spelling of English;
//   - fuzzy: a slip of the pen, which is one letter added, dropped, replaced or
//     swapped in a word of five to seven letters, up to two from eight, or a
//     space left out or put in. A shorter word is forgiven none.
//
// It never guesses. A word that some other ingredient is called by is not a
// slip, numbers must agree, and a name equally near to two ingredients means
// neither. What it does not know is a [*flavor.DataFault] of kind
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

// Named returns the ingredient with exactly this name, id or alias. It is [Index.Resolve]
// without misspellings.
func (x *Index) Named(written string) (*flavor.Profile, flavor.MatchHow, bool) {
	c, ok := x.claimed(written)
	if !ok || c.contested {
		return nil, "", false
	}
	return c.profile, c.how(), true
}

// claimed returns the claim on a written name, contested or not.
func (x *Index) claimed(written string) (claim, bool) {
	if i, ok := x.position[written]; ok {
		return claim{profile: x.profiles[i], exact: true}, true
	}
	key := flavor.NormaliseName(written)
	if key == "" || len(written) > lookup.MaxText && utf8.RuneCountInString(strings.TrimSpace(written)) > lookup.MaxText {
		return claim{}, false
	}
	n := x.names
	if c, ok := n.written[key]; ok {
		return c, true
	}
	key = foldKey(key)
	c, ok := n.folded[key]
	if !ok && strings.Contains(key, " ") {
		c, ok = n.sorted[sortWords(strings.Fields(key))]
	}
	c.exact = false
	return c, ok
}

// Slip returns the one ingredient of whose name the written one is a misspelling. allows
// tells which ingredients are possible in this place; nil allows all. If the nearest name
// is not allowed, Slip finds nothing.
func (x *Index) Slip(written string, allows func(*flavor.Profile) bool) (*flavor.Profile, bool) {
	if utf8.RuneCountInString(strings.TrimSpace(written)) > lookup.MaxText {
		return nil, false
	}
	words := strings.Fields(fold(written))
	if len(words) == 0 {
		return nil, false
	}
	closed := strings.Join(words, "")
	if c, ok := x.names.closed[closed]; ok && len(closed) >= leastSlipped {
		return c.profile, !c.contested && (allows == nil || allows(c.profile))
	}
	p := x.slipOf(words)
	return p, p != nil && (allows == nil || allows(p))
}

func (x *Index) lookUp(written string) (*flavor.Profile, flavor.MatchHow, bool) {
	if c, ok := x.claimed(written); ok {
		return c.profile, c.how(), !c.contested
	}
	p, ok := x.Slip(written, nil)
	return p, flavor.MatchFuzzy, ok
}

// Suggest returns up to five names nearest to what was written, those that allows accepts
// first; nil accepts all.
func (x *Index) Suggest(written string, allows func(*flavor.Profile) bool) []string {
	if x.line.closed.Load() {
		return nil
	}
	return x.suggest(capText(written), allows)
}

// Initialled yields every name, alias and id, normalised, whose words some words may shorten:
// for each of them it has one with the same first letter, and it has all their letters.
func (x *Index) Initialled(words []string) iter.Seq[string] {
	all := strings.Join(words, " ")
	asked, letters := initialsOf(all), lettersOf(strings.ReplaceAll(all, " ", ""))
	return func(yield func(string) bool) {
		for _, n := range x.names.initialled {
			if n.initials&asked == asked && n.letters&letters == letters && !yield(n.name) {
				return
			}
		}
	}
}

// unknown returns the fault of an unknown name.
func (x *Index) unknown(written string) *flavor.DataFault {
	written = capText(written)
	names := x.suggest(written, nil)
	return &flavor.DataFault{Kind: flavor.ErrUnknown, Value: written, Suggest: names,
		Message: fmt.Sprintf("unknown ingredient %q; %s", written, nearestText(names))}
}

func nearestText(names []string) string {
	if len(names) == 0 {
		return "write the name of one, such as those the ingredient search lists"
	}
	return "nearest: " + strings.Join(names, ", ")
}

// mostWeighed is how many of the nearest names are then sorted by what is allowed and
// favoured.
const mostWeighed = 12

// suggest returns the names nearest to what was written: the results of the search or,
// without any, the names with the fewest edits. Allowed names come first, then those that
// the index favours.
func (x *Index) suggest(written string, allows func(*flavor.Profile) bool) []string {
	near := x.nearest(written)
	if allows != nil || x.favours != nil {
		slices.SortStableFunc(near, func(a, b *flavor.Profile) int {
			return cmp.Or(cmp.Compare(refused(allows, a), refused(allows, b)), cmp.Compare(x.favour(b), x.favour(a)))
		})
	}
	near = near[:min(len(near), maxSuggest)]
	names := make([]string, len(near))
	for i, p := range near {
		names[i] = p.Name
	}
	return names
}

// nearest returns the results of the search or, without any, the names with the fewest
// edits.
func (x *Index) nearest(written string) []*flavor.Profile {
	key := fold(written)
	if key == "" {
		return nil
	}
	if near, ok := x.recent.near.Get(written); ok {
		return slices.Clone(near)
	}
	var near []*flavor.Profile
	r, err := x.Search(context.Background(), lookup.Query{Text: written, Limit: mostWeighed})
	for _, h := range r.Hits {
		near = append(near, h.Profile)
	}
	if len(near) == 0 {
		near = x.names.nearest(key, maxSuggest)
	}
	if err == nil { // if this search fails, only the suggestions are worse
		x.recent.near.Add(written, slices.Clone(near))
	}
	return near
}

func refused(allows func(*flavor.Profile) bool, p *flavor.Profile) int {
	if allows == nil || allows(p) {
		return 0
	}
	return 1
}

// Favouring returns an index that suggests ingredients with a higher favour first, such
// as those that the house stocks or that many drinks pour. It shares everything else with
// x.
func (x *Index) Favouring(favour func(id string) float64) *Index {
	out := *x
	out.favours, out.kept = favour, naming.NewKept()
	return &out
}

// Kept is what names mean to the index. It makes it a [naming.Keeper].
func (x *Index) Kept() *naming.Kept { return x.kept }

func (x *Index) favour(p *flavor.Profile) float64 {
	if x.favours == nil {
		return 0
	}
	return x.favours(p.ID)
}
