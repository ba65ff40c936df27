package sense

import (
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"fmt"
	"math"
	"strconv"

	"gonum.org/v1/gonum/mat"
)

// Factors stand for the kernel of a table: for each material with odorants, in
// the order of the table, [AromaDims] numbers of unit length whose inner products
// are the likenesses, as nearly as so few numbers can be.
type Factors struct {
	// Digest names the table that they were made from.
	Digest string
	Rows   [][AromaDims]float64
	// Largest and RMS are the errors of the inner products of two materials.
	Largest, RMS float64
}

// sweeps of the descent; it has settled to three digits by then.
const sweeps = 60

var errNoFactors = errors.New("sense: the kernel of the materials has no eigenvalues; the table is damaged")

// Factor factors the kernel of a table, in about a second for two hundred
// materials: from the leading eigenvectors of the Gram matrix (Eckart and Young,
// Psychometrika 1:211, 1936), brought to unit length, it goes down by
// majorization to the nearest Gram matrix of unit vectors (Pietersz and Groenen,
// Quantitative Finance 4:649, 2004; from memory). It fails if the table is not
// sound.
func Factor(t *Table) (*Factors, error) {
	if err := t.check(); err != nil {
		return nil, err
	}
	gram := gramOf(t)
	rows, err := leading(gram)
	if err != nil {
		return nil, err
	}
	if err := descend(gram, rows); err != nil {
		return nil, err
	}
	f := &Factors{Digest: t.Digest(), Rows: rows}
	f.Largest, f.RMS = errorOf(gram, rows)
	return f, nil
}

// Check measures how well factors stand for the kernel of a table: the largest
// and the root mean square error of a likeness. It fails if they are of another
// table.
func (f *Factors) Check(t *Table) (largest, rms float64, err error) {
	if err := t.check(); err != nil {
		return 0, 0, err
	}
	if err := f.fit(t); err != nil {
		return 0, 0, err
	}
	largest, rms = errorOf(gramOf(t), f.Rows)
	return largest, rms, nil
}

// fit reports why the factors are not those of a table.
func (f *Factors) fit(t *Table) error {
	if n := t.carriers(); f.Digest != t.Digest() || len(f.Rows) != n {
		return fmt.Errorf("sense: the factors are of another table (%d rows, %d materials); make them again", len(f.Rows), n)
	}
	return nil
}

// carriers is how many materials have odorants.
func (t *Table) carriers() int {
	n := 0
	for i := range t.Materials {
		if len(t.Materials[i].Odorants) > 0 {
			n++
		}
	}
	return n
}

// Digest names what the kernel of a table depends on: notes, odorants and which
// material carries them.
func (t *Table) Digest() string {
	h := sha256.New()
	var line []byte // written by hand: every start digests the whole table
	for _, n := range t.Notes {
		line = strconv.AppendQuote(append(line[:0], "n "...), n.ID)
		line = strconv.AppendInt(append(line, ' '), int64(n.Family), 10)
		h.Write(append(line, '\n'))
	}
	for _, o := range t.Odorants {
		line = strconv.AppendQuote(append(line[:0], "o "...), o.Name)
		line = appendParts(append(line, ' '), o.Character)
		h.Write(append(line, '\n'))
	}
	for _, m := range t.Materials {
		if len(m.Odorants) > 0 {
			line = strconv.AppendQuote(append(line[:0], "m "...), m.Name)
			line = appendParts(append(line, ' '), m.Odorants)
			h.Write(append(line, '\n'))
		}
	}
	return hex.EncodeToString(h.Sum(nil)[:8])
}

// appendParts writes parts as [{name weight} {name weight}].
func appendParts(line []byte, parts []Share) []byte {
	line = append(line, '[')
	for i, p := range parts {
		if i > 0 {
			line = append(line, ' ')
		}
		line = append(append(line, '{'), p.Name...)
		line = strconv.AppendFloat(append(line, ' '), p.Weight, 'g', -1, 64)
		line = append(line, '}')
	}
	return append(line, ']')
}

// gramOf returns the likenesses of the materials that have odorants.
func gramOf(t *Table) *mat.SymDense {
	x := indexOf(t)
	var rows [][]float64
	for i := range t.Materials {
		if len(t.Materials[i].Odorants) > 0 {
			rows = append(rows, x.row(t, &t.Materials[i]))
		}
	}
	gram := mat.NewSymDense(max(len(rows), 1), nil)
	for i := range rows {
		for j := range i + 1 {
			gram.SetSym(i, j, dot(rows[i], rows[j]))
		}
	}
	return gram
}

// leading returns the leading eigenvectors, each times the root of its
// eigenvalue, with rows of unit length.
func leading(gram *mat.SymDense) ([][AromaDims]float64, error) {
	n := gram.SymmetricDim()
	var eigen mat.EigenSym
	if !eigen.Factorize(gram, true) {
		return nil, errNoFactors
	}
	values := eigen.Values(nil) // ascending
	var vectors mat.Dense
	eigen.VectorsTo(&vectors)
	rows := make([][AromaDims]float64, n)
	for k := range min(AromaDims, n) {
		from := n - 1 - k
		root := math.Sqrt(math.Max(values[from], 0)) * signOf(&vectors, from)
		for i := range n {
			rows[i][k] = root * vectors.At(i, from)
		}
	}
	for i := range rows {
		scaleTo(rows[i][:], 1)
	}
	return rows, nil
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

// descend lowers Σ (yᵢ·yⱼ − Kᵢⱼ)² over unit vectors y, a row at a time: with B =
// Σ_{j≠i} yⱼyⱼᵀ and λ at least its largest eigenvalue, the row that minimises a
// bound of the sum has the direction λyᵢ − Byᵢ + Σ_{j≠i} Kᵢⱼyⱼ.
func descend(gram *mat.SymDense, rows [][AromaDims]float64) error {
	all := mat.NewSymDense(AromaDims, nil)
	for i := range rows {
		addOuter(all, &rows[i], 1)
	}
	var eigen mat.EigenSym
	for range sweeps {
		if !eigen.Factorize(all, false) {
			return errNoFactors
		}
		values := eigen.Values(nil)
		most := values[len(values)-1]
		for i := range rows {
			addOuter(all, &rows[i], -1)
			rows[i] = direction(gram, all, rows, i, most)
			addOuter(all, &rows[i], 1)
		}
	}
	return nil
}

func direction(gram, others *mat.SymDense, rows [][AromaDims]float64, i int, most float64) [AromaDims]float64 {
	y := rows[i]
	var z [AromaDims]float64
	for a := range z {
		z[a] = most * y[a]
		for b := range y {
			z[a] -= others.At(a, b) * y[b]
		}
	}
	for j := range rows {
		if j != i {
			add(z[:], rows[j][:], gram.At(i, j))
		}
	}
	scaleTo(z[:], 1)
	return z
}

func addOuter(m *mat.SymDense, y *[AromaDims]float64, times float64) {
	for a := range y {
		for b := a; b < AromaDims; b++ {
			m.SetSym(a, b, m.At(a, b)+times*y[a]*y[b])
		}
	}
}

// errorOf compares the inner products of rows with the Gram matrix.
func errorOf(gram *mat.SymDense, rows [][AromaDims]float64) (largest, rms float64) {
	pairs := 0
	for i := range rows {
		for j := range i {
			e := math.Abs(dot(rows[i][:], rows[j][:]) - gram.At(i, j))
			largest = math.Max(largest, e)
			rms += e * e
			pairs++
		}
	}
	return largest, math.Sqrt(rms / float64(max(pairs, 1)))
}
