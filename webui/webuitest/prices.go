package webuitest

import (
	"testing"

	"github.com/stretchr/testify/require"

	"counterpour/data/house"
)

// PricedHouse is a fake house with a litre of everything but orgeat, and what it
// cost.
func PricedHouse(t *testing.T) *House {
	t.Helper()
	h := NewHouse()
	var edits []house.Edit
	for id, price := range map[string]float64{Gin.ID: 30, Lemon.ID: 10, Syrup.ID: 5, Almond.ID: 20, Clove.ID: 10, Falernum.ID: 30, white.ID: 10} {
		edits = append(edits, house.Put(house.Bottle{ID: id, Name: id, Ingredient: id, SizeML: 1000, Stock: 1, Price: &price, Currency: "EUR"}, 0))
	}
	_, err := h.Store().Write(t.Context(), Opening, edits...)
	require.NoError(t, err)
	return h
}

// OnSale is a fake house with prices for gin, lemon and falernum.
func OnSale(t *testing.T) *House {
	t.Helper()
	h := NewHouse()
	price := func(id string, v float64, currency string) house.Edit {
		return house.Put(house.Bottle{ID: id, Name: id, Ingredient: id, SizeML: 700, Stock: 1, Price: &v, Currency: currency}, 0)
	}
	_, err := h.Store().Write(t.Context(), Opening, price("london-dry-gin", 21, "EUR"), price("lemon-juice", 7, "EUR"), price("falernum", 14, "EUR"))
	require.NoError(t, err)
	return h
}
