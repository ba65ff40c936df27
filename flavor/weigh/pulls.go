package weigh

import (
	"cmp"
	"math"
	"slices"

	"counterpour/flavor/makeup"
	"counterpour/flavor/ratio"
	"counterpour/flavor/template"
)

// Pull is an axis that may be what is wrong with a drink.
type Pull struct {
	Axis ratio.Axis
	// Change is the natural logarithm of the factor that would bring the
	// axis back, all else kept: negative if there is too much of it. If there
	// is none at all it counts from the least share that can be told from none.
	Change float64
	// Odds is how probable it is that this axis, of all, went wrong. The odds
	// of a drink's pulls sum to one.
	Odds float64
	// Gain is the share of the squared distance from the centre that the
	// change takes away.
	Gain float64

	// Family is the id of the one in which it is likeliest.
	Family string

	to float64 // mL of the axis, mended
}

// slipScale is the mean size of a slip, as a logarithm: large slips are rarer than small
// ones. Common practice.
const slipScale = 1.0

// sizePeak is the logarithm of how usual the usual size is, a little more for rounding.
var sizePeak = template.SizeDensity(0, 0) + 1e-9

// slips are the changes of an axis that are weighed, as logarithms of its
// lifted share.
const (
	slipStep = 0.25
	mostSlip = 3.0
)

// leastChance is the probability by make-up below which a family has no say
// in what is wrong.
const leastChance = 0.03

// whatIsWrong returns the pulls of the drink as it was last placed, size mL in
// all, and those that stay once the first of them is mended.
func (b *Build) whatIsWrong(size float64, e *ratio.Equivalents, signals *makeup.Signals) (pulls, then []Pull) {
	chances := b.chances(signals)
	d := draft{e: *e, total: e.Total(), size: size}
	pulls = b.pulls(&d, chances)
	if len(pulls) == 0 {
		return pulls, nil
	}
	mended := d.with(pulls[0].Axis, pulls[0].to)
	b.place(&mended.e, mended.size, signals)
	if b.mean() >= BalancedFrom {
		return pulls, nil
	}
	return pulls, b.pulls(&mended, chances)
}

// draft is a drink whose slips are sought.
type draft struct {
	e     ratio.Equivalents
	total float64 // of e
	size  float64 // mL of the pours
}

// with returns the draft with another amount of one axis. Bitterness takes up
// no room.
func (d *draft) with(a ratio.Axis, ml float64) draft {
	out := *d
	out.e[a] = ml
	out.total = out.e.Total()
	if a != ratio.Bitter {
		out.size = math.Max(1, d.size+ml-d.e[a])
	}
	return out
}

// pulls weighs, for each axis, that it alone went wrong in an otherwise good
// drink, in every family that the drink may belong to; of each it takes the
// likeliest amount. The drink must be the one that was placed last.
func (b *Build) pulls(d *draft, chances []float64) []Pull {
	slips := b.slips(d, chances)
	if len(slips) == 0 {
		return nil
	}
	top := slices.MaxFunc(slips, func(x, y slip) int { return cmp.Compare(x.weight, y.weight) }).weight
	var out []Pull
	var total float64
	for _, axis := range ratio.Axes() {
		p, most := Pull{Axis: axis}, 0.0
		for _, s := range slips {
			if s.axis != axis {
				continue
			}
			w := math.Exp(s.weight - top)
			if w > most || p.Odds == 0 {
				most = w
				p.Change, p.Gain, p.to, p.Family = s.change, s.gain, s.to, s.family
			}
			p.Odds += w
		}
		if p.Odds > 0 {
			out = append(out, p)
			total += p.Odds
		}
	}
	for i := range out {
		out[i].Odds /= total
	}
	slices.SortStableFunc(out, func(x, y Pull) int { return cmp.Compare(y.Odds, x.Odds) })
	return out
}

// slips returns the likeliest slip of each axis in each family that the drink
// may belong to.
func (b *Build) slips(d *draft, chances []float64) []slip {
	var out []slip
	likeliest := b.likeliest()
	for i, chance := range chances {
		if chance < leastChance && i != likeliest {
			continue
		}
		for _, a := range ratio.Axes() {
			if b.model(i).Has[a] || b.fits[i].Excess[a] > 0 {
				s := b.slipOf(i, a, d)
				s.weight += math.Log(chance)
				out = append(out, s)
			}
		}
	}
	return out
}

// chances returns the probability of each active family by the make-up alone.
func (b *Build) chances(signals *makeup.Signals) []float64 {
	out := make([]float64, len(b.active))
	for i := range out {
		out[i] = b.voices[i].logit(signals)
	}
	ratio.Softmax(out)
	return out
}
