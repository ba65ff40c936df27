package prep

import (
	"fmt"
	"maps"
	"slices"

	"counterpour/data/house"
	"counterpour/flavor"
)

// PourCost returns the cost of ml millilitres from a bottle of sizeML at price, in the
// currency of the price. It is 0 if sizeML is not above 0.
func PourCost(price, sizeML, ml float64) float64 {
	if !(sizeML > 0) {
		return 0
	}
	return price / sizeML * ml
}

// Prices are per millilitre, by ingredient id.
type Prices struct {
	Currency string
	PerML    map[string]float64
	Unpriced []string // ids of makings with an unpriced part
}

// Cost is the cost of a drink. Amount leaves out the ingredients in Unpriced.
type Cost struct {
	Amount   float64
	Currency string
	Unpriced []string // ids, in order
}

// NewPrices takes the price of each ingredient from the bottle that is poured (see
// [house.Wells]). What the house makes costs as much as its parts, divided by the volume
// that the recipe gives. shelf must include what the house makes. It fails with
// [house.ErrInvalid] if the bottles are priced in two currencies.
func NewPrices(shelf *house.Shelf, bottles []house.Bottle, made []house.Made) (Prices, error) {
	p := Prices{PerML: map[string]float64{}}
	wells := house.Wells(slices.DeleteFunc(slices.Clone(bottles), func(b house.Bottle) bool { return b.Price == nil }))
	for _, id := range slices.Sorted(maps.Keys(wells)) {
		b := wells[id]
		if p.Currency == "" {
			p.Currency = b.Currency
		}
		if b.Currency != p.Currency {
			return Prices{}, &house.Error{Kind: house.ErrInvalid, Op: "price", Key: b.Ref().String(),
				Message: fmt.Sprintf("it is priced in %s and others in %s; use one currency", b.Currency, p.Currency)}
		}
		profile, ok := shelf.ByID(id)
		if !ok {
			continue // not on the shelf: nothing is poured from it
		}
		p.PerML[id] = PourCost(*b.Price, b.VolumeML(profile), 1)
	}
	p.addMade(shelf, made)
	return p, nil
}

// addMade prices the recipes whose parts are all priced. A recipe with a priced bottle of
// its own, bought in, keeps that price.
func (p *Prices) addMade(shelf *house.Shelf, made []house.Made) {
	left := slices.DeleteFunc(slices.Clone(made), func(m house.Made) bool { _, bought := p.PerML[m.ID]; return bought })
	for again := true; again; {
		again = false
		left = slices.DeleteFunc(left, func(m house.Made) bool {
			perML, ok := p.ofRecipe(shelf, m)
			if ok {
				p.PerML[m.ID] = perML
				again = true
			}
			return ok
		})
	}
	for _, m := range left {
		p.Unpriced = append(p.Unpriced, m.ID)
	}
	slices.Sort(p.Unpriced)
}

func (p *Prices) ofRecipe(shelf *house.Shelf, m house.Made) (perML float64, ok bool) {
	yield, err := m.VolumeML(shelf)
	if err != nil || !(yield > 0) {
		return 0, false
	}
	var total float64
	if len(m.Steeped) > 0 {
		return 0, false // nobody says what those cost
	}
	for _, part := range m.Parts {
		_, ml, err := shelf.Pour(part)
		per, priced := p.PerML[part.Ingredient]
		if err != nil || !priced && !free(shelf, part.Ingredient) {
			return 0, false
		}
		total += per * ml
	}
	return total / yield, true
}

// free reports whether an ingredient is tap water.
func free(shelf *house.Shelf, id string) bool {
	p, ok := shelf.ByID(id)
	return ok && p.Class.Free()
}

// Drink returns the cost of a spec. Still water without a price is free.
func (p Prices) Drink(s flavor.Spec) Cost {
	sum, unpriced := s.Cost(p.PerML)
	c := Cost{Amount: sum, Currency: p.Currency}
	for _, x := range unpriced {
		c.Unpriced = append(c.Unpriced, x.ID)
	}
	slices.Sort(c.Unpriced)
	return c
}

// Share is the cost of one pour.
type Share struct {
	Ingredient string  // id
	Amount     float64 // in the currency of the prices
	Part       float64 // share of the known cost of the drink, 0 to 1
	Priced     bool    // false: the cost is unknown; still water is priced at 0
}

// Shares returns the cost of each pour of a spec, in order.
func (p Prices) Shares(s flavor.Spec) []Share {
	out := make([]Share, 0, len(s.Pours))
	total := p.Drink(s).Amount
	for _, pour := range s.Pours {
		if pour.Profile == nil {
			continue
		}
		share := Share{Ingredient: pour.Profile.ID, Amount: p.PerML[pour.Profile.ID] * pour.ML, Priced: pour.Profile.Priced(p.PerML)}
		if total > 0 {
			share.Part = share.Amount / total
		}
		out = append(out, share)
	}
	return out
}

// Batch returns the cost of all servings of a batch, including what is added to each
// drink. It uses exact amounts, not rounded ones.
func (p Prices) Batch(b *Batch) Cost {
	all := p.Drink(flavor.Spec{Pours: slices.Concat(b.Apart, b.Tops)})
	all.Amount *= b.Servings
	for _, l := range b.Lines {
		per, ok := p.PerML[l.Ingredient]
		switch {
		case ok:
			all.Amount += per * l.ML
		case !l.Free && !slices.Contains(all.Unpriced, l.Ingredient):
			all.Unpriced = append(all.Unpriced, l.Ingredient)
		}
	}
	slices.Sort(all.Unpriced)
	return all
}

// Difference compares the cost of a cover with that of the original drink.
type Difference struct {
	Original, Cover Cost
	More            float64 // cost of the cover minus that of the original
	Sure            bool    // every ingredient of both has a price
}

// Compare returns the difference in cost between a cover and the original.
func (p Prices) Compare(original, cover flavor.Spec) Difference {
	d := Difference{Original: p.Drink(original), Cover: p.Drink(cover)}
	d.More = d.Cover.Amount - d.Original.Amount
	d.Sure = len(d.Original.Unpriced) == 0 && len(d.Cover.Unpriced) == 0
	return d
}
