package template

import (
	"fmt"

	"counterpour/flavor"
	"counterpour/flavor/habit"
)

// Set is the families of drinks, ready to judge. It is safe for concurrent use.
type Set struct {
	models      []*model
	relatives   [][]relative // of each family
	sizes       []float64    // of each family, see sizeOf
	palates     []Palate     // of the house, for the families it moved
	hulls       []hull       // of each family
	book        *habit.Book
	volumes     *habit.Range      // mL in the glass of the proven drinks
	ethanol     *habit.Range      // g in the glass of the same
	kin         kin               // of the proven drinks
	strong      []bool            // the same: it has alcohol, or what stands for it
	bases       []*flavor.Profile // the same; nil if it has none
	sours       []*flavor.Profile // the same: what it is mostly made sour with
	family      []int             // the same: its family, of models; -1 if it is not among them
	milky       []bool            // the same: it has milk or cream that acid turns
	sharp       []bool            // the same: it has a sour part
	sweet       []bool            // the same: it has a syrup or sugar
	mixed       []bool            // the same: it is shaken, blended or swizzled
	served      []flavor.Service  // the same
	unbased     rests             // the same: without its bases
	unsweetened rests             // the same: without syrups and sugar
	unturned    rests             // the same: without what is sour and what that turns
	unsoured    rests             // the same: without what is sour
	tuning      Tuning
}

// NewSet joins families with what was fitted to them and the proven drinks
// they were fitted on. The two lists must be of the same families in the same
// order; proven may be empty, and then every family keeps its own centre.
func NewSet(families []Family, fitted []Fitted, proven []Labelled, t Tuning) (*Set, error) {
	if len(families) == 0 || len(families) != len(fitted) {
		return nil, fmt.Errorf("template: %d families and %d fitted ones; fit the families again", len(families), len(fitted))
	}
	s := &Set{tuning: t}
	for i := range families {
		m, err := newModel(families[i], fitted[i])
		if err != nil {
			return nil, err
		}
		r, _, err := relativesOf(&m.Family, m.basis, proven)
		if err != nil {
			return nil, err
		}
		s.models = append(s.models, m)
		s.relatives = append(s.relatives, r)
		s.sizes = append(s.sizes, sizeOf(r))
	}
	s.hulls = s.hullsOf()
	s.readHabits(proven)
	return s, nil
}

// Families returns the families with what was fitted to them.
func (s *Set) Families() ([]Family, []Fitted) {
	families := make([]Family, len(s.models))
	fitted := make([]Fitted, len(s.models))
	for i, m := range s.models {
		families[i], fitted[i] = m.Family, m.fitted
	}
	return families, fitted
}

// Centre returns a family's ratio, summing to 1, over its axes, as the proven
// drinks and the house's palate have it.
func (s *Set) Centre(id string) ([]float64, error) {
	m := s.modelOf(id)
	if m == nil {
		return nil, fmt.Errorf("template: family %q is not known", id)
	}
	centre := s.shifted(id, coordsOf(m.fitted.Centre))
	return m.basis.Composition(centre[:len(m.fitted.Centre)])
}

// middleFor returns the middle of the proven drinks that a drink of some
// make-up is held against in family i, whatever the house's palate.
func (s *Set) middleFor(i int, cosine func(*relative) float64) middle {
	return localMiddle(middle{coords: coordsOf(s.models[i].fitted.Centre), size: s.sizes[i]}, s.relatives[i], cosine, -1, &s.tuning)
}

// centreFor is middleFor moved to the house's palate.
func (s *Set) centreFor(i int, cosine func(*relative) float64) centre {
	m := s.models[i]
	near := s.middleFor(i, cosine)
	near.coords = s.shifted(m.ID, near.coords)
	return centre{middle: near, away: m.inWidths(&near.coords)}
}
