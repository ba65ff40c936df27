package balance

import (
	"cmp"
	"fmt"
	"math"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/template"
)

// fixing is the search for what mends a draft.
type fixing struct {
	spec   *flavor.Spec
	base   float64 // score of the draft
	faults []Fault
	found  []candidate
}

// candidate is the best of its kind: the same pours moved the same ways.
type candidate struct {
	moved  [2]Change
	n      int
	score  float64
	merit  float64
	strays stray
}

func (c *candidate) changes() []Change { return c.moved[:c.n] }

// compare is a fixed order of candidates.
func (c *candidate) compare(o *candidate) int {
	for i := range min(c.n, o.n) {
		a, b := &c.moved[i], &o.moved[i]
		if d := cmp.Or(strings.Compare(a.Profile.ID, b.Profile.ID), cmp.Compare(a.ToML, b.ToML), cmp.Compare(a.Pour, b.Pour)); d != 0 {
			return d
		}
	}
	return cmp.Compare(c.n, o.n)
}

// sameIdea reports whether one of two candidates does what the other does, and
// perhaps more.
func (c *candidate) sameIdea(o *candidate) bool {
	if c.n > o.n {
		c, o = o, c
	}
	for _, a := range c.changes() {
		shared := false
		for _, b := range o.changes() {
			shared = shared || a.Profile.ID == b.Profile.ID && (a.ToML > a.FromML) == (b.ToML > b.FromML)
		}
		if !shared {
			return false
		}
	}
	return true
}

// stray is how far something goes from what was ordered without a fault that
// says so.
type stray int

const (
	straysNot  stray = iota
	straysFar        // it takes a pour far
	straysBase       // it takes the base far
)

// mended reports whether something was found that balances the draft.
func (f *fixing) mended(most stray) bool {
	for i := range f.found {
		if f.found[i].score >= template.BalancedFrom && f.found[i].strays <= most {
			return true
		}
	}
	return false
}

// asked returns how surely the faults ask for a move: 1 if the first does, the
// odds of any other that does, 0 if none.
func (f *fixing) asked(m *move) float64 {
	for i := range f.faults {
		x := &f.faults[i]
		if x.Profile == nil || x.Profile.ID != m.Profile.ID || x.High != (m.ToML < m.FromML) {
			continue
		}
		if i == 0 {
			return 1
		}
		return x.Odds
	}
	return 0
}

// How surely a move must be asked for not to stray: the base is what the guest
// ordered.
const (
	askedSurely = 0.10
	baseSurely  = 0.25
)

// worth is what a move adds to the merit, and whether it strays.
func (f *fixing) worth(m *move) (points float64, strays stray) {
	asked := f.asked(m)
	points = pointsNamed*asked - m.cost
	base := m.Profile.Class.Part() == flavor.PartBase
	switch {
	case m.FromML == 0 || m.ToML == 0:
	case base && asked < baseSurely && math.Abs(m.ToML-m.FromML) > strayShare*m.FromML:
		strays = straysBase
	case !base && asked < askedSurely && m.times > strayTimes:
		strays = straysFar
	}
	return points, strays
}

// pairable keeps the moves that are tried together with another: all that the
// first fault asks for, and short ones.
func (f *fixing) pairable(moves [][]move) [][]move {
	out := make([][]move, len(moves))
	for i := range moves {
		for _, m := range moves[i] {
			if f.asked(&m) == 1 || m.steps == 1 || m.times <= pairTimes && m.steps <= pairSteps {
				out[i] = append(out[i], m)
			}
		}
	}
	return out
}

// best keeps the best candidate of one kind.
type best struct {
	candidate
	any bool
}

// hopeless reports whether no score could make a candidate of so much worth
// the best of its kind.
func (b *best) hopeless(worth float64) bool {
	return b.any && b.score >= template.BalancedFrom && 100+worth <= b.merit
}

func (b *best) offer(score, worth float64, strays stray, moves ...*move) {
	merit := score + worth
	was, is := b.score >= template.BalancedFrom, score >= template.BalancedFrom
	if b.any && (was && !is || was == is && merit <= b.merit) {
		return
	}
	b.any, b.score, b.merit, b.strays, b.n = true, score, merit, strays, len(moves)
	for i, m := range moves {
		b.moved[i] = m.Change
	}
}

