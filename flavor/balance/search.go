package balance

import (
	"math"
	"slices"

	"counterpour/flavor"
	"counterpour/flavor/mix"
	"counterpour/flavor/ratio"
	"counterpour/flavor/weigh"
)

// fixing is the search for what mends a draft.
type fixing struct {
	judge  *Judge
	spec   *flavor.Spec
	base   float64 // score of the draft
	faults []Fault
	build  *weigh.Build
	ml     []float64 // of the draft, changed and put back in the search
	found  []candidate
}

// comfortable is the score at which a pour has gone far enough: balanced, with
// room for what a hand and a fruit stray.
const comfortable = 90.0

// plain is the same for what is too much in itself: it goes back to where it no
// longer shows.
const plain = 92.0

// mended reports whether something was found that balances the draft.
func (f *fixing) mended() bool {
	return slices.ContainsFunc(f.found, func(c candidate) bool { return c.balanced() && !c.small })
}

// smallShare is the share of a draft below which what a fix leaves of it is hardly a
// drink.
const smallShare = 0.5

// keep takes a candidate into what was found, if it is worth telling.
func (f *fixing) keep(c candidate) {
	after := f.spec.VolumeML()
	for i := range c.changes {
		after += c.changes[i].ToML - c.changes[i].FromML
	}
	c.puts = c.puts || f.rids(&c)
	c.small = c.part == "" && after < smallShare*f.spec.VolumeML()
	if c.score > f.base && !f.heady(c.changes) && !f.bursts(c) {
		f.found = append(f.found, c)
	}
}

// score is that of the draft with one pour at another amount.
func (f *fixing) score(pour int, ml float64) float64 {
	was := f.ml[pour]
	f.ml[pour] = ml
	score := f.build.Score(f.ml)
	f.ml[pour] = was
	return score
}

// along looks for the amount on a ladder that mends the draft: the first that
// scores enough or, if none does, the best. The score rises and falls along a
// ladder, so strides grow until it does either, and the rest is halved.
func (f *fixing) along(pour int, ladder []Change, enough float64) (at int, score float64) {
	if len(ladder) == 0 {
		return -1, 0
	}
	scores := make([]float64, len(ladder))
	for i := range scores {
		scores[i] = -1
	}
	of := func(i int) float64 {
		if scores[i] < 0 {
			scores[i] = f.score(pour, ladder[i].ToML)
		}
		return scores[i]
	}
	best, last := 0, len(ladder)-1
	for i, before := 0, -1; i <= last; {
		x := of(i)
		if x >= enough {
			at = first(of, before, i, enough)
			return at, of(at)
		}
		if x > of(best) {
			best = i
		} else if of(best) > f.base+leastLift && x < of(best)-leastLift {
			break // past the top
		}
		before = i
		if i == last {
			break
		}
		i = min(last, i+max(1, (i+1)/2))
	}
	// Around the best there may be a better one between the strides.
	for step := max(1, (best+1)/2); step >= 1; step /= 2 {
		for _, i := range []int{best - step, best + step} {
			if i >= 0 && i <= last && of(i) > of(best) {
				best = i
			}
		}
	}
	at = first(of, -1, best, min(enough, of(best)))
	return at, of(at)
}

// first returns the first place after low that scores enough; high does.
func first(of func(int) float64, low, high int, enough float64) int {
	for high-low > 1 {
		if mid := (low + high) / 2; of(mid) >= enough {
			high = mid
		} else {
			low = mid
		}
	}
	return high
}

// without leaves out every pour of some ingredients.
func (f *fixing) without(is func(*flavor.Profile) bool) []Change {
	var out []Change
	for i := range f.spec.Pours {
		if o := &f.spec.Pours[i]; is(o.Profile) {
			out = append(out, Change{Pour: i, Profile: o.Profile, Unit: o.Unit, From: o.Amount, FromML: o.ML})
		}
	}
	return out
}

// byFaults moves the pours that the faults name, as they say.
func (f *fixing) byFaults() {
	for i := range f.faults {
		x := &f.faults[i]
		if x.Method != "" || x.forgotten() && i == 0 {
			continue
		}
		for _, pour := range f.askedPours(x) {
			p := &f.spec.Pours[pour]
			if x.High && f.watered(p) {
				f.tryWithout(i, 1, func(o *flavor.Profile) bool { return o == p.Profile })
				if f.mended() {
					continue
				}
			}
			ladder := f.served(ladderOf(p, pour, !x.High, x.Beyond))
			if x.Beyond && !x.Own || x.strange {
				ladder = nil // no proven drink pours it: leave it out
			}
			ladder = f.sober(ladder, x)
			if at, score := f.within(pour, ladder, x); at >= 0 {
				at, score = f.asSaid(pour, ladder, x, at, score)
				at, score = f.asUsual(pour, ladder, x, at, score)
				f.keep(candidate{changes: []Change{ladder[at]}, asked: i, steps: at + 1, score: score})
			}
		}
		if (x.Beyond || x.High && x.Profile != nil) && len(f.spec.Pours) > 1 {
			f.leaveOut(x.Profile, i)
		}
	}
}

