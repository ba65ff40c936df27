package sense

import (
	"cmp"
	"math"
	"slices"

	"counterpour/flavor"
)

// NoteIntensity is how strongly a glass smells of a note.
type NoteIntensity struct {
	Note      Note
	Intensity float64 // on the scale of [flavor.AromaFamilies]
}

// Notes returns what a glass smells of, the strongest first. Only materials with
// odorants count, and notes below the threshold of aroma are left out.
func (s *Space) Notes(g *Percept) []NoteIntensity {
	sums := s.noteSums(g)
	var out []NoteIntensity
	for i, v := range sums {
		if v >= laws[Aroma].threshold {
			out = append(out, NoteIntensity{s.notes[i], v})
		}
	}
	slices.SortStableFunc(out, func(a, b NoteIntensity) int {
		return cmp.Or(cmp.Compare(b.Intensity, a.Intensity), cmp.Compare(a.Note.ID, b.Note.ID))
	})
	return out
}

func (s *Space) noteSums(g *Percept) []float64 {
	sums := make([]float64, len(s.notes))
	for _, x := range g.Materials {
		if m, ok := s.materials[x.Material]; ok {
			add(sums, m.notes, x.Intensity)
		}
	}
	return sums
}

// NoteChange is a note that grew or faded between two glasses.
type NoteChange struct {
	Note  Note
	Steps float64 // above zero where the second glass has more
}

// NoteChanges returns the notes that differ by at least so many steps, the
// largest change first: the words for what a cover lost and what it brought.
func (s *Space) NoteChanges(before, after *Percept, atLeast float64) []NoteChange {
	from, to := s.noteSums(before), s.noteSums(after)
	var out []NoteChange
	for i := range s.notes {
		if d := StepsBetween(Aroma, from[i], to[i]); math.Abs(d) >= atLeast {
			out = append(out, NoteChange{s.notes[i], d})
		}
	}
	slices.SortStableFunc(out, func(a, b NoteChange) int {
		return cmp.Or(cmp.Compare(math.Abs(b.Steps), math.Abs(a.Steps)), cmp.Compare(a.Note.ID, b.Note.ID))
	})
	return out
}

// Text says what was lost: "no citral, so no lemon peel", or "no lemon peel" if
// no one odorant tells it.
func (l Lost) Text() string {
	if len(l.Odorants) == 0 {
		return "no " + l.Material
	}
	return "no " + flavor.JoinOr(l.Odorants) + ", so no " + l.Material
}
