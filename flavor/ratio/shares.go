package ratio

import (
	"errors"
	"math"
)

// Shares is a drink as the families see it: what part of it each axis is, and
// the logarithm of that, lifted by the floor.
type Shares struct {
	Part, Log Equivalents
}

// SharesOf reads a drink that has something to weigh.
func SharesOf(e *Equivalents) (s Shares) {
	total := e.Total()
	for a, v := range e {
		s.Part[a] = v / total
		s.Log[a] = math.Log(s.Part[a] + Floors[a])
	}
	return s
}

// PartsOf returns the shares of the axes that a family has, each lifted by the
// floor, and the share of every axis in the whole drink.
func PartsOf(axes []Axis, e *Equivalents) (parts []float64, share Equivalents, err error) {
	total := e.Total()
	if !(total > 0) {
		return nil, share, errors.New("the drink has no strength, sweetness, acid, bitterness or length to weigh")
	}
	for a := range e {
		share[a] = e[a] / total
	}
	parts = make([]float64, len(axes))
	for i, a := range axes {
		parts[i] = share[a] + Floors[a]
	}
	return parts, share, nil
}

// Softmax turns log-odds into probabilities, in place, and returns the logarithm of the sum
// of their exponentials.
func Softmax(z []float64) (logSum float64) {
	top := z[0]
	for _, v := range z {
		if v > top {
			top = v
		}
	}
	var sum float64
	for i, v := range z {
		z[i] = math.Exp(v - top)
		sum += z[i]
	}
	for i := range z {
		z[i] /= sum
	}
	return top + math.Log(sum)
}
