package service

import (
	"context"
	"time"

	"counterpour/data"
	"counterpour/data/house"
)

// Fill writes a built-in house into an empty store: one bottle of each ingredient in its
// stock, its menu, and what has run out.
func Fill(ctx context.Context, s house.Store, h *data.House, at time.Time) error {
	var edits []house.Edit
	for _, p := range h.Stock {
		b := house.Bottle{ID: p.ID, Name: p.Name, Ingredient: p.ID, SizeML: 1000, Stock: 1}
		if price, ok := h.Prices[p.Class]; ok {
			b.Price, b.Currency, b.SizeML = &price.Amount, h.Currency, price.SizeML
		}
		edits = append(edits, house.Put(b, 0))
	}
	for i := range h.Specs {
		edits = append(edits, house.Put(house.FromSpec("", h.Specs[i].Spec), 0))
	}
	for _, p := range h.Out {
		edits = append(edits, house.Put(house.Out{Ingredient: p.ID, Since: at}, 0))
	}
	_, err := s.Write(ctx, house.By{Actor: "demo", At: at}, edits...)
	return err
}
