package drill

import (
	"math"
	"math/rand/v2"

	"counterpour/flavor"
	"counterpour/flavor/drill/handling"
	"counterpour/flavor/drill/wording"
	"counterpour/flavor/ratio"
)

// handRound shows a drink that is poured right and made wrong, by what stands in the glass,
// and asks what the hand did. The other answers would show otherwise by about the size.
func (t *Trainer) handRound(r RoundRequest, rng *rand.Rand) (*Round, error) {
	var best *Round
	off := func(x *Round) float64 { return math.Abs(math.Log(x.Size / r.Size)) }
	served := t.served(&r)
	for n, i := range rng.Perm(len(served)) {
		if best != nil && (n >= coverLooks || off(best) <= math.Log(nearTimes)) {
			break
		}
		c := &t.classics[served[i]]
		proper, made, err := t.bench.Mishaps(&c.spec)
		if err != nil {
			return nil, err
		}
		for _, of := range rng.Perm(len(made)) {
			if x := handOptions(r, c, &proper, made, of, rng); x != nil && (best == nil || off(x) < off(best)) {
				best = x
			}
		}
	}
	if best == nil {
		return nil, flavor.Invalid("kind", string(r.Kind), "no drink can be made wrong in %d ways that the glass tells apart; %s", optionsShown, r.Avoid.remedy("ask for another kind"))
	}
	return best, nil
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
