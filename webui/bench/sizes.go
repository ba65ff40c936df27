package bench

import (
	"slices"

	"counterpour/flavor"
	"counterpour/flavor/measure"
)

// sizeView is the draft in another size or in other units.
type sizeView struct{ Name, Draft string }

// scales are the sizes that a draft is offered in.
var scales = []struct {
	name string
	by   float64
}{{"Halve it", 0.5}, {"Two of it", 2}, {"Four of it", 4}}

// sizesOf writes the draft in other sizes, and in the units that it is not in.
func sizesOf(text string, s *flavor.Spec) []sizeView {
	var out []sizeView
	for _, k := range scales {
		to := scaled(s, k.by)
		out = append(out, sizeView{k.name, rewrite(text, s, &to)})
	}
	for _, u := range []struct {
		name string
		from []flavor.Unit
		to   flavor.Unit
	}{{"In mL", []flavor.Unit{flavor.Ounce, flavor.Centilitre}, flavor.Millilitre}, {"In oz", []flavor.Unit{flavor.Millilitre, flavor.Centilitre}, flavor.Ounce}} {
		if to, changed := inUnit(s, u.from, u.to); changed {
			out = append(out, sizeView{u.name, rewrite(text, s, &to)})
		}
	}
	return out
}

// scaled returns the spec with every pour so many times as large. What tops a
// glass up stays as it is.
func scaled(s *flavor.Spec, by float64) flavor.Spec {
	to := s.Clone()
	for i := range to.Pours {
		if p := &to.Pours[i]; p.Unit != flavor.Top {
			p.Amount, p.ML = p.Amount*by, p.ML*by
		}
	}
	return to
}

// inUnit turns the pours in some units into another, each to the nearest amount
// that a hand pours: 2 oz are 60 mL. It is false if no pour is in those units.
func inUnit(s *flavor.Spec, from []flavor.Unit, unit flavor.Unit) (to flavor.Spec, changed bool) {
	to = s.Clone()
	for i := range to.Pours {
		p := &to.Pours[i]
		if !slices.Contains(from, p.Unit) {
			continue
		}
		amount := measure.Snap(p.ML, unit, p.Profile)
		ml, err := measure.ToML(amount, unit, p.Profile)
		if amount <= 0 || err != nil {
			continue // it does not come in that unit
		}
		p.Amount, p.Unit, p.ML, changed = amount, unit, ml, true
	}
	return to, changed
}
