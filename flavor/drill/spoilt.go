package drill

import (
	"cmp"
	"fmt"
	"math"
	"math/rand/v2"
	"slices"

	"counterpour/flavor"
	"counterpour/flavor/balance"
	"counterpour/flavor/measure"
	"counterpour/flavor/mix"
	"counterpour/flavor/ratio"
	"counterpour/flavor/weigh"
)

// How hard it is tried to find a classic whose spoiling comes out in the size
// asked for.
const (
	spoilTries    = 16
	sizeTolerance = 0.15 // relative
	stepsTried    = 24   // of the jigger, each way
	leastShare    = 0.6  // of an axis that the pour to be spoilt must carry
)

// spoiling is one classic spoilt.
type spoiling struct {
	classic *classic
	spec    flavor.Spec
	pour    int
	high    bool
	size    float64
	off     []side // what lies out of the range of its family: the slip, and perhaps more
}

// side is too much or too little of an axis.
type side struct {
	axis ratio.Axis
	high bool
}

func (s side) String() string { return much(s.high) + " " + nounOf(s.axis) }

// spoiltRound spoils a classic along the axis by about the size, such that the
// engine's own first fault is that axis with that sign, and the range of its family
// shows it.
func (t *Trainer) spoiltRound(r RoundRequest, rng *rand.Rand) (*Round, error) {
	var best *spoiling
	off := func(s *spoiling) float64 { return math.Abs(math.Log(s.size / r.Size)) }
	for n, i := range rng.Perm(len(t.spoilable[r.Axis])) {
		if best != nil && (n >= spoilTries || off(best) <= sizeTolerance) {
			break
		}
		x := &t.spoilable[r.Axis][i]
		s, err := t.spoil(&t.classics[x.classic], r.Axis, r.Size, x.high)
		if err != nil {
			return nil, err
		}
		if s != nil && (best == nil || off(s) < off(best)) {
			best = s
		}
	}
	if best == nil {
		return nil, flavor.Invalid("axis", r.Axis.String(), "no proven drink can be spoilt along %v; ask for another axis", r.Axis)
	}
	round := &Round{Request: r, Size: best.size, Specs: []flavor.Spec{best.spec},
		key: key{axis: r.Axis, high: best.high, pour: best.pour, classic: best.classic, off: best.off}}
	round.Question = fmt.Sprintf("This %s is off. What is there too much or too little of?", best.classic.spec.Name)
	if r.Kind == KindMend {
		round.Question = fmt.Sprintf("This %s is off. Change one pour to fix it.", best.classic.spec.Name)
	}
	return round, nil
}

// spoilable is a classic that too much or too little of an axis throws out of
// balance.
type spoilable struct {
	classic int
	high    bool
}

// findSpoilable tries the extremes of what a hand may pour by mistake.
func (t *Trainer) findSpoilable() error {
	for i := range t.classics {
		c := &t.classics[i]
		build, err := t.judge.Prepare(&c.spec)
		if err != nil {
			return fmt.Errorf("drill: proven drink %q: %w", c.spec.Name, err)
		}
		for _, a := range ratio.Axes() {
			at, _ := carrier(&c.spec, a)
			if at < 0 {
				continue
			}
			slips := slipsOf(&c.spec.Pours[at])
			for _, end := range []int{0, len(slips) - 1} {
				if end < 0 || end >= len(slips) {
					continue
				}
				ml := build.Amounts()
				ml[at] = slips[end].ml
				if build.Score(ml) < weigh.BalancedFrom {
					t.spoilable[a] = append(t.spoilable[a], spoilable{classic: i, high: slips[end].amount > c.spec.Pours[at].Amount})
				}
			}
		}
	}
	return nil
}

// slip is an amount poured by mistake.
type slip struct{ amount, ml float64 }

// slipsOf lists the amounts of a pour that a slip of the hand may make, ascending.
func slipsOf(p *flavor.Pour) (out []slip) {
	per, ok := measure.MLPerUnit(p.Unit, p.Profile)
	if !ok {
		return nil
	}
	most := mostPoured(p)
	for _, amount := range measure.Neighbours(p.Amount, p.Unit, stepsTried) {
		if amount <= most {
			out = append(out, slip{amount, amount * per})
		}
	}
	return out
}

