package webui_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"counterpour/data/house"
	"counterpour/webui/webuitest"
)

// In a house that writes commas a drink keeps the point of its name, and its figures do not.
func TestANameKeepsItsPointWhereCommasAreWritten(t *testing.T) {
	h := webuitest.NewHouse()
	_, err := h.Store().Write(t.Context(), webuitest.Opening, house.Put(house.Settings{Decimal: house.DecimalComma}, 0))
	require.NoError(t, err)
	w := webuitest.Post(webuitest.PagesOf(t, h), "/bench", webuitest.Fields("text", "Navy 2.0\n60 ml gin\n22.5 ml lemon juice\n15 ml simple syrup\nshake, up", "save", "save"), false)
	webuitest.Tells(t, w, 200, "Navy 2.0", "22,5")
	webuitest.Lacks(t, w, "Navy 2,0")
}
