package service

import (
	"context"
	"fmt"
	"maps"
	"slices"

	"counterpour/api/service/fault"
	"counterpour/api/service/kitchen"
	"counterpour/flavor"
	"counterpour/flavor/cover"
	"counterpour/flavor/lookup"
)

// Guest is who drinks it, in words.
type Guest struct {
	Avoid   []string // allergens; what may contain one counts as containing it
	Diet    []string // such as vegan or alcohol-free; see [cover.Guest.Keep]
	MaxABV  float64  // highest strength of the finished drink, in % vol; 0 for any
	MaxCost float64  // in the currency of the prices; what has no price is then left out; 0 for any
	// Prices are what a millilitre costs, by ingredient; nil for the house's.
	Prices map[string]float64
}

// guest reads who drinks it; its faults name the word.
func (s *Snapshot) guest(g Guest) (cover.Guest, flavor.Faults) {
	var faults flavor.Faults
	out := cover.Guest{MaxABV: g.MaxABV, MaxCost: g.MaxCost, Prices: g.Prices}
	if out.Prices == nil {
		out.Prices = s.Prices.PerML
	}
	var found flavor.Faults
	out.Avoid, found = kitchen.Avoided(g.Avoid)
	faults = append(faults, found...)
	for i, d := range g.Diet {
		err := fault.Placed(out.Keep(d), func(string) string { return fmt.Sprintf("diet[%d]", i) })
		faults = append(faults, flavor.FaultsOf(err)...)
	}
	return out, append(faults, checkPrices(out.Prices, out.MaxCost)...)
}

// elsewhere reports whether what may be poured was sent to a house that is nobody's.
// It is another bar's then, and nothing of the house, such as its prices and its menu,
// stands beside it.
func (s *Snapshot) elsewhere(stock []string) bool { return stock != nil && s.About.Invented }

// priced is who drinks it, by the prices that go with what may be poured.
func (s *Snapshot) priced(g Guest, stock []string) Guest {
	if g.Prices == nil && s.elsewhere(stock) {
		g.Prices = map[string]float64{}
	}
	return g
}

// checkPrices refuses prices below nothing, and a limit without any.
func checkPrices(prices map[string]float64, most float64) (faults flavor.Faults) {
	for _, id := range slices.Sorted(maps.Keys(prices)) {
		if !(prices[id] >= 0) {
			faults = append(faults, flavor.Invalid("prices_per_ml."+id, prices[id], "the price of %s must be zero or more", fault.Quotable(id)))
		}
	}
	if most > 0 && len(prices) == 0 {
		faults = append(faults, flavor.Invalid("max_cost", most, "a limit on cost needs prices, and there are none; give prices_per_ml, price the bottles of the house, or leave the limit out"))
	}
	return faults
}

// currency is that of the house's prices, unless others were sent.
func (s *Snapshot) currency(sent map[string]float64) string {
	if sent != nil {
		return ""
	}
	return s.Prices.Currency
}

// withIDs returns the ingredients with some ids, in the order of the index.
func (s *Snapshot) withIDs(ctx context.Context, ids []string) ([]*flavor.Profile, error) {
	stock, _, err := s.Index.Candidates(ctx, lookup.Need{Stock: ids})
	return stock, err
}

// pourable returns what may be poured: the ids sent, or what the house keeps
// and has not run out of, with what the drafts are made of: who writes a drink
// down has it at hand.
func (s *Snapshot) pourable(ctx context.Context, ids []string, drafts ...*flavor.Spec) ([]*flavor.Profile, error) {
	if ids != nil {
		return s.withIDs(ctx, ids)
	}
	out := s.InStock()
	for _, draft := range drafts {
		for i := range draft.Pours {
			if p := draft.Pours[i].Profile; !slices.Contains(out, p) && !slices.Contains(s.Out, p) {
				out = append(out, p)
			}
		}
	}
	return out, nil
}

// shelfFor returns what may be poured for a menu: the ids sent, else what the
// house has in stock, or everything for a menu that is not the house's.
func (s *Snapshot) shelfFor(ctx context.Context, ids []string, ours bool) ([]*flavor.Profile, error) {
	if ids == nil && ours {
		return s.InStock(), nil
	}
	return s.withIDs(ctx, ids)
}

// CostOf returns what the pours of a drink cost, by prices per millilitre; it is
// false if one has no price.
func CostOf(spec *flavor.Spec, prices map[string]float64) (sum float64, ok bool) {
	for i := range spec.Pours {
		price, priced := prices[spec.Pours[i].Profile.ID]
		if !priced {
			return 0, false
		}
		sum += price * spec.Pours[i].ML
	}
	return sum, true
}
