package jotted_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"counterpour/data/house/exchange/column"
	"counterpour/data/house/exchange/jotted"
)

// Lines of a count sheet or an invoice, as count, name, size and price: common practice, no source.
func TestCells(t *testing.T) {
	for line, want := range map[string][]string{
		"6 x Hawse dry gin 70cl 18.50": {"6", "Hawse dry gin", "70cl", "18.50"},
		"Hawse dry gin 3x70cl @ 24":    {"3", "Hawse dry gin", "70cl", "24"},
		"Hawse dry gin 70cl - none":    {"none", "Hawse dry gin", "70cl", ""},
		"24x20cl tonic water @ 14.40":  {"", "tonic water", "24 x 20cl", "14.40"},
		"2 btl orgeat":                 {"2", "orgeat", "", ""},
		"orgeat 2 btl":                 {"2", "orgeat", "", ""},
		"orgeat":                       {"", "orgeat", "", ""},
		"2 x orgeat x 3":               {"2", "orgeat x 3", "", ""},
		"70":                           nil,
	} {
		assert.Equal(t, want, jotted.Cells(line), line)
	}
}

// A text is a list if most of its lines say more than a name, and has no columns.
func TestLines(t *testing.T) {
	rows, ok := jotted.Lines([]byte("2 btl orgeat\n\n6 x dry gin 70cl\nlime"))
	assert.True(t, ok)
	if assert.Len(t, rows, 4) {
		assert.Equal(t, []string{"6", "dry gin", "70cl", ""}, rows[2].Cells)
		assert.Equal(t, 3, rows[2].Number)
		assert.Equal(t, []string{"", "lime", "", ""}, rows[3].Cells)
	}
	for _, text := range []string{"orgeat\nlime\ngin", "orgeat; 2\ngin; 3", ""} {
		_, ok := jotted.Lines([]byte(text))
		assert.False(t, ok, text)
	}
}

// What a name says beside it goes into its fields, and a name alone stays as it is written.
func TestInName(t *testing.T) {
	for written, want := range map[string]map[column.Field]string{
		"Hawse dry gin 70cl 40% vol": {column.Size: "70cl", column.Strength: "40% vol"},
		"Hawse dry gin 2 btl":        {column.Stock: "2"},
		"tonic water 24x20cl":        {column.Size: "24 x 20cl"},
		"Hawse dry gin 70cl":         nil,
		"Rum 151":                    nil,
		"Pale ale 5%":                nil,
	} {
		name, said := jotted.InName(written)
		assert.Equal(t, want, said, written)
		if want == nil {
			assert.Equal(t, written, name)
		}
	}
}
