// Package templatetest is for tests: ingredients that are the equivalents themselves,
// and a family that is made up.
package templatetest

import (
	"counterpour/flavor"
	"counterpour/flavor/ratio"
	"counterpour/flavor/template"
)

// plain is an ingredient of one equivalent and nothing else.
func plain(id string, class flavor.Class, abv, sugar, acid float64) *flavor.Profile {
	figure := func(v float64) flavor.Figure { return flavor.Figure{Value: v, Origin: flavor.OriginPractice} }
	return &flavor.Profile{ID: id, Name: id, Class: class, ABV: figure(abv), Sugar: figure(sugar), Acid: figure(acid),
		Sugars: flavor.SugarBlend{Name: "sucrose", Sucrose: 1}, Acids: flavor.AcidBlend{Name: "citric", Citric: 1}}
}

// Ingredients that are the equivalents themselves.
var (
	Spirit = plain("spirit", flavor.ClassVodka, 40, 0, 0)
	Syrup  = plain("syrup", flavor.ClassSyrup, 0, 614.8, 0)
	Lemon  = plain("lemon", flavor.ClassSourJuice, 0, 0, 50)
)

// Spec is some pours, shaken and up.
func Spec(pours ...flavor.Pour) *flavor.Spec {
	return &flavor.Spec{Method: flavor.Shake, Service: flavor.Up, Pours: pours}
}

// Of is so many mL of an ingredient.
func Of(p *flavor.Profile, ml float64) flavor.Pour {
	return flavor.Pour{Profile: p, Amount: ml, Unit: flavor.Millilitre, ML: ml}
}

// Sours is a family of three parts.
func Sours() template.Family {
	return template.Family{ID: "sour", Name: "Sour", Axes: []ratio.Axis{ratio.Strong, ratio.Sweet, ratio.Sour},
		Ratio: []float64{8, 3, 3}, Source: "made up for this test"}
}
