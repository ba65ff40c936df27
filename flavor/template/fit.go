package template

import (
	"errors"
	"fmt"
	"math"
	"slices"

	"gonum.org/v1/gonum/optimize"
)

// Tuning holds the few constants that no conjugate rule gives. They were chosen
// by cross-validation over the proven drinks; the calibrate command prints the
// figures they were chosen by.
type Tuning struct {
	RatioDrinks  float64     // how many drinks the published ratio counts for
	SpreadDrinks float64     // how many drinks the usual spread counts for
	UsualSpread  Equivalents // log standard deviation of each part, over all families
	Bandwidth    float64     // of likeness, in 1 − cosine
	Pull         float64     // weight of the family's centre against its relatives, in drinks
	ExcessWidth  float64     // share of the drink by which an absent axis may exceed its allowance
	Allowance    float64     // least allowance
	SignPenalty  float64     // how dear it is to leave the traditional signs
	FitWeight    float64     // how much the ratio speaks in telling families apart
}

// DefaultTuning returns the tuning that the program uses.
func DefaultTuning() Tuning {
	return Tuning{RatioDrinks: 8, SpreadDrinks: 20,
		UsualSpread: Equivalents{Strong: 0.14, Sweet: 0.23, Sour: 0.14, Bitter: 0.52, Long: 0.52},
		Bandwidth:   0.18, Pull: 0.95, ExcessWidth: 0.18, Allowance: 0.11,
		SignPenalty: 0.04, FitWeight: 0.23}
}

// Learn fits every family from proven drinks. Drinks of a family that is not
// in families are an error, as is a family that does not check.
func Learn(families []Family, proven []Labelled, t Tuning) ([]Fitted, error) {
	return LearnFrom(families, proven, t, nil)
}

// LearnFrom is Learn, with the signs sought from where an earlier fit of the
// same families left them: quicker, and to the same end.
func LearnFrom(families []Family, proven []Labelled, t Tuning, start []Fitted) ([]Fitted, error) {
	known := map[string]bool{}
	for i := range families {
		if err := families[i].Check(); err != nil {
			return nil, err
		}
		known[families[i].ID] = true
	}
	for _, p := range proven {
		if !known[p.Family] {
			return nil, fmt.Errorf("template: proven drink %q is of family %q, which is not defined", p.Spec.Name, p.Family)
		}
	}
	out := make([]Fitted, len(families))
	for i := range families {
		f, err := fitFamily(&families[i], proven, &t)
		if err != nil {
			return nil, err
		}
		out[i] = f
	}
	return out, fitSigns(families, out, proven, &t, start)
}

// fitFamily moves the centre from the ratio by the conjugate rule, and the
// spread from the usual one by what is left once each drink is held against
// its own relatives.
func fitFamily(f *Family, proven []Labelled, t *Tuning) (Fitted, error) {
	basis, err := NewBasis(len(f.Axes))
	if err != nil {
		return Fitted{}, err
	}
	relatives, excess, err := relativesOf(f, basis, proven)
	if err != nil {
		return Fitted{}, err
	}
	prior, err := basis.Coordinates(f.Ratio)
	if err != nil {
		return Fitted{}, fmt.Errorf("template: family %q: %w", f.ID, err)
	}
	k, n := len(prior), float64(len(relatives))
	centre := make([]float64, k)
	for j := range centre {
		centre[j] = t.RatioDrinks * prior[j]
		for _, r := range relatives {
			centre[j] += r.coords[j]
		}
		centre[j] /= t.RatioDrinks + n
	}
	scatter := usualScatter(f, basis, t)
	for i, r := range relatives {
		local := localCentre(centre, relatives, r.kin, i, t)
		for a := range k {
			for b := range k {
				scatter[a*k+b] += (r.coords[a] - local[a]) * (r.coords[b] - local[b])
			}
		}
	}
	freedom := t.SpreadDrinks + n
	spread := (1 + 1/(t.RatioDrinks+n)) / freedom
	for i := range scatter {
		scatter[i] *= spread
	}
	return Fitted{ID: f.ID, Drinks: len(relatives), Centre: centre, Scale: scatter, Freedom: freedom,
		Allowance: allowanceOf(f, excess, t)}, nil
}

// usualScatter is the scatter matrix that SpreadDrinks drinks of the usual
// spread would have, its parts straying independently.
func usualScatter(f *Family, basis *Basis, t *Tuning) []float64 {
	k := len(f.Axes) - 1
	s := make([]float64, k*k)
	for a := range k {
		for b := range k {
			for i, axis := range f.Axes {
				u := t.UsualSpread[axis]
				s[a*k+b] += t.SpreadDrinks * basis.v.At(i, a) * basis.v.At(i, b) * u * u
			}
		}
	}
	return s
}

func relativesOf(f *Family, basis *Basis, proven []Labelled) (relatives []relative, shares []Equivalents, err error) {
	for i := range proven {
		if proven[i].Family != f.ID {
			continue
		}
		e := EquivalentsOf(&proven[i].Spec)
		parts, share, err := partsOf(f.Axes, &e)
		if err != nil {
			return nil, nil, fmt.Errorf("template: proven drink %q: %w", proven[i].Spec.Name, err)
		}
		z, err := basis.Coordinates(parts)
		if err != nil {
			return nil, nil, fmt.Errorf("template: proven drink %q: %w", proven[i].Spec.Name, err)
		}
		relatives = append(relatives, relative{kin: kinshipOf(&proven[i].Spec), coords: z})
		shares = append(shares, share)
	}
	return relatives, shares, nil
}