// spoil moves the pour that carries an axis by steps of the jigger, to the size
// nearest to the one wanted that the engine faults for it. It is nil if there is
// none.
func (t *Trainer) spoil(c *classic, a ratio.Axis, size float64, high bool) (*spoiling, error) {
	at, have := carrier(&c.spec, a)
	if at < 0 {
		return nil, nil
	}
	p := &c.spec.Pours[at]
	build, err := t.judge.Prepare(&c.spec)
	if err != nil {
		return nil, err
	}
	carries, ml := ratio.PerML(p.Profile)[a], build.Amounts()
	var found []spoiling
	for _, x := range slipsOf(p) {
		after := have + carries*(x.ml-p.ML)
		if x.amount > p.Amount != high || after <= 0 {
			continue
		}
		if ml[at] = x.ml; build.Score(ml) >= weigh.BalancedFrom {
			continue
		}
		s := c.spec.Clone()
		s.Pours[at].Amount, s.Pours[at].ML = x.amount, x.ml
		found = append(found, spoiling{classic: c, spec: s, pour: at, high: high, size: jndOf(a, have, after)})
	}
	slices.SortStableFunc(found, func(x, y spoiling) int {
		return cmp.Compare(math.Abs(math.Log(x.size/size)), math.Abs(math.Log(y.size/size)))
	})
	return t.faulted(found, a, high)
}

// mostPoured is the most that a slip of the hand would pour, in the unit of p.
func mostPoured(p *flavor.Pour) float64 {
	switch p.Unit {
	case flavor.Dash, flavor.Drop:
		return p.Amount + 6
	}
	return 4 * p.Amount
}

// looks is how many ways to spoil a classic are judged in full.
const looks = 3

// faulted returns the first of the spoilings that the engine faults for the
// axis with the sign and that lies out of the range of its family there, nil if
// there is none. One comes first in which whatever lies out of range is tasted: all of it
// is a right answer, as the ranges show it.
func (t *Trainer) faulted(found []spoiling, a ratio.Axis, high bool) (*spoiling, error) {
	var first *spoiling
	for i := range found[:min(len(found), looks)] {
		result, err := t.judge.Score(&found[i].spec)
		if err != nil {
			return nil, err
		}
		if len(result.Faults) == 0 || len(result.Judgement.Fits) == 0 || result.Faults[0].Axis != a || result.Faults[0].High != high {
			continue
		}
		off, err := t.outOfRange(&found[i].spec, result.Judgement.Fits[0].ID)
		if err != nil {
			return nil, err
		}
		if slip := (side{a, high}); slices.Contains(off, slip) {
			found[i].off = off
			if !slices.ContainsFunc(off, func(x side) bool { return x != slip && !opposes(x, slip) && !tasted(x, &found[i], result.Drink) }) {
				return &found[i], nil
			}
			if first == nil {
				first = &found[i]
			}
		}
	}
	return first, nil
}

// opposes reports whether one side is the other of sugar against acid: with too little lime
// a drink is too sweet, whatever sugar the glass holds.
func opposes(x, slip side) bool {
	return x.high != slip.high && (x.axis == ratio.Sweet && slip.axis == ratio.Sour || x.axis == ratio.Sour && slip.axis == ratio.Sweet)
}

// tasted reports whether a spoilt drink has so much more or less of an axis in the glass
// that a guest tells it: the shares of a ratio hang together, so that with less gin the acid
// of the vermouth is out of range, and nobody calls that drink sharp. Of acid it must be a
// drink that something sours.
func tasted(x side, s *spoiling, is *mix.Drink) bool {
	sours := s.spec.HasPart(flavor.PartSour)
	if x.axis == ratio.Sour && !sours {
		return false
	}
	steps := balance.JND(x.axis, math.Log(glassOf(x.axis, is)/glassOf(x.axis, s.classic.drink)))
	if !x.high {
		steps = -steps
	}
	return steps >= 1
}

// outOfRange lists the axes on which a drink lies out of the range of a family.
func (t *Trainer) outOfRange(s *flavor.Spec, family string) ([]side, error) {
	build, err := t.set.Prepare(s)
	if err != nil {
		return nil, err
	}
	bands, ok := build.Bands(family, build.Amounts())
	if !ok {
		return nil, nil // nothing is drawn for it
	}
	var out []side
	for a, has := range build.Equivalents(build.Amounts()) {
		switch band := bands[a]; {
		case has > band.High:
			out = append(out, side{ratio.Axis(a), true})
		case band.Has && has < band.Low:
			out = append(out, side{ratio.Axis(a), false})
		}
	}
	return out, nil
}

