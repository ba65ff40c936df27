package fitting

import (
	"cmp"
	"slices"

	"counterpour/flavor"
	"counterpour/flavor/measure/draft/words/drinks"
)

// leastAlike is how many pours a drink must share with a draft to tell what the draft lacks, and mostLacking
// how many kinds are told.
const (
	leastAlike  = 2
	mostLacking = 3
)

// Lacking lists what the drinks that everybody knows pour beside what a draft pours: of the drink of its name
// what it does not pour yet, else what drinks pour that share all of the rest and one thing more, the
// commonest first. named looks up an ingredient.
func Lacking(drink string, poured []*flavor.Profile, named func(string) *flavor.Profile) []*flavor.Profile {
	if pours, _ := drinks.Pours(drink); len(pours) > 0 {
		if left := without(pours, poured, named); len(left) > 0 && len(left) <= mostLacking {
			return left
		}
	}
	if len(poured) < leastAlike {
		return nil
	}
	count := map[*flavor.Profile]int{}
	var found []*flavor.Profile
	drinks.Among(func(_ string, pours []string) {
		if len(pours) != len(poured)+1 {
			return
		}
		left := without(pours, poured, named)
		if len(left) != 1 {
			return
		}
		if count[left[0]] == 0 {
			found = append(found, left[0])
		}
		count[left[0]]++
	})
	slices.SortStableFunc(found, func(a, b *flavor.Profile) int {
		return cmp.Or(cmp.Compare(count[b], count[a]), cmp.Compare(a.Name, b.Name))
	})
	found = slices.DeleteFunc(found, func(p *flavor.Profile) bool { return 2*count[p] < count[found[0]] })
	return found[:min(len(found), mostLacking)]
}

// without is what a list names that is not poured, nor another of its class; each pour stands for one.
func without(list []string, poured []*flavor.Profile, named func(string) *flavor.Profile) []*flavor.Profile {
	left := slices.Clone(poured)
	var out []*flavor.Profile
	for _, name := range list {
		p := named(name)
		if i := slices.Index(left, p); i >= 0 {
			left = slices.Delete(left, i, i+1)
		} else if p != nil {
			out = append(out, p)
		}
	}
	for _, q := range left { // another gin, another red vermouth
		i := slices.IndexFunc(out, func(p *flavor.Profile) bool { return p.Class == q.Class })
		if i < 0 { // the draft pours what that drink does not
			return nil
		}
		out = slices.Delete(out, i, i+1)
	}
	return slices.DeleteFunc(out, func(p *flavor.Profile) bool { return p.Class == flavor.ClassCocktailBitters || p.Class.Solid() })
}
