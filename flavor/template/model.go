package template

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/mat"

	"counterpour/flavor/makeup"
	"counterpour/flavor/ratio"
)

// Model is a fitted family ready for use.
type Model struct {
	Family
	Fitted Fitted
	Basis  *ratio.Basis
	// root is the Cholesky factor of the scale matrix: the deviations of a
	// family's drinks are root times independent ones of width 1. widths is
	// its inverse, and lift is widths times the basis, from the logarithms of
	// the parts straight to those independent deviations.
	root, widths *mat.TriDense
	lift         [ratio.NumAxes - 1][ratio.NumAxes]float64
	// slide is, for each part, the direction of length 1 in which a drink moves
	// among the independent deviations if there is more of the part alone.
	slide [ratio.NumAxes][ratio.NumAxes - 1]float64
	Edge  float64 // squared distance at the edge of its good drinks
	Alone float64 // the same, of what a slip of one axis explains
	Peak  float64 // logarithm of the Student density at the centre
	far   float64 // squared distance at which the density is leastCompat of the peak
	Has   [ratio.NumAxes]bool
}

// NewModel puts a family and its fitted values together. It fails where the values are of
// another family, of another number of axes, or not positive definite.
func NewModel(f Family, fit Fitted) (*Model, error) {
	if err := f.Check(); err != nil {
		return nil, err
	}
	k := len(f.Axes) - 1
	if fit.ID != f.ID || len(fit.Centre) != k || len(fit.Scale) != k*k || !(fit.Freedom > 0) {
		return nil, fmt.Errorf("template: family %q: its fitted values are for %q with %d coordinates and %v degrees of freedom; fit the families again", f.ID, fit.ID, len(fit.Centre), fit.Freedom)
	}
	basis, err := ratio.NewBasis(len(f.Axes))
	if err != nil {
		return nil, err
	}
	m := &Model{Family: f, Fitted: fit, Basis: basis, Edge: edgeOf(k, fit.Freedom, centralShare), Alone: fit.SlipEdge()}
	m.far = fit.Freedom * math.Expm1(-2*logLeastCompat/(fit.Freedom+float64(k)))
	for _, a := range f.Axes {
		m.Has[a] = true
	}
	return m, m.whiten(mat.NewSymDense(k, fit.Scale))
}

// whiten works out root, widths and lift.
func (m *Model) whiten(scale *mat.SymDense) error {
	k := scale.SymmetricDim()
	var chol mat.Cholesky
	if !chol.Factorize(scale) {
		return fmt.Errorf("template: family %q: its fitted scale is not positive definite; fit the families again", m.ID)
	}
	m.root, m.widths = mat.NewTriDense(k, mat.Lower, nil), mat.NewTriDense(k, mat.Lower, nil)
	chol.LTo(m.root)
	if err := m.widths.InverseTri(m.root); err != nil {
		return fmt.Errorf("template: family %q: %w", m.ID, err)
	}
	for j := range k {
		for i := range m.Axes {
			for a := range j + 1 {
				m.lift[j][i] += m.widths.At(j, a) * m.Basis.Contrasts.At(i, a)
			}
		}
	}
	for i := range m.Axes {
		var norm float64
		for j := range k {
			norm = math.Hypot(norm, m.lift[j][i])
		}
		for j := range k {
			m.slide[i][j] = m.lift[j][i] / norm
		}
	}
	m.Peak = peakOf(k, m.Fitted.Freedom) - chol.LogDet()/2
	return nil
}

// InWidths returns log-ratio coordinates as independent deviations.
func (m *Model) InWidths(z *Coords) (y [ratio.NumAxes - 1]float64) {
	for j := range len(m.Axes) - 1 {
		for a := range j + 1 {
			y[j] += m.widths.At(j, a) * z[a]
		}
	}
	return y
}

// Logit returns the log-odds of the family by the make-up alone.
func (m *Model) Logit(signals *makeup.Signals) float64 {
	v := m.Fitted.Bias
	for j, s := range signals {
		v += m.Fitted.Weights[j] * s
	}
	return v
}

