package sense

import "math"

// How the kernel is made. The likeness of two materials is the cosine of
//
//	[√a · c/|c|, √(1−a) · g/|g|],  c = Σ √weight · character,  g = √(weight · idf)
//
// with c half over the notes and half over their families, g over the odorants,
// and idf = ln(1 + N/n) for an odorant that n of N materials carry: what
// everything carries tells little. The root of the weight stands for the smaller
// part that lesser odorants play in a blend. The constants were chosen by leaving
// out half of the odorants at random and telling, from the other half, which
// materials share many of those left out (rank correlation 0.76 over 140
// materials; 0.70 with a weight to the power 1); facts of the trade were not
// used for it, see the triples in the tests of package data.
const (
	characterShare = 0.5 // a
	familyShare    = 0.5 // of the square of c, what is counted by family
)

// index numbers the names of a table.
type index struct {
	note, odorant map[string]int
	family        []int     // of each note
	idf           []float64 // of each odorant
}

func indexOf(t *Table) *index {
	x := &index{note: make(map[string]int, len(t.Notes)), odorant: make(map[string]int, len(t.Odorants)),
		family: make([]int, len(t.Notes)), idf: make([]float64, len(t.Odorants))}
	for i, n := range t.Notes {
		x.note[n.ID], x.family[i] = i, int(n.Family)
	}
	for i, o := range t.Odorants {
		x.odorant[o.Name] = i
	}
	all := 0.0
	carried := make([]float64, len(t.Odorants))
	for i := range t.Materials {
		if len(t.Materials[i].Odorants) > 0 {
			all++
		}
		for _, o := range t.Materials[i].Odorants {
			carried[x.odorant[o.Name]]++
		}
	}
	for i, n := range carried {
		if n > 0 {
			x.idf[i] = math.Log1p(all / n)
		}
	}
	return x
}

// features is the length of a row of the kernel.
func (x *index) features() int { return len(x.family) + numFamilies + len(x.idf) }

// row returns the unit vector of a material that has odorants.
func (x *index) row(t *Table, m *Material) []float64 {
	numNotes := len(x.family)
	row := make([]float64, x.features())
	notes, families, odorants := row[:numNotes], row[numNotes:numNotes+numFamilies], row[numNotes+numFamilies:]
	for _, o := range m.Odorants {
		k := x.odorant[o.Name]
		odorants[k] = math.Sqrt(o.Weight * x.idf[k])
		for _, c := range t.Odorants[k].Character {
			note := x.note[c.Name]
			notes[note] += math.Sqrt(o.Weight) * c.Weight
			families[x.family[note]] += math.Sqrt(o.Weight) * c.Weight
		}
	}
	scaleTo(notes, math.Sqrt(characterShare*(1-familyShare)))
	scaleTo(families, math.Sqrt(characterShare*familyShare))
	scaleTo(odorants, math.Sqrt(1-characterShare))
	return row
}

// scaleTo gives v a length; a vector of zeros stays one.
func scaleTo(v []float64, length float64) {
	n := norm(v)
	if n == 0 {
		return
	}
	for i := range v {
		v[i] *= length / n
	}
}

func norm(v []float64) float64 { return math.Sqrt(dot(v, v)) }

func dot(a, b []float64) float64 {
	var s float64
	for i, x := range a {
		s += x * b[i]
	}
	return s
}

// add adds times × o to v.
func add(v, o []float64, times float64) {
	for i, x := range o {
		v[i] += times * x
	}
}

// alike is the cosine of two vectors, 0 to 1.
func alike(a, b []float64) float64 { return cosine(a, b, norm(a), norm(b)) }

// cosine is alike of two vectors of lengths x and y.
func cosine(a, b []float64, x, y float64) float64 {
	switch {
	case x == 0 && y == 0:
		return 1
	case x == 0 || y == 0:
		return 0
	}
	return math.Min(1, math.Max(0, dot(a, b)/(x*y)))
}
