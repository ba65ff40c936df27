package template

import (
	"fmt"
	"math"

	"counterpour/flavor/makeup"
	"counterpour/flavor/ratio"
)

// Family is a family of drinks as it is handed down: a ratio with its source
// and the signs it is known by.
type Family struct {
	ID     string
	Name   string
	Axes   []ratio.Axis // the parts it has, in the order of Axes
	Ratio  []float64
	Source string
	// Spread is the log standard deviation of each part over what is handed down, where
	// that ranges further than in other families; zero for the usual one.
	Spread ratio.Equivalents
	// Signs are the weights of the signals that speak for the family and,
	// if negative, against it; Bias is how common it is, as a log-odds.
	Signs makeup.Signals
	Bias  float64
	// Usual says in two sentences how the two usual faults taste.
	Usual string
	// Mark says what makes a drink one of the family, after "is": "a sour with soda".
	// Poured is the ratio as bars say it: "2 : ¾ : ¾ of spirit, sour juice and syrup".
	Mark, Poured string
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
		if a < 0 || int(a) >= ratio.NumAxes || i > 0 && a <= f.Axes[i-1] {
			return fmt.Errorf("template: family %q: axes must be in the order of %v, each once", f.ID, ratio.Axes())
		}
		if !(f.Ratio[i] > 0) || math.IsInf(f.Ratio[i], 0) {
			return fmt.Errorf("template: family %q: the ratio's %v part is %v; it must be positive and finite", f.ID, a, f.Ratio[i])
		}
	}
	return nil
}

// lifted returns the ratio, summing to 1, with length lifted by what its floor is
// above that of the others, as the drinks that it is held against are.
func (f *Family) lifted() []float64 {
	var total float64
	for _, r := range f.Ratio {
		total += r
	}
	out := make([]float64, len(f.Ratio))
	for i, a := range f.Axes {
		out[i] = f.Ratio[i]/total + ratio.Floors[a] - ratio.FloorShare
	}
	return out
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
	Allowance ratio.Equivalents
	Weights   makeup.Signals
	Bias      float64
}
