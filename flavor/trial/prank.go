package trial

import (
	"fmt"
	"slices"

	"counterpour/flavor"
	"counterpour/flavor/balance"
	"counterpour/flavor/ratio"
	"counterpour/flavor/template"
	"counterpour/flavor/weigh"
)

// Prank is one mischief done to one drink, judged.
type Prank struct {
	Name, Drink, Family string
	Score               float64
	Noticed             bool   // it is not called balanced
	Named               bool   // one of the first two faults names the pour, or the method
	Undone              bool   // the first fix takes back some or all of the pour, puts back what is missing, or mends the method
	Fault, Fix          string // the first of each, as told
}

// MischiefReport counts what became of one mischief. Shares are of all drinks
// that it was done to.
type MischiefReport struct {
	Name                   string
	Drinks                 int
	Noticed, Named, Undone float64
}

// pranks judges each mischief done to a drink.
func (r *Rig) pranks(j *balance.Judge, p *template.Labelled) ([]Prank, error) {
	if r.Larder == nil {
		return nil, nil
	}
	var out []Prank
	for _, m := range Mischiefs() {
		s, by, ok := m.spoil(p.Spec.Clone(), r.Larder)
		if !ok {
			continue
		}
		got := Prank{Name: m.Name, Drink: p.Spec.Name, Family: p.Family}
		if err := got.judge(j, &s, by, r.Advise); err != nil {
			return nil, fmt.Errorf("%s: %w", m.Name, err)
		}
		out = append(out, got)
	}
	return out, nil
}

func (p *Prank) judge(j *balance.Judge, s *flavor.Spec, by *flavor.Profile, advise bool) error {
	r, err := j.Score(s)
	if err != nil {
		return err
	}
	p.Score, p.Noticed = r.Judgement.Score, r.Verdict != weigh.Balanced
	for i := range r.Faults {
		f := &r.Faults[i]
		if i == 0 {
			p.Fault = f.Text
		}
		if i < 2 && (by == nil && (f.Axis == ratio.Method || f.Axis == ratio.Temperature) || by != nil && f.Profile == by || by != nil && by.Base() && f.Axis == ratio.Strong) {
			p.Named = true
		}
	}
	if !advise {
		return nil
	}
	fixes, err := j.Fixes(s, r, 1)
	if err != nil || len(fixes) == 0 {
		return err
	}
	p.Fix = fixes[0].Text
	p.Undone = undoes(&fixes[0], s, by)
	return nil
}

// undoes reports whether a fix undoes what was done to a drink: with the pour to
// blame, whose class may have been multiplied whole, or with the method if by is nil.
func undoes(fix *balance.Fix, s *flavor.Spec, by *flavor.Profile) bool {
	if by == nil {
		return fix.Spec.Method != s.Method || lateOrHot(&fix.Spec) > lateOrHot(s)
	}
	base := by.Base()
	missing := !slices.ContainsFunc(s.Pours, func(p flavor.Pour) bool { return p.Profile == by })
	return slices.ContainsFunc(fix.Changes, func(c balance.Change) bool {
		kind := c.Profile.Class == by.Class || base && c.Profile.Base()
		return kind && (c.ToML > c.FromML) == missing
	})
}

// lateOrHot counts the pours that go in afterwards, or hot.
func lateOrHot(s *flavor.Spec) (n int) {
	for i := range s.Pours {
		if s.Pours[i].After || s.Pours[i].Heat == flavor.HeatHot {
			n++
		}
	}
	return n
}

func mischiefReports(pranks []Prank) []MischiefReport {
	var out []MischiefReport
	for _, m := range Mischiefs() {
		r := MischiefReport{Name: m.Name}
		for i := range pranks {
			p := &pranks[i]
			if p.Name != m.Name {
				continue
			}
			r.Drinks++
			r.Noticed += one(p.Noticed)
			r.Named += one(p.Noticed && p.Named)
			r.Undone += one(p.Noticed && p.Undone)
		}
		if r.Drinks > 0 {
			n := float64(r.Drinks)
			r.Noticed, r.Named, r.Undone = r.Noticed/n, r.Named/n, r.Undone/n
		}
		out = append(out, r)
	}
	return out
}

func one(is bool) float64 {
	if is {
		return 1
	}
	return 0
}

// sum returns the report of all mischiefs together.
func (m MischiefReport) sum(of []MischiefReport) MischiefReport {
	for _, o := range of {
		n := float64(o.Drinks)
		m.Drinks += o.Drinks
		m.Noticed += n * o.Noticed
		m.Named += n * o.Named
		m.Undone += n * o.Undone
	}
	if n := float64(m.Drinks); n > 0 {
		m.Noticed, m.Named, m.Undone = m.Noticed/n, m.Named/n, m.Undone/n
	}
	return m
}
