// Package measuretest provides a few ingredients for tests, poured in every unit.
package measuretest

import (
	"fmt"
	"strings"

	"counterpour/flavor"
)

// Shelf holds ingredients by each of their names.
type Shelf map[string]*flavor.Profile

func (s Shelf) add(p *flavor.Profile, aliases ...string) {
	for _, n := range append(aliases, p.Name) {
		s[flavor.NormaliseName(n)] = p
	}
}

func yields(text string) (out []flavor.Yield) {
	for pair := range strings.SplitSeq(text, ",") {
		var u string
		var ml float64
		if n, _ := fmt.Sscanf(strings.TrimSpace(pair), "%s %g", &u, &ml); n == 2 {
			out = append(out, flavor.Yield{Unit: flavor.Unit(u), Amount: flavor.Figure{Value: ml}})
		}
	}
	return out
}

func profile(name string, class flavor.Class, density float64, gives string) *flavor.Profile {
	return &flavor.Profile{ID: strings.ReplaceAll(flavor.NormaliseName(name), " ", "-"), Name: name, Class: class,
		DensityGPerML: density, Yields: yields(gives)}
}

// Bar returns a shelf with ingredients of most classes.
func Bar() Shelf {
	s := Shelf{}
	s.add(profile("London dry gin", flavor.ClassGin, 0.946, ""), "gin")
	s.add(profile("Lemon juice", flavor.ClassSourJuice, 1.031, ""))
	s.add(profile("Lime juice", flavor.ClassSourJuice, 1.031, ""))
	s.add(profile("Pineapple juice", flavor.ClassJuice, 1.057, ""))
	s.add(profile("Simple syrup (1:1)", flavor.ClassSyrup, 1.23, ""), "simple syrup")
	s.add(profile("Saline, 20 %", flavor.ClassSaline, 1.148, ""), "saline")
	s.add(profile("Aromatic bitters", flavor.ClassCocktailBitters, 0.95, ""), "bitters")
	s.add(profile("Sweet vermouth", flavor.ClassVermouth, 1.04, ""))
	s.add(profile("Half and half", flavor.ClassDairy, 1.01, ""))
	s.add(profile("Egg white", flavor.ClassEgg, 1.035, "piece 31"))
	s.add(profile("Mint", flavor.ClassFreshHerb, 0.99, "leaf 0.4, sprig 2"), "mint leaf")
	s.add(profile("Bay leaf", flavor.ClassFreshHerb, 0.99, "leaf 0.3"))
	s.add(profile("Makrut lime leaf", flavor.ClassFreshHerb, 0.99, "leaf 0.4"), "lime leaf")
	s.add(profile("Lime", flavor.ClassFruit, 1.02, "piece 28, wedge 3.5, slice 2"))
	s.add(profile("Orange", flavor.ClassFruit, 1.04, "piece 80, slice 3"))
	s.add(profile("Orange peel", flavor.ClassFruit, 1, "piece 0.1"), "orange twist")
	s.add(profile("Raspberry", flavor.ClassFruit, 1.04, "piece 2.5"))
	s.add(profile("White sugar", flavor.ClassSugar, 1.5879, "pinch 0.2"), "sugar")
	s.add(profile("Sugar cube", flavor.ClassSugar, 1.5879, "cube 2.52, piece 2.52"))
	salt := profile("Salt", flavor.ClassSaline, 2.16, "dash 0.14")
	salt.Salt.Value = 2160
	s.add(salt)
	soda := profile("Soda water", flavor.ClassSoda, 0.998, "")
	soda.Carbonated = true
	s.add(soda, "soda")
	s.add(profile("Water", flavor.ClassWater, 0.998, ""))
	s.add(profile("Nutmeg", flavor.ClassSpice, 1, "pinch 0.15"))
	return s
}
