package bench

import (
	"counterpour/api/service/kitchen"
	"counterpour/flavor"
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
		to := kitchen.Scaled(s, k.by)
		out = append(out, sizeView{k.name, rewrite(text, s, &to)})
	}
	for _, u := range []struct {
		name string
		from []flavor.Unit
		to   flavor.Unit
	}{{"In mL", []flavor.Unit{flavor.Ounce, flavor.Centilitre}, flavor.Millilitre}, {"In oz", []flavor.Unit{flavor.Millilitre, flavor.Centilitre}, flavor.Ounce}} {
		if to, changed := kitchen.InUnit(s, u.from, u.to); changed {
			out = append(out, sizeView{u.name, rewrite(text, s, &to)})
		}
	}
	return out
}
