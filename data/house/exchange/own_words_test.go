package exchange_test

import (
	"bytes"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/data/house"
	"counterpour/data/house/exchange"
	"counterpour/flavor"
)

// The house's own words go out with the stock and come in again: those of a bottle's
// ingredient on its row, others on rows of their own.
func TestOwnWordsAreWrittenWithTheStock(t *testing.T) {
	bottles := []house.Bottle{
		{ID: "dock-gin", Name: "Dock gin", Ingredient: "london-dry-gin", SizeML: 700},
		{ID: "quay-gin", Name: "Quay gin", Ingredient: "london-dry-gin", SizeML: 700},
	}
	names := []house.Name{
		{ID: "old-harbour", Written: "Old Harbour", Ingredient: "london-dry-gin"},
		{ID: "the-blue-one", Written: "the blue one", Ingredient: "london-dry-gin"},
		{ID: "salt-salt", Written: "salt; salt", Ingredient: "london-dry-gin"},
		{ID: "tar", Written: "=tar", Ingredient: "blackstrap-rum"},
	}
	var file bytes.Buffer
	require.NoError(t, exchange.WriteStock(&file, bottles, names...))
	assert.Contains(t, file.String(), "Old Harbour; the blue one")
	read, err := readStock(bytes.NewReader(file.Bytes()), nil)
	require.NoError(t, err)
	require.Empty(t, read.Bad)
	var got []house.Name
	kept := 0
	for _, item := range read.Items {
		switch item := item.(type) {
		case house.Name:
			assert.Equal(t, house.IDOf(house.KindName, flavor.NormaliseName(item.Written)), item.ID)
			item.ID = ""
			got = append(got, item)
		case house.Bottle:
			kept++
		}
	}
	assert.Equal(t, len(bottles), kept)
	for i := range names {
		names[i].ID = ""
	}
	assert.ElementsMatch(t, names, got)

	read, err = readStock(bytes.NewReader([]byte("id,name,ingredient,size_ml,words\n,,,,Old Harbour\n")), nil)
	require.NoError(t, err)
	if assert.Len(t, read.Bad, 1) {
		assert.Contains(t, read.Bad[0].Message, `what "Old Harbour" means is not known`)
	}
}
