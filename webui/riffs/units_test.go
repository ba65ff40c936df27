package riffs_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"counterpour/data/house"
	"counterpour/flavor/measure"
	"counterpour/webui/webuitest"
)

// A walk between drinks of the house is told in its units.
func TestAWalkIsInTheUnitsOfTheHouse(t *testing.T) {
	h := webuitest.NewHouse()
	_, err := h.Store().Write(t.Context(), webuitest.Opening, house.Put(house.Settings{Units: measure.Metric}, 0))
	require.NoError(t, err)
	w := webuitest.Get(webuitest.PagesOf(t, h), "/riffs/walk?from=halyard-sour&to=mainbrace", "")
	webuitest.Holds(t, w, 200, []string{"60\u00a0mL"}, []string{"2 oz London dry gin", "2\u00a0oz London dry gin"})
}
