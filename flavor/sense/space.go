package sense

import (
	"cmp"
	"math"
	"slices"

	"counterpour/flavor"
)

const numFamilies = flavor.NumFamilies

// Space is the sensory space that a table of odorants spans.
type Space struct {
	materials map[string]*material
	names     []string // of the materials, sorted
	families  [numFamilies][AromaDims]float64
	odorants  []Odorant
	notes     []Note
	idf       []float64 // by odorant
	quality   Quality
}

// material is what the space knows of one.
type material struct {
	factor [AromaDims]float64
	shares flavor.Aroma
	notes  []float64 // by note; sums to 1 if there are odorants
	parts  []part    // odorants, the most telling first
}

// part is an odorant of a material.
type part struct {
	odorant int
	weight  float64
}

// Quality says how well the factored numbers stand for the kernel.
type Quality struct {
	Materials int
	Odorants  int
	// Largest and RMS are the errors of the likeness of two materials.
	Largest, RMS float64
}

// NewSpace builds the space. It fails if the table is not sound.
func NewSpace(t *Table) (*Space, error) {
	if err := t.check(); err != nil {
		return nil, err
	}
	x := indexOf(t)
	f := featuresOf(t, &x)
	factors, largest, rms, err := factor(f.rows)
	if err != nil {
		return nil, err
	}
	s := &Space{materials: make(map[string]*material, len(t.Materials)), odorants: t.Odorants, notes: t.Notes, idf: f.idf,
		quality: Quality{Materials: len(t.Materials), Odorants: len(t.Odorants), Largest: largest, RMS: rms}}
	for i := range t.Materials {
		m := &t.Materials[i]
		s.materials[m.Name] = s.materialOf(m, &x, &factors[i])
		s.names = append(s.names, m.Name)
	}
	slices.Sort(s.names)
	s.addFamilies()
	for _, name := range s.names {
		if m := s.materials[name]; len(m.parts) == 0 {
			m.factor = s.mixFamilies(&m.shares)
		}
	}
	return s, nil
}

// Quality returns how well the factored numbers stand for the kernel.
func (s *Space) Quality() Quality { return s.quality }

// Materials returns the names of the materials, sorted.
func (s *Space) Materials() []string { return slices.Clone(s.names) }

// Knows reports whether the space has a material of that name.
func (s *Space) Knows(name string) bool { _, ok := s.materials[name]; return ok }

func (s *Space) materialOf(m *Material, x *index, factor *[AromaDims]float64) *material {
	out := &material{factor: *factor, shares: m.Shares, notes: make([]float64, len(s.notes))}
	var total float64
	for _, o := range m.Odorants {
		k := x.odorant[o.Name]
		out.parts = append(out.parts, part{k, o.Weight})
		total += o.Weight
		for _, c := range s.odorants[k].Character {
			out.notes[x.note[c.Name]] += o.Weight * c.Weight
		}
	}
	if total > 0 {
		for i := range out.notes {
			out.notes[i] /= total
			if m.Shares.Total() == 0 {
				out.shares[x.family[i]] += out.notes[i]
			}
		}
	}
	slices.SortStableFunc(out.parts, func(a, b part) int {
		return cmp.Or(cmp.Compare(b.weight*s.idf[b.odorant], a.weight*s.idf[a.odorant]),
			cmp.Compare(s.odorants[a.odorant].Name, s.odorants[b.odorant].Name))
	})
	return out
}

// addFamilies gives each family the direction of the materials that have it, by
// their shares squared, so that those that are nearly nothing else lead.
func (s *Space) addFamilies() {
	for _, name := range s.names {
		m := s.materials[name]
		for f, share := range m.shares {
			for i, x := range m.factor {
				s.families[f][i] += share * share * x
			}
		}
	}
	for f := range s.families {
		scaleTo(s.families[f][:], 1)
	}
}

// mixFamilies returns the unit direction of a mix of families.
func (s *Space) mixFamilies(shares *flavor.Aroma) [AromaDims]float64 {
	var out [AromaDims]float64
	for f, share := range shares {
		for i, x := range s.families[f] {
			out[i] += share * x
		}
	}
	scaleTo(out[:], 1)
	return out
}

// Likeness returns how alike two materials smell, 0 to 1, and whether both are
// known. It is symmetric, and 1 of a material and itself.
func (s *Space) Likeness(a, b string) (float64, bool) {
	x, ok := s.materials[a]
	y, both := s.materials[b]
	if !ok || !both {
		return 0, false
	}
	return alike(x.factor[:], y.factor[:]), true
}

// LikenessOf returns how alike two ingredients smell, 0 to 1, whatever their
// strength; 0 if either smells of nothing, unless neither does.
func (s *Space) LikenessOf(p, q *flavor.Profile) float64 {
	var a, b Vector
	s.addAroma(&a, p)
	s.addAroma(&b, q)
	return alike(a.aroma(), b.aroma())
}

// alike is the cosine of two aromas, 0 to 1.
func alike(a, b []float64) float64 {
	x, y := norm(a), norm(b)
	switch {
	case x == 0 && y == 0:
		return 1
	case x == 0 || y == 0:
		return 0
	}
	return math.Min(1, math.Max(0, dot(a, b)/(x*y)))
}
