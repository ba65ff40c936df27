package template

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/mat"
)

// model is a fitted family ready for use.
type model struct {
	Family
	fitted Fitted
	basis  *Basis
	// root is the Cholesky factor of the scale matrix: the deviations of a
	// family's drinks are root times independent ones of width 1. widths is
	// its inverse, and lift is widths times the basis, from the logarithms of
	// the parts straight to those independent deviations.
	root, widths *mat.TriDense
	lift         [NumAxes - 1][NumAxes]float64
	// slide is, for each part, the direction of length 1 in which a drink moves
	// among the independent deviations if there is more of the part alone.
	slide [NumAxes][NumAxes - 1]float64
	edge  float64 // squared distance at the edge of its good drinks
	alone float64 // the same, of what a slip of one axis explains
	peak  float64 // logarithm of the Student density at the centre
	far   float64 // squared distance at which the density is leastCompat of the peak
	has   [NumAxes]bool
}

func newModel(f Family, fit Fitted) (*model, error) {
	if err := f.Check(); err != nil {
		return nil, err
	}
	k := len(f.Axes) - 1
	if fit.ID != f.ID || len(fit.Centre) != k || len(fit.Scale) != k*k || !(fit.Freedom > 0) {
		return nil, fmt.Errorf("template: family %q: its fitted values are for %q with %d coordinates and %v degrees of freedom; fit the families again", f.ID, fit.ID, len(fit.Centre), fit.Freedom)
	}
	basis, err := NewBasis(len(f.Axes))
	if err != nil {
		return nil, err
	}
	m := &model{Family: f, fitted: fit, basis: basis, edge: edgeOf(k, fit.Freedom, centralShare), alone: fit.SlipEdge()}
	m.far = fit.Freedom * math.Expm1(-2*logLeastCompat/(fit.Freedom+float64(k)))
	for _, a := range f.Axes {
		m.has[a] = true
	}
	return m, m.whiten(mat.NewSymDense(k, fit.Scale))
}

// whiten works out root, widths and lift.
func (m *model) whiten(scale *mat.SymDense) error {
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
				m.lift[j][i] += m.widths.At(j, a) * m.basis.v.At(i, a)
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
	m.peak = peakOf(k, m.fitted.Freedom) - chol.LogDet()/2
	return nil
}

// inWidths returns log-ratio coordinates as independent deviations.
func (m *model) inWidths(z *coords) (y [NumAxes - 1]float64) {
	for j := range len(m.Axes) - 1 {
		for a := range j + 1 {
			y[j] += m.widths.At(j, a) * z[a]
		}
	}
	return y
}

// logit returns the log-odds of the family by the make-up alone.
func (m *model) logit(signals *Signals) float64 {
	v := m.fitted.Bias
	for j, s := range signals {
		v += m.fitted.Weights[j] * s
	}
	return v
}

// placed is where a drink lies in one family.
type placed struct {
	d2     float64              // squared distance with the excess of absent axes
	away   [NumAxes - 1]float64 // from the local centre, as independent deviations
	excess Equivalents
	slip   float64 // the most of the squared distance that a slip of one axis explains
	axis   Axis    // that axis
	over   float64 // squared excess, in edges

	size, unknown float64 // see stretch
}

// stretch takes the size of a drink, and how little is known of its kind, into the
// distances.
func (p *placed) stretch(size, unknown float64) {
	p.size, p.unknown = size, unknown
	p.d2 = (p.d2 + size) / unknown
	p.slip = (p.slip + size) / unknown
}

// edges returns how far out the drink is, as a square, 1 at the edge of the good
// drinks: by all axes together, or by the one that would explain most if it alone
// went wrong. Good drinks stray every way, spoilt ones mostly along one axis, so
// the second has the closer edge.
func (m *model) edges(p *placed) float64 {
	return max(p.d2/m.edge, p.slip/m.alone+p.over/p.unknown)
}

// shares is a drink as the families see it: what part of it each axis is, and
// the logarithm of that, lifted by the floor.
type shares struct {
	part, log Equivalents
}

func sharesOf(e *Equivalents) (s shares) {
	total := e.Total()
	for a, v := range e {
		s.part[a] = v / total
		s.log[a] = math.Log(s.part[a] + floors[a])
	}
	return s
}

// place measures how far a drink lies from the centre, in the family's own
// spread; what it carries of axes that the family lacks, beyond what its good
// drinks do, counts as distance too.
func (m *model) place(s *shares, centre *[NumAxes - 1]float64, t *Tuning, out *placed) {
	out.d2, out.over = 0, 0
	for j := range len(m.Axes) - 1 {
		y := -centre[j]
		for i, a := range m.Axes {
			y += m.lift[j][i] * s.log[a]
		}
		out.away[j] = y
		out.d2 += y * y
	}
	out.slip = 0
	for i, a := range m.Axes {
		var along float64
		for j := range len(m.Axes) - 1 {
			along += out.away[j] * m.slide[i][j]
		}
		if along*along > out.slip {
			out.slip, out.axis = along*along, a
		}
	}
	for a := range s.part {
		out.excess[a] = m.excess(Axis(a), s, t)
		out.over += out.excess[a] * out.excess[a]
	}
	out.d2 += m.edge * out.over
}

// squared returns the squared distance of place alone, of a drink that is no more
// than its equivalents and their total: a search for what went wrong asks for little
// else, thousands of times.
func (m *model) squared(e *Equivalents, total float64, centre *[NumAxes - 1]float64, t *Tuning) float64 {
	var s shares
	for a, v := range e {
		s.part[a] = v / total
	}
	for _, a := range m.Axes {
		s.log[a] = math.Log(s.part[a] + floors[a])
	}
	var d2, over float64
	for j := range len(m.Axes) - 1 {
		y := -centre[j]
		for i, a := range m.Axes {
			y += m.lift[j][i] * s.log[a]
		}
		d2 += y * y
	}
	for a := range s.part {
		x := m.excess(Axis(a), &s, t)
		over += x * x
	}
	return d2 + m.edge*over
}

// excess returns what a drink carries of an axis that the family lacks, beyond
// what its good drinks do, in widths.
func (m *model) excess(a Axis, s *shares, t *Tuning) float64 {
	over := s.part[a] - m.fitted.Allowance[a]
	if m.has[a] || over <= 0 {
		return 0
	}
	return over / t.ExcessWidth
}

// density returns the logarithm of the Student density at a squared distance.
func (m *model) density(d2 float64) float64 {
	nu, k := m.fitted.Freedom, float64(len(m.fitted.Centre))
	return m.peak - (nu+k)/2*math.Log1p(d2/nu)
}

// compat returns how well the ratio speaks for the family, as a logarithm: the
// density at that distance over the density at the centre.
func (m *model) compat(d2 float64) float64 {
	if d2 >= m.far {
		return logLeastCompat
	}
	nu, k := m.fitted.Freedom, float64(len(m.fitted.Centre))
	return -(nu + k) / 2 * math.Log1p(d2/nu)
}

// leastCompat keeps a drink that is far out in every family in the one that
// its make-up names.
const leastCompat = 0.01

var logLeastCompat = math.Log(leastCompat)
