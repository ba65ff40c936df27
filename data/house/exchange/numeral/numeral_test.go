package numeral_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"counterpour/data/house/exchange/numeral"
)

// How people write the same figure. Common practice, no source.
func TestFiguresAsPeopleWriteThem(t *testing.T) {
	for cell, want := range map[string]float64{"1,234.50": 1234.5, "1.234,50": 1234.5, "1’234": 1234, "½": 0.5, "1 ½": 1.5, "3/4": 0.75, "2,5": 2.5, "1e-05": 1e-05} {
		got, ok := numeral.Number(cell, false)
		assert.True(t, ok, cell)
		assert.InDelta(t, want, got, 1e-12, cell)
	}
	for _, cell := range []string{"", "seven", "1/0", "0x10", "Inf"} {
		_, ok := numeral.Number(cell, false)
		assert.False(t, ok, cell)
	}
	sum, code, shared, ok := numeral.Money("€18,50 per bottle", false)
	assert.Equal(t, []any{18.5, "EUR", false, true}, []any{sum, code, shared, ok})
	_, code, shared, _ = numeral.Money("$24.-", false)
	assert.Equal(t, []any{"USD", true}, []any{code, shared}, "several countries have the sign")

	for cell, ml := range map[string]float64{"70cl": 700, "0.75 l": 750, "24 x 33 cl": 330, "1L": 1000, "700": 700} {
		a, open, ok := numeral.Size(cell, "", false)
		assert.True(t, ok && !open, cell)
		assert.InDelta(t, ml, a.ML, 1e-9, cell)
	}
	_, open, _ := numeral.Size("70", "", false)
	assert.True(t, open, "no unit, and too much for litres")

	pct, ok := numeral.Strength("86 proof", "", false)
	assert.Equal(t, []any{43.0, true}, []any{pct, ok}) // of the United States: twice the % vol
}

// None left is a count; a cell that says nothing is no count. Common practice, no source.
func TestCountsAsPeopleWriteThem(t *testing.T) {
	type count struct {
		n        float64
		said, ok bool
	}
	for cell, want := range map[string]count{
		"2": {2, true, true}, "2,5": {2.5, true, true}, "½": {0.5, true, true}, "50 %": {0.5, true, true}, "3 btl": {3, true, true},
		"0": {0, true, true}, "0.0": {0, true, true}, "out": {0, true, true}, "Empty": {0, true, true}, "none": {0, true, true}, "–": {0, true, true},
		"": {ok: true}, "  ": {ok: true}, "?": {ok: true}, "n/a": {ok: true}, "TBC": {ok: true},
		"some": {said: true},
	} {
		n, said, ok := numeral.Count(cell, false)
		assert.Equal(t, want, count{n, said, ok}, cell)
	}
}