// keep takes the best of a kind into what was found, if it is worth telling.
func (f *fixing) keep(b *best) {
	if b.any && b.score >= f.base+leastLift {
		f.found = append(f.found, b.candidate)
	}
}

// kindOf tells apart the kinds of one move: up or down, and how it strays.
func kindOf(m *move, strays stray) int {
	k := 2 * int(strays)
	if m.ToML > m.FromML {
		k++
	}
	return k
}

const kinds = 2 * (int(straysBase) + 1)

// singles tries each pour alone.
func (f *fixing) singles(build *template.Build, moves [][]move) {
	ml := build.Amounts()
	for i := range moves {
		var found [kinds]best
		was := ml[i]
		for k := range moves[i] {
			m := &moves[i][k]
			worth, strays := f.worth(m)
			ml[i] = m.ToML
			found[kindOf(m, strays)].offer(build.Score(ml), worth, strays, m)
		}
		ml[i] = was
		for k := range found {
			f.keep(&found[k])
		}
	}
}

// pairs tries two pours at once, the second of them from the given one on.
func (f *fixing) pairs(build *template.Build, moves [][]move, from int) {
	ml := build.Amounts()
	moves = f.pairable(moves)
	for i := range moves {
		for k := max(i+1, from); k < len(moves); k++ {
			f.pair(build, ml, moves[i], moves[k])
		}
	}
}

func (f *fixing) pair(build *template.Build, ml []float64, first, second []move) {
	if len(first) == 0 || len(second) == 0 || first[0].Profile.ID == second[0].Profile.ID {
		return
	}
	var found [kinds * kinds]best
	i, k := first[0].Pour, second[0].Pour
	wasI, wasK := ml[i], ml[k]
	for x := range first {
		a := &first[x]
		worthA, straysA := f.worth(a)
		ml[i] = a.ToML
		for y := range second {
			b := &second[y]
			worthB, straysB := f.worth(b)
			worth := worthA + worthB - pointsPerMove
			kind := &found[kindOf(a, straysA)*kinds+kindOf(b, straysB)]
			if kind.hopeless(worth) {
				continue
			}
			ml[k] = b.ToML
			kind.offer(build.Score(ml), worth, max(straysA, straysB), a, b)
		}
	}
	ml[i], ml[k] = wasI, wasK
	for x := range found {
		f.keep(&found[x])
	}
}

// additions tries what the pantry holds, alone and with one pour moved.
func (f *fixing) additions(j *Judge, moves [][]move) error {
	at := len(f.spec.Pours)
	for _, a := range additionsTo(f.spec, &j.pantry, f.faults) {
		added := a.moves(at)
		if len(added) == 0 {
			continue
		}
		with := apply(f.spec, []Change{added[len(added)/2].Change})
		build, err := j.set.Prepare(&with)
		if err != nil {
			return fmt.Errorf("trying to add %s: %w", a.profile.Name, err)
		}
		all := make([][]move, at+1)
		all[at] = added
		f.singles(build, all)
		copy(all, moves)
		f.pairs(build, all, at)
	}
	return nil
}

// omissions tries to leave out each pour of the ingredients asked for.
func (f *fixing) omissions(j *Judge, asked func(*flavor.Profile) bool) error {
	if len(f.spec.Pours) < 3 {
		return nil
	}
	for i := range f.spec.Pours {
		p := &f.spec.Pours[i]
		if !asked(p.Profile) {
			continue
		}
		m := move{Change: Change{Pour: i, Profile: p.Profile, Unit: p.Unit, From: p.Amount, FromML: p.ML}}
		m.cost = pointsPerAdded + pointsPerML*p.ML
		without := apply(f.spec, []Change{m.Change})
		score, err := j.ScoreOnly(&without)
		if err != nil {
			continue // nothing is left to weigh
		}
		worth, strays := f.worth(&m)
		var b best
		b.offer(score, worth, strays, &m)
		f.keep(&b)
	}
	return nil
}
