package cover

import (
	lru "github.com/hashicorp/golang-lru/v2"

	"counterpour/flavor"
	"counterpour/flavor/sense"
)

// bottle is an ingredient as covers see it, whatever the drink.
type bottle struct {
	profile *flavor.Profile
	holds   sense.Vector // of a millilitre
	smell   smell
	look    sense.Swatch
}

// mostBottles is how many bottles a finder remembers: more than any catalogue that was
// seen, in some 6 MB.
const mostBottles = 4096

// cellar remembers bottles, so that not every request works them out anew. Profiles
// never change, so each is known by where it is.
type cellar struct {
	space *sense.Space
	known *lru.Cache[*flavor.Profile, *bottle]
}

func newCellar(space *sense.Space) *cellar {
	known, _ := lru.New[*flavor.Profile, *bottle](mostBottles) // fails only for a size below one
	return &cellar{space: space, known: known}
}

func (c *cellar) of(p *flavor.Profile) *bottle {
	if b, ok := c.known.Get(p); ok {
		return b
	}
	b := &bottle{profile: p, holds: c.space.PerML(p)}
	b.smell, b.look = smellOf(p, &b.holds), b.holds.Swatch()
	c.known.Add(p, b)
	return b
}
