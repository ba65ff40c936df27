package draft

import (
	"cmp"
	"slices"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/measure"
)

// NearestMethods returns up to three methods or services whose words a slip of
// the pen could have turned into word, the nearest first; nil if there are none.
func NearestMethods(word string) []string { return measure.Nearest(word, servingSpellings) }

var servingSpellings = func() []measure.Spelling {
	var out []measure.Spelling
	for first, list := range terms {
		for _, p := range list {
			means := string(p.term.method)
			if means == "" {
				means = string(p.term.service)
			}
			if means != "" && len(p.rest) == 0 && !p.term.ice {
				out = append(out, measure.Spelling{Written: first, Means: means})
			}
		}
	}
	slices.SortFunc(out, func(a, b measure.Spelling) int {
		return cmp.Or(cmp.Compare(a.Means, b.Means), cmp.Compare(a.Written, b.Written))
	})
	return out
}()

func names[T ~string](list []T) []string {
	out := make([]string, len(list))
	for i, v := range list {
		out[i] = string(v)
	}
	return out
}

func didYouMean(near []string) string {
	if len(near) == 0 {
		return ""
	}
	return " (did you mean " + flavor.JoinOr(near) + "?)"
}

// checkAmount returns a fault if nobody pours that much or that little.
func checkAmount(amount float64, u flavor.Unit, written string) *flavor.Fault {
	return measure.CheckAmount(amount, u, strings.TrimSpace(written))
}

// mostBare is the largest number without a unit that may be millilitres of one
// pour; common practice.
const mostBare = 500.0

// mostly is the unit by which the size of an amount is checked before the names
// are known: a bare number may be millilitres.
func (p *pour) mostly() flavor.Unit {
	if p.Unit == "" && p.Amount <= mostBare {
		return flavor.Millilitre
	}
	return p.Unit
}
