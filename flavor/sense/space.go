package sense

import (
	"cmp"
	"maps"
	"slices"

	"counterpour/flavor"
)

const numFamilies = flavor.NumAromaFamilies

// Space is the sensory space that a table of odorants spans.
type Space struct {
	materials map[string]*material
	names     []string          // of the materials, sorted
	byName    map[string]string // names and aliases, normalised, to material
	families  [numFamilies]direct
	odorants  []Odorant
	notes     []Note
	idf       []float64 // by odorant
	together  map[string][]string
	quality   Quality
}

// direct is a direction of aroma: the whole row of the kernel, and the few
// numbers that stand for it.
type direct struct {
	row    []float64
	factor [AromaDims]float64
}

// material is what the space knows of one.
type material struct {
	direct
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

// NewSpace builds the space of a table. Factors are those of the same table; nil
// has them worked out, which takes about a second for two hundred materials. It
// fails if the table is not sound or the factors are of another one.
func NewSpace(t *Table, f *Factors) (*Space, error) {
	if err := t.check(); err != nil {
		return nil, err
	}
	if f == nil {
		var err error
		if f, err = Factor(t); err != nil {
			return nil, err
		}
	}
	if err := f.fit(t); err != nil {
		return nil, err
	}
	x := indexOf(t)
	s := &Space{materials: make(map[string]*material, len(t.Materials)), odorants: t.Odorants, notes: t.Notes, idf: x.idf, together: t.Together,
		quality: Quality{Materials: len(t.Materials), Odorants: len(t.Odorants), Largest: f.Largest, RMS: f.RMS}}
	at := 0
	for i := range t.Materials {
		m := &t.Materials[i]
		known := s.materialOf(t, m, x)
		if len(m.Odorants) > 0 {
			known.factor = f.Rows[at]
			at++
		}
		s.materials[m.Name] = known
		s.names = append(s.names, m.Name)
	}
	slices.Sort(s.names)
	s.addNames(t.Aliases)
	s.addFamilies(x.features())
	for _, name := range s.names {
		if m := s.materials[name]; len(m.parts) == 0 {
			s.mixFamilies(m, x.features())
		}
	}
	return s, nil
}

// addNames fills in byName; a material's own name comes before an alias.
func (s *Space) addNames(aliases map[string]string) {
	s.byName = make(map[string]string, len(s.names)+len(aliases))
	for _, alias := range slices.Sorted(maps.Keys(aliases)) {
		s.byName[flavor.NormaliseName(alias)] = aliases[alias]
	}
	for _, name := range s.names {
		s.byName[flavor.NormaliseName(name)] = name
	}
}

// Quality returns how well the factored numbers stand for the kernel.
func (s *Space) Quality() Quality { return s.quality }

// Materials returns the names of the materials, sorted.
func (s *Space) Materials() []string { return slices.Clone(s.names) }

func (s *Space) materialOf(t *Table, m *Material, x *index) *material {
	out := &material{shares: m.Shares, notes: make([]float64, len(s.notes))}
	if len(m.Odorants) == 0 {
		return out
	}
	out.row = x.row(t, m)
	var total float64
	for _, o := range m.Odorants {
		k := x.odorant[o.Name]
		out.parts = append(out.parts, part{k, o.Weight})
		total += o.Weight
		for _, c := range s.odorants[k].Character {
			out.notes[x.note[c.Name]] += o.Weight * c.Weight
		}
	}
	for i := range out.notes {
		out.notes[i] /= total
		if m.Shares.Total() == 0 {
			out.shares[x.family[i]] += out.notes[i]
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
func (s *Space) addFamilies(features int) {
	for f := range s.families {
		family := &s.families[f]
		family.row = make([]float64, features)
		for _, name := range s.names {
			m := s.materials[name]
			if len(m.parts) == 0 || m.shares[f] == 0 {
				continue
			}
			add(family.row, m.row, m.shares[f]*m.shares[f])
			add(family.factor[:], m.factor[:], m.shares[f]*m.shares[f])
		}
		scaleTo(family.row, 1)
		scaleTo(family.factor[:], 1)
	}
}

// mixFamilies gives a material the direction of the families that it is of.
func (s *Space) mixFamilies(m *material, features int) {
	m.row = make([]float64, features)
	for f, share := range m.shares {
		add(m.row, s.families[f].row, share)
		add(m.factor[:], s.families[f].factor[:], share)
	}
	scaleTo(m.row, 1)
	scaleTo(m.factor[:], 1)
}

// leastFamily is the intensity of a family below which what the materials of an
// ingredient leave over is rounding.
const leastFamily = 1e-6

// smell calls visit with each direction of an ingredient's aroma and its
// intensity. A material that the space does not know, and aroma that no
// material accounts for, count by family.
func (s *Space) smell(p *flavor.Profile, visit func(d *direct, intensity float64)) {
	rest := p.Aroma
	for _, m := range p.Materials {
		known, ok := s.materials[m.Material]
		if !ok {
			continue
		}
		visit(&known.direct, m.Intensity)
		for f, share := range known.shares {
			rest[f] -= m.Intensity * share
		}
	}
	for f, left := range rest {
		if left > leastFamily {
			visit(&s.families[f], left)
		}
	}
}
