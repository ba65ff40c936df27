package mix

import (
	"math"
	"slices"
	"strconv"
	"strings"

	"counterpour/flavor"
)

// Glass is a drinking glass.
type Glass struct {
	Name string
	ML   float64 // to the brim
}

// commonGlasses have common sizes: common practice, no standard sets them.
var commonGlasses = [...]Glass{
	{"coupe", 150}, {"large coupe", 210}, {"Nick-and-Nora glass", 150}, {"cocktail glass", 180}, {"sour glass", 180}, {"flute", 180},
	{"rocks glass", 300}, {"double rocks glass", 350}, {"fizz glass", 250}, {"highball glass", 350}, {"collins glass", 400},
	{"wine glass", 350}, {"balloon glass", 600}, {"snifter", 350}, {"julep cup", 350}, {"copper mug", 450}, {"mug", 250},
	{"hurricane glass", 450}, {"tiki mug", 450}, {"pint glass", 500}, {"punch cup", 200}, {"cordial glass", 90}, {"shot glass", 60},
}

// Glasses lists common glasses. The caller may keep the list.
func Glasses() []Glass { return slices.Clone(commonGlasses[:]) }

// plainName returns the name of a glass, or a text that may hold one, as they are compared:
// in small letters, without hyphens.
func plainName(text string) string { return strings.ToLower(strings.ReplaceAll(text, "-", " ")) }

// plainNames are the names of the glasses as they are looked for in a text.
var plainNames = func() (names [len(commonGlasses)]string) {
	for i := range commonGlasses {
		names[i] = " " + strings.TrimSuffix(plainName(commonGlasses[i].Name), " glass") + " "
	}
	return names
}()

// usual names the glasses that a service is usually poured into: common practice,
// no source.
var usual = map[flavor.Service][]string{
	flavor.Up:      {"coupe", "large coupe", "wine glass"},
	flavor.Rocks:   {"rocks glass", "highball glass"},
	flavor.Crushed: {"julep cup", "collins glass"},
	flavor.Long:    {"highball glass", "collins glass"},
	flavor.Hot:     {"mug"},
	flavor.Neat:    {"rocks glass"},
}

// glassesFor lists the glasses that a service is usually poured into, the smallest
// first. A service that is none has none.
func glassesFor(s flavor.Service) []Glass {
	var out []Glass
	for _, name := range usual[s] {
		for _, g := range commonGlasses {
			if g.Name == name {
				out = append(out, g)
			}
		}
	}
	return out
}

// fillUsual fills the smallest glass of a service that holds a volume in mL, or else
// the largest. It fails as [Glass.Fill] does, and for a service that is none.
func fillUsual(volumeML float64, s flavor.Service) (f FillLevel, err error) {
	glasses := glassesFor(s)
	if len(glasses) == 0 {
		return f, flavor.Invalid("service", string(s), "%q is no service; write one such as up, rocks or long", s)
	}
	for _, g := range glasses {
		if f, err = g.Fill(volumeML, s); err != nil || f.SpillML == 0 {
			break
		}
	}
	return f, err
}

// GlassesOf lists the glass that a spec names or, if it names none that is known,
// those that its service is usually poured into.
func GlassesOf(s *flavor.Spec) []Glass {
	if g, ok := GlassOf(s); ok {
		return []Glass{g}
	}
	return glassesFor(s.Service)
}

// FillOf fills the glass that a spec names or, if it names none that is known, the
// usual one, as its ice stands in it. It fails as [fillUsual] does.
func FillOf(volumeML float64, s *flavor.Spec) (FillLevel, error) {
	if g, ok := GlassOf(s); ok {
		return g.Fill(volumeML, Standing(s))
	}
	f, err := fillUsual(volumeML, s.Service)
	if err != nil || Standing(s) == s.Service {
		return f, err
	}
	return f.Glass.Fill(volumeML, Standing(s))
}

// GlassOf returns the glass that a spec names, if it is known. A mug with ice in it is the one of
// mules, which is larger than that of hot drinks: common practice, no source.
func GlassOf(s *flavor.Spec) (Glass, bool) {
	g, ok := GlassNamed(s.Glass)
	if !ok || g.Name != "mug" {
		return g, ok
	}
	switch s.Service {
	case flavor.Rocks, flavor.Crushed, flavor.Long:
		return GlassNamed("copper mug")
	}
	return g, ok
}

// GlassNamed returns the glass that a text names: the one of the longest name in it.
func GlassNamed(text string) (Glass, bool) {
	if text == "" {
		return Glass{}, false
	}
	var found Glass
	longest := 0
	text = " " + plainName(text) + " "
	for i, name := range plainNames {
		if len(name) > longest && strings.Contains(text, name) {
			found, longest = commonGlasses[i], len(name)
		}
	}
	return found, longest > 0
}

