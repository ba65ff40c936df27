package drill

import (
	"math"
	"math/rand/v2"
	"slices"
	"sync/atomic"

	"counterpour/flavor"
	"counterpour/flavor/balance/threshold"
	"counterpour/flavor/drill/slip"
	"counterpour/flavor/drill/tasting"
	"counterpour/flavor/drill/wording"
	"counterpour/flavor/guest"
	"counterpour/flavor/mix"
	"counterpour/flavor/ratio"
	"counterpour/flavor/weigh"
)

// spoilable is a slip that moves an axis of a classic by a size.
type spoilable struct {
	classic int
	slip    slip.Slip
	high    bool
	size    float64
	idle    atomic.Bool // it was tried, and the engine does not fault it
}

// findSpoilable lists, by axis, the slips that move it, of the drinks from a place on.
func (t *Trainer) findSpoilable(from int) {
	for i := from; i < len(t.classics); i++ {
		s := &t.classics[i].spec
		slips := t.hand.Slips(s)
		var carriers [ratio.NumAxes]int
		for _, a := range ratio.Axes() {
			carriers[a], _ = tasting.Carrier(s, a)
		}
		before := ratio.EquivalentsOf(s)
		for _, x := range slips {
			spoilt := x.On(s)
			after := ratio.EquivalentsOf(&spoilt)
			for _, a := range ratio.Axes() {
				size := sizeOfSlip(a, before[a], after[a])
				if carriers[a] >= 0 && x.Touches(carriers[a]) && isOf(a, s, before) && size >= MinSize && size <= MaxSize {
					t.spoilable[a] = append(t.spoilable[a], &spoilable{classic: i, slip: x, high: after[a] > before[a], size: size})
				}
			}
		}
	}
}

// leastLong is the share of a drink's parts that length must be for anybody to speak of it:
// the juice of half a grapefruit in a short sour stretches nothing. Common practice, no source.
const leastLong = 0.2

// isOf reports whether a drink is one of which an axis is asked: something sours it that is
// spoken of as sour, so that nobody is asked for the acid of milk, and length is a good part
// of it.
func isOf(a ratio.Axis, s *flavor.Spec, has ratio.Equivalents) bool {
	switch a {
	case ratio.Sour:
		return side{axis: a}.tellsOf(s)
	case ratio.Long:
		return shareOf(has)[a] >= leastLong
	}
	return true
}

// sizeOfSlip is how far a slip moves an axis; where it leaves nothing of it, as far as a
// round goes.
func sizeOfSlip(a ratio.Axis, before, after float64) float64 {
	if after < shareFloor*before {
		return MaxSize
	}
	return tasting.JND(a, before, after)
}

// spoiling is one classic spoilt.
type spoiling struct {
	*spoilable
	spec flavor.Spec
	off  []side // all that is right
}

// nearTimes is how far a round may lie from the size asked for, as a factor, where any
// proven drink can be spoilt so near to it.
const nearTimes = 1.5

// spoiltRound spoils a classic along the axis by about the size. The engine itself must
// first fault that axis, or the same fault told from the other side, and the glass must
// say so too. All drinks that can be spoilt so are as likely to come.
func (t *Trainer) spoiltRound(r RoundRequest, rng *rand.Rand) (*Round, error) {
	found, err := t.spoil(&r, rng)
	if err != nil {
		return nil, err
	}
	c := &t.classics[found.classic]
	round := &Round{Request: r, Size: found.size, Specs: []flavor.Spec{found.spec},
		key: key{axis: r.Axis, high: found.high, pour: found.slip.Moved[0].At, slip: found.slip, classic: c, off: found.off}}
	round.Question = wording.IsOff(c.spec.Name)
	if r.Kind == KindMend {
		round.Question = wording.ToMend(c.spec.Name)
	}
	return round, nil
}

// spoil looks among the slips of a size near to the one wanted, and then among those
// further from it.
func (t *Trainer) spoil(r *RoundRequest, rng *rand.Rand) (*spoiling, error) {
	g := r.Avoid.guest()
	var bands [][]*spoilable
	for _, x := range t.spoilable[r.Axis] {
		if t.classics[x.classic].own != r.Menu || r.Kind == KindMend && !x.slip.Mendable() {
			continue
		}
		band := int(math.Abs(math.Log(x.size/r.Size)) / math.Log(nearTimes) * (1 - 1e-9))
		for len(bands) <= band {
			bands = append(bands, nil)
		}
		bands[band] = append(bands[band], x)
	}
	var nearest *spoiling
	for _, band := range bands {
		found, err := t.workable(band, g, r.Axis, rng)
		if err != nil {
			return nil, err
		}
		if len(found) == 0 {
			continue
		}
		if rng.IntN(leastChoice) < len(found) {
			return found[0], nil
		}
		if nearest == nil {
			nearest = found[0]
		}
	}
	if nearest == nil {
		return nil, flavor.Invalid("axis", r.Axis.String(), "no proven drink can be spoilt along %v; %s", r.Axis, r.Avoid.remedy("ask for another axis"))
	}
	return nearest, nil
}

// leastChoice is how many drinks there should be to draw from: where fewer are of about the
// size wanted, each of them still comes no more often than one in so many times.
const leastChoice = 3

