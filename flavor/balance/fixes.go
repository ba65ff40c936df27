package balance

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/measure"
	"counterpour/flavor/template"
)

// Change is one pour moved, added or left out.
type Change struct {
	Pour     int // index in the spec; len(spec.Pours) for a pour that is added
	Profile  *flavor.Profile
	Unit     flavor.Unit
	From, To float64 // in the unit
	FromML   float64
	ToML     float64
}

// Fix is a change that mends a draft, and the score it would have.
type Fix struct {
	Changes []Change
	Spec    flavor.Spec // with the changes made
	Score   float64
	Text    string
}

// How the search is bounded and its findings weighed.
const (
	MaxFixes       = 3
	singleSteps    = 12   // steps of the jigger tried each way for one pour
	pairSteps      = 6    // for two pours at once
	leastLift      = 3.0  // points that a fix must bring
	pointsPerML    = 0.20 // how many points of score a millilitre of change is worth
	pointsPerMove  = 6.0  // and a second pour moved
	pointsPerAdded = 4.0  // and a pour that was not there
)

// Fixes returns up to limit changes that mend a draft, the best first: one
// pour moved if that balances it, else two, else something added. They differ
// in kind, none lowers the score, and the same draft always gives the same
// list. A balanced draft needs none.
func (j *Judge) Fixes(s *flavor.Spec, r *Result, limit int) ([]Fix, error) {
	if r.Verdict == template.Balanced || limit <= 0 {
		return nil, nil
	}
	search := fixSearch{spec: s, base: r.Judgement.Score, build: r.build}
	search.singles()
	if !search.mended() {
		search.pairs()
	}
	if !search.mended() {
		if err := search.additions(j); err != nil {
			return nil, err
		}
	}
	return search.best(limit), nil
}

type fixSearch struct {
	spec  *flavor.Spec
	base  float64
	build *template.Build
	found []candidate
	top   float64
}

type candidate struct {
	changes []Change
	score   float64
	merit   float64
	kind    string
}

func (f *fixSearch) mended() bool { return f.top >= template.BalancedFrom }

func (f *fixSearch) keep(score float64, changes ...Change) {
	if score < f.base+leastLift {
		return
	}
	c := candidate{changes: slices.Clone(changes), score: score, merit: score}
	var kind strings.Builder
	for i := range c.changes {
		ch := &c.changes[i]
		direction := "+"
		if ch.ToML < ch.FromML {
			direction = "-"
		}
		fmt.Fprintf(&kind, "%s%s;", direction, ch.Profile.ID)
		c.merit -= pointsPerML * math.Abs(ch.ToML-ch.FromML)
		if ch.FromML == 0 {
			c.merit -= pointsPerAdded
		}
	}
	c.merit -= pointsPerMove * float64(len(c.changes)-1)
	c.kind = kind.String()
	f.top = math.Max(f.top, score)
	f.found = append(f.found, c)
}

// steps returns the changes of one pour by up to n steps of its measure.
func (f *fixSearch) steps(pour, n int) []Change {
	p := &f.spec.Pours[pour]
	perUnit, ok := measure.MLPerUnit(p.Unit, p.Profile)
	if !ok {
		return nil
	}
	var out []Change
	for _, amount := range measure.Neighbours(p.Amount, p.Unit, n) {
		out = append(out, Change{Pour: pour, Profile: p.Profile, Unit: p.Unit,
			From: p.Amount, To: amount, FromML: p.ML, ToML: amount * perUnit})
	}
	return out
}

func (f *fixSearch) singles() {
	ml := f.build.Amounts()
	for i := range f.spec.Pours {
		for _, c := range f.steps(i, singleSteps) {
			ml[i] = c.ToML
			f.keep(f.build.Score(ml), c)
		}
		ml[i] = f.spec.Pours[i].ML
	}
}

