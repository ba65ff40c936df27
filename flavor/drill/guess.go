package drill

import (
	"math"
	"math/rand/v2"
	"slices"

	"counterpour/flavor"
	"counterpour/flavor/drill/wording"
	"counterpour/flavor/ratio"
	"counterpour/flavor/sense"
)

// Steps returns how many just-noticeable differences a size comes to. They are
// the same, but for a guess: a recipe is read with the head, not the tongue, and
// so a guess may be out by a twelfth of its size. At a size of 12 that is
// one difference: whoever drank the guess in place of the drink would just
// notice. For 20 % vol and 150 mL that is ± 2 % vol and ± 15 mL, and at the usual
// start half of both.
func Steps(k Kind, size float64) float64 {
	if k == KindGuess {
		return size / guessesPerStep
	}
	return size
}

// guessesPerStep is how many sizes of a guess come to one just-noticeable difference.
const guessesPerStep = 12.0

// tolerance is how far out a guess may be at a size, as a share of what is
// guessed: (1 + w) to the steps, less one, with the Weber fraction w.
func tolerance(size, weber float64) float64 {
	return math.Expm1(Steps(KindGuess, size) * math.Log1p(weber))
}

// sizeOf is the size at which a guess at a whole may be so far out, without end
// where there is nothing to guess.
func sizeOf(out, whole, weber float64) float64 {
	if whole <= 0 {
		return math.Inf(1)
	}
	return guessesPerStep * math.Log1p(out/whole) / math.Log1p(weber)
}

// Nobody is asked to guess finer than this, however weak or short the drink: a whole per
// cent, and what a hand pours over or under the line of a jigger twice. How far out a guess
// may be is said in halves of a per cent and in the marks of a jigger (common practice, no
// source).
const (
	finestABV    = 1.0  // % vol
	finestVolume = 10.0 // mL
	grainABV     = 0.5
	grainVolume  = 5.0
)

// upTo is the next multiple of a grain.
func upTo(v, grain float64) float64 { return grain * math.Ceil(v/grain-1e-9) }

// guessRound asks for the finished strength and volume of a drink. A guess may
// always be out by the reckoning's own spread and by what nobody is asked for:
// where that is more than the size allows, the round comes out larger than asked
// for, by the tighter of the two.
func (t *Trainer) guessRound(r RoundRequest, rng *rand.Rand) (*Round, error) {
	served := slices.DeleteFunc(t.served(&r), func(i int) bool { return t.classics[i].drink.ABV < finestABV })
	if len(served) == 0 {
		return nil, flavor.Invalid("avoid", r.Avoid.List(), "no proven drink is known to hold none of them; avoid fewer allergens")
	}
	c := &t.classics[served[rng.IntN(len(served))]]
	d := c.drink
	abv := upTo(max(finestABV, d.PlusMinus.ABV, d.ABV*tolerance(r.Size, sense.Ethanol.Weber())), grainABV)
	volume := upTo(max(finestVolume, d.PlusMinus.VolumeML, d.VolumeML*tolerance(r.Size, sense.Volume.Weber())), grainVolume)
	size := min(MaxSize, sizeOf(abv, d.ABV, sense.Ethanol.Weber()), sizeOf(volume, d.VolumeML, sense.Volume.Weber()))
	return &Round{Request: r, Size: size, Specs: []flavor.Spec{c.spec},
		Question: wording.ToGuess(&c.spec, abv, volume),
		key:      key{classic: c, values: []float64{d.ABV, abv, d.VolumeML, volume}}}, nil
}

func gradeGuess(r *Round, a *Answer) (*Grade, error) {
	if !(a.ABV >= 0 && a.ABV <= 100) {
		return nil, flavor.Invalid("abv", a.ABV, "%v is no strength; guess 0 to 100 %% vol", a.ABV)
	}
	if !(a.Volume > 0 && a.Volume < 1e6) {
		return nil, flavor.Invalid("volume", a.Volume, "%v ml is no volume; guess more than 0", a.Volume)
	}
	k := &r.key
	d := k.classic.drink
	g := &Grade{Before: ratio.EquivalentsOf(&k.classic.spec), After: ratio.EquivalentsOf(&k.classic.spec)}
	strong := math.Abs(a.ABV-k.values[0]) <= k.values[1]
	large := math.Abs(a.Volume-k.values[2]) <= k.values[3]
	g.Right = strong && large
	for _, ok := range []bool{strong, large} {
		if ok {
			g.Points += 0.5
		}
	}
	g.Solution = wording.Size(d)
	g.Text = wording.Guessed(d, math.Abs(a.ABV-d.ABV), math.Abs(a.Volume-d.VolumeML))
	switch {
	case strong && !large:
		g.Why = wording.StrengthOnly
	case large && !strong:
		g.Why = wording.VolumeOnly
	}
	return g, nil
}
