package reading

import (
	"strconv"
	"strings"
	"unicode"

	"counterpour/flavor"
	"counterpour/flavor/measure"
)

// A text that holds two versions of a drink, one under the other or side by side, is no
// one drink: poured together they are twice what is meant. A drink that pours one thing
// twice, a split base or juice in two places, is one.

// leastTwice is how many ingredients two versions of a drink share at least.
const leastTwice = 2

// twice are the two lines of a draft, by their place among its lines, that pour one
// ingredient.
type twice struct{ first, again int }

// versions refuses a draft that holds two versions of a drink.
func (r *resolver) versions(s *flavor.Spec, at []int, faults *flavor.DataFaults) {
	all, ingredients := pouredTwice(s, at)
	if len(all) < leastTwice || 2*len(all) <= ingredients || !r.below(all) && !r.abreast(all) {
		return
	}
	one, other := &r.draft.Lines[all[0].first], &r.draft.Lines[all[0].again]
	f := measure.Invalid("ingredient", other.Asked, "two versions of one drink stand here: “%s” in %s is poured again as “%s”, and %s; keep one version, or put a # before the lines of the other",
		one.Asked, measure.LineLocation(one.Number), other.Asked, soAre(len(all)-1))
	f.Location = measure.LineLocation(other.Number)
	*faults = append(*faults, f)
	r.several = true
}

// pouredTwice returns what a draft pours twice, in the order of the second pours, and how
// many ingredients it has. What goes in afterwards, a float of the same rum, is left out.
func pouredTwice(s *flavor.Spec, at []int) (all []twice, ingredients int) {
	first, again := map[*flavor.Profile]int{}, map[*flavor.Profile]bool{}
	for i, pour := range at {
		if pour < 0 || s.Pours[pour].After {
			continue
		}
		p := s.Pours[pour].Profile
		if before, poured := first[p]; !poured {
			first[p] = i
		} else if !again[p] {
			again[p] = true
			all = append(all, twice{before, i})
		}
	}
	return all, len(first)
}

// below reports whether all that is poured twice is poured once above a break and once
// under it.
func (r *resolver) below(all []twice) bool {
	last := 0
	for _, t := range all {
		last = max(last, t.first)
	}
	for i := last + 1; i <= all[0].again; i++ {
		if r.breaks(i) {
			return true
		}
	}
	return false
}

// breaks reports whether a line of the draft stands apart from the one before: words, a
// blank or a ruled line part them, or the line before holds several pours.
func (r *resolver) breaks(i int) bool {
	before, l := &r.draft.Lines[i-1], &r.draft.Lines[i]
	if before.Span.End > l.Span.Start {
		return false
	}
	between := r.draft.String()[before.Span.End:l.Span.Start]
	several := before.Number != l.Number && i > 1 && r.draft.Lines[i-2].Number == before.Number
	return several || strings.Count(between, "\n") > 1 || strings.ContainsFunc(between, unicode.IsLetter)
}

// abreast reports whether both pours of all that is poured twice stand on one line.
func (r *resolver) abreast(all []twice) bool {
	for _, t := range all {
		if r.draft.Lines[t.first].Number != r.draft.Lines[t.again].Number {
			return false
		}
	}
	return true
}

// soAre says that so many other ingredients are poured twice.
func soAre(n int) string {
	if n == 1 {
		return "so is one more ingredient"
	}
	return "so are " + strconv.Itoa(n) + " more ingredients"
}
