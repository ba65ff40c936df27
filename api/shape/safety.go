package shape

import (
	"slices"

	"counterpour/api/shape/figure"
	"counterpour/data"
	"counterpour/flavor"
)

// Allergen is an allergen of a drink and the pours, or what is laid on it, that bring it: those that contain or
// may contain it or, if there are none, those of which it is not known that they are free
// of it.
type Allergen struct {
	Allergen  string   `json:"allergen" doc:"One of the fourteen of Regulation (EU) No 1169/2011, Annex II"`
	From      []string `json:"from" doc:"Ids of the ingredients that bring it, and what brings it on the drink or the rim, such as garnish: toasted hazelnuts"`
	Certainty string   `json:"certainty" enum:"contains,may contain,unstated" doc:"Unstated: nobody has said that it is absent; read the label, and count it as present until then"`
}

// Caution is a warning that goes with a drink.
type Caution struct {
	Key    string `json:"key" doc:"Key of the caution; it never changes once published"`
	Text   string `json:"text"`
	Source string `json:"source"`
	Status string `json:"status" doc:"Origin of the caution: published, common practice or from memory"`

	Allergens []flavor.Allergen `json:"allergens,omitempty" doc:"Allergens that guests avoid who may react to the ingredient, or that makers let into it, though it has none of them"`
}

// AllergensOf lists the allergens of a drink, in the order in which the law lists them.
func AllergensOf(s *flavor.Spec) []Allergen {
	held := s.Held()
	return figure.List(s.Allergens(), func(m flavor.AllergenMark) Allergen {
		a := Allergen{Allergen: string(m.Allergen), From: []string{}, Certainty: string(m.Certainty)}
		for _, p := range held {
			c, has := p.Allergen(m.Allergen)
			brings := has && (c != flavor.Unstated || m.Certainty == flavor.Unstated)
			if brings && !slices.Contains(a.From, p.ID) {
				a.From = append(a.From, p.ID)
			}
		}
		return a
	})
}

// CautionsOf returns cautions as an answer has them.
func CautionsOf(cautions []data.Caution) []Caution {
	return figure.List(cautions, func(c data.Caution) Caution { return Caution{c.Key, c.Text, c.Source, c.Status, c.Allergens} })
}

// crossContact says what to clean for a guest with an allergy or a diet; it is empty if
// the guest has neither.
func crossContact(avoid, diet []string) string {
	if len(avoid)+len(diet) == 0 {
		return ""
	}
	return flavor.CrossContact
}
