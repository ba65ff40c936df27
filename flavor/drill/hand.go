package drill

import (
	"fmt"
	"math"
	"math/rand/v2"

	"counterpour/flavor"
	"counterpour/flavor/drill/handling"
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
		proper, faults, err := t.bench.Faults(&c.spec)
		if err != nil {
			return nil, err
		}
		for _, of := range rng.Perm(len(faults)) {
			if x := handOptions(r, c, &proper, faults, of, rng); x != nil && (best == nil || off(x) < off(best)) {
				best = x
			}
		}
	}
	if best == nil {
		return nil, flavor.Invalid("kind", string(r.Kind), "no drink can be made wrong in %d ways that the glass tells apart; %s", optionsShown, r.Avoid.remedy("ask for another kind"))
	}
	return best, nil
}

// handOptions is a round of one fault among others of the same drink that show otherwise by a
// noticeable step at least; nil if there are too few.
func handOptions(r RoundRequest, c *classic, proper *handling.Glass, faults []handling.Fault, of int, rng *rand.Rand) *Round {
	right := &faults[of]
	round := &Round{Request: r, Size: MaxSize, Specs: []flavor.Spec{c.spec}, key: key{classic: c, names: []string{right.Did},
		text: fmt.Sprintf("Properly made it takes %.0f %% of water from the ice, here %.0f %%. %s", proper.WaterPct, right.WaterPct, right.Mend)}}
	round.Question = fmt.Sprintf("This %s was poured right and made wrong. In the glass: %s. Made properly: %s. What did the hand do?", c.spec.Name, right, proper)
	for _, i := range rng.Perm(len(faults)) {
		x := &faults[i]
		if i != of {
			steps := x.Steps(&right.Glass)
			if steps < leastTasted {
				continue
			}
			round.Size = min(round.Size, steps)
		} else {
			round.key.option = len(round.Options)
		}
		round.Options = append(round.Options, Option{Label: x.Did})
		round.key.shows = append(round.key.shows, x.String())
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
	g := &Grade{Right: a.Option == k.option, Before: e, After: e, Solution: k.names[0], Text: k.text}
	if g.Right {
		g.Points = 1
	} else {
		g.Why = fmt.Sprintf("Not %s: that would stand at %s.", r.Options[a.Option].Label, k.shows[a.Option])
	}
	return g, nil
}
