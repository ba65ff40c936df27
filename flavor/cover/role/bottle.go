package role

import (
	"math"

	lru "github.com/hashicorp/golang-lru/v2"

	"counterpour/flavor"
	"counterpour/flavor/sense"
)

// Bottle is an ingredient as covers see it, whatever the drink.
type Bottle struct {
	Profile *flavor.Profile
	Holds   sense.Vector // of a millilitre
	Smell   Smell
	Look    sense.Swatch
	MostML  float64 // that a bartender pours of a liqueur in one drink; without bound where nobody says
}

// mostBottles is how many bottles a finder remembers: more than any catalogue that was
// seen, in some 6 MB.
const mostBottles = 4096

// Cellar remembers bottles, so that not every request works them out anew. Profiles
// never change, so each is known by where it is.
type Cellar struct {
	space *sense.Space
	most  func(*flavor.Profile) float64 // nil if nobody says
	known *lru.Cache[*flavor.Profile, *Bottle]
}

// NewCellar returns a cellar that remembers nothing yet; most is how many mL of something a
// bartender pours in one drink, nil if nobody says.
func NewCellar(space *sense.Space, most func(*flavor.Profile) float64) *Cellar {
	known, _ := lru.New[*flavor.Profile, *Bottle](mostBottles) // fails only for a size below one
	return &Cellar{space: space, most: most, known: known}
}

// Of returns the bottle of a profile. It is safe for concurrent use; the bottle is not to
// be changed.
func (c *Cellar) Of(p *flavor.Profile) *Bottle {
	if b, ok := c.known.Get(p); ok {
		return b
	}
	b := &Bottle{Profile: p, Holds: c.space.PerML(p), MostML: math.Inf(1)}
	if c.most != nil && p.Class.Kin() == flavor.KinLiqueur {
		b.MostML = c.most(p)
	}
	b.Smell, b.Look = smellOf(p, &b.Holds), b.Holds.Swatch()
	c.known.Add(p, b)
	return b
}

// otherLook is the distance on a screen, of 441 from black to white, from which one
// liquid does not pass for another: clear from amber, gold from black, white wine
// from red.
const otherLook = 200.0

// UnlikeInLook is 0 for two bottles of one colour and 1 for those of quite another,
// among bottles that the trade tells apart by colour.
func UnlikeInLook(b, was *Bottle) float64 {
	if !b.Profile.Class.Hued() || !was.Profile.Class.Hued() {
		return 0
	}
	return apartInLook(b, was)
}

// clearFrom is how bright each colour of a clear liquid is on a screen, of 255.
const clearFrom = 200

// OtherLook is the same among any bottles where what is gone is clear: whatever it was poured with, a drink shows
// what is red in its place.
func OtherLook(b, was *Bottle) float64 {
	if min(was.Look.R, was.Look.G, was.Look.B) < clearFrom {
		return UnlikeInLook(b, was)
	}
	return apartInLook(b, was)
}

// apartInLook is how far two bottles are from each other in colour, 0 to 1.
func apartInLook(b, was *Bottle) float64 {
	x, y := b.Look, was.Look
	between := []float64{float64(x.R) - float64(y.R), float64(x.G) - float64(y.G), float64(x.B) - float64(y.B)}
	return min(1, length(between)/otherLook)
}

// Dyed reports whether a liquid is blue or green, which shows in little of it.
func (b *Bottle) Dyed() bool {
	const shows = 40 // on a screen, of 255
	return max(int(b.Look.G), int(b.Look.B)) >= int(b.Look.R)+shows
}
