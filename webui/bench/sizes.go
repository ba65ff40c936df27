package bench

import (
	"counterpour/api/service/kitchen"
	"counterpour/flavor"
	"counterpour/webui/say"
)

// sizeView is the draft in another size or in other units.
type sizeView struct{ Name, Draft string }

// sizesOf writes the draft in other sizes, and in the units that it is not in.
func sizesOf(text string, s *flavor.Spec) []sizeView {
	var out []sizeView
	for _, k := range []struct {
		name string
		by   float64
	}{{say.It("bench.halve-it"), 0.5}, {say.It("bench.two-of-it"), 2}, {say.It("bench.four-of-it"), 4}} {
		to := kitchen.Scaled(s, k.by)
		out = append(out, sizeView{k.name, rewrite(text, s, &to)})
	}
	for _, u := range []struct {
		name string
		from []flavor.Unit
		to   flavor.Unit
	}{{say.It("bench.in-ml"), []flavor.Unit{flavor.Ounce, flavor.Centilitre}, flavor.Millilitre}, {say.It("bench.in-oz"), []flavor.Unit{flavor.Millilitre, flavor.Centilitre}, flavor.Ounce}} {
		if to, changed := kitchen.InUnit(s, u.from, u.to); changed {
			out = append(out, sizeView{u.name, rewrite(text, s, &to)})
		}
	}
	return out
}