// watered reports whether a pour is water that the ice brings anyway: nobody pours a
// little of it into what is shaken or stirred on ice.
func (f *fixing) watered(p *flavor.Pour) bool {
	s := f.spec
	return p.Profile.Class.Free() && (s.Service == flavor.Up || s.Service == flavor.Rocks) && s.Method != flavor.Build
}

// mostBaseML is how much of all bases a guest is served in one glass, a double and a
// little more. Judged.
const mostBaseML = 67.5

// served leaves of a ladder what pours no more alcohol than a fix may, and no more of the
// bases than a guest is served, or than the draft has.
func (f *fixing) served(ladder []Change) []Change {
	if len(ladder) == 0 || ladder[0].ToML < ladder[0].FromML {
		return ladder
	}
	most := math.Inf(1)
	if ladder[0].Profile.Class.Part() == flavor.PartBase && f.spec.VolumeML() < batchFromML {
		most = mostBaseML - (baseOf(f.spec) - ladder[0].FromML)
	}
	for i := range ladder {
		if ladder[i].ToML > most || f.heady(ladder[i:i+1]) {
			return ladder[:i]
		}
	}
	return ladder
}

// batchFromML is the mL from which a draft is for more than one guest.
const batchFromML = 500.0

// soberShare is the share of the most alcohol that drinks of a kind have, from which one
// glass of it has a usual amount. Judged.
const soberShare = 0.65

// sober leaves of a ladder, if there is too much alcohol in the glass, what brings it to
// a usual amount: to stop just below the most is no way to mend a double base.
func (f *fixing) sober(ladder []Change, x *Fault) []Change {
	if !x.grams {
		return ladder
	}
	all := ethanol(f.spec)
	for i := range ladder {
		c := &ladder[i]
		if all+(c.ToML-c.FromML)*c.Profile.ABV.Value/100*mix.EthanolDensity <= soberShare*x.mostG {
			return ladder[i:]
		}
	}
	return ladder
}

// asSure is the score from which an amount mends a draft as surely as any.
const asSure = 86.0

// asSaid takes the amount on the ladder of a pour that the fault says, in place of the
// one that was found, if it mends the draft as surely: what is said and what is done
// should agree.
func (f *fixing) asSaid(pour int, ladder []Change, x *Fault, at int, score float64) (int, float64) {
	if x.moveML <= 0 || f.spec.Pours[pour].Profile != x.Profile {
		return at, score
	}
	said, away := at, math.Inf(1)
	for i := range ladder {
		if d := math.Abs(math.Abs(ladder[i].ToML-ladder[i].FromML) - x.moveML); d < away {
			said, away = i, d
		}
	}
	if x.holds(f.spec, pour) && ladder[said].ToML < ladder[said].FromML/2 {
		return at, score
	}
	if got := f.score(pour, ladder[said].ToML); got >= math.Min(score, asSure) && got >= weigh.BalancedFrom {
		return said, got
	}
	return at, score
}

// within goes along the ladder of a pour that a fault names, no further than the fault
// goes if that mends the draft: what is too much is not poured less of than half of
// what good drinks have at most, nor the base than half of what was ordered.
func (f *fixing) within(pour int, ladder []Change, x *Fault) (at int, score float64) {
	least, enough := 0.0, comfortable
	switch {
	case x.Beyond:
		least, enough = x.mostML/2, plain
	case f.spec.Pours[pour].Profile.Class.Part() == flavor.PartBase:
		least = f.spec.Pours[pour].ML / 2
		if x.grams && len(ladder) > 0 {
			least = math.Min(least, ladder[0].ToML)
		}
	}
	near := ladder
	for i := range ladder {
		if ladder[i].ToML < least-slack {
			near = ladder[:i]
			break
		}
	}
	if at, score = f.along(pour, near, enough); at >= 0 && score >= weigh.BalancedFrom || x.holds(f.spec, pour) {
		return at, score
	}
	return f.along(pour, ladder, enough)
}

// holds reports whether a fix of a fault never takes a pour further than it goes: a
// drink without half of its base is another one.
func (x *Fault) holds(s *flavor.Spec, pour int) bool {
	return !x.Beyond && s.Pours[pour].Profile.Class.Part() == flavor.PartBase
}

