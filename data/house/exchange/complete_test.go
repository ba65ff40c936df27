package exchange_test

import (
	"bytes"
	"reflect"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/data/house"
	"counterpour/data/house/exchange"
	"counterpour/flavor"
)

// leaves adds the names of the fields of a record that hold something, by way of
// what they point to.
func leaves(of reflect.Value, at string, set map[string]bool) {
	switch of.Kind() {
	case reflect.Pointer:
		if !of.IsNil() {
			leaves(of.Elem(), at, set)
			return
		}
		leaves(reflect.New(of.Type().Elem()).Elem(), at, set)
	case reflect.Struct:
		if of.Type() == reflect.TypeFor[time.Time]() {
			set[at] = set[at] || !of.IsZero()
			return
		}
		for i := range of.NumField() {
			leaves(of.Field(i), at+"."+of.Type().Field(i).Name, set)
		}
	default:
		set[at] = set[at] || !of.IsZero()
	}
}

// Every field of a bottle goes through its columns: one that is added to the record
// and to no column fails here.
func TestEveryFieldOfABottleHasAColumn(t *testing.T) {
	abv, acid, price, brix, sugar := 43.0, 1.5, 22.0, 50.0, 615.0
	out := time.Date(2026, 5, 1, 22, 30, 0, 0, time.UTC)
	full := []house.Bottle{
		{ID: "dock-gin", Name: "Dock gin", Ingredient: "london-dry-gin", Well: true, Measured: house.Measured{ABVPct: &abv, AcidGPerL: &acid}, Price: &price, Currency: "EUR", SizeML: 700, Stock: 2.5, Par: 6, Note: "on the rail",
			Label: &house.Label{Contains: []flavor.Allergen{flavor.Milk}, MayContain: []flavor.Allergen{flavor.TreeNuts}, Vegan: true, ReadBy: "Ines", ReadAt: time.Date(2026, 4, 1, 0, 0, 0, 0, time.UTC)}},
		{ID: "syrup", Name: "Syrup", Ingredient: "simple-syrup", Measured: house.Measured{Brix: &brix}, SizeG: 1000, OutSince: &out, Unread: true},
		{ID: "rich", Name: "Rich", Ingredient: "rich-simple-syrup", Measured: house.Measured{SugarGPerL: &sugar}, SizeML: 500},
	}
	set := map[string]bool{}
	for _, b := range full {
		require.NoError(t, house.Check(b))
		leaves(reflect.ValueOf(b), "bottle", set)
	}
	for field, held := range set {
		assert.True(t, held, "%s is not tried here", field)
	}
	var file bytes.Buffer
	require.NoError(t, exchange.WriteStock(&file, full))
	reading, err := readStock(&file, nil)
	require.NoError(t, err)
	require.Empty(t, reading.Bad)
	require.Len(t, reading.Items, len(full))
	for i, item := range reading.Items {
		assert.Equal(t, full[i], item)
	}
}
