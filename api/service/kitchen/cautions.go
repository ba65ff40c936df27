package kitchen

import (
	"fmt"
	"slices"
	"strings"

	"counterpour/data"
	"counterpour/flavor"
	"counterpour/flavor/mix"
)

// generalCautions apply to every drink that contains alcohol.
var generalCautions = []string{"alcohol", "age", "medicines"}

// IsGeneralCaution reports whether a caution applies to every drink that contains
// alcohol.
func IsGeneralCaution(key string) bool { return slices.Contains(generalCautions, key) }

// CautionsOf returns the cautions of the pours of some specs, in order and without
// duplicates. It leaves the general cautions about alcohol out.
func (k *Kitchen) CautionsOf(specs ...*flavor.Spec) []data.Caution {
	return besides(k.Cautions(k.pouredCautions(specs)), specs)
}

// AllCautions returns the general cautions about alcohol, if one of the specs contains
// any, and then the cautions of the pours, without duplicates.
func (k *Kitchen) AllCautions(specs ...*flavor.Spec) []data.Caution {
	keys := k.pouredCautions(specs)
	if slices.ContainsFunc(specs, HoldsAlcohol) {
		keys = slices.Concat(generalCautions, keys)
	}
	return besides(k.Cautions(keys), specs)
}

// besides appends the caution for drinks without alcohol, if one of the specs is such a
// drink.
func besides(cautions []data.Caution, specs []*flavor.Spec) []data.Caution {
	if !slices.ContainsFunc(specs, func(s *flavor.Spec) bool { return !HoldsAlcohol(s) }) {
		return cautions
	}
	for i, c := range cautions {
		cautions[i].Text = strings.TrimSpace(c.Text + " " + c.WithoutAlcohol)
	}
	return cautions
}

// HoldsAlcohol reports whether a spec has a pour that is stronger than the limit for
// alcohol-free drinks.
func HoldsAlcohol(s *flavor.Spec) bool {
	return slices.ContainsFunc(s.Pours, func(p flavor.Pour) bool { return p.Profile.ABV.Value > flavor.NoAlcoholABV })
}

// StrengthCaution is the key of the caution for a glass with a lot of alcohol.
const StrengthCaution = "strength"

// strongGlass is the ethanol in one glass, in g, from which [StrengthCaution] applies:
// two and a half US standard drinks of 14 g. Common practice, no source.
const strongGlass = 35.0

// StrengthCautions returns the caution about the alcohol in one glass, if it applies.
func StrengthCautions(d *mix.Drink) []data.Caution {
	if d.After.Ethanol < strongGlass || d.VolumeML >= severalGlasses {
		return nil
	}
	var us, uk float64
	for _, s := range mix.StandardDrinks(d.After.Ethanol) {
		switch s.Country {
		case "United States":
			us = s.Count
		case "United Kingdom":
			uk = s.Count
		}
	}
	return []data.Caution{{Key: StrengthCaution, Status: string(flavor.OriginPractice), Source: "common practice, no source",
		Text: fmt.Sprintf("This one glass holds %.0f g of alcohol: %.1f US standard drinks, %.1f UK units. Say so, or pour less.", d.After.Ethanol, us, uk)}}
}

// severalGlasses is the volume in mL from which a spec is assumed to serve several
// glasses.
const severalGlasses = 1000.0

// pouredCautions returns the keys of the cautions of the pours of some specs, those of allergies
// first.
func (k *Kitchen) pouredCautions(specs []*flavor.Spec) (keys []string) {
	for _, s := range specs {
		keys = append(keys, k.Catalogue.CautionsOf(s)...)
	}
	later := func(key string) int {
		if c, ok := k.Catalogue.Caution(key); ok && len(c.Allergens) > 0 {
			return 0
		}
		return 1
	}
	slices.SortStableFunc(keys, func(a, b string) int { return later(a) - later(b) })
	return keys
}

// Cautions returns the cautions with these keys, without duplicates. Unknown keys are
// left out.
func (k *Kitchen) Cautions(keys []string) []data.Caution {
	var out []data.Caution
	for i, key := range keys {
		if slices.Contains(keys[:i], key) {
			continue
		}
		if c, ok := k.Catalogue.Caution(key); ok {
			out = append(out, c)
		}
	}
	return out
}
