package main

import (
	"context"
	"errors"
	"fmt"

	"counterpour/api"
	"counterpour/data"
	"counterpour/data/house"
	"counterpour/flavor"
)

// shelfOf lays a house over the catalogue, and lists what it has in stock: the
// bottles of which something is left and that nobody has marked as out.
func shelfOf(ctx context.Context, s house.Store, k *api.Kitchen) (*house.Shelf, []*flavor.Profile, error) {
	bottles, err := house.All[house.Bottle](ctx, s)
	if err != nil {
		return nil, nil, err
	}
	made, err := house.All[house.Made](ctx, s)
	if err != nil {
		return nil, nil, err
	}
	outs, err := house.All[house.Out](ctx, s)
	if err != nil {
		return nil, nil, err
	}
	profiles, faults := house.Overlay(k.Catalogue.Profiles(), house.Items(bottles), house.Items(made))
	if len(faults) > 0 {
		return nil, nil, fmt.Errorf("the house cannot be laid over the catalogue: %w", errors.Join(faults...))
	}
	kept := map[string]bool{}
	for _, b := range house.Items(bottles) {
		kept[b.Ingredient] = kept[b.Ingredient] || b.Stock > 0
	}
	for _, m := range house.Items(made) {
		kept[m.ID] = true
	}
	for _, o := range house.Items(outs) {
		kept[o.Ingredient] = false
	}
	var stock []*flavor.Profile
	for _, p := range profiles {
		if kept[p.ID] {
			stock = append(stock, p)
		}
	}
	return house.NewShelf(profiles), stock, nil
}

func drinksOf(specs []house.Spec, shelf *house.Shelf) ([]flavor.Spec, error) {
	out := make([]flavor.Spec, len(specs))
	for i, s := range specs {
		drink, err := s.Flavor(shelf)
		if err != nil {
			return nil, fmt.Errorf("spec %q: %w", s.Name, err)
		}
		out[i] = drink
	}
	return out, nil
}

// useHouse gives a kitchen the menu and the stock of a house in place of the
// demo's.
func useHouse(ctx context.Context, k *api.Kitchen, where string) (err error) {
	s, err := openHouse(ctx, where)
	if err != nil {
		return err
	}
	defer func() { err = closing(s, err) }()
	shelf, stock, err := shelfOf(ctx, s, k)
	if err != nil {
		return err
	}
	kept, err := house.All[house.Spec](ctx, s)
	if err != nil {
		return err
	}
	drinks, err := drinksOf(house.Items(kept), shelf)
	if err != nil {
		return err
	}
	h := &data.House{Name: where, Stock: stock}
	for _, d := range drinks {
		r, err := k.Judge.Score(&d)
		if err != nil {
			return fmt.Errorf("spec %q: %w", d.Name, err)
		}
		h.Specs = append(h.Specs, data.HouseSpec{Name: d.Name, Family: r.Judgement.Fits[0].ID, Spec: d})
	}
	k.House = h
	if k.Tastings, err = tastingsOf(ctx, s); err != nil {
		return err
	}
	bottles, err := house.All[house.Bottle](ctx, s)
	if err != nil {
		return err
	}
	k.Prices = pricesOf(house.Items(bottles))
	return nil
}

// pricesOf returns what a millilitre costs, of every category that has a bottle
// with a price and a size in millilitres; of several bottles, the one poured.
func pricesOf(bottles []house.Bottle) map[string]float64 {
	out := map[string]float64{}
	for category, b := range house.Wells(bottles) {
		if b.Price != nil && b.SizeML > 0 {
			out[category] = *b.Price / b.SizeML
		}
	}
	return out
}
