package sense

import (
	"fmt"
	"math"
	"slices"
	"strings"
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
func (g *Percept) Swatch() Swatch { return g.Holds.Swatch() }

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

// colourWord is a colour that a bartender has a word for.
type colourWord struct {
	word    string
	r, g, b uint8
}

// The words, and what each looks like on a screen, some in two depths: judged.
var colourWords = [...]colourWord{
	{"clear", 255, 255, 255}, {"straw", 250, 240, 195}, {"gold", 242, 214, 125}, {"amber", 222, 155, 60}, {"copper", 185, 105, 60},
	{"brown", 115, 65, 30}, {"brown", 145, 40, 5}, {"black", 25, 12, 8}, {"black", 90, 8, 0}, {"yellow", 250, 235, 90},
	{"orange", 245, 145, 45}, {"orange", 250, 190, 105}, {"pink", 250, 175, 195}, {"pink", 215, 105, 145}, {"red", 205, 30, 30},
	{"ruby", 140, 15, 30}, {"purple", 95, 25, 75}, {"violet", 160, 120, 205}, {"violet", 232, 222, 245}, {"blue", 60, 120, 215},
	{"blue", 135, 185, 242}, {"blue", 198, 222, 240}, {"green", 110, 175, 80}, {"green", 165, 222, 145}, {"green", 206, 234, 196}, {"green", 185, 195, 105},
}

// cone is a colour by what the eye goes by when it names one: hue about an axis of
// lightness, and chroma away from it. Chroma to a power below one keeps the hue of
// a thinned drink: pale green is green before it is pale (judged).
type cone [3]float64

const (
	chromaPower = 0.7
	lightWeight = 0.8 // of lightness against hue
)

func coneOf(r, g, b uint8) cone {
	red, green, blue := float64(r)/255, float64(g)/255, float64(b)/255
	lightest := max(red, green, blue)
	// The hue as an angle in the plane across the axis from black to white.
	x, y := red-(green+blue)/2, (green-blue)*math.Sqrt(3)/2
	hue, chroma := math.Atan2(y, x), lightest-min(red, green, blue)
	away := math.Pow(chroma, chromaPower)
	return cone{away * math.Cos(hue), away * math.Sin(hue), lightWeight * lightest}
}

func (c *cone) from(o *cone) float64 {
	return math.Hypot(math.Hypot(c[0]-o[0], c[1]-o[1]), c[2]-o[2])
}

// cloudyFrom is how cloudy a drink is before it is called so, and milkyFrom
// before a colourless one is called white.
const (
	cloudyFrom = 0.3
	milkyFrom  = 0.6
)

// Words says what a drink looks like: "clear", "cloudy straw", "red".
func (s Swatch) Words() string {
	best, least := "", math.Inf(1)
	at := coneOf(s.R, s.G, s.B)
	for _, w := range colourWords {
		word := coneOf(w.r, w.g, w.b)
		if d := at.from(&word); d < least {
			best, least = w.word, d
		}
	}
	switch {
	case best == "clear" && s.Cloudy >= milkyFrom:
		return "white"
	case best == "clear" && s.Cloudy >= cloudyFrom:
		return "cloudy"
	case s.Cloudy >= cloudyFrom:
		return "cloudy " + best
	}
	return best
}

// colourTold is how many steps of colour and cloud a drink moves before the change
// has a word.
const colourTold = 1.5

// strikingTold is the same where a drink turns blue, green or violet, or is that no more:
// nothing else in a glass looks so, and little of it shows.
const strikingTold = 1.0

// striking reports whether a look is of a colour that drinks hardly have by chance.
func striking(look string) bool {
	return slices.ContainsFunc([]string{"blue", "green", "violet", "purple"}, func(hue string) bool { return strings.HasSuffix(look, hue) })
}

// ColourChange says how the look of a drink changes, "clear turns amber", and
// whether it changes by enough to say so: a step and a half of colour and cloud
// together, or one where the colour strikes the eye, and another word.
func ColourChange(before, after *Percept) (text string, told bool) {
	d := Between(before, after)
	from, to := before.Swatch().Words(), after.Swatch().Words()
	least := colourTold
	if striking(from) != striking(to) {
		least = strikingTold
	}
	if math.Hypot(d[Colour], d[Cloud]) < least || from == to {
		return "", false
	}
	return from + " turns " + to, true
}
