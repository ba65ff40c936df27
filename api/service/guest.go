package service

import (
	"context"
	"fmt"
	"maps"
	"slices"

	"counterpour/api/service/fault"
	"counterpour/api/service/kitchen"
	"counterpour/flavor"
	"counterpour/flavor/guest"
	"counterpour/flavor/lookup"
)

// Guest is what a guest may have, as written in the request.
type Guest struct {
	Avoid   []string // allergens, and [flavor.Substances]; an ingredient that may contain one counts as containing it
	Diet    []string // such as vegan or alcohol-free; see [guest.Guest.Keep]
	MaxABV  float64  // highest strength of the finished drink, in % vol; 0 for no limit
	MaxCost float64  // in the currency of the prices; drinks with a pour without a price are left out; 0 for no limit
	// Prices are per millilitre, by ingredient id; nil for the prices of the house.
	Prices map[string]float64
}

// guest reads the words of a request. Its faults name the word.
func (s *Snapshot) guest(g Guest) (guest.Guest, flavor.DataFaults) {
	var faults flavor.DataFaults
	out := guest.Guest{MaxABV: g.MaxABV, MaxCost: g.MaxCost, Prices: g.Prices}
	if out.Prices == nil {
		out.Prices = s.Prices.PerML
	}
	var found flavor.DataFaults
	out.Avoid, found = kitchen.AvoidedByGuest(g.Avoid)
	faults = append(faults, found...)
	for i, d := range g.Diet {
		err := fault.Placed(out.Keep(d), func(string) string { return fmt.Sprintf("diet[%d]", i) })
		faults = append(faults, flavor.DataFaultsOf(err)...)
	}
	return out, append(faults, checkPrices(out.Prices, out.MaxCost)...)
}

// elsewhere reports whether a request brings its own stock to the invented demo house.
// Then it is about another bar, and the demo house's prices and menu are left out of the
// answer.
func (s *Snapshot) elsewhere(stock []string) bool { return stock != nil && s.About.Invented }

// priced returns g with empty prices if the request is about another bar and sent none.
func (s *Snapshot) priced(g Guest, stock []string) Guest {
	if g.Prices == nil && s.elsewhere(stock) {
		g.Prices = map[string]float64{}
	}
	return g
}

// checkPrices refuses negative prices, and a limit on cost without prices.
func checkPrices(prices map[string]float64, most float64) (faults flavor.DataFaults) {
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

// currency returns the currency of the house's prices, or "" if the request sent prices.
func (s *Snapshot) currency(sent map[string]float64) string {
	if sent != nil {
		return ""
	}
	return s.Prices.Currency
}

// withIDs returns the ingredients with these ids, in the order of the index.
func (s *Snapshot) withIDs(ctx context.Context, ids []string) ([]*flavor.Profile, error) {
	stock, _, err := s.Index.Candidates(ctx, lookup.Need{Stock: ids})
	return stock, err
}

// pourable returns what may be poured: the ingredients with these ids or, if ids is nil,
// those in stock and those of the drafts. A bartender who writes an ingredient down is
// assumed to have it, unless it is marked as out.
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

// shelfFor returns what may be poured for a menu: the ingredients with these ids. If ids
// is nil, it is the stock for the house's own menu (ours), and the whole catalogue for
// any other.
func (s *Snapshot) shelfFor(ctx context.Context, ids []string, ours bool) ([]*flavor.Profile, error) {
	if ids == nil && ours {
		return s.InStock(), nil
	}
	return s.withIDs(ctx, ids)
}
