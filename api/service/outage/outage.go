// Package outage knows what else is out when somebody says that something ran out: a name
// that was said may mean more than one bottle.
package outage

import (
	"fmt"
	"slices"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/sense"
)

// Names is what looks names up, and knows what ingredients smell of.
type Names struct {
	Named func(name string) (*flavor.Profile, error)
	Space *sense.Space
}

// Also is what is out with what is missing, since a name that was said means it too.
type Also struct {
	named   []*flavor.Profile // what a name means by itself, beside what the draft calls by it
	sisters []*flavor.Profile // what the name stands in the names of
}

// With returns what else of the shelf is out, since the names of what is missing mean it too, as
// they were said. Honey that a draft reads as its syrup is out as honey too. Whoever is out of
// grapefruit juice has no pink one, and whoever is out of honey none of its syrups: such sisters
// are out, unless listed says that a stock list tells what is there.
func (n Names) With(spec *flavor.Spec, said []string, missing, shelf []*flavor.Profile, listed bool) Also {
	var out Also
	var called []string
	for _, p := range spec.Pours {
		if slices.Contains(missing, p.Profile) {
			called = append(called, p.Match.Asked)
		}
	}
	for _, name := range said {
		if slices.ContainsFunc(missing, func(m *flavor.Profile) bool { return m.ID == name }) {
			continue // it is no name that somebody says
		}
		called = append(called, name)
		if p, err := n.Named(name); err == nil && !slices.Contains(missing, p) {
			out.named = append(out.named, p)
		}
	}
	if listed {
		return out
	}
	for _, p := range shelf {
		if !slices.Contains(missing, p) && !slices.Contains(out.named, p) &&
			slices.ContainsFunc(missing, func(m *flavor.Profile) bool { return n.sisters(p, m, called) }) {
			out.sisters = append(out.sisters, p)
		}
	}
	return out
}

// sisters reports whether p is the same thing as what is missing, in another form: a
// juice, a syrup or a sparkling wine that smells of it first, and holds a name of it in its own,
// or a coffee that is made as it is, as an espresso without caffeine. Any other bottle is bought
// by a name of its own.
func (n Names) sisters(p, missing *flavor.Profile, names []string) bool {
	juices, sweeteners := p.Class.Pressed() && missing.Class.Pressed(), isSweetener(p) && isSweetener(missing)
	coffees := p.Class.Roasted() && missing.Class.Roasted()
	wines := p.Class == flavor.ClassSparklingWine && missing.Class == flavor.ClassSparklingWine && (p.ABV.Value <= flavor.NoAlcoholABV) == (missing.ABV.Value <= flavor.NoAlcoholABV)
	if !juices && !sweeteners && !coffees && !wines {
		return false
	}
	if coffees {
		names = []string{missing.Name} // what is drawn from the same machine; coffee by any other name is brewed otherwise
	}
	of, is := n.Space.Leads(missing), n.Space.Leads(p)
	if len(of) == 0 || len(is) == 0 || of[0].Name != is[0].Name {
		return false
	}
	own := append([]string{p.Name}, p.Aliases...)
	return slices.ContainsFunc(names, func(name string) bool {
		return slices.ContainsFunc(own, func(o string) bool { return holdsWords(o, name) })
	})
}

func isSweetener(p *flavor.Profile) bool { return p.Class.Kin() == flavor.KinSweetener }

// holdsWords reports whether a name holds all words of another, one after the other.
func holdsWords(name, words string) bool {
	words = flavor.NormaliseName(words)
	return words != "" && strings.Contains(" "+flavor.NormaliseName(name)+" ", " "+words+" ")
}

// Holds reports whether an ingredient is among them.
func (x Also) Holds(p *flavor.Profile) bool {
	return slices.Contains(x.named, p) || slices.Contains(x.sisters, p)
}

// mostSisters is how many sisters are named.
const mostSisters = 4

// Note says which sisters are taken to be out, empty if none is.
func (x Also) Note() string {
	if len(x.sisters) == 0 {
		return ""
	}
	var names []string
	for _, p := range x.sisters[:min(len(x.sisters), mostSisters)] {
		names = append(names, p.Name)
	}
	if more := len(x.sisters) - len(names); more > 0 {
		names = append(names, fmt.Sprintf("%d more", more))
	}
	return "also taken as out, since it has that name too (list it in the stock to pour it): " + flavor.JoinAnd(names)
}
