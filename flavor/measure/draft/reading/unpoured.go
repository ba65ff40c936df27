package reading

import (
	"math"
	"slices"
	"strings"
	"unicode"

	"counterpour/flavor"
	"counterpour/flavor/measure"
	"counterpour/flavor/measure/draft"
	"counterpour/flavor/measure/draft/names/naming"
	"counterpour/flavor/measure/draft/overlooked"
	"counterpour/flavor/measure/draft/rewriting/likeliest"
	"counterpour/flavor/measure/draft/rewriting/unpoured"
	"counterpour/flavor/measure/draft/words/entry"
	"counterpour/flavor/measure/draft/words/token"
)

// mostRounds is how often a draft is read anew: what stands behind a stretch that pours nothing
// may be parted otherwise once that is set aside.
const mostRounds = 3

// withoutUnpoured reads a draft with faults without the stretches that pour nothing, which is
// said of each. It is false, and before is returned, if that leaves as many faults, or if a
// pour that could be read is lost or changed by it.
func withoutUnpoured(d draft.Draft, before Reading, f naming.Finder) (Reading, bool, error) {
	b := naming.NewResolver(f)
	out, text := before, d.String()
	var passed []entry.Span
	var name entry.Span
	for range mostRounds {
		aside, ok := unpoured.Of(&d, out.Faults, b)
		if !ok || b.Err() != nil {
			break
		}
		next := d.Anew(aside.Text)
		r, err := resolve(next, f)
		if err != nil {
			return before, false, err
		}
		if !keeps(r.Spec.Pours, before.Spec.Pours) {
			break
		}
		d, out, passed = next, r, append(passed, aside.Spans...)
		if !aside.Name.Empty() {
			name = aside.Name
		}
		if len(out.Faults) == 0 {
			break
		}
	}
	if b.Err() != nil || len(out.Faults) >= len(before.Faults) {
		return before, false, b.Err()
	}
	var notes []string
	if !name.Empty() && out.Draft.NameAt.Start == name.Start {
		notes = append(notes, measure.LineLocation(lineOf(text, name.Start))+": “"+out.Draft.Name+"” is read as the name of the drink")
	}
	out.passOver(text, passed)
	out.Spec.Notes = append(notes, out.Spec.Notes...)
	out.Draft = out.Draft.Restored(text, passed)
	return out, true, nil
}

// passOver says of each stretch of a text that it is skipped, and puts them in order. What names something
// that carries an allergen, or comes from an animal, is kept with the drink.
func (r *Reading) passOver(text string, passed []entry.Span) {
	var notes []string
	slices.SortFunc(passed, func(a, b entry.Span) int { return a.Start - b.Start })
	for _, s := range passed {
		if w := strings.Trim(token.OneLine(text[s.Start:s.End]), " .,;:/|-–—\"“”„«»"); strings.ContainsFunc(w, spelt) {
			notes = append(notes, measure.LineLocation(lineOf(text, s.Start))+": “"+w+"” pours nothing, and is "+r.keepOrSkip(w))
		}
	}
	r.Spec.Notes = append(notes, r.Spec.Notes...)
}

// keepOrSkip keeps words that pour nothing with the drink if they name what carries an allergen, or comes from
// an animal, that nothing of it is known to carry, and says which it does.
func (r *Reading) keepOrSkip(words string) string {
	if !overlooked.Carries(words, &r.Spec) {
		return "skipped"
	}
	r.Spec.Steps = append(slices.Clone(r.Spec.Steps), words)
	return "kept with the drink, uncounted"
}

// spelt reports whether a rune is one of a word or a number, and no sign.
func spelt(c rune) bool { return unicode.IsLetter(c) || unicode.IsDigit(c) }

// withoutTalk reads a draft without what is said to colleagues around its pours, which is said
// of each. It returns what was read before if that leaves anything open, or if something is
// poured twice: who speaks of an amount may mean one that stands elsewhere.
func withoutTalk(d draft.Draft, before Reading, f naming.Finder) (Reading, error) {
	if d.PoursOnly() || overlooked.Negative(d.String()) != nil {
		return before, nil
	}
	b := naming.NewResolver(f)
	talk, ok := unpoured.Talk(d.String(), b)
	if !ok || b.Err() != nil {
		return before, b.Err()
	}
	out, err := resolveWhole(d.Anew(talk.Text), f)
	if err != nil || len(out.Faults) > 0 || out.Several || repeated(out.Spec.Pours) {
		return before, err
	}
	out.passOver(d.String(), talk.Spans)
	if out.Draft.String() == talk.Text { // else it was read as a text that runs on
		out.Draft = out.Draft.Restored(d.String(), talk.Spans)
	}
	return out, nil
}

// likeliestList reads a draft that no rule reads as the list that most likely stands in it, and
// says so. It returns what was read before if that leaves anything open.
func likeliestList(d draft.Draft, before Reading, f naming.Finder) (Reading, error) {
	if d.PoursOnly() || overlooked.Negative(d.String()) != nil {
		return before, nil
	}
	b := naming.NewResolver(f)
	list, ok := likeliest.AsList(d.String(), b)
	if !ok || b.Err() != nil {
		return before, b.Err()
	}
	out, err := resolve(draft.Parse(list.Text), f)
	if err != nil || len(out.Faults) > 0 || out.Several || len(out.Spec.Pours) != list.Pours {
		return before, err
	}
	notes := []string{"the text is read as what most likely stands in it: “" + strings.ReplaceAll(list.Text, "\n", " / ") + "”"}
	notes = append(notes, list.Notes...)
	out.passOver(d.String(), list.Passed)
	out.Spec.Notes = append(notes, out.Spec.Notes...)
	return out, nil
}

// repeated reports whether something is poured more than once.
func repeated(pours []flavor.Pour) bool {
	seen := map[*flavor.Profile]bool{}
	for i := range pours {
		if seen[pours[i].Profile] {
			return true
		}
		seen[pours[i].Profile] = true
	}
	return false
}

// lineOf returns the line of a text, from 1, that holds a byte.
func lineOf(text string, at int) int { return 1 + strings.Count(text[:at], "\n") }

// samePour is how far the mL of a pour that is read anew may lie off, as a share.
const samePour = 0.001

// keeps reports whether every pour stands among others, as much of it.
func keeps(among, pours []flavor.Pour) bool {
	left := slices.Clone(among)
	for _, p := range pours {
		i := slices.IndexFunc(left, func(q flavor.Pour) bool {
			return q.Profile == p.Profile && math.Abs(q.ML-p.ML) <= samePour*p.ML
		})
		if i < 0 {
			return false
		}
		left = slices.Delete(left, i, i+1)
	}
	return true
}
