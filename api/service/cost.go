package service

import (
	"context"

	"counterpour/api/service/fault"
	"counterpour/data/house/prep"
)

// CostRequest asks what drinks of the house cost to pour.
type CostRequest struct {
	Drinks []string // names or slugs; empty for the whole menu
}

// CostAnswer is what drinks of the house cost to pour.
type CostAnswer struct {
	Drinks []DrinkCost // in the order of the request; the whole menu is sorted by name
}

// DrinkCost is what one drink costs to pour.
type DrinkCost struct {
	Drink  Drink
	Cost   prep.Cost
	Shares []prep.Share // one for each pour, in order
}

// Cost works out what drinks cost, from the prices of the bottles. It fails if the prices
// cannot be added up, for example because they are in two currencies.
func (s *Snapshot) Cost(_ context.Context, r CostRequest) (*CostAnswer, error) {
	drinks, err := s.Drinks(r.Drinks)
	if err != nil {
		return nil, err
	}
	if s.PricesFault != nil {
		return nil, fault.OfRule(s.PricesFault)
	}
	a := &CostAnswer{}
	for _, d := range drinks {
		a.Drinks = append(a.Drinks, DrinkCost{Drink: d, Cost: s.Prices.Drink(d.Spec), Shares: s.Prices.Shares(d.Spec)})
	}
	return a, nil
}

// NameOf returns the name of an ingredient, or its id if the house does not know it.
func (s *Snapshot) NameOf(id string) string {
	if p, ok := s.Shelf.ByID(id); ok {
		return p.Name
	}
	return id
}