// Standing returns the service by which a drink stands in its glass: that of the
// spec, but without ice where most of it is beer, cider or wine, which come cold
// from the bottle.
func Standing(s *flavor.Spec) flavor.Service {
	if s.Service != flavor.Rocks && s.Service != flavor.Long {
		return s.Service
	}
	var cold float64
	for i := range s.Pours {
		p := &s.Pours[i]
		if c := p.Profile.Class; c.Brewed() || c.Kin() == flavor.KinWine && !c.Laced() {
			cold += p.ML
		}
	}
	if cold > 0 && cold >= coldShare*s.VolumeML() {
		return flavor.Up
	}
	return s.Service
}

// coldShare is the share of beer, cider or wine from which a drink gets no ice.
const coldShare = 0.4

// iceShares is the share of a glass that ice takes up below the brim, by service, as
// a bar fills it and at the least: common practice. Cubes of 3 cm fill some 58 % of
// the room that they are heaped in, so that a glass packed with them has 42 % left for
// the drink; bars put in as many as the drink leaves room for.
func iceShares(s flavor.Service) (most, least float64) {
	switch s {
	case flavor.Rocks:
		return 0.35, 0.20
	case flavor.Long:
		return 0.45, 0.25
	case flavor.Crushed:
		return 0.50, 0.30
	}
	return 0, 0
}

// washShare is how far up a glass is filled: common practice.
const washShare = 0.95

// RoomML returns the most drink in mL that goes into a glass beside the least ice of
// a service.
func (g Glass) RoomML(s flavor.Service) float64 {
	_, least := iceShares(s)
	return (1 - least) * g.ML
}

// iceML returns what ice takes up beside so much drink.
func (g Glass) iceML(volumeML float64, s flavor.Service) float64 {
	most, least := iceShares(s)
	return math.Min(most*g.ML, math.Max(least*g.ML, washShare*g.ML-volumeML))
}

// FillLevel is a drink in a glass.
type FillLevel struct {
	Glass    Glass
	VolumeML float64 // the drink
	IceML    float64 // what the ice takes up
	Level    float64 // drink and ice over the glass: 1 at the brim, more if it spills
	WashML   float64 // left between the wash line and the brim
	SpillML  float64 // over the brim
}

// Fill returns how volumeML of drink stands in g with the ice of a service;
// none for those without. Foam is left out. It fails for a glass without a size
// or a volume that is below zero or not a number.
func (g Glass) Fill(volumeML float64, s flavor.Service) (FillLevel, error) {
	if err := amount("glass", g.ML, maxML, "mL"); err != nil {
		return FillLevel{}, err
	}
	if err := within("volume", volumeML, 0, maxML, " mL"); err != nil {
		return FillLevel{}, err
	}
	f := FillLevel{Glass: g, VolumeML: volumeML, IceML: g.iceML(volumeML, s)}
	stands := volumeML + f.IceML
	f.Level = stands / g.ML
	f.WashML = max(0, g.ML-stands)
	f.SpillML = max(0, stands-g.ML)
	return f, nil
}

// String says it as a bartender would: "fills a 150 mL coupe to 92 %", "spills a
// 120 mL coupe by 18 mL", or, where ice takes room, "fills a 350 mL highball glass
// to 83 % with the ice".
func (f FillLevel) String() string { return f.say(f.Glass.Name) }

func (f FillLevel) say(name string) string {
	ice := ""
	if f.IceML > 0 {
		ice = " with the ice"
	}
	if f.SpillML > 0 {
		return "spills " + withArticle(f.Glass.ML, name) + " by " + whole(f.SpillML) + " mL" + ice
	}
	return "fills " + withArticle(f.Glass.ML, name) + " to " + whole(100*f.Level) + " %" + ice
}

// whole writes a number without decimals.
func whole(x float64) string { return strconv.FormatFloat(x, 'f', 0, 64) }

// withArticle writes "an 80 mL coupe": eight, eleven and eighteen take "an".
func withArticle(ml float64, name string) string {
	size := whole(ml)
	article := "a"
	if strings.HasPrefix(size, "8") || size == "11" || size == "18" {
		article = "an"
	}
	return article + " " + size + " mL " + name
}

// FillText fills several glasses and joins the answers; a glass of the same
// name as the one before it is "one": "fills a 150 mL coupe to 92 %; spills a
// 120 mL one by 18 mL". It fails as [Glass.Fill] does.
func FillText(volumeML float64, s flavor.Service, glasses ...Glass) (string, error) {
	said := make([]string, len(glasses))
	for i, g := range glasses {
		f, err := g.Fill(volumeML, s)
		if err != nil {
			return "", err
		}
		name := g.Name
		if i > 0 && glasses[i-1].Name == name {
			name = "one"
		}
		said[i] = f.say(name)
	}
	return strings.Join(said, "; "), nil
}
