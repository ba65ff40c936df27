package index

import (
	"cmp"
	"context"
	"slices"
	"sort"
	"strings"
	"unicode"
	"unicode/utf8"

	"counterpour/flavor"
	"counterpour/flavor/lookup"
)

// start is a place in a folded name where a word starts.
type start struct {
	key      string // the whole name
	at       int    // bytes of key before the word
	position int    // of the profile in the index
	alias    bool   // an alias, not the name
}

// from returns what is written from the start on.
func (s start) from() string { return s.key[s.at:] }

// startsOf returns the starts of all words of all names, in the order of what follows, so
// that those which a typed word begins stand together. It is what a completion needs and
// bleve has not: its prefix queries open a list for each term that goes on.
func startsOf(profiles []*flavor.Profile) []start {
	var out []start
	for i, p := range profiles {
		for k, name := range append([]string{p.Name}, p.Aliases...) {
			key := fold(name)
			for at := range key {
				if at == 0 || key[at-1] == ' ' {
					out = append(out, start{key: key, at: at, position: i, alias: k > 0})
				}
			}
		}
	}
	slices.SortFunc(out, func(a, b start) int {
		return cmp.Or(strings.Compare(a.from(), b.from()), cmp.Compare(a.position, b.position), cmp.Compare(a.at, b.at), strings.Compare(a.key, b.key))
	})
	return out
}

// begunBy returns the starts that go on with a word.
func (n *names) begunBy(word string) []start {
	all := n.starts()
	low := sort.Search(len(all), func(i int) bool { return all[i].from() >= word })
	beyond := sort.Search(len(all)-low, func(i int) bool { return !strings.HasPrefix(all[low+i].from(), word) })
	return all[low : low+beyond]
}

// offer is an ingredient that a typed text may become.
type offer struct {
	position int
	favour   float64
	weight   float64 // how well its best name fits
	words    int     // of that name
}

// Complete returns up to limit ingredients, [lookup.MaxLimit] at most, whose name typed may
// become: those with a name in which each typed word begins a word, those that the index
// favours first, then those whose name fits best; then, if there are too few, what
// [Index.Search] finds. The first call puts all names in order.
func (x *Index) Complete(ctx context.Context, typed string, limit int) ([]*flavor.Profile, error) {
	if x.line.closed.Load() {
		return nil, lookup.ErrClosed
	}
	if limit <= 0 {
		return nil, nil
	}
	limit = min(limit, lookup.MaxLimit)
	text := capText(typed)
	var out []*flavor.Profile
	for _, key := range []string{begunKey(text), fold(text)} {
		for _, o := range x.offers(key, limit) {
			if p := x.profiles[o.position]; len(out) < limit && !slices.Contains(out, p) {
				out = append(out, p)
			}
		}
		if len(out) == limit {
			return out, nil
		}
	}
	r, err := x.search(ctx, lookup.Query{Text: typed, Limit: lookup.MaxLimit}, false)
	if err != nil {
		return nil, err
	}
	slices.SortStableFunc(r.Hits, func(a, b lookup.Hit) int { return cmp.Compare(x.favour(b.Profile), x.favour(a.Profile)) })
	for _, h := range r.Hits {
		if len(out) < limit && !slices.Contains(out, h.Profile) {
			out = append(out, h.Profile)
		}
	}
	return out, nil
}

// begunKey folds a text whose last word may go on: "alls" is not the plural of "all".
func begunKey(text string) string {
	const more = "x" // a word that ends so is no plural, and has one spelling
	if last, _ := utf8.DecodeLastRuneInString(text); !unicode.IsLetter(last) {
		return fold(text)
	}
	return strings.TrimSuffix(fold(text+more), more)
}

// offers returns up to limit ingredients with a name in which each word of key begins a
// word, in the order in which they are offered.
func (x *Index) offers(key string, limit int) []offer {
	words := strings.Fields(key)
	if len(words) == 0 {
		return nil
	}
	words = words[:min(len(words), lookup.MaxWords)]
	longest := slices.MaxFunc(words, func(a, b string) int { return cmp.Compare(len(a), len(b)) })
	at := make([]int, len(x.profiles)) // one more than the place in out; 0: not there
	var out []offer
	for _, s := range x.names.begunBy(longest) {
		if len(words) > 1 && !goesOn(s.key, words) {
			continue
		}
		o := offer{position: s.position, weight: s.weight(key, words), words: strings.Count(s.key, " ") + 1}
		switch i := at[s.position] - 1; {
		case i < 0:
			p := x.profiles[s.position]
			o.favour = x.favour(p)
			out = append(out, o)
			at[s.position] = len(out)
		case o.weight > out[i].weight:
			o.favour = out[i].favour
			out[i] = o
		}
	}
	meant := classesOf(key)
	for i, o := range out {
		if slices.Contains(meant, x.profiles[o.position].Class) {
			out[i].weight += weightClass
		}
	}
	return best(out, limit)
}

// best returns the first so many offers in the order in which they are made. Of a letter
// typed among many names, few are wanted of thousands.
func best(all []offer, limit int) []offer {
	order := func(a, b offer) int {
		return cmp.Or(cmp.Compare(b.favour, a.favour), cmp.Compare(b.weight, a.weight), cmp.Compare(a.words, b.words), cmp.Compare(a.position, b.position))
	}
	out := make([]offer, 0, limit+1)
	for _, o := range all {
		if len(out) == limit && order(o, out[limit-1]) > 0 {
			continue
		}
		at, _ := slices.BinarySearchFunc(out, o, order)
		out = slices.Insert(out, at, o)
		out = out[:min(len(out), limit)]
	}
	return out
}

// weight returns how well the name of the start fits a typed key, as a search weighs its
// whole words and what it begins with.
func (s start) weight(key string, words []string) float64 {
	whole, begins, word := weightKey, weightKeyBegins, weightName
	if s.alias {
		whole, begins, word = weightAliasKey, weightAliasBegs, weightAlias
	}
	sum := 0.0
	switch rest, ok := strings.CutPrefix(s.key, key); {
	case ok && rest == "":
		sum += whole + begins
	case ok && rest[0] == ' ':
		sum += begins
	case ok && !s.alias:
		sum += weightKeyBegun
	}
	for _, w := range words {
		if containsWord(s.key, w) {
			sum += word
		} else {
			sum += weightTyping
		}
	}
	return sum
}

// goesOn reports whether each of the words is a prefix of a word of a folded name.
func goesOn(name string, words []string) bool {
	for _, w := range words {
		if !strings.HasPrefix(name, w) && !strings.Contains(name, " "+w) {
			return false
		}
	}
	return true
}

// containsWord reports whether a folded name has a word, whole.
func containsWord(name, word string) bool {
	for w := range strings.FieldsSeq(name) {
		if w == word {
			return true
		}
	}
	return false
}