// workable draws drinks that a slip of a band throws off, one slip of each: leastChoice of
// them, or all there are. It stops at the first that comes so early that there must be
// more, and gives it so many times over.
func (t *Trainer) workable(band []*spoilable, g guest.Guest, a ratio.Axis, rng *rand.Rand) (found []*spoiling, err error) {
	drinks := shuffled(byClassic(band), rng)
	for n, ofOne := range drinks {
		if len(found) > 0 && n*leastChoice <= len(drinks) {
			return slices.Repeat(found[:1], leastChoice), nil
		}
		if len(found) == leastChoice {
			break
		}
		x, err := t.workableOf(shuffled(ofOne, rng), g, a)
		if err != nil {
			return nil, err
		}
		if x != nil {
			found = append(found, x)
		}
	}
	return found, nil
}

// workableOf returns the first of the slips of one drink that throws it off; nil if none
// does, or if the guest may not have it.
func (t *Trainer) workableOf(slips []*spoilable, g guest.Guest, a ratio.Axis) (*spoiling, error) {
	for _, x := range slips {
		c := &t.classics[x.classic]
		if !g.MayHaveAll(&c.spec) {
			return nil, nil
		}
		spec := x.slip.On(&c.spec)
		if x.idle.Load() || !g.MayHaveAll(&spec) {
			continue
		}
		if found, err := t.faulted(x, &spec, a); found != nil || err != nil {
			return found, err
		}
		x.idle.Store(true)
	}
	return nil, nil
}

// byClassic parts slips, which come in order of their drinks, by drink.
func byClassic(of []*spoilable) (out [][]*spoilable) {
	for i, x := range of {
		if i == 0 || of[i-1].classic != x.classic {
			out = append(out, nil)
		}
		out[len(out)-1] = append(out[len(out)-1], x)
	}
	return out
}

// faulted returns the drink with a slip if the engine faults it first for the axis, or for
// what is the same fault told from the other side, and the glass tells it; nil if not.
func (t *Trainer) faulted(x *spoilable, s *flavor.Spec, a ratio.Axis) (*spoiling, error) {
	score, err := t.judge.ScoreOnly(s)
	if err != nil || score >= weigh.BalancedFrom {
		return nil, err
	}
	result, err := t.judge.Score(s)
	if err != nil || len(result.Faults) == 0 {
		return nil, err
	}
	slipped := side{a, x.high}
	if first := (side{result.Faults[0].Axis, result.Faults[0].High}); first != slipped && first != slipped.mirror() {
		return nil, nil
	}
	if !slipped.isWhatHappened(t.classics[x.classic].drink, result.Drink) {
		return nil, nil
	}
	off, err := t.rightOf(&t.classics[x.classic], s, result, slipped)
	if err != nil {
		return nil, err
	}
	return &spoiling{x, *s, off}, nil
}

// gradeFault takes for right what a guest may say of the slip.
func (t *Trainer) gradeFault(r *Round, a *Answer) (*Grade, error) {
	k := &r.key
	if a.Axis < 0 || int(a.Axis) >= ratio.NumAxes {
		return nil, flavor.Invalid("axis", int(a.Axis), "the axis is not known; use one of %v", ratio.Axes())
	}
	said, slipped := side{a.Axis, a.High}, side{k.axis, k.high}
	g := &Grade{Right: slices.Contains(k.off, said),
		Before: ratio.EquivalentsOf(&k.classic.spec), After: ratio.EquivalentsOf(&r.Specs[0]),
		Solution: slipped.String()}
	for _, also := range k.off {
		if also != slipped {
			g.Solution += wording.RightAsWell(also.String())
		}
	}
	g.tellSlip(k)
	is, err := t.mixer.Mix(&r.Specs[0])
	if err != nil {
		return nil, err
	}
	g.Text = g.stepText(k.axis, k.classic.drink, is)
	if g.Right {
		g.Points = 1
		return g, nil
	}
	if tasted(said, k.classic, &r.Specs[0], is) {
		g.Points = 0.5 // it is in the glass, and not what a guest says first
	}
	g.Why = whyNot(said, k.classic.drink, is)
	return g, nil
}

// tellSlip says what the hand did, and what the drink is when poured as it should be.
func (g *Grade) tellSlip(k *key) {
	g.Slip = wording.Slip(&k.slip, &k.classic.spec)
	g.Proper = &k.classic.spec
	for _, m := range k.slip.Moved {
		g.Wrong = append(g.Wrong, m.At)
	}
}

// stepText is the arithmetic of one axis, before and after; length is said as it stands in the
// glass, since nobody counts it as water.
func (g *Grade) stepText(a ratio.Axis, proper, spoilt *mix.Drink) string {
	was, is := g.Before[a], g.After[a]
	text := wording.Slipped(a, was, is)
	if a == ratio.Long {
		text = wording.Stretched(proper, spoilt)
	}
	if is < shareFloor*was {
		return text + wording.HardlyLeft
	}
	return text + wording.Times(is/was, tasting.JND(a, was, is), threshold.Weber(a))
}

// shuffled returns a copy in an order that is drawn.
func shuffled[T any](of []T, rng *rand.Rand) []T {
	out := slices.Clone(of)
	rng.Shuffle(len(out), func(i, k int) { out[i], out[k] = out[k], out[i] })
	return out
}
