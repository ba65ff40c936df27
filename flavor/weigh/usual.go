package weigh

import (
	"math"
	"slices"

	"counterpour/flavor/habit"
	"counterpour/flavor/makeup"
)

// UsualPour returns how many mL of the ingredient of a pour are in the middle of good
// drinks, beside the rest of the drink with other amounts. How much that is depends on
// whether the drink is made of it, which is told by the answer.
func (b *Build) UsualPour(pour int, ml []float64) float64 {
	i := slices.IndexFunc(b.parts, func(p makeup.Part) bool { return slices.Contains(p.Pours, pour) })
	b.habit()
	at := slices.Clone(ml)
	for range usualRounds {
		size := b.sizeOf(at)
		share := size.share(&b.parts[i], at)
		r := b.reachOf(i, b.leading(i, at, b.largest(at), &size))
		rest := b.parts[i].Amount(at) / habit.Dose(share)
		at[pour] = max(0, at[pour]+rest*habit.Dose(math.Exp(r.Usual))-b.parts[i].Amount(at))
	}
	return at[pour]
}

// usualRounds is how often what is usual is asked anew, with what was.
const usualRounds = 3
