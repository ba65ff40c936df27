package mend

import (
	"slices"

	"counterpour/flavor/balance/change"
	"counterpour/flavor/measure"
	"counterpour/flavor/weigh"
)

// mostPaired is how many of the best moves are tried together with another.
const mostPaired = 3

// byPairs takes the best of single moves and, from where it leaves the draft, moves
// a second pour, and then the first again.
func (f *fixing) byPairs() error {
	tried := 0
	for _, c := range f.singles() {
		if c.changes[0].Pour == len(f.spec.Pours) {
			continue // it adds what the draft has no pour of
		}
		if tried++; tried > mostPaired {
			break
		}
		f.withSecond(&c)
	}
	return nil
}

// singles returns the moves of one pour that were found, with the draft made as it is;
// the best come first.
func (f *fixing) singles() []candidate {
	var out []candidate
	for _, c := range f.found {
		if len(c.changes) == 1 && c.making.Stays() {
			out = append(out, c)
		}
	}
	slices.SortStableFunc(out, func(a, b candidate) int { return a.compare(&b) })
	return out
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
			f.keep(candidate{changes: []change.Change{first, ladder[at]}, asked: c.asked, steps: c.steps + at + 1, score: score})
			if score < weigh.BalancedFrom {
				f.again(c, &first, &ladder[at], at)
			}
		}
	}
}

// again moves the first of two pours once more.
func (f *fixing) again(c *candidate, first, second *change.Change, steps int) {
	if first.ToML == 0 {
		return
	}
	p := &f.spec.Pours[first.Pour]
	ladder := change.Ladder(p, first.Pour, first.ToML > first.FromML, false)
	if c.asked == unasked {
		ladder = f.freely(first.Pour, first.ToML > first.FromML)
	}
	was := f.ml[second.Pour]
	f.ml[second.Pour] = second.ToML
	at, score := f.along(first.Pour, ladder, comfortable)
	f.ml[second.Pour] = was
	if at >= 0 {
		f.keep(candidate{changes: []change.Change{ladder[at], *second}, asked: c.asked, steps: at + 1 + steps + 1, score: score})
	}
}

// byTurns mends what is still wrong with the draft once the best of single moves is
// made, as if it were another draft: what was salted by mistake may lack bitters too.
func (f *fixing) byTurns() error {
	if out := f.without(f.isStrange); f.strange() && len(out) == 1 && len(f.spec.Pours) > 1 {
		return f.thenMend(&candidate{changes: out, score: f.scoreWith(out, 0)}, 1)
	}
	for _, c := range f.singles() {
		if c.asked != unasked {
			return f.thenMend(&c, 1)
		}
	}
	return nil
}

// byServing pours no more of a base than a guest is served, and mends what is then wrong.
func (f *fixing) byServing() error {
	for i := range f.faults {
		x := &f.faults[i]
		if !x.High || x.Profile == nil || !x.Profile.Base() || f.spec.VolumeML() >= batchFromML {
			continue
		}
		pour := x.Pours(f.spec)[0]
		p := &f.spec.Pours[pour]
		to := measure.Snap(mostBaseML, p.Unit, p.Profile)
		per, ok := measure.MLPerUnit(p.Unit, p.Profile)
		if !ok || to <= 0 || to*per >= p.ML {
			continue
		}
		if p.ML > mostServed*mostBaseML || p.ML-x.MoveML < leastServed {
			return f.thenMend(&candidate{changes: []change.Change{change.To(p, pour, p.Unit, to, to*per)}, asked: i}, 2)
		}
	}
	return nil
}

// Of what a guest is served of a base, mostServed times that is far too much. Where a fault would leave
// less than leastServed mL, it is the rest of the drink that there is too little of. Judged.
const (
	mostServed  = 2.5
	leastServed = 25.0
)

// thenMend mends the draft with one pour moved, by so many changes more at most.
func (f *fixing) thenMend(c *candidate, most int) error {
	first := c.changes[0]
	with := c.apply(f.spec)
	faults, build, err := f.bench.Faults(&with)
	if err != nil {
		return err
	}
	defer build.Done()
	then := fixing{bench: f.bench, spec: &with, base: c.score, faults: faults, build: build, ml: build.Amounts(), free: f.free}
	then.byFaults()
	if err := then.byAdding(); err != nil {
		return err
	}
	if most > 1 && !then.mended() {
		if err := then.byPairs(); err != nil {
			return err
		}
	}
	if first.ToML == 0 { // what was poured in its place by mistake
		if err := then.byCompanions(); err != nil {
			return err
		}
	}
	for _, second := range then.found {
		if len(second.changes) == 0 || len(second.changes) > most || first.ToML > 0 && slices.ContainsFunc(second.changes, func(x change.Change) bool { return x.Pour == first.Pour }) {
			continue
		}
		if first.ToML == 0 && second.changes[0].Pour >= first.Pour {
			second.changes[0].Pour++ // the draft still has what the first leaves out
		}
		puts := c.puts && inPlace(&first, &second.changes[0])
		f.keep(candidate{changes: append([]change.Change{first}, second.changes...), asked: c.asked, steps: c.steps + second.steps, score: second.score, puts: puts})
	}
	return nil
}