// carrier returns the pour that brings most of an axis and what the drink has
// of it, −1 if no pour brings enough to be the one at fault.
func carrier(s *flavor.Spec, a ratio.Axis) (int, float64) {
	best, most := -1, 0.0
	for i := range s.Pours {
		if v := ratio.PerML(s.Pours[i].Profile)[a] * s.Pours[i].ML; v > most {
			best, most = i, v
		}
	}
	have := ratio.EquivalentsOf(s)[a]
	if best < 0 || most < leastShare*have {
		return -1, 0
	}
	return best, have
}

// gradeFault takes for right whatever lies out of the range of the family: the slip
// itself, and what it left too much or too little of.
func (t *Trainer) gradeFault(r *Round, a *Answer) (*Grade, error) {
	k := &r.key
	if a.Axis < 0 || int(a.Axis) >= ratio.NumAxes {
		return nil, flavor.Invalid("axis", int(a.Axis), "the axis is not known; use one of %v", ratio.Axes())
	}
	said, slip := side{a.Axis, a.High}, side{k.axis, k.high}
	g := &Grade{Right: slices.Contains(k.off, said),
		Before: ratio.EquivalentsOf(&k.classic.spec), After: ratio.EquivalentsOf(&r.Specs[0]),
		Solution: slip.String()}
	for _, also := range k.off {
		if also != slip {
			g.Solution += "; " + also.String() + " is right as well"
		}
	}
	switch {
	case g.Right:
		g.Points = 1
	case a.Axis == k.axis:
		g.Points = 0.5
	}
	g.Text = g.stepText(k.axis, k.classic.spec.Name)
	return g, nil
}

func much(high bool) string {
	if high {
		return "too much"
	}
	return "too little"
}

// stepText is the arithmetic of one axis, before and after.
func (g *Grade) stepText(a ratio.Axis, name string) string {
	was, is := g.Before[a], g.After[a]
	return fmt.Sprintf("%s is as %s as %.0f ml of %s would make it, this one as %.0f ml. That is %.2f times as much, %.1f noticeable steps of %.0f %%.",
		name, a, was, measureOf(a), is, is/was, jndOf(a, was, is), 100*balance.Weber(a))
}

// nounOf names an axis as a thing that there is more or less of.
func nounOf(a ratio.Axis) string {
	return [ratio.NumAxes]string{"strength", "sweetness", "acid", "bitterness", "length"}[a]
}

// measureOf names what an axis is counted in.
func measureOf(a ratio.Axis) string {
	return [ratio.NumAxes]string{"40 % spirit", "1:1 syrup", "lemon juice", "red bitter aperitif", "length"}[a]
}

// gradeMend takes any one move that the engine scores as balanced.
func (t *Trainer) gradeMend(r *Round, a *Answer) (*Grade, error) {
	s := r.Specs[0].Clone()
	if a.Pour < 0 || a.Pour >= len(s.Pours) {
		return nil, flavor.Invalid("pour", a.Pour, "there is no pour %d; use 0 to %d", a.Pour, len(s.Pours)-1)
	}
	p := &s.Pours[a.Pour]
	ml, err := measure.ToML(a.Amount, p.Unit, p.Profile)
	if err != nil {
		return nil, err
	}
	before, err := t.judge.ScoreOnly(&s)
	if err != nil {
		return nil, err
	}
	from := measure.FormatAmount(p.Amount, p.Unit)
	p.Amount, p.ML = a.Amount, ml
	after, err := t.judge.ScoreOnly(&s)
	if err != nil {
		return nil, err
	}
	k := &r.key
	g := &Grade{Right: after >= weigh.BalancedFrom, Before: ratio.EquivalentsOf(&r.Specs[0]), After: ratio.EquivalentsOf(&s)}
	g.Points = 1
	if !g.Right {
		g.Points = max(0, min(0.5, (after-before)/(weigh.BalancedFrom-before)/2))
	}
	was := &k.classic.spec.Pours[k.pour]
	g.Solution = fmt.Sprintf("%s of %s, or any other move that scores %.0f", measure.FormatAmount(was.Amount, was.Unit), was.Profile.Name, weigh.BalancedFrom)
	g.Text = fmt.Sprintf("With %s of %s instead of %s the drink scores %.1f, from %.1f; balanced begins at %.0f. ", measure.FormatAmount(a.Amount, p.Unit),
		p.Profile.Name, from, after, before, weigh.BalancedFrom)
	g.Text += fmt.Sprintf("Its %s goes from %.0f ml of %s to %.0f ml; the classic has %.0f ml.", nounOf(k.axis), g.Before[k.axis], measureOf(k.axis),
		g.After[k.axis], ratio.EquivalentsOf(&k.classic.spec)[k.axis])
	return g, nil
}