func (f *fixSearch) pairs() {
	ml := f.build.Amounts()
	steps := make([][]Change, len(f.spec.Pours))
	for i := range steps {
		steps[i] = f.steps(i, pairSteps)
	}
	for i := range steps {
		for k := i + 1; k < len(steps); k++ {
			for _, a := range steps[i] {
				ml[i] = a.ToML
				for _, b := range steps[k] {
					ml[k] = b.ToML
					f.keep(f.build.Score(ml), a, b)
				}
			}
			ml[i], ml[k] = f.spec.Pours[i].ML, f.spec.Pours[k].ML
		}
	}
}

// additions tries what a bartender reaches for when nothing in the glass can
// mend it.
func (f *fixSearch) additions(j *Judge) error {
	ounce, metric := flavor.Ounce, measure.SystemOf(f.spec) == measure.Metric
	amounts := []float64{0.25, 0.5, 0.75, 1}
	if metric {
		ounce, amounts = flavor.Millilitre, []float64{7.5, 15, 22.5, 30}
	}
	for _, a := range []struct {
		profile *flavor.Profile
		unit    flavor.Unit
		amounts []float64
	}{
		{j.pantry.Syrup, flavor.Barspoon, []float64{1, 2}},
		{j.pantry.Syrup, ounce, amounts},
		{j.pantry.Sour, ounce, amounts},
		{j.pantry.Bitters, flavor.Dash, []float64{1, 2, 3}},
		{j.pantry.Length, ounce, amounts},
	} {
		if a.profile == nil {
			continue
		}
		perUnit, ok := measure.MLPerUnit(a.unit, a.profile)
		if !ok {
			continue
		}
		for _, amount := range a.amounts {
			c := Change{Pour: len(f.spec.Pours), Profile: a.profile, Unit: a.unit, To: amount, ToML: amount * perUnit}
			with := apply(f.spec, []Change{c})
			score, err := j.ScoreOnly(&with)
			if err != nil {
				return fmt.Errorf("trying to add %s: %w", a.profile.Name, err)
			}
			f.keep(score, c)
		}
	}
	return nil
}

// best sorts what was found: what balances the draft before what does not,
// then by merit, and keeps the best of each kind.
func (f *fixSearch) best(limit int) []Fix {
	slices.SortStableFunc(f.found, func(a, b candidate) int {
		if x, y := a.score >= template.BalancedFrom, b.score >= template.BalancedFrom; x != y {
			if x {
				return -1
			}
			return 1
		}
		if a.merit != b.merit {
			if a.merit > b.merit {
				return -1
			}
			return 1
		}
		return strings.Compare(a.kind, b.kind)
	})
	var out []Fix
	seen := map[string]bool{}
	for _, c := range f.found {
		if len(out) == limit {
			break
		}
		if seen[c.kind] {
			continue
		}
		seen[c.kind] = true
		out = append(out, Fix{Changes: c.changes, Spec: apply(f.spec, c.changes), Score: c.score, Text: fixText(c)})
	}
	return out
}

// apply returns the spec with changes made.
func apply(s *flavor.Spec, changes []Change) flavor.Spec {
	out := s.Clone()
	for _, c := range changes {
		if c.Pour == len(s.Pours) {
			out.Pours = append(out.Pours, flavor.Pour{Profile: c.Profile,
				Match: flavor.Match{Asked: c.Profile.Name, How: flavor.MatchExact}})
		}
		p := &out.Pours[c.Pour]
		p.Amount, p.Unit, p.ML = c.To, c.Unit, c.ToML
	}
	return out
}

func fixText(c candidate) string {
	parts := make([]string, len(c.changes))
	for i, ch := range c.changes {
		to := measure.FormatAmount(ch.To, ch.Unit)
		switch {
		case ch.FromML == 0:
			parts[i] = fmt.Sprintf("add %s %s", to, ch.Profile.Name)
		default:
			parts[i] = fmt.Sprintf("pour %s %s instead of %s", to, ch.Profile.Name, measure.FormatAmount(ch.From, ch.Unit))
		}
	}
	return strings.Join(parts, ", and ")
}
