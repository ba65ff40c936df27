package sense

import (
	"fmt"
	"math"
)

// depthCM is the depth of drink that a swatch looks through: the middle of a
// common glass.
const depthCM = 3.0

// milk is how bright a fully clouded, colourless drink looks against a clear
// one, 0 to 1.
const milk = 0.93

// Swatch is what a drink looks like.
type Swatch struct {
	R, G, B uint8
	Cloudy  float64 // 0 clear, 1 opaque
}

// Hex returns the colour as "#rrggbb".
func (s Swatch) Hex() string { return fmt.Sprintf("#%02x%02x%02x", s.R, s.G, s.B) }

// Swatch returns how a glass looks against white, through three centimetres:
// each band passes 10^(−A·3) of the light (Beer and Lambert). In a cloudy drink
// light comes back from a shallower depth, so its colour is paler. The bands are
// shown as the red, green and blue of a screen, with its usual gamma of 2.2.
func (g *Glass) Swatch() Swatch { return g.Holds.Swatch() }

// Swatch does the same for a neat liquid.
func (v *Vector) Swatch() Swatch {
	s := Swatch{Cloudy: 1 - math.Pow(10, -max(v[Cloud], 0)*depthCM)}
	depth := depthCM * (1 - 0.7*s.Cloudy)
	white := 1 - (1-milk)*s.Cloudy
	band := func(a float64) uint8 {
		light := white * math.Pow(10, -max(a, 0)*depth)
		return uint8(math.Round(255 * math.Pow(light, 1/2.2)))
	}
	s.R, s.G, s.B = band(v[atRed]), band(v[atGreen]), band(v[atBlue])
	return s
}
