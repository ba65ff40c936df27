package exchange_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/data/house"
	"counterpour/data/house/exchange"
	"counterpour/data/house/exchange/column"
)

// broken is a list whose lines break its form.
const broken = "Item;Size;Price;Qty\n" +
	"Dock London Dry Gin;0,7l;14,90;3\n" +
	"12 x Mole London dry gin 70cl 17.50\n" +
	"Pier bianco vermouth\t75 cl\t9,95\t2\n" +
	"Eggs 30 pcs;;9;1\n" +
	"Tonic 24x20cl;;18,00;2\n" +
	"Strangebrand;70cl;20,00;1\n" +
	"Strangebrand 1l;;27,00;1\n"

func readBroken(t *testing.T, settled exchange.Settled) []exchange.SheetRow {
	t.Helper()
	sheet, err := exchange.ReadSheet(strings.NewReader(broken), shelf(t), nil, settled)
	require.NoError(t, err)
	require.Len(t, sheet.Rows, 7)
	return sheet.Rows
}

// Lines among cells are laid out in the columns, and what a full one holds is taken from a name.
func TestALineThatBreaksTheForm(t *testing.T) {
	rows := readBroken(t, exchange.Settled{House: "EUR"})
	for at, want := range map[int]struct {
		name      string
		ml, stock float64
		price     float64
	}{1: {"Mole London dry gin", 700, 12, 17.5}, 2: {"Pier bianco vermouth", 750, 2, 9.95}} {
		b := rows[at].Bottle
		assert.Empty(t, rows[at].Faults, want.name)
		require.NotNil(t, b.Price, want.name)
		assert.Equal(t, want.name, b.Name)
		assert.Equal(t, []float64{want.ml, want.stock, want.price}, []float64{b.SizeML, b.Stock, *b.Price}, want.name)
	}
	assert.Empty(t, rows[3].Faults, "eggs by the piece")
	assert.Greater(t, rows[3].Bottle.SizeML, 30*20.0, "mL: an egg has more than 20 each")
	require.Len(t, rows[4].Faults, 1, "a pack is asked about")
	assert.Contains(t, rows[4].Faults[0].Message, "is a pack of 24")
}

// A kind that is chosen for one row is that of another row of the same name, and what such bottles
// carry is not stated until somebody says so.
func TestAKindIsChosenOnceForOneName(t *testing.T) {
	open := readBroken(t, exchange.Settled{House: "EUR"})
	assert.NotEmpty(t, open[5].Faults)
	assert.NotEmpty(t, open[6].Faults)
	settled := exchange.Settled{House: "EUR", Cells: map[exchange.Cell]string{{Row: open[5].Number, Field: column.Kind}: "triple sec"}}
	for _, known := range []bool{false, true} {
		settled.Known = known
		rows := readBroken(t, settled)
		for _, r := range rows[5:] {
			assert.Empty(t, r.Faults, r.Bottle.Name)
			assert.Equal(t, "triple-sec", r.Bottle.Ingredient)
			assert.True(t, r.ByHand)
			assert.Equal(t, !known, r.Bottle.Unread)
		}
		assert.False(t, rows[0].Bottle.Unread, "the name says which kind it is")
		shelf, faults := house.Overlay(shelf(t).Profiles(), []house.Bottle{rows[5].Bottle}, nil)
		require.Empty(t, faults)
		for _, p := range shelf {
			if p.ID == "triple-sec" {
				assert.Equal(t, known, p.AllergensKnown)
			}
		}
	}
}

// A row of totals is no bottle, in the tongue of the list either; a bottle whose name begins like one is.
func TestRowsOfTotals(t *testing.T) {
	for name, sum := range map[string]bool{"Summe": true, "Gesamt:": true, "Zwischensumme": true, "Total HT": true, "Sous-total": true, "Totale": true, "Suma": true, "Grand total": true,
		"Sumac London dry gin": false, "Totally London dry gin": false} {
		sheet, err := exchange.ReadSheet(strings.NewReader("Bezeichnung;Inhalt;EK netto\nDock London dry gin;70cl;14,90\n"+name+";;14,90\n"), shelf(t), nil, exchange.Settled{House: "EUR"})
		require.NoError(t, err)
		require.Len(t, sheet.Rows, 2, name)
		assert.Equal(t, sum, sheet.Rows[1].LeftOut == "a sum", name)
	}
}
