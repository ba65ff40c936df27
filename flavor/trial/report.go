package trial

import (
	"cmp"
	"fmt"
	"slices"

	"counterpour/flavor/makeup"
	"counterpour/flavor/ratio"
	"counterpour/flavor/template"
	"counterpour/flavor/weigh"
)

// Report is the outcome of leaving out each proven drink in turn.
type Report struct {
	Summary          // of every family
	Sours   Summary  // of the families that live by sugar against acid
	Read    Summary  // of the drinks that were read in their source, not recalled
	Missed  []string // proven drinks that came out off
	Cases   []Case   // every drink judged
	Advised bool     // fixes were tried too
	// What was done beyond ratio, and what became of it, in the order of Mischiefs.
	Pranks    []Prank
	Mischiefs []MischiefReport
}

// Summary is the outcome for some families. Shares of nothing are 0.
type Summary struct {
	Drinks         int
	BalancedOrNear float64 // share of proven drinks
	Balanced       float64
	FamilyFirst    float64 // share whose family is the most probable
	FamilyInTwo    float64 // or the second
	Spoilt         []SpoiltReport
}

// SpoiltReport is the outcome for one degree of spoiling.
type SpoiltReport struct {
	Spoiling
	Drinks    int
	Area      float64 // under the curve, proven against spoilt
	OwnBelow  float64 // share of spoilt versions that score below their own original
	RightAxis float64 // share whose first two faults name the axis spoilt, with the right sign
	Noticed   float64 // share that is not called balanced
	// Of those that are noticed: the share whose first fault, or first two,
	// name the axis spoilt, with the right sign.
	FirstNames, TwoName float64
	FirstFixes          float64 // share whose first fix balances it, or that need none
	// FirstUndoes is the share, of those noticed, whose first fix moves what
	// was spoilt back.
	FirstUndoes float64
}

func (r *Rig) report(cases []Case) *Report {
	sours := map[string]bool{}
	for _, f := range r.Families {
		sours[f.ID] = isSour(&f)
	}
	out := &Report{Cases: cases, Advised: r.Advise,
		Summary: Summarise(cases, func(*Case) bool { return true }),
		Sours:   Summarise(cases, func(c *Case) bool { return sours[c.Family] }),
		Read:    Summarise(cases, func(c *Case) bool { return !c.Recalled })}
	for _, c := range cases {
		if c.Proven() && c.Score < weigh.NearFrom {
			out.Missed = append(out.Missed, fmt.Sprintf("%s (%s, taken for %s): %.0f", c.Name, c.Family, c.Taken, c.Score))
		}
	}
	return out
}

// isSour reports whether a family lives by sugar against acid: its ratio has
// both, and what sours speaks for it.
func isSour(f *template.Family) bool {
	return slices.Contains(f.Axes, ratio.Sweet) && slices.Contains(f.Axes, ratio.Sour) && f.Signs[makeup.HasSour] > 0
}

// Summarise counts the cases that are in.
func Summarise(cases []Case, in func(*Case) bool) Summary {
	var proven []Case
	for _, c := range cases {
		if c.Proven() && in(&c) {
			proven = append(proven, c)
		}
	}
	s := Summary{Drinks: len(proven),
		Balanced:       share(proven, func(c *Case) bool { return c.Score >= weigh.BalancedFrom }),
		BalancedOrNear: share(proven, func(c *Case) bool { return c.Score >= weigh.NearFrom }),
		FamilyFirst:    share(proven, func(c *Case) bool { return c.Taken == c.Family }),
		FamilyInTwo:    share(proven, func(c *Case) bool { return c.Taken == c.Family || c.Second == c.Family })}
	for _, degree := range Spoilings() {
		var spoilt []Case
		for _, c := range cases {
			if (c.Factor == degree.Up || c.Factor == degree.Down) && in(&c) {
				spoilt = append(spoilt, c)
			}
		}
		s.Spoilt = append(s.Spoilt, spoiltReport(degree, proven, spoilt))
	}
	return s
}

func spoiltReport(degree Spoiling, proven, spoilt []Case) SpoiltReport {
	noticed := slices.DeleteFunc(slices.Clone(spoilt), func(c Case) bool { return c.Score >= weigh.BalancedFrom })
	return SpoiltReport{Spoiling: degree, Drinks: len(spoilt), Area: Area(scores(proven), scores(spoilt)),
		OwnBelow:    share(spoilt, func(c *Case) bool { return c.Score < c.Own }),
		RightAxis:   share(spoilt, func(c *Case) bool { return c.names(2) }),
		Noticed:     shareOf(len(noticed), len(spoilt)),
		FirstNames:  share(noticed, func(c *Case) bool { return c.names(1) }),
		TwoName:     share(noticed, func(c *Case) bool { return c.names(2) }),
		FirstFixes:  share(spoilt, func(c *Case) bool { return c.Mended }),
		FirstUndoes: share(noticed, func(c *Case) bool { return c.Undone })}
}

// names reports whether one of the first faults is the axis spoilt, with the
// right sign.
func (c *Case) names(first int) bool {
	for _, f := range c.Faults[:min(first, len(c.Faults))] {
		if f.Axis == c.Axis && f.High == (c.Factor > 1) {
			return true
		}
	}
	return false
}

func share(cases []Case, is func(*Case) bool) float64 {
	n := 0
	for i := range cases {
		if is(&cases[i]) {
			n++
		}
	}
	return shareOf(n, len(cases))
}

func shareOf(n, of int) float64 {
	if of == 0 {
		return 0
	}
	return float64(n) / float64(of)
}

func scores(cases []Case) []float64 {
	out := make([]float64, len(cases))
	for i := range cases {
		out[i] = cases[i].Score
	}
	return out
}

// Area returns the share of pairs in which the proven drink scores above the
// spoilt one, ties counting half: the area under the curve. It is 0 if either
// list is empty.
func Area(proven, spoilt []float64) float64 {
	if len(proven) == 0 || len(spoilt) == 0 {
		return 0
	}
	var wins float64
	for _, p := range proven {
		for _, s := range spoilt {
			wins += float64(1+cmp.Compare(p, s)) / 2
		}
	}
	return wins / float64(len(proven)*len(spoilt))
}
