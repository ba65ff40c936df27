// Package trial tests the advice against the world: proven drinks that the
// families have not seen must come out in balance, the same drinks spoilt must
// not, and the fault and the first fix must name what was spoilt.
package trial

import (
	"fmt"
	"slices"

	"counterpour/flavor"
	"counterpour/flavor/balance"
	"counterpour/flavor/mix"
	"counterpour/flavor/template"
)

// Spoiling is how a drink is spoilt: the pours of one axis are multiplied.
type Spoiling struct {
	Up, Down float64
}

// Spoilings returns the two degrees that are reported.
func Spoilings() []Spoiling { return []Spoiling{{2.25, 0.3}, {3, 0.2}} }

// Report is the outcome of leaving out each proven drink in turn.
type Report struct {
	Drinks         int
	BalancedOrNear float64 // share of proven drinks
	Balanced       float64
	FamilyFirst    float64 // share whose family is the most probable
	FamilyInTwo    float64 // or the second
	Spoilt         []SpoiltReport
	Missed         []string // proven drinks that came out off
	Cases          []Case   // every drink judged
}

// Case is one drink judged: proven if Factor is 1, else spoilt.
type Case struct {
	Name, Family, Taken string
	Axis                template.Axis
	Factor              float64
	Score, Own          float64
	Faults              []balance.Fault
}

// SpoiltReport is the outcome for one degree of spoiling.
type SpoiltReport struct {
	Spoiling
	Drinks     int
	Area       float64 // under the curve, proven against spoilt
	OwnBelow   float64 // share of spoilt versions that score below their own original
	RightAxis  float64 // share whose first two faults name the axis spoilt, with the right sign
	FirstFixes float64 // share whose first fix balances it
}

// Rig is what a trial needs.
type Rig struct {
	Families []template.Family
	Proven   []template.Labelled
	Tuning   template.Tuning
	Pantry   balance.Pantry
	Advise   bool // try faults and fixes too, which takes longer
}

// Run leaves out each proven drink in turn, fits the families to the others
// and judges the drink and its spoilt versions. Progress may be nil.
func (r *Rig) Run(progress func(done, total int)) (*Report, error) {
	mixer, err := mix.NewMixer()
	if err != nil {
		return nil, err
	}
	start, err := template.Learn(r.Families, r.Proven, r.Tuning)
	if err != nil {
		return nil, err
	}
	t := tally{spoilt: make([]spoiltTally, len(Spoilings()))}
	for i := range r.Proven {
		rest := slices.Delete(slices.Clone(r.Proven), i, i+1)
		fitted, err := template.LearnFrom(r.Families, rest, r.Tuning, start)
		if err != nil {
			return nil, err
		}
		set, err := template.NewSet(r.Families, fitted, rest, r.Tuning)
		if err != nil {
			return nil, err
		}
		if err := t.drink(balance.NewJudge(mixer, set, r.Pantry), &r.Proven[i], r.Advise); err != nil {
			return nil, fmt.Errorf("trial: %s: %w", r.Proven[i].Spec.Name, err)
		}
		if progress != nil {
			progress(i+1, len(r.Proven))
		}
	}
	return t.report(), nil
}

type tally struct {
	proven                       []float64
	near, balanced, first, inTwo int
	spoilt                       []spoiltTally
	missed                       []string
	cases                        []Case
}

type spoiltTally struct {
	scores             []float64
	below, axis, fixed int
}

