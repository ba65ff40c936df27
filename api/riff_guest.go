package api

import (
	"context"
	"fmt"
	"slices"
	"strings"

	"counterpour/api/service"
	"counterpour/data"
	"counterpour/flavor"
	"counterpour/flavor/cover"
)

// guest reads who drinks it. Prices that were not sent are the house's.
func guest(k *service.Kitchen, avoid, diet []string, maxABV float64, prices map[string]float64, maxCost float64) (cover.Guest, flavor.Faults) {
	var faults flavor.Faults
	allergens, err := avoided(avoid)
	faults = append(faults, faultsOf(err)...)
	if prices == nil {
		prices = k.Prices
	}
	g := cover.Guest{Avoid: allergens, MaxABV: maxABV, MaxCost: maxCost, Prices: prices}
	faults = append(faults, keep(&g, diet)...)
	faults = append(faults, checkPrices(prices, maxCost)...)
	return g, faults
}

// currency is that of the house's prices, unless others were sent.
func currency(k *service.Kitchen, sent map[string]float64) string {
	if sent != nil {
		return ""
	}
	return k.Currency
}

// pourable returns what may be poured: the ids sent, or what the house keeps
// and has not run out of, with what the drafts are made of: who writes a drink
// down has it at hand.
func pourable(ctx context.Context, k *service.Kitchen, ids []string, drafts ...*flavor.Spec) ([]*flavor.Profile, error) {
	if ids != nil {
		return stockOf(ctx, k, "", ids, nil)
	}
	out := k.House.InStock()
	for _, s := range drafts {
		for i := range s.Pours {
			if p := s.Pours[i].Profile; !slices.Contains(out, p) && !slices.Contains(k.House.Out, p) {
				out = append(out, p)
			}
		}
	}
	return out, nil
}

// costOf returns what the pours of a drink cost, nil if one has no price.
func costOf(s *flavor.Spec, prices map[string]float64) *float64 {
	var sum float64
	for i := range s.Pours {
		price, ok := prices[s.Pours[i].Profile.ID]
		if !ok {
			return nil
		}
		sum += price * s.Pours[i].ML
	}
	sum = round(sum, digitsCost)
	return &sum
}

// digitsCost is the decimals of a cost, in any currency.
const digitsCost = 2

// newAllergens lists what [flavor.Spec.NewAllergens] does.
func newAllergens(before, after *flavor.Spec) []string {
	return list(after.NewAllergens(before), func(a flavor.Allergen) string { return string(a) })
}

// mostSuggested is how many drinks are named where one was misnamed.
const mostSuggested = 3

// noSuchDrink says that the house has no drink of a name, and suggests those
// with a word that begins alike.
func noSuchDrink(h *data.House, name string) *flavor.Fault {
	const alike = 3 // letters
	f := &flavor.Fault{Kind: flavor.ErrUnknown, Location: "drink", Value: name}
	for i := range h.Specs {
		for _, written := range strings.Fields(flavor.NormaliseName(name)) {
			begins := func(word string) bool { return len(written) >= alike && strings.HasPrefix(word, written[:alike]) }
			if len(f.Suggest) < mostSuggested && slices.ContainsFunc(strings.Fields(flavor.NormaliseName(h.Specs[i].Name)), begins) {
				f.Suggest = append(f.Suggest, h.Specs[i].Name)
				break
			}
		}
	}
	f.Message = fmt.Sprintf("%q is no drink of the house; write one as the menu names it", capText(name))
	if len(f.Suggest) > 0 {
		f.Message += "; nearest: " + strings.Join(f.Suggest, ", ")
	}
	return f
}

// houseDrink finds a drink of the house by its name.
func houseDrink(h *data.House, name string) (*flavor.Spec, bool) {
	key := flavor.NormaliseName(name)
	for i := range h.Specs {
		if flavor.NormaliseName(h.Specs[i].Name) == key {
			return &h.Specs[i].Spec, true
		}
	}
	return nil, false
}
