package api

import (
	"slices"

	"counterpour/flavor"
	"counterpour/flavor/cover"
)

// Allergen is an allergen of a drink and the pours that bring it.
type Allergen struct {
	Allergen  string   `json:"allergen" doc:"One of the fourteen of Regulation (EU) No 1169/2011, Annex II"`
	From      []string `json:"from" doc:"Ids of the ingredients that bring it"`
	Certainty string   `json:"certainty" enum:"contains,may contain"`
}

// Caution is a warning that goes with a drink.
type Caution struct {
	Key    string `json:"key" doc:"Which caution, never changed once published"`
	Text   string `json:"text"`
	Source string `json:"source"`
	Status string `json:"status" doc:"Origin of the caution: published, common practice or from memory"`
}

// allergensOf lists the allergens of a drink in the order of the law.
func allergensOf(s *flavor.Spec) []Allergen {
	return list(cover.MarksOf(s), func(m flavor.AllergenMark) Allergen {
		a := Allergen{Allergen: string(m.Allergen), From: []string{}, Certainty: string(m.Certainty)}
		for _, p := range s.Pours {
			if _, has := p.Profile.Allergen(m.Allergen); has && !slices.Contains(a.From, p.Profile.ID) {
				a.From = append(a.From, p.Profile.ID)
			}
		}
		return a
	})
}

// generalCautions go with every drink that holds alcohol.
var generalCautions = []string{"alcohol", "age", "medicines"}

// cautionsOf lists the general cautions, if the drink holds alcohol, then those
// of its pours in their order, each once.
func (k *Kitchen) cautionsOf(s *flavor.Spec, alcohol bool) []Caution {
	var keys []string
	if alcohol {
		keys = append(keys, generalCautions...)
	}
	for _, p := range s.Pours {
		keys = append(keys, p.Profile.Cautions...)
	}
	return k.cautions(keys)
}

// CautionsOf returns the cautions of the pours of a spec; those of alcohol in
// general are not among them.
func (k *Kitchen) CautionsOf(s *flavor.Spec) []Caution { return k.cautionsOf(s, false) }

// cautions returns the cautions with the keys, each once; one that the
// catalogue does not know is left out.
func (k *Kitchen) cautions(keys []string) []Caution {
	out := []Caution{}
	for i, key := range keys {
		if slices.Contains(keys[:i], key) {
			continue
		}
		if c, ok := k.Catalogue.Caution(key); ok {
			out = append(out, Caution(c))
		}
	}
	return out
}
