package serving

import (
	"cmp"
	"slices"

	"counterpour/flavor/measure"
)

// NearestMethods returns up to three methods or services whose words a slip of
// the pen could have turned into word, the nearest first; nil if there are none.
func NearestMethods(word string) []string { return measure.Nearest(word, servingSpellings) }

var servingSpellings = func() []measure.Spelling {
	var out []measure.Spelling
	for first, list := range terms {
		for _, p := range list {
			means := string(p.term.Method)
			if means == "" {
				means = string(p.term.Service)
			}
			if means != "" && len(p.rest) == 0 && !p.term.Ice {
				out = append(out, measure.Spelling{Written: first, Means: means})
			}
		}
	}
	slices.SortFunc(out, func(a, b measure.Spelling) int {
		return cmp.Or(cmp.Compare(a.Means, b.Means), cmp.Compare(a.Written, b.Written))
	})
	return out
}()
