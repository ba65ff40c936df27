package balance

import (
	"fmt"
	"math"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/measure"
	"counterpour/flavor/mix"
	"counterpour/flavor/template"
)

// Fault is one axis that pulls a draft out of its family.
type Fault struct {
	Axis      template.Axis
	High      bool    // there is too much of it
	Deviation float64 // in just-noticeable differences, positive
	PlusMinus float64 // the drink's own, in the same unit
	Text      string
}

// Least size of a fault and the least part of the pull it must explain.
const (
	leastDeviation = 1.0
	leastGain      = 0.10
)

func faultsOf(s *flavor.Spec, r *Result) []Fault {
	spread := axisSpreads(s, &r.Judgement.Equivalents)
	var total float64
	for _, p := range r.Judgement.Pulls {
		total = math.Max(total, p.Gain)
	}
	var out []Fault
	for _, p := range r.Judgement.Pulls {
		f := Fault{Axis: p.Axis, High: p.Change < 0, Deviation: JND(p.Axis, p.Change), PlusMinus: JND(p.Axis, spread[p.Axis])}
		if f.Deviation < leastDeviation || f.Deviation <= f.PlusMinus || p.Gain < leastGain*total {
			continue
		}
		f.Text = faultText(s, p, r.Judgement.Fits[0].Name)
		out = append(out, f)
	}
	return out
}

// axisSpreads returns the relative standard deviation of each equivalent, from
// the tolerance of the pours and the spread of the profiles.
func axisSpreads(s *flavor.Spec, e *template.Equivalents) template.Equivalents {
	var variance template.Equivalents
	for i := range s.Pours {
		p := &s.Pours[i]
		per := template.PerML(p.Profile)
		pour := mix.PourSpread(p.Unit, p.ML) / p.ML
		for a := range per {
			if e[a] <= 0 {
				continue
			}
			share := per[a] * p.ML / e[a]
			rel := math.Hypot(pour, profileSpread(p.Profile, template.Axis(a)))
			variance[a] += share * share * rel * rel
		}
	}
	for a := range variance {
		variance[a] = math.Sqrt(variance[a])
	}
	return variance
}

// profileSpread returns the relative spread of what a profile brings to an axis.
func profileSpread(p *flavor.Profile, a template.Axis) float64 {
	var f flavor.Figure
	switch a {
	case template.Strong:
		f = p.ABV
	case template.Sweet:
		f = p.Sugar
	case template.Sour:
		f = p.Acid
	case template.Bitter:
		f = p.Bitter
	}
	if f.Value <= 0 {
		return 0
	}
	return f.Spread / f.Value
}

// carrier returns the pour that brings most of an axis, or −1.
func carrier(s *flavor.Spec, a template.Axis) int {
	best, most := -1, 0.0
	for i := range s.Pours {
		per := template.PerML(s.Pours[i].Profile)
		if v := per[a] * s.Pours[i].ML; v > most {
			best, most = i, v
		}
	}
	return best
}

// against is the axis that a bartender weighs another one by.
func against(a template.Axis) template.Axis {
	switch a {
	case template.Sweet:
		return template.Sour
	case template.Sour:
		return template.Sweet
	}
	return template.Strong
}

func faultText(s *flavor.Spec, p template.Pull, family string) string {
	i := carrier(s, p.Axis)
	if i < 0 {
		return fmt.Sprintf("nothing here brings %s, and a %s needs it", noun(p.Axis), strings.ToLower(family))
	}
	pour := &s.Pours[i]
	per := template.PerML(pour.Profile)
	have := template.EquivalentsOf(s)[p.Axis]
	shift := math.Abs(have*math.Expm1(p.Change)) / per[p.Axis]
	word := "too much"
	if p.Change > 0 {
		word = "too little"
	}
	text := fmt.Sprintf("%s %s %s", amountNear(shift, pour), word, pour.Profile.Name)
	if j := carrier(s, against(p.Axis)); j >= 0 && j != i {
		text += " for this much " + s.Pours[j].Profile.Name
	}
	return text
}

// amountNear says an amount in the unit of a pour, to the nearest step of it.
func amountNear(ml float64, like *flavor.Pour) string {
	snapped := measure.Snap(ml, like.Unit, like.Profile)
	return "about " + measure.FormatAmount(snapped, like.Unit)
}

func noun(a template.Axis) string {
	switch a {
	case template.Strong:
		return "strength"
	case template.Sweet:
		return "sweetness"
	case template.Sour:
		return "acid"
	case template.Bitter:
		return "bitterness"
	}
	return "length"
}
