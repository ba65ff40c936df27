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

// LikenessOf returns how alike two ingredients smell, 0 to 1, whatever their
// strength; 0 if one smells of nothing and the other of something.
func (s *Space) LikenessOf(p, q *flavor.Profile) float64 {
	return s.LikenessTable([]*flavor.Profile{p, q})[0][1]
}

// LikenessTable returns how alike each two of a list of ingredients smell, in the
// order of the list.
func (s *Space) LikenessTable(list []*flavor.Profile) [][]float64 {
	rows := make([][]float64, len(list))
	for i, p := range list {
		s.smell(p, func(d *direct, intensity float64) {
			if rows[i] == nil {
				rows[i] = make([]float64, len(d.row))
			}
			add(rows[i], d.row, intensity)
		})
	}
	return tableOf(rows)
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
