package house

import (
	"fmt"
	"slices"

	"counterpour/flavor"
)

// Currencies lists what bottles are priced in, in order of their codes.
func Currencies(bottles []Bottle) []string {
	var out []string
	for _, b := range bottles {
		if b.Price != nil && !slices.Contains(out, b.Currency) {
			out = append(out, b.Currency)
		}
	}
	slices.Sort(out)
	return out
}

// MixedCurrencies says which bottles are priced in another currency than most are, for
// then no drink can be costed. It is empty if all prices are in one currency. Of two
// currencies that are as frequent, the first by its code counts as the usual one.
func MixedCurrencies(bottles []Bottle) string {
	all := Currencies(bottles)
	if len(all) < 2 {
		return ""
	}
	priced := map[string][]string{}
	for _, b := range bottles {
		if b.Price != nil {
			priced[b.Currency] = append(priced[b.Currency], b.Name)
		}
	}
	usual := slices.MaxFunc(all, func(a, b string) int { return len(priced[a]) - len(priced[b]) })
	var odd []string
	for _, code := range all {
		if code == usual {
			continue
		}
		is := "is"
		if len(priced[code]) > 1 {
			is = "are"
		}
		odd = append(odd, fmt.Sprintf("%s %s priced in %s", FirstFew(priced[code]), is, code))
	}
	return flavor.JoinAnd(odd) + ", the other bottles in " + usual + ": no drink can be costed until all are in one currency."
}

// mostNamed is how many records one sentence names.
const mostNamed = 5

// FirstFew lists names for a sentence: the first five, and how many more there are.
func FirstFew(names []string) string {
	if more := len(names) - mostNamed; more > 0 {
		names = append(slices.Clone(names[:mostNamed]), fmt.Sprintf("%d more", more))
	}
	return flavor.JoinAnd(names)
}
