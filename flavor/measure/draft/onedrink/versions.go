package onedrink

import (
	"strconv"
	"strings"
	"unicode"

	"counterpour/flavor"
	"counterpour/flavor/measure"
	"counterpour/flavor/measure/draft"
)

// A text that holds two versions of a drink, one under the other or side by side, is no
// one drink: poured together they are twice what is meant. A drink that pours one thing
// twice, a split base or juice in two places, is one.

// leastTwice is how many ingredients two versions of a drink share at least.
const leastTwice = 2

// twice are the two lines of a draft, by their place among its lines, that pour one
// ingredient.
type twice struct{ first, again int }

// Versions returns the fault of a draft that holds two versions of a drink, nil if it does not.
// at is the place of each line among the pours, −1 for a line that pours nothing.
func Versions(d *draft.Draft, s *flavor.Spec, at []int) *flavor.DataFault {
	all, ingredients := pouredTwice(s, at)
	if f := making(d, s, at, all); f != nil {
		return f
	}
	if len(all) < leastTwice || 2*len(all) <= ingredients || !below(d, all) && !abreast(d, all) {
		return nil
	}
	one, other := &d.Lines[all[0].first], &d.Lines[all[0].again]
	f := measure.Invalid("ingredient", other.Asked, "two versions of one drink stand here: “%s” in %s is poured again as “%s”, and %s; keep one version, or put a # before the lines of the other",
		one.Asked, measure.LineLocation(one.Number), other.Asked, soAre(len(all)-1))
	f.Location = measure.LineLocation(other.Number)
	return f
}

// leastOfMaking is from how many times what is poured of it again an ingredient is that of a making that
// is poured in the drink, such as a bottle that is washed with butter; common practice, no source.
const leastOfMaking = 5.0

// making returns the fault of a draft that tells how what it pours is made, and pours both; nil if it does not.
func making(d *draft.Draft, s *flavor.Spec, at []int, all []twice) *flavor.DataFault {
	if d.PoursOnly() {
		return nil
	}
	for _, t := range all {
		one, other := &s.Pours[at[t.first]], &s.Pours[at[t.again]]
		if more, less := max(one.ML, other.ML), min(one.ML, other.ML); more <= MostInScaleML || more < leastOfMaking*less || less < leastDrinkML || less > mostBaseML {
			continue
		}
		l := &d.Lines[t.again]
		f := measure.Invalid("amount", l.Asked, "%s of %s and %s of it are one making and one drink; keep the pours of one of the two, or put a # before the lines of the other",
			measure.FormatAmount(one.Amount, one.Unit), one.Profile.Name, measure.FormatAmount(other.Amount, other.Unit))
		f.Location = measure.LineLocation(l.Number)
		return f
	}
	return nil
}

// Amended returns a note for each two lines, one right under the other, that pour one ingredient by one name in two
// amounts: the second may be there in place of the first. At is as of [Versions].
func Amended(d *draft.Draft, s *flavor.Spec, at []int) (notes []string) {
	all, _ := pouredTwice(s, at)
	for _, t := range all {
		one, other := &d.Lines[t.first], &d.Lines[t.again]
		p, q := &s.Pours[at[t.first]], &s.Pours[at[t.again]]
		if t.again != t.first+1 || !p.Unit.Jigger() || !q.Unit.Jigger() || p.ML == q.ML || flavor.NormaliseName(one.Name) != flavor.NormaliseName(other.Name) || breaks(d, t.again) || one.Muddled != other.Muddled || one.Squeezed || other.Squeezed {
			continue
		}
		notes = append(notes, "“"+other.Asked+"” stands beside “"+one.Asked+"”, and both are poured; keep one if it is there in place of the other")
	}
	return notes
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
func below(d *draft.Draft, all []twice) bool {
	last := 0
	for _, t := range all {
		last = max(last, t.first)
	}
	for i := last + 1; i <= all[0].again; i++ {
		if breaks(d, i) {
			return true
		}
	}
	return false
}

// breaks reports whether a line of the draft stands apart from the one before: words, a
// blank or a ruled line part them, or the line before holds several pours.
func breaks(d *draft.Draft, i int) bool {
	before, l := &d.Lines[i-1], &d.Lines[i]
	if before.Span.End > l.Span.Start {
		return false
	}
	between := d.String()[before.Span.End:l.Span.Start]
	several := before.Number != l.Number && i > 1 && d.Lines[i-2].Number == before.Number
	return several || strings.Count(between, "\n") > 1 || strings.ContainsFunc(between, unicode.IsLetter)
}

// abreast reports whether both pours of all that is poured twice stand on one line.
func abreast(d *draft.Draft, all []twice) bool {
	for _, t := range all {
		if d.Lines[t.first].Number != d.Lines[t.again].Number {
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
