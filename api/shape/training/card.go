package training

import (
	"counterpour/api/service"
	"counterpour/api/shape"
	"counterpour/api/shape/figure"
	"counterpour/flavor/drill"
)

// CardAnswer is one family on one page, for a new starter.
type CardAnswer struct {
	ID       string        `json:"id"`
	Name     string        `json:"name"`
	Ratio    string        `json:"ratio" doc:"The middle of its proven drinks as the trade says it, the largest part as 8"`
	Source   string        `json:"source" doc:"Where the usual ratio comes from"`
	Parts    []CardPart    `json:"parts" doc:"In the order of its axes"`
	Examples []CardExample `json:"examples" doc:"Those that sit best in the family, of the house before proven drinks; three if there are so many"`
	Usual    string        `json:"usual" doc:"How its two usual faults taste"`
}

// CardPart is one part of the ratio of a family, in per cent of all equivalents.
type CardPart struct {
	Axis      string  `json:"axis"`
	SharePct  float64 `json:"share_pct" doc:"Of the usual ratio"`
	FittedPct float64 `json:"fitted_pct" doc:"As proven drinks have it"`
	Low       float64 `json:"low" doc:"By what factor of fitted_pct this part alone may fall before the drink leaves the good drinks of the family"`
	High      float64 `json:"high" doc:"By what factor it may rise"`
}

// CardExample is a drink of the family.
type CardExample struct {
	Spec      shape.Spec       `json:"spec"`
	Score     float64          `json:"score"`
	Proven    bool             `json:"proven" doc:"A proven drink; otherwise one of the house"`
	Allergens []shape.Allergen `json:"allergens"`
	Cautions  []shape.Caution  `json:"cautions"`
}

// AnswerCard makes the card of a family, with examples from the menu of the house.
func AnswerCard(house *service.Snapshot, family string) (*CardAnswer, error) {
	c, err := house.StarterCard(family)
	if err != nil {
		return nil, err
	}
	return &CardAnswer{ID: c.ID, Name: c.Name, Ratio: c.Ratio, Source: c.Source, Usual: c.Usual,
		Parts: figure.List(c.Parts, func(p drill.CardPart) CardPart {
			return CardPart{p.Axis.String(), figure.Round(100*p.Handed, figure.Share), figure.Round(100*p.Fitted, figure.Share), figure.Round(p.Low, figure.Factor), figure.Round(p.High, figure.Factor)}
		}),
		Examples: figure.List(c.Examples, func(x drill.Example) CardExample {
			return CardExample{shape.SpecOf(&x.Spec), figure.RoundDown(x.Score), x.Proven, shape.AllergensOf(&x.Spec), shape.CautionsOf(house.CautionsOf(&x.Spec))}
		})}, nil
}
