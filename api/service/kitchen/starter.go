package kitchen

import (
	"cmp"
	"math"
	"slices"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/template"
)

// Usual lists up to n ingredients that most proven drinks pour, the most common first. It
// leaves out what comes from the tap.
func (k *Kitchen) Usual(n int) []*flavor.Profile {
	var out []*flavor.Profile
	for _, p := range k.Catalogue.Profiles() {
		if k.Common.Drinks(p.ID) > 0 && !p.Class.Free() {
			out = append(out, p)
		}
	}
	slices.SortFunc(out, func(a, b *flavor.Profile) int {
		return cmp.Or(cmp.Compare(k.Common.Drinks(b.ID), k.Common.Drinks(a.ID)), strings.Compare(a.ID, b.ID))
	})
	return out[:min(n, len(out))]
}

// Starters suggests up to n proven drinks for a first menu. A stock can pour each of them; no two have the same ingredients, and at most a quarter are of one family. Drinks
// whose rarest ingredient is the most common come first.
func (k *Kitchen) Starters(stock []*flavor.Profile, n int) []template.Labelled {
	there := map[string]bool{}
	for _, p := range stock {
		there[p.ID] = true
	}
	scarcest := map[string]int{}
	var can []template.Labelled
	for _, d := range k.Proven {
		least, pourable := math.MaxInt, len(d.Spec.Pours) > 0
		for i := range d.Spec.Pours {
			p := d.Spec.Pours[i].Profile
			pourable = pourable && (there[p.ID] || p.Class.Free())
			least = min(least, k.Common.Drinks(p.ID))
		}
		if pourable && d.Spec.Name != "" {
			can = append(can, d)
			scarcest[d.Spec.Name] = least
		}
	}
	slices.SortStableFunc(can, func(a, b template.Labelled) int {
		return cmp.Or(cmp.Compare(scarcest[b.Spec.Name], scarcest[a.Spec.Name]), strings.Compare(a.Spec.Name, b.Spec.Name))
	})
	of, same := map[string]int{}, map[string]bool{}
	var out []template.Labelled
	for _, d := range can {
		if made := madeOf(&d.Spec); !same[made] && of[d.Family] < (n+3)/4 && len(out) < n {
			of[d.Family]++
			same[made] = true
			out = append(out, d)
		}
	}
	return out
}

// madeOf returns a key of the set of ingredients of a drink.
func madeOf(s *flavor.Spec) string {
	var ids []string
	for i := range s.Pours {
		ids = append(ids, s.Pours[i].Profile.ID)
	}
	slices.Sort(ids)
	return strings.Join(slices.Compact(ids), " ")
}
