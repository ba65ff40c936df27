package weigh

import (
	"fmt"

	"counterpour/flavor/habit"
	"counterpour/flavor/makeup"
	"counterpour/flavor/template"
	"counterpour/flavor/weigh/called"
	"counterpour/flavor/weigh/forgotten"
	"counterpour/flavor/weigh/namesake"
	"counterpour/flavor/weigh/proportion"
)

// Set is the families of drinks, ready to judge. It is safe for concurrent use.
type Set struct {
	models     []*template.Model
	relatives  [][]template.Relative // of each family
	sizes      []float64             // of each family, see template.UsualSize
	palates    []Palate              // of the house, for the families it moved
	hulls      []template.Hull       // of each family
	book       *habit.Book
	volumes    *habit.Range       // mL in the glass of the proven drinks
	ethanol    *habit.Range       // g in the glass of the same
	kin        makeup.Kinships    // of the proven drinks
	family     []int              // the same: its family, of models; -1 if it is not among them
	tasks      []proportion.Tasks // the same
	precedents *proportion.Book   // of the same
	forgotten  *forgotten.Book    // the same, each without one of its parts
	names      called.Names       // of the same
	namesakes  namesake.Book      // what the same pour
	customs    customs            // the same: which have what character
	tuning     template.Tuning
	rooms      *rooms
}

// NewSet joins families with what was fitted to them and the proven drinks
// they were fitted on. The two lists must be of the same families in the same
// order; proven may be empty, and then every family keeps its own centre.
func NewSet(families []template.Family, fitted []template.Fitted, proven []template.Labelled, t template.Tuning) (*Set, error) {
	return NewSetFrom(families, fitted, LessonsOf(proven), t)
}

// NewSetFrom is NewSet for whoever makes many sets of much the same drinks: it is given the
// lessons of the proven drinks, as LessonsOf reads them.
func NewSetFrom(families []template.Family, fitted []template.Fitted, lessons []*Lesson, t template.Tuning) (*Set, error) {
	if len(families) == 0 || len(families) != len(fitted) {
		return nil, fmt.Errorf("weigh: %d families and %d fitted ones; fit the families again", len(families), len(fitted))
	}
	s := &Set{tuning: t, rooms: &rooms{}}
	taught := make([]template.Lesson, len(lessons))
	for i, l := range lessons {
		taught[i] = l.Lesson
	}
	for i := range families {
		m, err := template.NewModel(families[i], fitted[i])
		if err != nil {
			return nil, err
		}
		r, _, err := template.RelativesOf(&m.Family, m.Basis, taught)
		if err != nil {
			return nil, err
		}
		s.models = append(s.models, m)
		s.relatives = append(s.relatives, r)
		s.sizes = append(s.sizes, template.UsualSize(r))
	}
	s.hulls = s.hullsOf()
	s.learn(lessons)
	return s, nil
}

// Families returns the families with what was fitted to them.
func (s *Set) Families() ([]template.Family, []template.Fitted) {
	families := make([]template.Family, len(s.models))
	fitted := make([]template.Fitted, len(s.models))
	for i, m := range s.models {
		families[i], fitted[i] = m.Family, m.Fitted
	}
	return families, fitted
}

// Centre returns a family's ratio, summing to 1, over its axes, as the proven
// drinks and the house's palate have it.
func (s *Set) Centre(id string) ([]float64, error) {
	m := s.modelOf(id)
	if m == nil {
		return nil, fmt.Errorf("weigh: family %q is not known", id)
	}
	centre := s.shifted(id, template.CoordsOf(m.Fitted.Centre))
	return m.Basis.Composition(centre[:len(m.Fitted.Centre)])
}

// middleFor returns the middle of the proven drinks that a drink of some
// make-up is held against in family i, given how much each says, whatever the house's palate.
func (s *Set) middleFor(i int, weightOf func(*template.Relative) float64) template.Middle {
	return template.LocalMiddle(template.Middle{Coords: template.CoordsOf(s.models[i].Fitted.Centre), Size: s.sizes[i]}, s.relatives[i], weightOf, -1, &s.tuning)
}

// centreFor is middleFor moved to the house's palate.
func (s *Set) centreFor(i int, weightOf func(*template.Relative) float64) centre {
	m := s.models[i]
	near := s.middleFor(i, weightOf)
	near.Coords = s.shifted(m.ID, near.Coords)
	return centre{Middle: near, away: m.InWidths(&near.Coords)}
}
