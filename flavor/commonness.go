package flavor

import "maps"

// Commonness says how common an ingredient is behind the bars of the world.
//
// The rule: what a list of usual bottles names, or CommonFrom proven drinks and
// more pour, stands in most bars. The rest is the rarer the fewer proven drinks
// pour it.
type Commonness struct {
	drinks map[string]int
	usual  map[string]bool
}

// CommonFrom is the number of proven drinks from which an ingredient is held to
// stand in most bars.
const CommonFrom = 3

// NewCommonness counts the proven drinks that pour each ingredient, each drink
// once, and takes the usual bottles from a list of ids.
func NewCommonness(proven []*Spec, usual []string) *Commonness {
	c := &Commonness{drinks: map[string]int{}, usual: make(map[string]bool, len(usual))}
	for _, id := range usual {
		c.usual[id] = true
	}
	for _, s := range proven {
		counted := map[string]bool{}
		for i := range s.Pours {
			if id := s.Pours[i].Profile.ID; !counted[id] {
				counted[id] = true
				c.drinks[id]++
			}
		}
	}
	return c
}

// With returns a commonness that knows more usual bottles, such as those that a
// house keeps. c stays as it is.
func (c *Commonness) With(usual []*Profile) *Commonness {
	out := &Commonness{drinks: c.drinks, usual: maps.Clone(c.usual)}
	for _, p := range usual {
		out.usual[p.ID] = true
	}
	return out
}

// Drinks returns how many proven drinks pour an ingredient.
func (c *Commonness) Drinks(id string) int { return c.drinks[id] }

// Usual reports whether an ingredient stands in most bars.
func (c *Commonness) Usual(id string) bool { return c.usual[id] || c.drinks[id] >= CommonFrom }

// Rarity is 0 for what stands in most bars, and else 1/(1+n) for what n proven
// drinks pour: 1 for what none does.
func (c *Commonness) Rarity(id string) float64 {
	if c.Usual(id) {
		return 0
	}
	return 1 / float64(1+c.drinks[id])
}
