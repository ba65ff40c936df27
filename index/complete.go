package index

import (
	"cmp"
	"context"
	"slices"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/lookup"
)

// Complete returns up to limit ingredients whose name typed may become. Those with a name
// in which each typed word begins a word come before those that only match otherwise.
// Then come those that the index favours, then the order of [Index.Search].
func (x *Index) Complete(ctx context.Context, typed string, limit int) ([]*flavor.Profile, error) {
	r, err := x.search(ctx, lookup.Query{Text: typed, Limit: lookup.MaxLimit}, false)
	if err != nil {
		return nil, err
	}
	words := strings.Fields(fold(capText(typed)))
	type offer struct {
		profile *flavor.Profile
		begins  int // 0 if a name has each word as a prefix
	}
	offers := make([]offer, len(r.Hits))
	for i, h := range r.Hits {
		offers[i] = offer{profile: h.Profile, begins: 1}
		if slices.ContainsFunc(append([]string{h.Profile.Name}, h.Profile.Aliases...), func(name string) bool { return goesOn(fold(name), words) }) {
			offers[i].begins = 0
		}
	}
	slices.SortStableFunc(offers, func(a, b offer) int {
		return cmp.Or(cmp.Compare(a.begins, b.begins), cmp.Compare(x.favour(b.profile), x.favour(a.profile)))
	})
	out := make([]*flavor.Profile, min(max(limit, 0), len(offers)))
	for i := range out {
		out[i] = offers[i].profile
	}
	return out, nil
}

// goesOn reports whether each of the words is a prefix of a word of a folded name.
func goesOn(name string, words []string) bool {
	of := strings.Fields(name)
	for _, w := range words {
		if !slices.ContainsFunc(of, func(n string) bool { return strings.HasPrefix(n, w) }) {
			return false
		}
	}
	return true
}
