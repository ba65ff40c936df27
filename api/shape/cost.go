package shape

import (
	"context"

	"counterpour/api/service"
	"counterpour/api/shape/figure"
)

// CostBody asks what drinks of the house cost to pour.
type CostBody struct {
	Drinks []string `json:"drinks,omitempty" maxItems:"200" doc:"Names of drinks of the house; left out, the whole menu"`
}

// CostAnswer is what drinks of a house cost to pour.
type CostAnswer struct {
	Drinks []DrinkCost `json:"drinks" doc:"In the order of the request, or the whole menu by name"`
}

// DrinkCost is what one drink costs to pour.
type DrinkCost struct {
	ID       string     `json:"id"`
	Name     string     `json:"name"`
	Cost     float64    `json:"cost" doc:"Of what has a price"`
	Currency string     `json:"currency" doc:"As in ISO 4217"`
	Unpriced []string   `json:"unpriced" doc:"Names of what has no price"`
	Pours    []PourCost `json:"pours"`
}

// PourCost is the cost of one pour, and its share of the cost of the drink.
type PourCost struct {
	ID       string  `json:"id"`
	Name     string  `json:"name"`
	ML       float64 `json:"ml"`
	Cost     float64 `json:"cost"`
	SharePct float64 `json:"share_pct" doc:"Of what has a price"`
	Priced   bool    `json:"priced"`
}

// digitsPouredML is the decimals of the mL of a pour that costs something.
const digitsPouredML = 1

// AnswerCost works out what drinks of the house cost.
func AnswerCost(ctx context.Context, house *service.Snapshot, body CostBody) (*CostAnswer, error) {
	r, err := house.Cost(ctx, service.CostRequest{Drinks: body.Drinks})
	if err != nil {
		return nil, err
	}
	return &CostAnswer{figure.List(r.Drinks, func(d service.DrinkCost) DrinkCost {
		out := DrinkCost{ID: d.Drink.Slug, Name: d.Drink.Spec.Name, Cost: figure.Round(d.Cost.Amount, figure.Cost), Currency: d.Cost.Currency,
			Unpriced: figure.List(d.Cost.Unpriced, house.NameOf), Pours: []PourCost{}}
		for i, s := range d.Shares {
			p := &d.Drink.Spec.Pours[i]
			out.Pours = append(out.Pours, PourCost{ID: p.Profile.ID, Name: p.Profile.Name, ML: figure.Round(p.ML, digitsPouredML), Cost: figure.Round(s.Amount, figure.Cost),
				SharePct: figure.Round(100*s.Part, figure.Share), Priced: s.Priced})
		}
		return out
	})}, nil
}