// partsOf returns the shares of the axes that a family has, each lifted by the
// floor, and the share of every axis in the whole drink.
func partsOf(axes []Axis, e *Equivalents) (parts []float64, share Equivalents, err error) {
	var total float64
	for _, v := range e {
		total += v
	}
	if !(total > 0) {
		return nil, share, errors.New("the drink has no strength, sweetness, acid, bitterness or length to weigh")
	}
	for a := range e {
		share[a] = e[a] / total
	}
	parts = make([]float64, len(axes))
	for i, a := range axes {
		parts[i] = share[a] + floorShare
	}
	return parts, share, nil
}

// allowanceOf returns, for each axis, the share that nine in ten of the
// family's drinks stay below.
func allowanceOf(f *Family, shares []Equivalents, t *Tuning) Equivalents {
	var out Equivalents
	for a := range out {
		if slices.Contains(f.Axes, Axis(a)) {
			continue
		}
		column := make([]float64, 0, len(shares))
		for _, s := range shares {
			column = append(column, s[a])
		}
		slices.Sort(column)
		out[a] = t.Allowance
		if len(column) > 0 {
			out[a] = max(out[a], column[(9*len(column)-1)/10])
		}
	}
	return out
}

// fitSigns finds the weights of the signals: the multinomial logistic rule
// that names the proven drinks' families best, each weight held to its
// traditional sign by a quadratic penalty.
func fitSigns(families []Family, out []Fitted, proven []Labelled, t *Tuning, start []Fitted) error {
	index := map[string]int{}
	for i := range families {
		index[families[i].ID] = i
	}
	signals := make([]Signals, len(proven))
	label := make([]int, len(proven))
	for i := range proven {
		signals[i] = SignalsOf(&proven[i].Spec)
		label[i] = index[proven[i].Family]
	}
	const width = NumSignals + 1
	x0 := make([]float64, len(families)*width)
	for i := range families {
		copy(x0[i*width:], families[i].Signs[:])
		x0[i*width+NumSignals] = families[i].Bias
	}
	begin := slices.Clone(x0)
	if len(start) == len(families) {
		for i := range start {
			copy(begin[i*width:], start[i].Weights[:])
			begin[i*width+NumSignals] = start[i].Bias
		}
	}
	loss := signLoss{signals: signals, label: label, prior: x0, penalty: t.SignPenalty, families: len(families)}
	problem := optimize.Problem{Func: loss.value, Grad: loss.gradient}
	settings := &optimize.Settings{GradientThreshold: 1e-7, MajorIterations: 2000}
	res, err := optimize.Minimize(problem, begin, settings, &optimize.LBFGS{})
	if err != nil && res == nil {
		return fmt.Errorf("template: fitting the signs: %w", err)
	}
	for i := range out {
		copy(out[i].Weights[:], res.X[i*width:i*width+NumSignals])
		out[i].Bias = res.X[i*width+NumSignals]
	}
	return nil
}

// signLoss is the penalised negative log-likelihood per drink.
type signLoss struct {
	signals  []Signals
	label    []int
	prior    []float64
	penalty  float64
	families int
}

func (l *signLoss) logits(x []float64, s *Signals, into []float64) {
	const width = NumSignals + 1
	for f := range into {
		w := x[f*width : (f+1)*width]
		v := w[NumSignals]
		for j := range s {
			v += w[j] * s[j]
		}
		into[f] = v
	}
}

func (l *signLoss) value(x []float64) float64 {
	z := make([]float64, l.families)
	var loss float64
	for i := range l.signals {
		l.logits(x, &l.signals[i], z)
		loss += logSumExp(z) - z[l.label[i]]
	}
	loss /= float64(max(len(l.signals), 1))
	for i := range x {
		loss += l.penalty / 2 * (x[i] - l.prior[i]) * (x[i] - l.prior[i])
	}
	return loss
}

func (l *signLoss) gradient(grad, x []float64) {
	const width = NumSignals + 1
	z := make([]float64, l.families)
	n := float64(max(len(l.signals), 1))
	for i := range grad {
		grad[i] = l.penalty * (x[i] - l.prior[i])
	}
	for i := range l.signals {
		l.logits(x, &l.signals[i], z)
		softmax(z)
		z[l.label[i]]--
		for f := range z {
			w := grad[f*width : (f+1)*width]
			w[NumSignals] += z[f] / n
			for j, s := range l.signals[i] {
				w[j] += z[f] * s / n
			}
		}
	}
}

func logSumExp(z []float64) float64 {
	top := slices.Max(z)
	var sum float64
	for _, v := range z {
		sum += math.Exp(v - top)
	}
	return top + math.Log(sum)
}

// softmax turns log-odds into probabilities, in place.
func softmax(z []float64) {
	total := logSumExp(z)
	for i := range z {
		z[i] = math.Exp(z[i] - total)
	}
}
