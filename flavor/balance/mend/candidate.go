package mend

import (
	"cmp"
	"math"
	"slices"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/balance/change"
	"counterpour/flavor/balance/fault"
	"counterpour/flavor/balance/wording"
	"counterpour/flavor/measure"
	"counterpour/flavor/technique"
	"counterpour/flavor/weigh"
)

// candidate is something that may mend a draft.
type candidate struct {
	changes []change.Change
	making  technique.Making
	portion portion // of everything, if that is what is poured
	asked   int     // place of the fault that asks for it, unasked if none does
	steps   int     // of the jigger
	score   float64
	small   bool // it leaves less than half of the draft
	leaves  bool // it leaves what is worse than what it mends
	puts    bool // it puts back what was forgotten, or leaves out what is strange, which is the first fault
	sure    bool // the score is that of the mended spec, and not of the draft with other amounts
}

// unasked is the place of no fault.
const unasked = fault.MaxFaults

// balanced reports whether the candidate balances the draft.
func (c *candidate) balanced() bool { return c.score >= weigh.BalancedFrom }

// scales reports whether a portion of everything is poured.
func (c *candidate) scales() bool { return c.portion != (portion{}) }

// size is how many things are done.
func (c *candidate) size() int {
	switch {
	case c.scales():
		return 1
	case c.making.Glass != "" && c.making.Service != "": // ice, beside another glass
		return len(c.changes) + 2
	case !c.making.Stays():
		return len(c.changes) + 1
	}
	return len(c.changes)
}

// compare orders candidates, the best first; no two are equal.
func (c *candidate) compare(o *candidate) int {
	if d := cmp.Or(-compareBool(c.balanced(), o.balanced()), cmp.Compare(o.nearness(), c.nearness()), -compareBool(c.puts, o.puts), compareBool(c.small, o.small), compareBool(c.leaves, o.leaves), cmp.Compare(c.size(), o.size()),
		-compareBool(c.roomy(), o.roomy()), cmp.Compare(c.asked, o.asked), cmp.Compare(c.steps, o.steps),
		cmp.Compare(o.score, c.score)); d != 0 {
		return d
	}
	return strings.Compare(c.text(), o.text())
}

// roomy is the score from which a fix leaves room for a hand's error: among fixes of as
// many pours it comes before one that hardly balances the draft.
const roomy = 80.0

// roomy reports whether a candidate leaves such room. To leave a pour out always does,
// and is no reason to do so.
func (c *candidate) roomy() bool {
	return c.score >= roomy && !c.small && !slices.ContainsFunc(c.changes, func(x change.Change) bool { return x.ToML == 0 })
}

// nearness is how near a candidate that does not balance the draft brings it, in tens
// of points; less is no reason to change one more pour.
func (c *candidate) nearness() float64 {
	if c.balanced() {
		return 0
	}
	return math.Floor(c.score / 10)
}

// compareBool puts false before true.
func compareBool(x, y bool) int {
	switch {
	case x == y:
		return 0
	case x:
		return 1
	}
	return -1
}

// same reports whether two candidates do the very same: two ways to search may find one.
func (c *candidate) same(o *candidate) bool {
	return c.portion == o.portion && c.making.Same(&o.making) && slices.Equal(c.changes, o.changes)
}

// sameIdea reports whether one of two candidates does what the other does, and
// perhaps more.
func (c *candidate) sameIdea(o *candidate) bool {
	if c.scales() && o.scales() {
		return true
	}
	if !c.making.Same(&o.making) || c.scales() || o.scales() {
		return false
	}
	if len(c.changes) > len(o.changes) {
		c, o = o, c
	}
	for _, a := range c.changes {
		if !slices.ContainsFunc(o.changes, func(b change.Change) bool {
			return a.Profile.ID == b.Profile.ID && (a.ToML > a.FromML) == (b.ToML > b.FromML)
		}) {
			return false
		}
	}
	return true
}

// adds reports whether a candidate does what another does, and then moves more pours.
func (c *candidate) adds(o *candidate) bool {
	if c.scales() || o.scales() || !c.making.Same(&o.making) || len(o.changes) == 0 || len(o.changes) >= len(c.changes) {
		return false
	}
	return slices.Equal(o.changes, c.changes[:len(o.changes)])
}

// apply returns the spec with the candidate's changes made.
func (c *candidate) apply(s *flavor.Spec) flavor.Spec {
	out := change.Apply(s, c.changes)
	c.making.Apply(&out)
	return out
}

// text says what is done.
func (c *candidate) text() string {
	if c.scales() {
		return wording.OfEverything(c.portion.some, c.portion.parts)
	}
	var steps []string
	if len(c.changes) == 2 && c.making.Stays() && inPlace(&c.changes[0], &c.changes[1]) {
		out, in := &c.changes[0], &c.changes[1]
		return wording.InPlace(measure.FormatAmount(in.To, in.Unit), in.Profile.Name, out.Profile.Name)
	}
	for i := range c.changes {
		x := &c.changes[i]
		to := measure.FormatAmount(x.To, x.Unit)
		switch {
		case x.FromML == 0:
			steps = append(steps, wording.Add(to, x.Profile.Name))
		case x.ToML == 0:
			steps = append(steps, wording.LeaveOut(x.Profile.Name))
		default:
			steps = append(steps, wording.Instead(to, x.Called(), x.Before()))
		}
	}
	if !c.making.Stays() {
		steps = append(steps, wording.Making(&c.making))
	}
	return wording.All(steps)
}
