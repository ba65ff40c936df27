package guest

import (
	"fmt"
	"slices"

	"counterpour/flavor"
)

// Objection says why the guest may not have p, in words that go on from its name, such
// as "contains milk"; empty if nothing speaks against it, a price aside.
func (g *Guest) Objection(p *flavor.Profile) string {
	if !p.Unread && p.Clear(g.Avoid) == flavor.NotStated && g.unpriced().IfCleared(p) {
		return fmt.Sprintf("may carry %s (nobody has stated it: read the label)", flavor.JoinOr(g.carried(p, flavor.Unstated)))
	}
	for _, c := range []flavor.Certainty{flavor.Contains, flavor.MayContain} {
		if found := g.carried(p, c); len(found) > 0 {
			return fmt.Sprintf("%s %s", c, flavor.JoinAnd(found))
		}
	}
	at := slices.IndexFunc(g.NoAnimal, func(a string) bool { return slices.Contains(p.Animal, a) })
	switch {
	case p.Unread && g.AvoidsAny():
		return "is not on record (nobody has stated what is in it: read its label)"
	case at >= 0 && g.NoAnimal[at] == flavor.Finings:
		return fined + " (nobody has stated it: read the label)"
	case at >= 0 && g.NoAnimal[at] == flavor.Insect && p.MayHoldInsect():
		return dyed
	case at >= 0:
		return "is made with " + g.NoAnimal[at]
	case g.NoAlcohol && p.ABV.Value > flavor.NoAlcoholABV:
		return fmt.Sprintf("holds %.3g %% vol of alcohol", p.ABV.Value)
	case g.NoTrace && p.ABV.Value > 0:
		return fmt.Sprintf("holds a trace of alcohol, %.3g %% vol", p.ABV.Value)
	case g.NoTrace && !p.StatesNoAlcohol():
		return "may hold a trace of alcohol (nobody has stated 0.0 % vol: read the label)"
	}
	return ""
}

// fined says what nobody has to state of wine, beer and cider.
const fined = "may be cleared with what comes from animals"

// dyed says what the record of a kind cannot know of a bottle of it.
const dyed = "may hold what comes from insects, such as the dye carmine"

// ToRead says what the label of p decides for the guest, in words that go on from its name,
// such as "may carry gluten, which nobody has stated"; empty if no label decides.
func (g *Guest) ToRead(p *flavor.Profile) string {
	if !g.LabelDecides(p) {
		return ""
	}
	var parts []string
	if found := g.carried(p, flavor.MayContain); len(found) > 0 {
		parts = append(parts, fmt.Sprintf("%s %s", flavor.MayContain, flavor.JoinAnd(found)))
	}
	if open := g.carried(p, flavor.Unstated); len(open) > 0 {
		parts = append(parts, "may carry "+flavor.JoinOr(open)+", which nobody has stated")
	}
	if slices.Contains(g.NoAnimal, flavor.Finings) && slices.Contains(p.Animal, flavor.Finings) {
		parts = append(parts, fined+" unless the label, or its maker, says vegan")
	}
	if g.NoTrace && !p.StatesNoAlcohol() {
		parts = append(parts, "may hold a trace of alcohol unless the label says 0.0 % vol")
	}
	return flavor.JoinAnd(parts)
}

// Cleared says what the label of p must say before the guest may have it, in words that go on from
// its name, such as "names no sulphites"; empty if no label decides.
func (g *Guest) Cleared(p *flavor.Profile) string {
	if !g.LabelDecides(p) {
		return ""
	}
	var parts []string
	if slices.Contains(g.NoAnimal, flavor.Finings) { // only a guest who eats nothing from animals minds those
		parts = append(parts, "says vegan")
	}
	if open := append(g.carried(p, flavor.MayContain), g.carried(p, flavor.Unstated)...); len(open) > 0 {
		parts = append(parts, "names no "+flavor.JoinOr(open))
	}
	if g.NoTrace && !p.StatesNoAlcohol() {
		parts = append(parts, "says 0.0 % vol")
	}
	if len(parts) == 0 {
		parts = append(parts, "says what is in it") // nothing of it is on record
	}
	return flavor.JoinAnd(parts)
}

// carried lists the allergens to avoid that an ingredient carries with a certainty.
func (g *Guest) carried(p *flavor.Profile, with flavor.Certainty) (names []string) {
	for _, a := range g.Avoid {
		if c, _ := p.Allergen(a); c == with && !slices.Contains(names, string(a)) {
			names = append(names, string(a))
		}
	}
	return names
}
