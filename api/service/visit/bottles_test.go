package visit_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/api/service/marking"
	"counterpour/api/service/visit"
	"counterpour/data/house"
	"counterpour/flavor"
)

// threeGins is the demo house with two more bottles of its gin.
func threeGins(t *testing.T) *visit.Visit {
	t.Helper()
	r := testVisit(t)
	_, err := r.Store().Write(t.Context(), testBy(),
		house.Put(house.Bottle{ID: "pier-gin", Name: "Pier gin", Ingredient: "london-dry-gin", SizeML: 700, Stock: 2}, 0),
		house.Put(house.Bottle{ID: "quay-gin", Name: "Quay gin", Ingredient: "london-dry-gin", SizeML: 700, Stock: 1}, 0))
	require.NoError(t, err)
	return r
}

// pouredGin is the bottle that gin is poured from; empty if gin is out.
func pouredGin(t *testing.T, r *visit.Visit) string {
	t.Helper()
	outs, err := r.RunOut(t.Context())
	require.NoError(t, err)
	for _, id := range outs {
		if id == "london-dry-gin" {
			return ""
		}
	}
	return house.Wells(r.Inventory())["london-dry-gin"].ID
}

// A bottle that is out leaves its ingredient pourable from another, until the last is out;
// what is back is the bottle that is said to be, and no other.
func TestOneBottleOfSeveralIsOut(t *testing.T) {
	r := threeGins(t)
	for _, step := range []struct {
		does   string
		mark   marking.Request
		poured string
	}{
		{"nothing of it", marking.Request{Out: []string{"mint"}}, "london-dry-gin"},
		{"the one that is poured", marking.Request{BottlesOut: []string{"london-dry-gin"}}, "pier-gin"},
		{"again, which changes nothing", marking.Request{BottlesOut: []string{"london-dry-gin"}}, "pier-gin"},
		{"one that is not poured, by its name", marking.Request{BottlesOut: []string{"Quay gin"}}, "pier-gin"},
		{"the last", marking.Request{BottlesOut: []string{"pier-gin"}}, ""},
		{"the last is back with the ingredient", marking.Request{Back: []string{"london-dry-gin"}}, "pier-gin"},
		{"all of it", marking.Request{Out: []string{"london-dry-gin"}}, ""},
		{"another is back, the last stays out", marking.Request{BottlesBack: []string{"quay-gin"}}, "quay-gin"},
		{"and is out", marking.Request{BottlesOut: []string{"quay-gin"}}, ""},
		{"all bottles are back", marking.Request{BottlesBack: []string{"quay-gin", "pier-gin", "london-dry-gin"}}, "london-dry-gin"},
		{"two at once", marking.Request{BottlesOut: []string{"london-dry-gin", "pier-gin"}}, "quay-gin"},
		{"three at once", marking.Request{BottlesOut: []string{"london-dry-gin", "quay-gin", "pier-gin"}}, ""},
	} {
		require.NoError(t, r.Mark(t.Context(), testBy(), step.mark), step.does)
		assert.Equal(t, step.poured, pouredGin(t, r), step.does)
	}
}

// What a guest is told goes by the bottle that is poured: its strength and its label.
func TestWhatIsPouredDecidesWhatIsServed(t *testing.T) {
	r := threeGins(t)
	quay, err := house.Get[house.Bottle](t.Context(), r.Store(), "quay-gin")
	require.NoError(t, err)
	strong := 57.0
	quay.Item.ABVPct, quay.Item.Label = &strong, &house.Label{MayContain: []flavor.Allergen{flavor.TreeNuts}, ReadBy: "Wren", ReadAt: testBy().At}
	_, err = r.Store().Write(t.Context(), testBy(), house.Put(quay.Item, quay.Version))
	require.NoError(t, err)
	gin, _ := r.Shelf().ByID("london-dry-gin")
	require.NotEqual(t, strong, gin.ABV.Value)

	require.NoError(t, r.Mark(t.Context(), testBy(), marking.Request{BottlesOut: []string{"london-dry-gin", "pier-gin"}}))
	gin, _ = r.Shelf().ByID("london-dry-gin")
	assert.Equal(t, strong, gin.ABV.Value)
	known, _ := gin.Allergen(flavor.TreeNuts)
	assert.Equal(t, flavor.MayContain, known)
}

// No mark is made of what is no bottle, or of one that is said to be out and back.
func TestMarksOfBottlesAreChecked(t *testing.T) {
	r := threeGins(t)
	for _, m := range []marking.Request{
		{BottlesOut: []string{"no-such-bottle"}},
		{BottlesOut: []string{"quay-gin"}, BottlesBack: []string{"quay-gin"}},
	} {
		assert.NotEmpty(t, flavor.DataFaultsOf(r.Mark(t.Context(), testBy(), m)), "%+v", m)
	}
	assert.Equal(t, "london-dry-gin", pouredGin(t, r))
}
