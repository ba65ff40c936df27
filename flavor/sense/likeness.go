package sense

import (
	"counterpour/flavor"
)

// Likeness returns how alike two materials smell, 0 to 1, and whether both are
// known: the kernel itself, not its factors. It is symmetric, and 1 of a material
// and itself.
func (s *Space) Likeness(a, b string) (float64, bool) {
	x, ok := s.materials[a]
	y, both := s.materials[b]
	if !ok || !both {
		return 0, false
	}
	return alike(x.row, y.row), true
}

// Smell is what an ingredient smells of, whatever its strength, ready to be compared with many.
type Smell struct {
	row  []float64 // none if it smells of nothing
	norm float64
}

// SmellOf returns what an ingredient smells of.
func (s *Space) SmellOf(p *flavor.Profile) Smell {
	row := s.rowOf(p)
	return Smell{row, norm(row)}
}

// Likeness returns how alike two ingredients smell, 0 to 1, whatever their
// strength; 0 if one smells of nothing and the other of something.
func (x *Smell) Likeness(y *Smell) float64 { return cosine(x.row, y.row, x.norm, y.norm) }

// LikenessTable returns how alike each two of a list of ingredients smell, in the
// order of the list.
func (s *Space) LikenessTable(list []*flavor.Profile) [][]float64 {
	rows := make([][]float64, len(list))
	for i, p := range list {
		rows[i] = s.rowOf(p)
	}
	return tableOf(rows)
}

// rowOf returns the row of the kernel that an ingredient is made of, none if it smells of nothing.
func (s *Space) rowOf(p *flavor.Profile) (row []float64) {
	s.smell(p, func(d *direct, intensity float64) {
		if row == nil {
			row = make([]float64, len(d.row))
		}
		add(row, d.row, intensity)
	})
	return row
}

// MaterialTable does the same for materials that the space knows.
func (s *Space) MaterialTable(names []string) [][]float64 {
	rows := make([][]float64, len(names))
	for i, name := range names {
		if m, ok := s.materials[name]; ok {
			rows[i] = m.row
		}
	}
	return tableOf(rows)
}

func tableOf(rows [][]float64) [][]float64 {
	out := make([][]float64, len(rows))
	for i := range rows {
		out[i] = make([]float64, len(rows))
	}
	for i := range rows {
		out[i][i] = 1
		for j := range i {
			v := alike(rows[i], rows[j])
			out[i][j], out[j][i] = v, v
		}
	}
	return out
}

// Resolve finds a material by its name or an alias as people write it: case,
// accents, plural and punctuation aside.
func (s *Space) Resolve(written string) (string, bool) {
	name, ok := s.byName[flavor.NormaliseName(written)]
	return name, ok
}
