package aim

import (
	"math"

	"counterpour/flavor"
	"counterpour/flavor/riff/wish"
	"counterpour/flavor/sense"
)

// aimBeyond is how many just-noticeable differences are aimed beyond a wish, so that rounding
// does not undo it.
const aimBeyond = 0.15

// Ready are wishes for more or less made ready to be weighed, again and again, against
// amounts of the same pours.
type Ready struct {
	wishes [][]way // of each wish, what meets it
}

// way is one way to meet a wish.
type way struct {
	*Aim
	before float64
	per    []float64 // of each pour, in a millilitre
}

// Prepare readies wishes for the pours of a draft, held against a drink that was mixed.
func Prepare(space *sense.Space, aims []Aim, from *Mixed, draft *flavor.Spec) Ready {
	var r Ready
	for i := range aims {
		var ways []way
		for _, a := range aims[i].ways() {
			w := way{Aim: a, before: a.in(from), per: make([]float64, len(draft.Pours))}
			for k := range draft.Pours {
				w.per[k] = a.PerML(space, draft.Pours[k].Profile)
			}
			ways = append(ways, w)
		}
		r.wishes = append(r.wishes, ways)
	}
	return r
}

// Lacks sums how many just-noticeable differences amounts of the pours, in mL, fall short of
// each wish, in a drink of so many mL when finished.
func (r *Ready) Lacks(ml []float64, volume float64) (lack float64) {
	for _, ways := range r.wishes {
		least := math.Inf(1)
		for k := range ways {
			least = min(least, ways[k].lacks(ml, volume))
		}
		if lack += least; least > aimBeyond {
			lack += unmet
		}
	}
	return lack
}

// unmet is what a wish that is not met lacks beside what it falls short by: a draft that
// misses by a hair is thrown away as any other.
const unmet = 0.3

func (w *way) lacks(ml []float64, volume float64) float64 {
	after := volume
	if w.sense != sense.Volume || w.kind == wish.Poured {
		after = 0
		for i := range ml {
			after += ml[i] * w.per[i]
		}
		if !w.total {
			after /= volume
		}
	}
	return max(0, w.Least+aimBeyond-w.steps(w.before, after))
}
