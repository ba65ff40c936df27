package drill

import (
	"cmp"
	"math"
	"math/rand/v2"
	"slices"

	"counterpour/flavor"
	"counterpour/flavor/drill/handling"
	"counterpour/flavor/drill/wording"
	"counterpour/flavor/ratio"
)

// What a wish for a size comes to where each way of making a drink wrong has a size of its
// own: common practice, no source. Were only the nearest dealt, one way would be the answer
// to every round of a size.
const (
	handLooks = 12  // drinks looked at
	handTimes = 2.5 // how far from the size asked for a way may lie, as a factor, to be drawn
)

// handRound shows a drink that is poured right and made wrong, by what stands in the glass,
// and asks what the hand did: one of the ways that show otherwise than the other answers by
// about the size, each as likely as another.
func (t *Trainer) handRound(r RoundRequest, rng *rand.Rand) (*Round, error) {
	rounds, err := t.ofEachWay(r, rng)
	if err != nil {
		return nil, err
	}
	if len(rounds) == 0 {
		return nil, flavor.Invalid("kind", string(r.Kind), "no drink can be made wrong in %d ways that the glass tells apart; %s", optionsShown, r.Avoid.remedy("ask for another kind"))
	}
	nearest := slices.MinFunc(rounds, func(a, b *Round) int { return cmp.Compare(a.offSize(), b.offSize()) })
	near := slices.DeleteFunc(rounds, func(x *Round) bool { return x.offSize() > math.Log(handTimes) })
	if len(near) == 0 {
		return nearest, nil
	}
	return near[rng.IntN(len(near))], nil
}

// offSize is how far a round came out from the size asked for, as a logarithm.
func (r *Round) offSize() float64 { return math.Abs(math.Log(r.Size / r.Request.Size)) }

// ofEachWay returns, of each way to make a drink wrong, the round nearest to the size among a
// few drinks, or among as many as it takes to find one.
func (t *Trainer) ofEachWay(r RoundRequest, rng *rand.Rand) (out []*Round, err error) {
	var best [handling.NumWays]*Round
	served := t.served(&r)
	for n, i := range rng.Perm(len(served)) {
		if n >= handLooks && best != [handling.NumWays]*Round{} {
			break
		}
		c := &t.classics[served[i]]
		proper, made, err := t.bench.Mishaps(&c.spec)
		if err != nil {
			return nil, err
		}
		for of := range made {
			way := made[of].Way
			if x := handOptions(r, c, &proper, made, of, rng); x != nil && (best[way] == nil || x.offSize() < best[way].offSize()) {
				best[way] = x
			}
		}
	}
	for _, x := range best {
		if x != nil {
			out = append(out, x)
		}
	}
	return out, nil
}

// handOptions is a round of one mishap among others of the same drink that show otherwise by
// a noticeable step at least; nil if there are too few.
func handOptions(r RoundRequest, c *classic, proper *handling.Served, made []handling.Mishap, of int, rng *rand.Rand) *Round {
	right := &made[of]
	round := &Round{Request: r, Size: MaxSize, Specs: []flavor.Spec{c.spec}, key: key{classic: c, proper: *proper},
		Question: wording.WhatDid(c.spec.Name, &right.Served, proper)}
	for _, i := range rng.Perm(len(made)) {
		x := &made[i]
		if i != of {
			steps := x.Steps(&right.Served)
			if steps < leastTasted {
				continue
			}
			round.Size = min(round.Size, steps)
		} else {
			round.key.option = len(round.Options)
		}
		round.Options = append(round.Options, Option{Label: wording.Did(x.Way)})
		round.key.made = append(round.key.made, *x)
	}
	if len(round.Options) < optionsShown {
		return nil
	}
	return round
}

func gradeHand(r *Round, a *Answer) (*Grade, error) {
	if err := checkOption(r, a); err != nil {
		return nil, err
	}
	k := &r.key
	e := ratio.EquivalentsOf(&k.classic.spec)
	g := &Grade{Right: a.Option == k.option, Before: e, After: e, Solution: r.Options[k.option].Label, Text: wording.Watered(&k.proper, &k.made[k.option])}
	if g.Right {
		g.Points = 1
	} else {
		g.Why = wording.NotDone(&k.made[a.Option])
	}
	return g, nil
}
