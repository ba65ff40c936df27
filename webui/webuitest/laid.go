package webuitest

import (
	"context"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"counterpour/data/house"
	"counterpour/flavor"
	"counterpour/flavor/mix"
	"counterpour/webui/behind"
)

// Laid is a fake house whose records lie over its shelf, as those of a
// real one do.
type Laid struct{ *House }

var _ behind.House = Laid{}

// Catalogue has the profiles of the fake, with densities that go with what is
// in them.
func (h Laid) Catalogue() *house.Shelf {
	var list []*flavor.Profile
	for _, p := range h.House.Shelf().Profiles() {
		c := *p
		if err := mix.Complete(&c); err != nil {
			panic(err)
		}
		list = append(list, &c)
	}
	return house.NewShelf(list)
}

// Shelf is the catalogue with the records laid over it.
func (h Laid) Shelf() *house.Shelf {
	entries, err := h.Store().List(context.Background(), house.KindBottle, house.KindMade)
	if err != nil {
		panic(err)
	}
	var bottles []house.Bottle
	var made []house.Made
	for _, e := range entries {
		switch item := e.Item.(type) {
		case house.Bottle:
			bottles = append(bottles, item)
		case house.Made:
			made = append(made, item)
		}
	}
	list, _ := house.Overlay(h.Catalogue().Profiles(), bottles, made)
	return house.NewShelf(list)
}

// NewLaid is a house without bottles of its own.
func NewLaid() Laid { return Laid{NewHouse()} }

// Ana is somebody who writes to a house.
var Ana = house.By{Actor: "ana", At: time.Date(2024, 5, 6, 20, 0, 0, 0, time.UTC)}

// Stocked is a house with some bottles and a syrup.
func Stocked(t *testing.T) Laid {
	t.Helper()
	h := NewLaid()
	h.KeepAll(t,
		house.Bottle{ID: "blue", Name: "Blue cap", Ingredient: "london-dry-gin", Measured: house.Measured{ABVPct: new(43.1)}, Price: new(24.9), Currency: "EUR", SizeML: 700, Stock: 2.5, Note: "behind the till"},
		house.Bottle{ID: "red", Name: "Red cap", Ingredient: "london-dry-gin", Well: true, SizeML: 1000, Stock: 1},
		house.Bottle{ID: "lemons", Name: "Lemons of the day", Ingredient: "lemon-juice", Measured: house.Measured{Brix: new(8.1), AcidGPerL: new(62.0)}, SizeML: 1000},
		house.Bottle{ID: "almond", Name: "Almond syrup", Ingredient: "orgeat", SizeG: 1000, Price: new(10.0), Currency: "EUR", Stock: 3},
		house.Bottle{ID: "odd", Name: "Odd one", Ingredient: "moon-dust", SizeML: 500, Stock: 1},
		house.Made{ID: "nut-syrup", Name: "Nut syrup", Aliases: []string{"the brown one"}, Class: flavor.ClassSpicedSyrup, KeepsDays: 14,
			Parts: []house.Pour{{Ingredient: "simple-syrup", Amount: 300, Unit: flavor.Millilitre}, {Ingredient: "orgeat", Amount: 100, Unit: flavor.Millilitre}, {Ingredient: "unlabelled-liqueur", Amount: 100, Unit: flavor.Millilitre}}},
	)
	return h
}

// KeepAll puts records in.
func (h Laid) KeepAll(t *testing.T, items ...house.Item) {
	t.Helper()
	var edits []house.Edit
	for _, it := range items {
		edits = append(edits, house.Put(it, 0))
	}
	_, err := h.Store().Write(t.Context(), Ana, edits...)
	require.NoError(t, err)
}

// Bottle is a bottle of the house.
func (h Laid) Bottle(t *testing.T, id string) house.Kept[house.Bottle] {
	t.Helper()
	b, err := house.Get[house.Bottle](t.Context(), h.Store(), id)
	require.NoError(t, err)
	return b
}

// Making is what the house makes.
func (h Laid) Making(t *testing.T, id string) house.Kept[house.Made] {
	t.Helper()
	m, err := house.Get[house.Made](t.Context(), h.Store(), id)
	require.NoError(t, err)
	return m
}

// Bottles are all bottles of the house.
func (h Laid) Bottles(t *testing.T) []house.Bottle {
	t.Helper()
	list, err := house.All[house.Bottle](t.Context(), h.Store())
	require.NoError(t, err)
	return house.Items(list)
}
