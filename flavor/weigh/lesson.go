package weigh

import (
	"slices"

	"counterpour/flavor/habit"
	"counterpour/flavor/makeup"
	"counterpour/flavor/template"
	"counterpour/flavor/weigh/forgotten"
	"counterpour/flavor/weigh/namesake"
	"counterpour/flavor/weigh/proportion"
)

// Lesson is what one proven drink teaches, whatever the others are: the same for every set that
// learns from it.
type Lesson struct {
	template.Lesson
	shares    []habit.Part
	volume    float64 // mL in the glass
	ethanol   float64 // g in the glass
	tasks     proportion.Tasks
	poured    proportion.Quantities
	forgotten forgotten.Lesson
	named     namesake.Lesson
	customs   [len(characters)]customary
}

// LessonsOf reads the proven drinks, in their order. They are shared, and must not be changed.
func LessonsOf(proven []template.Labelled) []*Lesson {
	out := make([]*Lesson, len(proven))
	for i, taught := range template.LessonsOf(proven) {
		spec := &proven[i].Spec
		b := Build{spec: spec, parts: makeup.PartsIn(spec)}
		ml := makeup.AmountsOf(spec)
		glass := b.glass(ml, &taught.Equivalents)
		out[i] = &Lesson{
			Lesson:    taught,
			shares:    b.shares(ml),
			volume:    glass.ml,
			ethanol:   max(leastEthanol, glass.ethanol),
			tasks:     proportion.TasksOf(b.parts, ml),
			poured:    proportion.QuantitiesOf(b.parts, ml),
			forgotten: forgotten.LessonOf(spec, b.parts, ml, &taught.Equivalents),
			named:     namesake.LessonOf(b.parts, ml),
			customs:   customaryOf(b.parts, ml),
		}
	}
	return out
}

// learn takes in what the proven drinks teach of what is poured.
func (s *Set) learn(lessons []*Lesson) {
	shares := make([][]habit.Part, len(lessons))
	volumes, ethanol := make([]float64, len(lessons)), make([]float64, len(lessons))
	poured := make([]proportion.Quantities, len(lessons))
	s.kin.Grow(len(lessons))
	s.forgotten = &forgotten.Book{}
	s.forgotten.Grow(len(lessons))
	for i, l := range lessons {
		shares[i], volumes[i], ethanol[i], poured[i] = l.shares, l.volume, l.ethanol, l.poured
		s.family = append(s.family, slices.IndexFunc(s.models, func(m *template.Model) bool { return m.ID == l.Drink.Family }))
		s.kin.Add(l.Kin)
		s.forgotten.Add(&l.forgotten)
		s.namesakes.Add(&l.named)
		s.names.Add(l.Drink.Spec.Name)
		s.tasks = append(s.tasks, l.tasks)
		s.customs.add(&l.customs)
	}
	s.precedents = proportion.NewBook(poured)
	s.book, s.volumes, s.ethanol = habit.NewBook(shares), habit.NewRange(habit.InGlass(), habit.OfAll(volumes)), habit.NewRange(habit.InGlass(), habit.OfAll(ethanol))
}
