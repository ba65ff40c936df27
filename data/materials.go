package data

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"counterpour/flavor"
)

// Material is a component of aromas.
type Material struct {
	Name      string
	Shares    flavor.Aroma // sums to 1
	Allergens []flavor.Allergen
	Animal    []string
	Cautions  []string
}

// parseMaterial reads "family share, … ; allergens: a ; animal: x ; cautions: k".
func parseMaterial(name, text string) (Material, error) {
	m := Material{Name: name}
	for i, section := range strings.Split(text, ";") {
		section = strings.TrimSpace(section)
		if i == 0 {
			if err := m.parseFamilies(section); err != nil {
				return Material{}, err
			}
			continue
		}
		key, list, _ := strings.Cut(section, ":")
		words := splitList(list)
		switch strings.TrimSpace(key) {
		case "allergens":
			for _, w := range words {
				a, err := flavor.ParseAllergen(w)
				if err != nil {
					return Material{}, err
				}
				m.Allergens = append(m.Allergens, a)
			}
		case "animal":
			if err := checkAnimals(words); err != nil {
				return Material{}, err
			}
			m.Animal = words
		case "cautions":
			m.Cautions = words
		default:
			return Material{}, fmt.Errorf("section %q is not known; use allergens, animal or cautions", key)
		}
	}
	return m, nil
}

func (m *Material) parseFamilies(text string) error {
	shares, err := parseShares(text)
	if err != nil {
		return err
	}
	for _, s := range shares {
		f, ok := flavor.ParseAromaFamily(s.name)
		if !ok {
			return fmt.Errorf("%q is not an aroma family", s.name)
		}
		m.Shares[f] += s.value
	}
	if sum := m.Shares.Total(); math.Abs(sum-1) > 1e-6 {
		return fmt.Errorf("the shares sum to %.4f; they must sum to 1", sum)
	}
	return nil
}

// checkAnimals refuses an animal source that no diet excludes: a guest on such a diet
// would be served it.
func checkAnimals(words []string) error {
	for _, w := range words {
		if !slices.Contains(flavor.Animals(), w) {
			return fmt.Errorf("%q is no word for what comes from animals; use one of: %s", w, strings.Join(flavor.Animals(), ", "))
		}
	}
	return nil
}

func splitList(text string) []string {
	var out []string
	for w := range strings.SplitSeq(text, ",") {
		if w = strings.TrimSpace(w); w != "" {
			out = append(out, w)
		}
	}
	return out
}

// applyMaterials computes the aroma of p from its materials.
func applyMaterials(p *flavor.Profile, list []share, materials map[string]Material) error {
	for _, s := range list {
		m, ok := materials[s.name]
		if !ok {
			return fmt.Errorf("material %q is not known; add it to materials.toml or use one that is there", s.name)
		}
		p.Materials = append(p.Materials, flavor.MaterialShare{Material: s.name, Intensity: s.value})
		for f := range p.Aroma {
			p.Aroma[f] += s.value * m.Shares[f]
		}
	}
	return nil
}

// markAllergen adds an allergen; "contains" takes precedence over "may contain".
func markAllergen(p *flavor.Profile, a flavor.Allergen, c flavor.Certainty) {
	for i := range p.AllergenMarks {
		if p.AllergenMarks[i].Allergen == a {
			if c == flavor.Contains {
				p.AllergenMarks[i].Certainty = c
			}
			return
		}
	}
	p.AllergenMarks = append(p.AllergenMarks, flavor.AllergenMark{Allergen: a, Certainty: c})
}

func appendNew(list []string, words ...string) []string {
	for _, w := range words {
		if !slices.Contains(list, w) {
			list = append(list, w)
		}
	}
	return list
}
