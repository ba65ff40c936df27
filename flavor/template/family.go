package template

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/mat"
)

// Family is a family of drinks as it is handed down: a ratio with its source
// and the signs it is known by.
type Family struct {
	ID     string
	Name   string
	Axes   []Axis // the parts it has, in the order of Axes
	Ratio  []float64
	Source string
	// Signs are the weights of the signals that speak for the family and,
	// if negative, against it; Bias is how common it is, as a log-odds.
	Signs Signals
	Bias  float64
	// Usual says in two sentences how the two usual faults taste.
	Usual string
}

// Check reports why a family cannot be used.
func (f *Family) Check() error {
	if f.ID == "" || f.Name == "" || f.Source == "" {
		return fmt.Errorf("template: family %q needs an id, a name and a source for its ratio", f.ID)
	}
	if len(f.Axes) < 2 || len(f.Axes) != len(f.Ratio) {
		return fmt.Errorf("template: family %q: has %d axes and %d numbers in its ratio; it needs two or more, and as many of one as of the other", f.ID, len(f.Axes), len(f.Ratio))
	}
	for i, a := range f.Axes {
		if a < 0 || int(a) >= NumAxes || i > 0 && a <= f.Axes[i-1] {
			return fmt.Errorf("template: family %q: axes must be in the order of %v, each once", f.ID, Axes())
		}
		if !(f.Ratio[i] > 0) || math.IsInf(f.Ratio[i], 0) {
			return fmt.Errorf("template: family %q: the ratio's %v part is %v; it must be positive and finite", f.ID, a, f.Ratio[i])
		}
	}
	return nil
}

// Fitted is what proven drinks taught about a family. Centre is in the family's
// log-ratio coordinates; Scale is the scale matrix of the predictive Student t,
// row by row; Allowance is, for each axis that the family lacks, the share of
// the drink that proven drinks carry of it all the same.
type Fitted struct {
	ID        string
	Drinks    int // how many proven drinks
	Centre    []float64
	Scale     []float64
	Freedom   float64
	Allowance Equivalents
	Weights   Signals
	Bias      float64
}

// model is a fitted family ready for use.
type model struct {
	Family
	fitted  Fitted
	basis   *Basis
	inverse *mat.SymDense // of the scale matrix
	edge    float64       // squared distance at the edge of the central nine in ten
	has     [NumAxes]bool
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
	m := &model{Family: f, fitted: fit, basis: basis}
	for _, a := range f.Axes {
		m.has[a] = true
	}
	scale := mat.NewSymDense(k, fit.Scale)
	var chol mat.Cholesky
	if !chol.Factorize(scale) {
		return nil, fmt.Errorf("template: family %q: its fitted scale is not positive definite; fit the families again", f.ID)
	}
	m.inverse = mat.NewSymDense(k, nil)
	if err := chol.InverseTo(m.inverse); err != nil {
		return nil, fmt.Errorf("template: family %q: %w", f.ID, err)
	}
	m.edge = edgeOf(k, fit.Freedom)
	return m, nil
}
