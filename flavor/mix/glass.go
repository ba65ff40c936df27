package mix

import (
	"fmt"
	"strings"

	"counterpour/flavor"
)

// Glass is a drinking glass.
type Glass struct {
	Name string
	ML   float64 // to the brim
}

// Glasses lists common glasses with common sizes: common practice, no
// standard sets them.
func Glasses() []Glass {
	return []Glass{
		{"coupe", 150}, {"Nick-and-Nora glass", 150}, {"rocks glass", 300}, {"highball glass", 350},
		{"collins glass", 400}, {"flute", 180}, {"wine glass", 350}, {"julep cup", 350}, {"mug", 250},
	}
}

// usual names the glasses that a service is usually poured into: common practice,
// no source.
var usual = map[flavor.Service][]string{
	flavor.Up:      {"coupe", "wine glass"},
	flavor.Rocks:   {"rocks glass", "highball glass"},
	flavor.Crushed: {"julep cup", "collins glass"},
	flavor.Long:    {"highball glass", "collins glass"},
	flavor.Hot:     {"mug"},
	flavor.Neat:    {"rocks glass"},
}

// GlassesFor lists the glasses that a service is usually poured into, the smallest
// first. A service that is none has none.
func GlassesFor(s flavor.Service) []Glass {
	var out []Glass
	for _, name := range usual[s] {
		for _, g := range Glasses() {
			if g.Name == name {
				out = append(out, g)
			}
		}
	}
	return out
}

// FillUsual fills the smallest glass of a service that holds a volume in mL, or else
// the largest. It fails as [Glass.Fill] does, and for a service that is none.
func FillUsual(volumeML float64, s flavor.Service) (f Filling, err error) {
	glasses := GlassesFor(s)
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

// iceShare is the share of a glass that ice takes up below the brim, by
// service: common practice. Floating ice stands a tenth out of the drink.
func iceShare(s flavor.Service) float64 {
	switch s {
	case flavor.Rocks:
		return 0.35
	case flavor.Long:
		return 0.45
	case flavor.Crushed:
		return 0.50
	}
	return 0
}

// Filling is a drink in a glass.
type Filling struct {
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
func (g Glass) Fill(volumeML float64, s flavor.Service) (Filling, error) {
	if err := amount("glass", g.ML, maxML, "mL"); err != nil {
		return Filling{}, err
	}
	if err := within("volume", volumeML, 0, maxML, " mL"); err != nil {
		return Filling{}, err
	}
	f := Filling{Glass: g, VolumeML: volumeML, IceML: iceShare(s) * g.ML}
	stands := volumeML + f.IceML
	f.Level = stands / g.ML
	f.WashML = max(0, g.ML-stands)
	f.SpillML = max(0, stands-g.ML)
	return f, nil
}

// String says it as a bartender would: "fills a 150 mL coupe to 92 %", "spills a
// 120 mL coupe by 18 mL", or, where ice takes room, "fills a 350 mL highball glass
// to 83 % with the ice".
func (f Filling) String() string { return f.say(f.Glass.Name) }

func (f Filling) say(name string) string {
	ice := ""
	if f.IceML > 0 {
		ice = " with the ice"
	}
	if f.SpillML > 0 {
		return fmt.Sprintf("spills %s by %.0f mL%s", withArticle(f.Glass.ML, name), f.SpillML, ice)
	}
	return fmt.Sprintf("fills %s to %.0f %%%s", withArticle(f.Glass.ML, name), 100*f.Level, ice)
}

// withArticle writes "an 80 mL coupe": eight, eleven and eighteen take "an".
func withArticle(ml float64, name string) string {
	size := fmt.Sprintf("%.0f", ml)
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