// askedPours returns the pours that a fault is about: the largest of the
// ingredient that it names, or all that bring the axis if it names none, of warmth
// those that are hot.
func (f *fixing) askedPours(x *Fault) []int {
	at := func(p *flavor.Pour) int {
		for i := range f.spec.Pours {
			if &f.spec.Pours[i] == p {
				return i
			}
		}
		return -1
	}
	if x.Profile != nil {
		return []int{at(largestPour(f.spec, x.Profile))}
	}
	var out []int
	if x.Axis == ratio.Temperature { // what is hot makes it warmer, and less of it cooler
		for i := range f.spec.Pours {
			if f.spec.Pours[i].Warmth() == flavor.HeatHot {
				out = append(out, i)
			}
		}
	}
	if x.Axis < ratio.Axis(ratio.NumAxes) {
		for _, b := range bearersOf(f.spec, x.Axis) {
			if b.lead || b.pour.Profile.Class.Movable() {
				out = append(out, at(b.pour))
			}
		}
	}
	return out
}

// isStrange reports whether hardly any drink of the draft's kind has an ingredient: less
// of it mends nothing.
func (f *fixing) isStrange(p *flavor.Profile) bool {
	return slices.ContainsFunc(f.faults, func(x Fault) bool { return x.strange && x.Profile == p })
}

// strange reports whether the first that is wrong is what hardly any drink of the draft's
// kind has.
func (f *fixing) strange() bool { return len(f.faults) > 0 && f.faults[0].strange }

// rids reports whether a candidate leaves out what is strange, if that is the first that
// is wrong.
func (f *fixing) rids(c *candidate) bool {
	return f.strange() && slices.ContainsFunc(c.changes, func(x Change) bool { return x.Profile == f.faults[0].Profile && x.ToML == 0 })
}

// leaveStrangeOut leaves out all that is strange at once.
func (f *fixing) leaveStrangeOut() {
	if f.strange() {
		f.tryWithout(0, mostSteps, f.isStrange)
	}
}

func (f *fixing) leaveOut(p *flavor.Profile, asked int) {
	f.tryWithout(asked, mostSteps, func(o *flavor.Profile) bool { return o == p })
}

// How far a fix may take a pour that no fault names: the base by a share of what
// was ordered, the rest by a factor.
const (
	strayShare = 0.25
	strayTimes = 2.5
)

// byOthers moves the pours that no fault names, either way.
func (f *fixing) byOthers() error {
	for i := range f.spec.Pours {
		for _, more := range []bool{false, true} {
			ladder := f.served(f.freely(i, more))
			if at, score := f.along(i, ladder, comfortable); at >= 0 {
				f.keep(candidate{changes: []Change{ladder[at]}, asked: unasked, steps: at + 1, score: score})
			}
		}
	}
	return nil
}

// freely is the ladder of a pour that no fault names.
func (f *fixing) freely(pour int, more bool) []Change {
	p := &f.spec.Pours[pour]
	if !p.Profile.Class.Movable() || f.isStrange(p.Profile) {
		return nil
	}
	ladder := ladderOf(p, pour, more, false)
	for i := range ladder {
		c := &ladder[i]
		far := math.Max(c.ToML/c.FromML, c.FromML/c.ToML) > strayTimes
		if p.Profile.Class.Part() == flavor.PartBase {
			far = math.Abs(c.ToML-c.FromML) > strayShare*c.FromML+slack
		}
		if far && !f.blamed(p.Profile, more) || isBase(*p) && c.FromML-c.ToML > baseOf(f.spec)/2+slack {
			return ladder[:i] // a drink without half of its base is another one
		}
	}
	return ladder
}

// baseOf returns the mL of all bases of a spec.
func baseOf(s *flavor.Spec) (ml float64) {
	for i := range s.Pours {
		if isBase(s.Pours[i]) {
			ml += s.Pours[i].ML
		}
	}
	return ml
}

const slack = 1e-9

// blamed reports whether a fault names an ingredient that way.
func (f *fixing) blamed(p *flavor.Profile, more bool) bool {
	return slices.ContainsFunc(f.faults, func(x Fault) bool { return x.Profile == p && x.High != more })
}

// mostPaired is how many of the best moves are tried together with another.
const mostPaired = 3

// byPairs takes the best of single moves and, from where it leaves the draft, moves
// a second pour, and then the first again.
func (f *fixing) byPairs() error {
	singles := slices.Clone(f.found)
	slices.SortStableFunc(singles, func(a, b candidate) int { return a.compare(&b) })
	tried := 0
	for i := range singles {
		c := &singles[i]
		if len(c.changes) != 1 || !c.making.stays() || c.changes[0].Pour == len(f.spec.Pours) {
			continue
		}
		if tried++; tried > mostPaired {
			break
		}
		f.withSecond(c)
	}
	return nil
}

