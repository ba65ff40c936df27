package sense

import (
	"cmp"
	"math"
	"slices"

	"counterpour/flavor"
)

// masked is the share of a glass's strongest aroma below which a guest does not pick
// another out, however many steps it moves by itself. Common practice, no source.
const masked = 0.1

// AromaMove is by how many steps the aroma of a family moved: up where positive.
type AromaMove struct {
	Family flavor.AromaFamily
	Steps  float64
}

// AromasMoved returns the families that moved between two drinks by at least so many steps,
// of those that a guest notices beside the strongest of either; the largest move first.
func AromasMoved(from, to *flavor.Aroma, least float64) []AromaMove {
	var moved []AromaMove
	before, after := slices.Max(from[:]), slices.Max(to[:])
	for f := range numFamilies {
		a, b := from[f], to[f]
		steps := StepsBetween(Aroma, a, b)
		if math.Abs(steps) >= least && (a >= masked*before || b >= masked*after) {
			moved = append(moved, AromaMove{flavor.AromaFamily(f), steps})
		}
	}
	slices.SortStableFunc(moved, func(a, b AromaMove) int { return cmp.Compare(math.Abs(b.Steps), math.Abs(a.Steps)) })
	return moved
}
