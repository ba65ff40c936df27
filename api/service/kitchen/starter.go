package kitchen

import (
	"cmp"
	"math"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

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

// Starters suggests up to n proven drinks for a first menu. A stock can pour each of them; no
// two have the same ingredients, and at most a quarter are of one family. First come drinks
// with a name of their own that guests ask for today, last those that are only described.
// Among equals the family with the fewest drinks so far comes first; then the drink that pours
// the most that none before it pours, so that the shelf is used; then the drink whose rarest
// ingredient is the most common.
func (k *Kitchen) Starters(stock []*flavor.Profile, n int) []template.Labelled {
	can := k.starters(stock)
	of, same, poured, taken := map[string]int{}, map[string]bool{}, map[*flavor.Profile]bool{}, make([]bool, len(can))
	var out []template.Labelled
	for len(out) < n {
		best := -1
		for i := range can {
			if !taken[i] && !same[can[i].made] && of[can[i].drink.Family] < (n+3)/4 && (best < 0 || can[i].before(&can[best], of, poured)) {
				best = i
			}
		}
		if best < 0 {
			break
		}
		d := &can[best]
		taken[best], same[d.made] = true, true
		of[d.drink.Family]++
		for i := range d.drink.Spec.Pours {
			poured[d.drink.Spec.Pours[i].Profile] = true
		}
		out = append(out, d.drink)
	}
	return out
}

// starter is a drink that may stand on a first menu.
type starter struct {
	drink    template.Labelled
	rank     int // 2 if guests ask for it by its name, 1 if it has one, 0 if it is only described
	scarcest int // how many proven drinks hold its rarest ingredient
	made     string
}

// starters lists the proven drinks that a stock pours, by name.
func (k *Kitchen) starters(stock []*flavor.Profile) []starter {
	there := map[string]bool{}
	for _, p := range stock {
		there[p.ID] = true
	}
	var out []starter
	for _, d := range k.Proven {
		least, pourable := math.MaxInt, len(d.Spec.Pours) > 0 && d.Spec.Name != ""
		for i := range d.Spec.Pours {
			p := d.Spec.Pours[i].Profile
			pourable = pourable && (there[p.ID] || p.Class.Free())
			least = min(least, k.Common.Drinks(p.ID))
		}
		if pourable {
			out = append(out, starter{d, rankOf(&d), least, madeOf(&d.Spec)})
		}
	}
	slices.SortStableFunc(out, func(a, b starter) int { return strings.Compare(a.drink.Spec.Name, b.drink.Spec.Name) })
	return out
}

// rankOf ranks what a drink is called. A description begins small, or lists what is in it.
func rankOf(d *template.Labelled) int {
	first, _ := utf8.DecodeRuneInString(d.Spec.Name)
	switch {
	case unicode.IsLower(first) || strings.Contains(d.Spec.Name, ","):
		return 0
	case d.Current:
		return 2
	}
	return 1
}

// before reports whether a comes before b where so many drinks of each family, and what
// these pour, are chosen.
func (a *starter) before(b *starter, of map[string]int, poured map[*flavor.Profile]bool) bool {
	return cmp.Or(cmp.Compare(b.rank, a.rank), cmp.Compare(of[a.drink.Family], of[b.drink.Family]),
		cmp.Compare(b.fresh(poured), a.fresh(poured)), cmp.Compare(b.scarcest, a.scarcest), strings.Compare(a.drink.Spec.Name, b.drink.Spec.Name)) < 0
}

// fresh returns the share of the pours of a drink, in per cent, that no other pours.
func (a *starter) fresh(poured map[*flavor.Profile]bool) int {
	n := 0
	for i := range a.drink.Spec.Pours {
		if !poured[a.drink.Spec.Pours[i].Profile] {
			n++
		}
	}
	return 100 * n / len(a.drink.Spec.Pours)
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
