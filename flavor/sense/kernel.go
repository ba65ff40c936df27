package sense

import (
	"errors"
	"math"

	"gonum.org/v1/gonum/mat"
)

// How the kernel is made. The likeness of two materials is the cosine of
//
//	[√a · c/|c|, √(1−a) · g/|g|],  c = Σ weight · character,  g = weight^p · idf
//
// with c over the notes and their families, g over the odorants, and idf =
// ln(1 + N/n) for an odorant that n of N materials carry.
const (
	characterShare = 0.35 // a
	weightPower    = 0.5  // p
	familyShare    = 0.5  // of c, what is counted by family; the rest by note
)

// features are the rows of the kernel: one unit vector a material.
type features struct {
	rows    *mat.Dense
	idf     []float64 // by odorant
	carried []int     // how many materials carry it
}

// index numbers the names of a table.
type index struct {
	note, odorant map[string]int
	family        []int // of each note
}

func indexOf(t *Table) index {
	x := index{note: map[string]int{}, odorant: map[string]int{}, family: make([]int, len(t.Notes))}
	for i, n := range t.Notes {
		x.note[n.ID], x.family[i] = i, int(n.Family)
	}
	for i, o := range t.Odorants {
		x.odorant[o.Name] = i
	}
	return x
}

// featuresOf works out the rows. Materials without odorants get a row of zeros.
func featuresOf(t *Table, x *index) *features {
	numNotes, numOdorants := len(t.Notes), len(t.Odorants)
	f := &features{idf: make([]float64, numOdorants), carried: make([]int, numOdorants)}
	n := 0
	for i := range t.Materials {
		if len(t.Materials[i].Odorants) > 0 {
			n++
		}
		for _, o := range t.Materials[i].Odorants {
			f.carried[x.odorant[o.Name]]++
		}
	}
	for i, c := range f.carried {
		if c > 0 {
			f.idf[i] = math.Log1p(float64(n) / float64(c))
		}
	}
	f.rows = mat.NewDense(len(t.Materials), numNotes+numFamilies+numOdorants, nil)
	for i := range t.Materials {
		row := f.rows.RawRowView(i)
		notes, families, odorants := row[:numNotes], row[numNotes:numNotes+numFamilies], row[numNotes+numFamilies:]
		for _, o := range t.Materials[i].Odorants {
			k := x.odorant[o.Name]
			odorants[k] = math.Pow(o.Weight, weightPower) * f.idf[k]
			for _, c := range t.Odorants[k].Character {
				note := x.note[c.Name]
				notes[note] += o.Weight * c.Weight
				families[x.family[note]] += o.Weight * c.Weight
			}
		}
		scaleTo(notes, math.Sqrt(characterShare*(1-familyShare)))
		scaleTo(families, math.Sqrt(characterShare*familyShare))
		scaleTo(odorants, math.Sqrt(1-characterShare))
	}
	return f
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

var errNoFactors = errors.New("sense: the kernel of the materials has no eigenvalues; the table is damaged")

// factor returns, for each row, [AromaDims] numbers whose inner products are
// those of the rows as nearly as any so few numbers can be: the leading
// eigenvectors of the Gram matrix, each times the root of its eigenvalue (Eckart and
// Young, Psychometrika 1:211, 1936). Rows are brought back to unit length. The
// second result is the largest error of an inner product, the third the root mean
// square.
func factor(rows *mat.Dense) (factors [][AromaDims]float64, largest, rms float64, err error) {
	n, _ := rows.Dims()
	gram := mat.NewSymDense(n, nil)
	gram.SymOuterK(1, rows)
	var eigen mat.EigenSym
	if !eigen.Factorize(gram, true) {
		return nil, 0, 0, errNoFactors
	}
	values := eigen.Values(nil) // ascending
	var vectors mat.Dense
	eigen.VectorsTo(&vectors)
	factors = make([][AromaDims]float64, n)
	for k := range min(AromaDims, n) {
		from := n - 1 - k
		root := math.Sqrt(math.Max(values[from], 0)) * signOf(&vectors, from)
		for i := range n {
			factors[i][k] = root * vectors.At(i, from)
		}
	}
	for i := range factors {
		scaleTo(factors[i][:], math.Sqrt(gram.At(i, i)))
	}
	largest, rms = errorOf(gram, factors)
	return factors, largest, rms, nil
}

// signOf returns the sign that makes the largest entry of a column positive, so
// that every processor picks the same one of the two eigenvectors.
func signOf(m *mat.Dense, column int) float64 {
	n, _ := m.Dims()
	best := 0.0
	for i := range n {
		if v := m.At(i, column); math.Abs(v) > math.Abs(best)+1e-9 {
			best = v
		}
	}
	if best < 0 {
		return -1
	}
	return 1
}

// errorOf compares the inner products of the factors with the Gram matrix.
func errorOf(gram *mat.SymDense, factors [][AromaDims]float64) (largest, rms float64) {
	pairs := 0
	for i := range factors {
		for j := range i {
			e := math.Abs(dot(factors[i][:], factors[j][:]) - gram.At(i, j))
			largest = math.Max(largest, e)
			rms += e * e
			pairs++
		}
	}
	return largest, math.Sqrt(rms / float64(max(pairs, 1)))
}
