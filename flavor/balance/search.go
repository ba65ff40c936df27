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
	spec  *flavor.Spec
	base  float64 // score of the draft
	named *flavor.Profile
	more  bool // the first fault asks for more of it
	found []candidate
}

func newFixing(s *flavor.Spec, r *Result) *fixing {
	f := &fixing{spec: s, base: r.Judgement.Score}
	if len(r.Faults) > 0 {
		f.named, f.more = r.Faults[0].Profile, !r.Faults[0].High
	}
	return f
}

// candidate is the best of its kind: the same pours moved the same ways.
type candidate struct {
	moved  [2]Change
	n      int
	score  float64
	merit  float64
	strays bool // it takes a pour far from what was ordered, and no fault says so
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

// mended reports whether something was found that balances the draft and
// takes no pour far from what was ordered.
func (f *fixing) mended() bool {
	for i := range f.found {
		if f.found[i].score >= template.BalancedFrom && !f.found[i].strays {
			return true
		}
	}
	return false
}

// worth is what a move adds to the merit, and whether it strays.
func (f *fixing) worth(m *move) (points float64, strays bool) {
	points = -m.cost
	if f.named != nil && f.named.ID == m.Profile.ID && f.more == (m.ToML > m.FromML) {
		return points + pointsNamed, false
	}
	switch {
	case m.FromML == 0 || m.ToML == 0:
		return points, false
	case m.Profile.Class.Part() == flavor.PartBase:
		return points, math.Abs(m.ToML-m.FromML) > strayShare*m.FromML
	}
	return points, math.Max(m.ToML/m.FromML, m.FromML/m.ToML) > strayTimes
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

func (b *best) offer(score, worth float64, strays bool, moves ...*move) {
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

// kindOf tells apart the kinds of one move: up or down, straying or not.
func kindOf(m *move, strays bool) int {
	k := 0
	if m.ToML > m.FromML {
		k = 1
	}
	if strays {
		k += 2
	}
	return k
}

const kinds = 4

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
		if !a.near {
			continue
		}
		worthA, straysA := f.worth(a)
		ml[i] = a.ToML
		for y := range second {
			b := &second[y]
			if !b.near {
				continue
			}
			worthB, straysB := f.worth(b)
			worth := worthA + worthB - pointsPerMove
			kind := &found[kindOf(a, straysA)*kinds+kindOf(b, straysB)]
			if kind.hopeless(worth) {
				continue
			}
			ml[k] = b.ToML
			kind.offer(build.Score(ml), worth, straysA || straysB, a, b)
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
	for _, a := range additionsTo(f.spec, &j.pantry) {
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

// omissions tries to leave out each pour but the base.
func (f *fixing) omissions(j *Judge) error {
	if len(f.spec.Pours) < 3 {
		return nil
	}
	for i := range f.spec.Pours {
		p := &f.spec.Pours[i]
		if p.Profile.Class.Part() == flavor.PartBase || !movable(p.Profile) {
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
