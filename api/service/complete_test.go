package service

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/api/service/kitchen"
	"counterpour/data/house"
	"counterpour/data/house/storetest"
)

// firstOffers returns the ids of what completes a text, the first three.
func firstOffers(t *testing.T, x kitchen.Index, typed string) []string {
	t.Helper()
	found, err := x.Complete(t.Context(), typed, 3)
	require.NoError(t, err)
	var ids []string
	for _, p := range found {
		ids = append(ids, p.ID)
	}
	return ids
}

// What most drinks pour is offered first; common practice, no source.
func TestCompletionOffersWhatDrinksPour(t *testing.T) {
	k, err := sharedKitchen()
	require.NoError(t, err)
	for typed, want := range map[string]string{
		"lim": "lime-juice", "lem": "lemon-juice", "pine": "pineapple-juice", "gin": "london-dry-gin", "bour": "bourbon", "sim": "simple-syrup",
		"gren": "grenadine", "orange bit": "orange-bitters", "dry ver": "dry-vermouth", "soda": "soda-water", "mar": "maraschino-liqueur",
	} {
		offers := firstOffers(t, k.Index, typed)
		require.NotEmpty(t, offers, typed)
		assert.Equal(t, want, offers[0], typed)
	}
	none, err := k.Index.Complete(t.Context(), "gin", 0)
	require.NoError(t, err)
	assert.Empty(t, none)
}

// What a house stocks is offered before what it does not, as soon as it does.
func TestCompletionOffersTheStockFirst(t *testing.T) {
	v := open(t, storetest.Memory(t))
	require.Equal(t, "london-dry-gin", firstOffers(t, v.Now().Index, "gin")[0])
	put(t, v.Store(), 0, house.Bottle{ID: "navy-strength-gin", Name: "Navy-strength gin", Ingredient: "navy-strength-gin", SizeML: 700, Stock: 1})
	require.Equal(t, []string{"navy-strength-gin", "london-dry-gin"}, firstOffers(t, v.Now().Index, "gin")[:2])
	require.Equal(t, "lime-juice", firstOffers(t, v.Now().Index, "lim")[0])
}
