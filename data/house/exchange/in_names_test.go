package exchange_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/data/house/exchange"
	"counterpour/data/house/exchange/column"
)

// A list without a cell for it keeps in a name how many there are, what one holds, how strong it
// is and what it costs; common practice, no source.
func TestWhatANameSaysBeside(t *testing.T) {
	const known = "Name;Size;Price;Stock\n"
	for _, c := range []struct{ name, list, want, asked string }{
		{"count and price", "Name;Size;Price\nwhite rum 70cl 3 btl @ 14,50;;\nbourbon;1 L;20,00\n", "white rum, white-rum, 700 ml, 14.50 EUR, as known, × 3", ""},
		{"count beside a size of its own cell", "Name;Size;Price\nLondon dry gin 2 btl;70cl;18\nbourbon;1 L;20\n", "London dry gin, london-dry-gin, 700 ml, 18.00 EUR, as known, × 2", ""},
		{"strength", "Name;Size;Price\nvodka 70cl 40%;;12\nbourbon;1 L;20\n", "vodka, vodka, 700 ml, 12.00 EUR, 40 %, × 1", ""},
		{"strength in the middle", "Name;Price\nvodka 37.5% vol 70cl, 2 btl;12\nbourbon 1 L;20\n", "vodka, vodka, 700 ml, 12.00 EUR, 37.5 %, × 2", ""},
		{"strength of a plain line", "6 x vodka 70cl 40% 12.50\nbourbon 1 L 20.00\n", "vodka, vodka, 700 ml, 12.50 EUR, 40 %, × 6", ""},
		{"a case, priced in the name", "Name;Size;Price\ntonic water 24x20cl @ 14.40;;\nbourbon;1 L;20\n", "", "packs"},
		{"a case, priced in its cell", "Name;Price\ntonic water 24x20cl;14.40\nbourbon 1 L;20\n", "", "packs"},
		{"a case first", "24x20cl tonic water @ 14.40\nbourbon 1 L 20.00\n", "", "packs"},
		{"a few bottles, each priced", "bourbon 3x70cl @ 24\nvodka 1 L 20.00\n", "bourbon, bourbon, 700 ml, 24.00 EUR, as known, × 3", ""},
		{"said by a cell too, it stays to be seen", known + "vodka 2 btl;70cl;12;5\nbourbon;1 L;20;1\n", "vodka 2 btl, vodka, 700 ml, 12.00 EUR, as known, × 5", ""},
		{"an age is none of it", known + "bourbon 12 years;70cl;12;5\nvodka;1 L;20;1\n", "bourbon 12 years, bourbon, 700 ml, 12.00 EUR, as known, × 5", ""},
	} {
		s, err := exchange.ReadSheet(strings.NewReader(c.list), shelf(t), nil, exchange.Settled{Currency: "EUR"})
		require.NoError(t, err, c.name)
		require.Len(t, s.Rows, 2, c.name)
		if c.asked != "" {
			require.Len(t, s.Rows[0].Faults, 1, c.name)
			assert.Equal(t, column.Size, s.Rows[0].Faults[0].Field, c.name)
			assert.Contains(t, s.Rows[0].Faults[0].Message, c.asked, c.name)
			continue
		}
		assert.Empty(t, s.Rows[0].Faults, c.name)
		assert.Equal(t, c.want, inShort(s.Rows[0].Bottle), c.name)
	}
}
