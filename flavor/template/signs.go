package template

import (
	"fmt"
	"slices"

	"gonum.org/v1/gonum/optimize"

	"counterpour/flavor/makeup"
	"counterpour/flavor/ratio"
)

// fitSigns finds the weights of the signals: the multinomial logistic rule
// that names the proven drinks' families best, each weight held to its
// traditional sign by a quadratic penalty. It seeks them from where an earlier fit of the same
// families left them, if there is one: quicker, and to the same end.
func fitSigns(families []Family, out []Fitted, lessons []Lesson, t *Tuning, start []Fitted) error {
	index := map[string]int{}
	for i := range families {
		index[families[i].ID] = i
	}
	signals := make([][]signal, len(lessons))
	label := make([]int, len(lessons))
	for i := range lessons {
		signals[i], label[i] = lessons[i].signals, index[lessons[i].Drink.Family]
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

// signLoss is the penalised negative log-likelihood per drink. A search asks for its value
// and then, mostly, for its gradient at the same place: so it keeps what both need.
type signLoss struct {
	signals  [][]signal // of each drink, those that are not zero
	label    []int
	prior    []float64
	penalty  float64
	families int

	at      []float64 // where the odds were worked out
	odds    []float64 // there, of each drink, how probable each family is
	weights []float64 // each signal's of all families together, and their biases: scratch
}

// turned calls visit with each place of a vector in which one family's weights follow
// another's, and the place it has where one signal's of all families do.
func (l *signLoss) turned(visit func(byFamily, bySignal int)) {
	const width = makeup.NumSignals + 1
	for f := range l.families {
		for s := range width {
			visit(f*width+s, s*l.families+f)
		}
	}
}

// row is the part of a vector turned by signals that belongs to one of them.
func (l *signLoss) row(turned []float64, at int) []float64 {
	return turned[at*l.families : (at+1)*l.families]
}

func (l *signLoss) value(x []float64) float64 {
	l.at = append(l.at[:0], x...)
	l.odds = slices.Grow(l.odds[:0], len(l.signals)*l.families)[:len(l.signals)*l.families]
	l.weights = slices.Grow(l.weights[:0], len(x))[:len(x)]
	l.turned(func(byFamily, bySignal int) { l.weights[bySignal] = x[byFamily] })
	var loss float64
	for i, signals := range l.signals {
		z := l.row(l.odds, i)
		copy(z, l.row(l.weights, makeup.NumSignals))
		for _, s := range signals {
			for f, w := range l.row(l.weights, s.at) {
				z[f] += w * s.value
			}
		}
		own := z[l.label[i]]
		loss += ratio.Softmax(z) - own
	}
	loss /= float64(max(len(l.signals), 1))
	for i := range x {
		loss += l.penalty / 2 * (x[i] - l.prior[i]) * (x[i] - l.prior[i])
	}
	return loss
}

func (l *signLoss) gradient(grad, x []float64) {
	if !slices.Equal(l.at, x) {
		l.value(x)
	}
	n := float64(max(len(l.signals), 1))
	turned := l.weights
	l.turned(func(byFamily, bySignal int) {
		turned[bySignal] = l.penalty * (x[byFamily] - l.prior[byFamily])
	})
	z := make([]float64, l.families)
	biases := l.row(turned, makeup.NumSignals)
	for i, signals := range l.signals {
		copy(z, l.row(l.odds, i))
		z[l.label[i]]--
		for f := range biases {
			biases[f] += z[f] / n
		}
		for _, s := range signals {
			into := l.row(turned, s.at)
			for f := range into {
				into[f] += z[f] * s.value / n
			}
		}
	}
	l.turned(func(byFamily, bySignal int) { grad[byFamily] = turned[bySignal] })
}
