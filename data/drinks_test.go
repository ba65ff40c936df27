package data_test

import (
	"cmp"
	"flag"
	"fmt"
	"maps"
	"os"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/data"
	"counterpour/flavor"
	"counterpour/flavor/measure/draft/words/drinks"
)

var updateDrinks = flag.Bool("update-drinks", false, "write the names of the proven drinks that a draft is read by")

// A draft is read by the names of the proven drinks, without what tells two of one name apart, and
// by how they all are made and served, and what a ratio of them measures.
func TestDrinksAreThoseThatAreProven(t *testing.T) {
	records, err := data.Proven()
	require.NoError(t, err)
	c, err := data.Embedded()
	require.NoError(t, err)
	proven, err := c.Book(records)
	require.NoError(t, err)
	methods, services, pours, ratios := map[string]string{}, map[string]string{}, map[string][]string{}, map[string]map[int][]string{}
	for i := range proven {
		name, _, lists := strings.Cut(records[i].Name, ",")
		name, _, _ = strings.Cut(name, " (")
		name = strings.ToLower(strings.TrimSpace(name))
		if lists && isPoured(name, proven[i].Spec.Pours, c.Profiles()) { // "Gin, lemon and ale" lists what is in it
			continue
		}
		agree(methods, name, stated(&proven[i].Spec, "method", whole(proven[i].Spec.Method)))
		agree(services, name, stated(&proven[i].Spec, "service", string(proven[i].Spec.Service)))
		pours[name] = common(pours[name], poured(proven[i].Spec.Pours))
		if ratios[name] == nil {
			ratios[name] = map[int][]string{}
		}
		alike(ratios[name], measured(proven[i].Spec.Pours))
	}
	var b strings.Builder
	for _, name := range slices.Sorted(maps.Keys(methods)) {
		fmt.Fprintf(&b, "%s\t%s\t%s\t%s\t%s\n", name, methods[name], services[name], strings.Join(pours[name], "; "), listed(ratios[name]))
	}
	want := b.String()
	if *updateDrinks {
		require.NoError(t, os.WriteFile("../flavor/measure/draft/words/drinks/names.txt", []byte(want), 0o644))
		return
	}
	assert.Equal(t, want, drinks.Names, "run go test ./data -run TestDrinksAreThoseThatAreProven -update-drinks")
}

// isPoured reports whether a name is that of an ingredient of a class of which something is poured.
func isPoured(name string, pours []flavor.Pour, all []*flavor.Profile) bool {
	return slices.ContainsFunc(all, func(p *flavor.Profile) bool {
		named := strings.EqualFold(p.Name, name) || slices.ContainsFunc(p.Aliases, func(a string) bool { return strings.EqualFold(a, name) })
		return named && slices.ContainsFunc(pours, func(q flavor.Pour) bool { return q.Profile.Class == p.Class })
	})
}

// stated is what a spec says, and nothing where it was filled in as is usual.
func stated(s *flavor.Spec, of, value string) string {
	if slices.ContainsFunc(s.Notes, func(n string) bool { return strings.HasPrefix(n, "no "+of+" stated") }) {
		return ""
	}
	return value
}

// whole is a method by which any drink of a name is made; whether a foam is shaken dry first hangs
// on whether this draft has one.
func whole(m flavor.Method) string {
	if m == flavor.DryShake {
		return ""
	}
	return string(m)
}

// poured are the names of what a drink pours, in the order of their letters.
func poured(pours []flavor.Pour) []string {
	names := []string{}
	for i := range pours {
		names = append(names, pours[i].Profile.Name)
	}
	slices.Sort(names)
	return slices.Compact(names)
}

// common are the names of one list that are of another as well; all of them, where there is no other yet.
func common(before, names []string) []string {
	if before == nil {
		return names
	}
	return slices.DeleteFunc(names, func(n string) bool { return !slices.Contains(before, n) })
}

// leastMeasuredML is the least mL of a pour that a ratio has a number for; common practice.
const leastMeasuredML = 7.5

// measured are the names of what a ratio of a drink has numbers for, in the order in which bars write them: the
// spirits, what sours, what sweetens, other bottles, and what lengthens; common practice. Sugar is poured as syrup.
func measured(pours []flavor.Pour) []string {
	rank := func(p flavor.Pour) int { return slices.Index(drinks.InRatio, p.Profile.Class.Part()) }
	main := []flavor.Pour{}
	for _, p := range pours {
		sweetens := p.Profile.Class.Part() == flavor.PartSweetener && p.Unit != flavor.Dash
		solid := p.Profile.Class.Solid() && !sweetens
		if rank(p) >= 0 && !solid && (sweetens || p.Unit == flavor.Top || p.ML >= leastMeasuredML) {
			main = append(main, p)
		}
	}
	slices.SortStableFunc(main, func(a, b flavor.Pour) int { return cmp.Or(rank(a)-rank(b), cmp.Compare(b.ML, a.ML)) })
	names := []string{}
	for _, p := range main {
		name := p.Profile.Name
		if p.Profile.Class == flavor.ClassSugar || name == "rich simple syrup (2:1)" {
			name = "simple syrup (1:1)"
		}
		names = append(names, name)
	}
	return names
}

// alike notes what one drink of a name measures; where two that measure as many pours differ, nothing is left.
func alike(all map[int][]string, names []string) {
	n := len(names)
	if was, ok := all[n]; ok && !slices.Equal(was, names) {
		names = nil
	}
	all[n] = names
}

// listed are the lists of a drink of a name that have two pours at least.
func listed(all map[int][]string) string {
	var out []string
	for _, n := range slices.Sorted(maps.Keys(all)) {
		if n > 1 && all[n] != nil {
			out = append(out, strings.Join(all[n], "; "))
		}
	}
	return strings.Join(out, " | ")
}

// agree notes what one drink of a name says; where two differ, nothing is left.
func agree(all map[string]string, name, value string) {
	if was, ok := all[name]; ok && was != value {
		value = ""
	}
	all[name] = value
}
