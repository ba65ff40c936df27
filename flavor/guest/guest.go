// Package guest knows what a guest may be served: allergens, diet, strength and price. What
// nobody has stated counts as present. The rule stands here once, for covers, riffs, walks,
// menus and fixes alike.
package guest

import (
	"fmt"
	"math"
	"slices"

	"counterpour/flavor"
)

// Guest is who drinks it.
type Guest struct {
	Avoid     []flavor.Allergen // must not have; what may be present or is unknown counts as present
	NoAnimal  []string          // must not have: milk, egg, honey, fish, insect …; see Profile.Animal
	NoAlcohol bool              // none stronger than [flavor.NoAlcoholABV]
	NoTrace   bool              // none but what is stated to hold none, see [flavor.Profile.StatesNoAlcohol]
	MaxABV    float64           // % vol of the finished drink; 0 means no limit
	// Prices are per millilitre, by ingredient. With MaxCost, the price of the
	// substitutes in one drink may not exceed it, and one without a price is
	// left out. 0 means no limit.
	Prices  map[string]float64
	MaxCost float64
}

// Keep adds a diet, such as "vegan" or "alcohol-free", to what the guest must
// not have; see [flavor.ParseDiet] for an unknown word.
func (g *Guest) Keep(diet string) error {
	d, err := flavor.ParseDiet(diet)
	if err != nil {
		return err
	}
	for _, a := range d.NoAnimal {
		if !slices.Contains(g.NoAnimal, a) {
			g.NoAnimal = append(g.NoAnimal, a)
		}
	}
	for _, a := range d.Avoid {
		if !slices.Contains(g.Avoid, a) {
			g.Avoid = append(g.Avoid, a)
		}
	}
	g.NoAlcohol, g.NoTrace = g.NoAlcohol || d.NoAlcohol, g.NoTrace || d.NoTrace
	return nil
}

// Check reports a limit that is out of range.
func (g *Guest) Check() error {
	if !(g.MaxABV >= 0 && g.MaxABV <= 100) {
		return &flavor.DataFault{Kind: flavor.ErrInvalid, Location: "max_abv", Value: fmt.Sprint(g.MaxABV),
			Message: "the strength must be from 0 to 100 % vol"}
	}
	if !(g.MaxCost >= 0) || math.IsInf(g.MaxCost, 0) {
		return &flavor.DataFault{Kind: flavor.ErrInvalid, Location: "max_cost", Value: fmt.Sprint(g.MaxCost),
			Message: "the cost must be a finite number, not negative"}
	}
	return nil
}

// MayHave reports whether the guest may have p, whatever it costs.
func (g *Guest) MayHave(p *flavor.Profile) bool {
	if !p.Avoids(g.Avoid) || g.NoAlcohol && p.ABV.Value > flavor.NoAlcoholABV || g.NoTrace && !p.StatesNoAlcohol() {
		return false
	}
	if p.Unread && g.AvoidsAny() {
		return false
	}
	return !slices.ContainsFunc(g.NoAnimal, func(a string) bool { return slices.Contains(p.Animal, a) })
}

// AvoidsAny reports whether there is anything that the guest must not have.
func (g *Guest) AvoidsAny() bool {
	return len(g.Avoid)+len(g.NoAnimal) > 0 || g.NoAlcohol || g.NoTrace
}

// MayHaveAll reports whether the guest may have every pour of a drink and what is laid on it,
// whatever it costs.
func (g *Guest) MayHaveAll(s *flavor.Spec) bool {
	return !slices.ContainsFunc(s.Held(), func(p *flavor.Profile) bool { return !g.MayHave(p) })
}

// MayHaveLaid reports whether the guest may have what is served with a drink and is none of
// its pours.
func (g *Guest) MayHaveLaid(s *flavor.Spec) bool { return g.BarredLaid(s) == nil }

// BarredLaid returns the first thing served with a drink, its pours aside, that the guest must
// not have; nil if there is none.
func (g *Guest) BarredLaid(s *flavor.Spec) *flavor.Profile {
	held := s.Held()[len(s.Pours):]
	if at := slices.IndexFunc(held, func(p *flavor.Profile) bool { return !g.MayHave(p) }); at >= 0 {
		return held[at]
	}
	return nil
}

// Serve returns a drink as it is served to the guest: without what is laid on it that the guest
// must not have, where it can be left off.
func (g *Guest) Serve(s *flavor.Spec) *flavor.Spec { return s.Without(g.MayHave) }

// TooStrong reports whether a finished drink is above the guest's limit, in % vol.
func (g *Guest) TooStrong(abv float64) bool { return g.MaxABV > 0 && abv > g.MaxABV }

// Accepts reports whether p may be poured for the guest. With a limit on cost,
// it must have a price.
func (g *Guest) Accepts(p *flavor.Profile) bool { return g.MayHave(p) && g.affords(p) }

