package measure

import (
	"math"
	"slices"

	"counterpour/flavor"
)

// grid is the amounts of a unit that a hand can pour: multiples of fine up to limit, then
// multiples of coarse. A limit of zero means multiples of fine only. Common practice:
// jiggers are marked at the quarter ounce, and in metric at 7.5 and 22.5 mL beside the
// fives.
type grid struct{ fine, limit, coarse float64 }

// slack is the rounding tolerance of comparisons with the grid.
const slack = 1e-9

// maxSteps limits what [Neighbours] returns on either side.
const maxSteps = 100

// above returns the next amount on the grid above x.
func (g grid) above(x float64) float64 {
	step := g.fine
	if g.limit > 0 && x >= g.limit-slack {
		step = g.coarse
	}
	return (math.Floor(x/step+slack) + 1) * step
}

// below returns the next amount on the grid below x; it may be zero.
func (g grid) below(x float64) float64 {
	if g.limit > 0 && x > g.limit+slack {
		return math.Max(g.limit, (math.Ceil(x/g.coarse-slack)-1)*g.coarse)
	}
	return (math.Ceil(x/g.fine-slack) - 1) * g.fine
}

func (g grid) nearest(x float64) float64 {
	if x <= g.fine {
		return g.fine
	}
	low := g.below(x)
	high := g.above(low)
	if x-low < high-x {
		return low
	}
	return high
}

// Step returns the smallest step in u that a bartender pours: ¼ oz, 2.5 ml,
// half a barspoon, one dash, one leaf. It is 1 for an unknown unit.
func Step(u flavor.Unit) float64 {
	if info, ok := infoOf(u); ok {
		return info.grid.fine
	}
	return 1
}

// Snap returns the amount in u that a hand can pour and that is nearest to ml
// millilitres of p, at least one step and at most what one pour may hold; of
// two equally near the larger. Metric steps are 2.5 ml up to 30 ml, then 5. It
// is zero if ml is not a finite number above zero or p does not come in u.
func Snap(ml float64, u flavor.Unit, p *flavor.Profile) float64 {
	per, ok := MLPerUnit(u, p)
	info, known := infoOf(u)
	if !ok || !known || !positive(ml) {
		return 0
	}
	if u == flavor.Top {
		return 1
	}
	return info.grid.nearest(math.Min(ml/per, info.grid.below(info.most+info.grid.fine)))
}

// What nobody counts out: more than mostDrops are dashes, and more than mostDashes of those a
// spoon. Common practice, no source.
const mostDrops, mostDashes = 10, 8

// Handy returns the unit and the amount of it in which a hand pours so many mL of p that are
// written in u: u itself, but for more drops than anybody counts. The amount is zero as Snap's
// is.
func Handy(ml float64, u flavor.Unit, p *flavor.Profile) (flavor.Unit, float64) {
	amount := Snap(ml, u, p)
	if u != flavor.Drop || amount <= mostDrops {
		return u, amount
	}
	if n := Snap(ml, flavor.Dash, p); n > 0 && n <= mostDashes {
		return flavor.Dash, n
	}
	if n := Snap(ml, flavor.Barspoon, p); n > 0 {
		return flavor.Barspoon, n
	}
	return u, amount
}

// Neighbours returns up to n amounts in u that a hand can pour below the given
// one and up to n above it, ascending, without the amount itself. All are
// above zero and within what one pour may hold. It is nil for an unknown unit,
// for a top, which is as much as fits, and for an amount that is not a finite
// number above zero.
func Neighbours(amount float64, u flavor.Unit, n int) []float64 {
	info, ok := infoOf(u)
	if !ok || u == flavor.Top || !positive(amount) || amount > info.most {
		return nil
	}
	n = min(n, maxSteps)
	var out []float64
	for i, x := 0, info.grid.below(amount); i < n && x > slack; i++ {
		out = append(out, x)
		x = info.grid.below(x)
	}
	slices.Reverse(out)
	for i, x := 0, info.grid.above(amount); i < n && x <= info.most; i++ {
		out = append(out, x)
		x = info.grid.above(x)
	}
	return out
}
