package exchange_test

import (
	"bytes"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/data/house"
	"counterpour/data/house/exchange"
	"counterpour/flavor/measure"
)

// The settings go out with the house, come in again, and the last change of them can
// be undone.
func TestSettingsAreExported(t *testing.T) {
	s := open(t)
	by := house.By{Actor: "Ines", At: time.Date(2026, 4, 1, 16, 0, 0, 0, time.UTC)}
	first := house.Settings{Name: "Dry Dock", Units: measure.Metric, Currency: "EUR", Decimal: house.DecimalComma, Country: "Germany"}
	_, err := s.Write(t.Context(), by, house.Put(first, 0))
	require.NoError(t, err)
	var out bytes.Buffer
	require.NoError(t, exchange.WriteJSON(t.Context(), s, &out))
	reading, err := exchange.ReadJSON(&out)
	require.NoError(t, err)
	require.Empty(t, reading.Bad)
	assert.Equal(t, []house.Item{first}, reading.Items)

	second := first
	second.Country = "Ireland"
	_, err = s.Write(t.Context(), by, house.Put(second, 1))
	require.NoError(t, err)
	_, err = s.Undo(t.Context(), by, first.Ref(), 2)
	require.NoError(t, err)
	kept, err := house.Get[house.Settings](t.Context(), s, house.SettingsID)
	require.NoError(t, err)
	assert.Equal(t, first, kept.Item)
	history, err := s.History(t.Context(), first.Ref())
	require.NoError(t, err)
	assert.Len(t, history, 3)
}