// IfCleared is Accepts once the labels of what may carry what the guest avoids, or of
// which nobody has stated it, are found to name none of it, and say that nothing from
// animals cleared it and, of what is sold as free of alcohol, that it holds none at all.
func (g *Guest) IfCleared(p *flavor.Profile) bool {
	unsure := *g
	unsure.Avoid, unsure.NoTrace, unsure.NoAlcohol = nil, false, g.NoAlcohol || g.NoTrace
	unsure.NoAnimal = slices.DeleteFunc(slices.Clone(g.NoAnimal), func(a string) bool { return a == flavor.Finings })
	return p.Clear(g.Avoid) <= flavor.MayBePresent && unsure.Accepts(p)
}

// HeedsLabels reports whether a label can matter to the guest at all.
func (g *Guest) HeedsLabels() bool {
	return len(g.Avoid) > 0 || g.NoTrace || slices.Contains(g.NoAnimal, flavor.Finings)
}

// LabelDecides reports whether only the label of p stands between it and the guest.
func (g *Guest) LabelDecides(p *flavor.Profile) bool { return !g.Accepts(p) && g.IfCleared(p) }

// Some pours unsettle a guest who avoids an allergen, and cost so many steps: a pour that brings
// another allergen, one that brings what many who avoid nuts avoid too, and one that the guest
// must be asked about.
const (
	newAllergenJND = 1.0
	nuttyJND       = 5.0
	askJND         = 1.5
)

// Unsettles returns what a drink made in place of another must earn for a guest who avoids
// an allergen, though the guest may have it, in just-noticeable differences: what is
// harmless comes first.
func (g *Guest) Unsettles(s, was *flavor.Spec) float64 {
	avoid := g.Avoid
	if len(avoid) == 0 {
		return 0
	}
	nutty := g.avoidsNuts()
	cost := askJND * float64(max(0, len(s.Ask(avoid))-len(was.Ask(avoid))))
	for _, a := range s.NewAllergens(was) {
		cost += newAllergenJND
		if nutty && slices.Contains(nuts, a) {
			cost += nuttyJND
		}
	}
	return cost
}

// Wonders reports whether the guest must be asked something before p is poured that was not to
// be asked of a drink: what many who avoid an allergen avoid too. Of what the guest must not
// have in that drink nothing was asked.
func (g *Guest) Wonders(p *flavor.Profile, at *flavor.Spec) bool {
	return slices.ContainsFunc(p.Asks(g.Avoid), func(question string) bool {
		return !slices.ContainsFunc(at.Pours, func(x flavor.Pour) bool {
			return g.MayHave(x.Profile) && slices.Contains(x.Profile.Asks(g.Avoid), question)
		})
	})
}

// nuts are the allergens that many who avoid one of them avoid too (common practice, no source).
var nuts = []flavor.Allergen{flavor.TreeNuts, flavor.Peanuts, flavor.Sesame}

// avoidsNuts reports whether the guest avoids tree nuts or peanuts.
func (g *Guest) avoidsNuts() bool {
	return slices.Contains(g.Avoid, flavor.TreeNuts) || slices.Contains(g.Avoid, flavor.Peanuts)
}

// Startles reports whether p brings a drink nuts of another kind than those that the guest avoids:
// no law bars peanuts from who avoids tree nuts, and no bartender offers them.
func (g *Guest) Startles(p *flavor.Profile, at *flavor.Spec) bool {
	carries := func(p *flavor.Profile, a flavor.Allergen) bool {
		c, _ := p.Allergen(a)
		return c == flavor.Contains || c == flavor.MayContain
	}
	return g.avoidsNuts() && slices.ContainsFunc(nuts, func(a flavor.Allergen) bool {
		return carries(p, a) && !at.Has(func(q *flavor.Profile) bool { return carries(q, a) })
	})
}

// Untroubled returns of some bottles those that no bartender would startle the guest with at a
// drink, and of these the ones of which the guest need not be asked anything new. Who avoids nuts
// is offered nothing that tastes of kernels while there is anything else, and never by its label.
func (g *Guest) Untroubled(bottles []*flavor.Profile, at *flavor.Spec) (harmless, unasked []*flavor.Profile) {
	if len(g.Avoid) == 0 {
		return bottles, bottles
	}
	harmless = slices.DeleteFunc(slices.Clone(bottles), func(p *flavor.Profile) bool { return g.Startles(p, at) })
	unasked = slices.DeleteFunc(slices.Clone(harmless), func(p *flavor.Profile) bool { return g.Wonders(p, at) })
	return harmless, unasked
}

func (g *Guest) affords(p *flavor.Profile) bool {
	return g.MaxCost <= 0 || p.Priced(g.Prices)
}