// Placed is where a drink lies in one family.
type Placed struct {
	Squared float64                    // squared distance with the excess of absent axes
	away    [ratio.NumAxes - 1]float64 // from the local centre, as independent deviations
	Excess  ratio.Equivalents
	Slip    float64    // the most of the squared distance that a slip of one axis explains
	Axis    ratio.Axis // that axis
	over    float64    // squared excess, in edges

	Size, Unknown float64 // see stretch
}

// Stretch takes the size of a drink, and how little is known of its kind, into the
// distances.
func (p *Placed) Stretch(size, unknown float64) {
	p.Size, p.Unknown = size, unknown
	p.Squared = (p.Squared + size) / unknown
	p.Slip = (p.Slip + size) / unknown
}

// Edges returns how far out the drink is, as a square, 1 at the edge of the good
// drinks: by all axes together, or by the one that would explain most if it alone
// went wrong. Good drinks stray every way, spoilt ones mostly along one axis, so
// the second has the closer edge.
func (m *Model) Edges(p *Placed) float64 {
	return max(p.Squared/m.Edge, p.Slip/m.Alone+p.over/p.Unknown)
}

// Place measures how far a drink lies from the centre, in the family's own
// spread; what it carries of axes that the family lacks, beyond what its good
// drinks do, counts as distance too.
func (m *Model) Place(s *ratio.Shares, centre *[ratio.NumAxes - 1]float64, t *Tuning, out *Placed) {
	out.Squared, out.over = 0, 0
	for j := range len(m.Axes) - 1 {
		y := -centre[j]
		for i, a := range m.Axes {
			y += m.lift[j][i] * s.Log[a]
		}
		out.away[j] = y
		out.Squared += y * y
	}
	out.Slip = 0
	for i, a := range m.Axes {
		var along float64
		for j := range len(m.Axes) - 1 {
			along += out.away[j] * m.slide[i][j]
		}
		if along*along > out.Slip {
			out.Slip, out.Axis = along*along, a
		}
	}
	for a := range s.Part {
		out.Excess[a] = m.excess(ratio.Axis(a), s, t)
		out.over += out.Excess[a] * out.Excess[a]
	}
	out.Squared += m.Edge * out.over
}

// Squared returns the squared distance of place alone, of a drink that is no more
// than its equivalents and their total: a search for what went wrong asks for little
// else, thousands of times.
func (m *Model) Squared(e *ratio.Equivalents, total float64, centre *[ratio.NumAxes - 1]float64, t *Tuning) float64 {
	var s ratio.Shares
	for a, v := range e {
		s.Part[a] = v / total
	}
	for _, a := range m.Axes {
		s.Log[a] = math.Log(s.Part[a] + ratio.Floors[a])
	}
	var d2, over float64
	for j := range len(m.Axes) - 1 {
		y := -centre[j]
		for i, a := range m.Axes {
			y += m.lift[j][i] * s.Log[a]
		}
		d2 += y * y
	}
	for a := range s.Part {
		x := m.excess(ratio.Axis(a), &s, t)
		over += x * x
	}
	return d2 + m.Edge*over
}

// excess returns what a drink carries of an axis that the family lacks, beyond
// what its good drinks do, in widths.
func (m *Model) excess(a ratio.Axis, s *ratio.Shares, t *Tuning) float64 {
	over := s.Part[a] - m.Fitted.Allowance[a]
	if m.Has[a] || over <= 0 {
		return 0
	}
	return over / t.ExcessWidth
}

// Density returns the logarithm of the Student density at a squared distance.
func (m *Model) Density(d2 float64) float64 {
	nu, k := m.Fitted.Freedom, float64(len(m.Fitted.Centre))
	return m.Peak - (nu+k)/2*math.Log1p(d2/nu)
}

// Compat returns how well the ratio speaks for the family, as a logarithm: the
// density at that distance over the density at the centre.
func (m *Model) Compat(d2 float64) float64 {
	if d2 >= m.far {
		return logLeastCompat
	}
	nu, k := m.Fitted.Freedom, float64(len(m.Fitted.Centre))
	return -(nu + k) / 2 * math.Log1p(d2/nu)
}

// leastCompat keeps a drink that is far out in every family in the one that
// its make-up names.
const leastCompat = 0.01

var logLeastCompat = math.Log(leastCompat)