func (f *fixing) withSecond(c *candidate) {
	first := c.changes[0]
	was := f.ml[first.Pour]
	for second := range f.spec.Pours {
		if second == first.Pour || f.spec.Pours[second].Profile == first.Profile {
			continue
		}
		for _, more := range []bool{false, true} {
			ladder := f.served(f.freely(second, more))
			f.ml[first.Pour] = first.ToML
			at, score := f.along(second, ladder, comfortable)
			f.ml[first.Pour] = was
			if at < 0 {
				continue
			}
			f.keep(candidate{changes: []Change{first, ladder[at]}, asked: c.asked, steps: c.steps + at + 1, score: score})
			if score < weigh.BalancedFrom {
				f.again(c, &first, &ladder[at], at)
			}
		}
	}
}

// again moves the first of two pours once more.
func (f *fixing) again(c *candidate, first, second *Change, steps int) {
	if first.ToML == 0 {
		return
	}
	p := &f.spec.Pours[first.Pour]
	ladder := ladderOf(p, first.Pour, first.ToML > first.FromML, false)
	if c.asked == unasked {
		ladder = f.freely(first.Pour, first.ToML > first.FromML)
	}
	was := f.ml[second.Pour]
	f.ml[second.Pour] = second.ToML
	at, score := f.along(first.Pour, ladder, comfortable)
	f.ml[second.Pour] = was
	if at >= 0 {
		f.keep(candidate{changes: []Change{ladder[at], *second}, asked: c.asked, steps: at + 1 + steps + 1, score: score})
	}
}

// byTurns mends what is still wrong with the draft once the best of single moves is
// made, as if it were another draft: what was salted by mistake may lack bitters too.
func (f *fixing) byTurns() error {
	singles := slices.Clone(f.found)
	slices.SortStableFunc(singles, func(a, b candidate) int { return a.compare(&b) })
	for i := range singles {
		c := &singles[i]
		if len(c.changes) != 1 || !c.making.stays() || c.asked == unasked {
			continue
		}
		return f.thenMend(c)
	}
	return nil
}

func (f *fixing) thenMend(c *candidate) error {
	first := c.changes[0]
	with := c.apply(f.spec)
	r, build, err := f.judge.score(&with)
	if err != nil {
		return err
	}
	then := fixing{judge: f.judge, spec: &with, base: c.score, faults: r.Faults, build: build, ml: build.Amounts()}
	then.byFaults()
	if err := then.byAdding(); err != nil {
		return err
	}
	for _, second := range then.found {
		if len(second.changes) != 1 || second.changes[0].Pour == first.Pour && first.ToML > 0 {
			continue
		}
		if first.ToML == 0 && second.changes[0].Pour >= first.Pour {
			second.changes[0].Pour++ // the draft still has what the first leaves out
		}
		f.keep(candidate{changes: []Change{first, second.changes[0]}, asked: c.asked, steps: c.steps + second.steps, score: second.score})
	}
	return nil
}

// byLeavingOut tries to leave out each pour but the base.
func (f *fixing) byLeavingOut() error {
	if len(f.spec.Pours) < 3 {
		return nil
	}
	for i := range f.spec.Pours {
		p := f.spec.Pours[i].Profile
		if p.Class.Part() != flavor.PartBase && (p.Class.Movable() || p.Class == flavor.ClassEgg) && indexOf(f.spec, p) == i {
			f.leaveOut(p, unasked)
		}
	}
	return nil
}

// byLeavingMuchOut leaves out pour after pour, each time the one without which the draft is
// best, until it is balanced or only one is left.
func (f *fixing) byLeavingMuchOut() error {
	var out []*flavor.Profile
	for len(out)+1 < len(f.spec.Pours) {
		var best candidate
		var worst *flavor.Profile
		for i := range f.spec.Pours {
			p := f.spec.Pours[i].Profile
			if slices.Contains(out, p) {
				continue
			}
			c := candidate{asked: unasked, steps: mostSteps, sure: true,
				changes: f.without(func(o *flavor.Profile) bool { return o == p || slices.Contains(out, o) })}
			if len(c.changes) == len(f.spec.Pours) {
				continue
			}
			if c.score = f.scoreWith(c.changes); worst == nil || c.score > best.score {
				best, worst = c, p
			}
		}
		if worst == nil {
			return nil
		}
		f.keep(best)
		if best.balanced() {
			return nil
		}
		out = append(out, worst)
	}
	return nil
}
