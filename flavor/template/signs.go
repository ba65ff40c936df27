package template

import (
	"fmt"
	"math"
	"slices"

	"gonum.org/v1/gonum/optimize"

	"counterpour/flavor/makeup"
	"counterpour/flavor/ratio"
)

// fitSigns finds the weights of the signals: the multinomial logistic rule
// that names the proven drinks' families best, each weight held to its
// traditional sign by a quadratic penalty.
func fitSigns(families []Family, out []Fitted, proven []Labelled, t *Tuning, start []Fitted) error {
	index := map[string]int{}
	for i := range families {
		index[families[i].ID] = i
	}
	signals := make([][]signal, len(proven))
	label := make([]int, len(proven))
	for i := range proven {
		all := makeup.SignalsOf(&proven[i].Spec, makeup.PartsIn(&proven[i].Spec), makeup.AmountsOf(&proven[i].Spec))
		signals[i] = given(&all)
		label[i] = index[proven[i].Family]
	}
	const width = makeup.NumSignals + 1
	x0 := make([]float64, len(families)*width)
	for i := range families {
		copy(x0[i*width:], families[i].Signs[:])
		x0[i*width+makeup.NumSignals] = families[i].Bias
	}
	begin := slices.Clone(x0)
	if len(start) == len(families) {
		for i := range start {
			copy(begin[i*width:], start[i].Weights[:])
			begin[i*width+makeup.NumSignals] = start[i].Bias
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
		copy(out[i].Weights[:], res.X[i*width:i*width+makeup.NumSignals])
		out[i].Bias = res.X[i*width+makeup.NumSignals]
	}
	return nil
}

// signal is one that a drink gives, and how strongly.
type signal struct {
	at    int
	value float64
}

// given are the signals of a drink that are not zero. Most are, and a zero adds nothing
// to the loss or to its gradient.
func given(all *makeup.Signals) (out []signal) {
	for at, value := range all {
		if value != 0 {
			out = append(out, signal{at, value})
		}
	}
	return out
}

// signLoss is the penalised negative log-likelihood per drink.
type signLoss struct {
	signals  [][]signal // of each drink, those that are not zero
	label    []int
	prior    []float64
	penalty  float64
	families int
}

func (l *signLoss) logits(x []float64, signals []signal, into []float64) {
	const width = makeup.NumSignals + 1
	for f := range into {
		w := x[f*width : (f+1)*width]
		v := w[makeup.NumSignals]
		for _, s := range signals {
			v += w[s.at] * s.value
		}
		into[f] = v
	}
}

func (l *signLoss) value(x []float64) float64 {
	z := make([]float64, l.families)
	var loss float64
	for i := range l.signals {
		l.logits(x, l.signals[i], z)
		loss += logSumExp(z) - z[l.label[i]]
	}
	loss /= float64(max(len(l.signals), 1))
	for i := range x {
		loss += l.penalty / 2 * (x[i] - l.prior[i]) * (x[i] - l.prior[i])
	}
	return loss
}

func (l *signLoss) gradient(grad, x []float64) {
	const width = makeup.NumSignals + 1
	z := make([]float64, l.families)
	n := float64(max(len(l.signals), 1))
	for i := range grad {
		grad[i] = l.penalty * (x[i] - l.prior[i])
	}
	for i := range l.signals {
		l.logits(x, l.signals[i], z)
		ratio.Softmax(z)
		z[l.label[i]]--
		for f := range z {
			w := grad[f*width : (f+1)*width]
			w[makeup.NumSignals] += z[f] / n
			for _, s := range l.signals[i] {
				w[s.at] += z[f] * s.value / n
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
