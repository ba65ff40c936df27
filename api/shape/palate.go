package shape

import (
	"counterpour/api/service"
	"counterpour/api/shape/figure"
	"counterpour/flavor/weigh"
)

// PalateBody marks a drink of the house, as it is now, as right.
type PalateBody struct {
	Drink string `json:"drink" minLength:"1" maxLength:"200" doc:"Name of a drink of the house"`
	Undo  bool   `json:"undo,omitempty" doc:"Take the mark off"`
}

// PalateAnswer is the palate of a house: the drinks that it marked as right, and how far
// they move the families.
type PalateAnswer struct {
	Right   []RightDrink `json:"right"`
	Palates []Palate     `json:"palates" doc:"The families that they move"`
}

// RightDrink is a drink marked as right.
type RightDrink struct {
	ID      string `json:"id"`
	Name    string `json:"name"`
	Version int64  `json:"version" doc:"As it was tasted"`
}

// Palate is how a house pours a family, compared with the proven drinks.
type Palate struct {
	Family string       `json:"family"`
	Drinks int          `json:"drinks"`
	Parts  []PalatePart `json:"parts"`
}

// PalatePart is one axis of a palate.
type PalatePart struct {
	Axis   string  `json:"axis"`
	Factor float64 `json:"factor" doc:"0.9 is a tenth less than in the proven drinks, against all parts together"`
}

// AnswerPalate lists the palate of the house.
func AnswerPalate(house *service.Snapshot) *PalateAnswer {
	p := house.Palate()
	return &PalateAnswer{
		Right: figure.List(p.Right, func(r service.RightDrink) RightDrink { return RightDrink{r.Slug, r.Name, r.Version} }),
		Palates: figure.List(p.Palates, func(p weigh.Palate) Palate {
			out := Palate{Family: p.ID, Drinks: p.Drinks, Parts: []PalatePart{}}
			for i, axis := range p.Axes {
				out.Parts = append(out.Parts, PalatePart{axis.String(), figure.Round(p.Factors[i], figure.Factor)})
			}
			return out
		}),
	}
}
