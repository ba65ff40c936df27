package webuitest

import (
	"context"

	"counterpour/api/service"
	"counterpour/data/house"
	"counterpour/flavor/mix"
)

// Batch plans a drink of the store.
func (h *House) Batch(ctx context.Context, r service.BatchRequest) (*service.BatchAnswer, error) {
	kept, err := house.Get[house.Spec](ctx, h.Store(), *r.Draft.Drink)
	if err != nil {
		return nil, err
	}
	spec, err := kept.Item.Flavor(h.Shelf())
	if err != nil {
		return nil, err
	}
	made, err := house.All[house.Made](ctx, h.Store())
	if err != nil {
		return nil, err
	}
	prices, _ := h.Prices(ctx) // none if they cannot be added up
	mixer, err := mix.NewMixer()
	if err != nil {
		return nil, err
	}
	b, err := r.Of(mixer, spec, house.Items(made))
	if err != nil {
		return nil, err
	}
	return &service.BatchAnswer{Batch: b, Cost: prices.Batch(b)}, nil
}