func (t *tally) drink(j *balance.Judge, p *template.Labelled, advise bool) error {
	r, err := j.Score(&p.Spec)
	if err != nil {
		return err
	}
	score := r.Judgement.Score
	t.proven = append(t.proven, score)
	t.cases = append(t.cases, Case{Name: p.Spec.Name, Family: p.Family, Taken: r.Judgement.Fits[0].ID, Factor: 1, Score: score, Own: score})
	switch {
	case score >= template.BalancedFrom:
		t.balanced++
		t.near++
	case score >= template.NearFrom:
		t.near++
	default:
		t.missed = append(t.missed, fmt.Sprintf("%s (%s, taken for %s): %.0f", p.Spec.Name, p.Family, r.Judgement.Fits[0].ID, score))
	}
	if r.Judgement.Fits[0].ID == p.Family {
		t.first++
		t.inTwo++
	} else if len(r.Judgement.Fits) > 1 && r.Judgement.Fits[1].ID == p.Family {
		t.inTwo++
	}
	for k, s := range Spoilings() {
		for _, axis := range []template.Axis{template.Strong, template.Sweet, template.Sour} {
			for _, factor := range []float64{s.Up, s.Down} {
				spec, ok := Spoil(&p.Spec, axis, factor)
				if !ok {
					continue
				}
				got, err := t.spoilt[k].drink(j, &spec, score, axis, factor > 1, advise)
				if err != nil {
					return err
				}
				t.cases = append(t.cases, Case{Name: p.Spec.Name, Family: p.Family, Taken: got.Judgement.Fits[0].ID, Axis: axis,
					Factor: factor, Score: got.Judgement.Score, Own: score, Faults: got.Faults})
			}
		}
	}
	return nil
}

func (t *spoiltTally) drink(j *balance.Judge, s *flavor.Spec, original float64, axis template.Axis, high, advise bool) (*balance.Result, error) {
	r, err := j.Score(s)
	if err != nil {
		return nil, err
	}
	t.scores = append(t.scores, r.Judgement.Score)
	if r.Judgement.Score < original {
		t.below++
	}
	for _, f := range r.Faults[:min(2, len(r.Faults))] {
		if f.Axis == axis && f.High == high {
			t.axis++
		}
	}
	if !advise {
		return r, nil
	}
	fixes, err := j.Fixes(s, r, 1)
	if err != nil {
		return nil, err
	}
	if len(fixes) > 0 && fixes[0].Score >= template.BalancedFrom || r.Verdict == template.Balanced {
		t.fixed++
	}
	return r, nil
}

// Spoil multiplies the pours that bring an axis. It reports false if no pour
// is there for it.
func Spoil(s *flavor.Spec, axis template.Axis, factor float64) (flavor.Spec, bool) {
	part := map[template.Axis]flavor.Part{template.Strong: flavor.PartBase,
		template.Sweet: flavor.PartSweetener, template.Sour: flavor.PartSour}[axis]
	out := s.Clone()
	hit := false
	for i := range out.Pours {
		p := &out.Pours[i]
		if p.Profile.Class.Part() != part {
			continue
		}
		p.Amount *= factor
		p.ML *= factor
		hit = true
	}
	return out, hit
}

func (t *tally) report() *Report {
	n := float64(len(t.proven))
	r := &Report{Drinks: len(t.proven), Balanced: float64(t.balanced) / n, BalancedOrNear: float64(t.near) / n,
		FamilyFirst: float64(t.first) / n, FamilyInTwo: float64(t.inTwo) / n, Missed: t.missed, Cases: t.cases}
	for k, s := range Spoilings() {
		x := &t.spoilt[k]
		m := float64(len(x.scores))
		r.Spoilt = append(r.Spoilt, SpoiltReport{Spoiling: s, Drinks: len(x.scores), Area: Area(t.proven, x.scores),
			OwnBelow: float64(x.below) / m, RightAxis: float64(x.axis) / m, FirstFixes: float64(x.fixed) / m})
	}
	return r
}

// Area returns the share of pairs in which the proven drink scores above the
// spoilt one, ties counting half: the area under the curve.
func Area(proven, spoilt []float64) float64 {
	var wins float64
	for _, p := range proven {
		for _, s := range spoilt {
			switch {
			case p > s:
				wins++
			case p == s:
				wins += 0.5
			}
		}
	}
	return wins / float64(len(proven)*len(spoilt))
}
