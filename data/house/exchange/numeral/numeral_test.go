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

// What is typed into a form may carry its unit; of another kind it is refused.
func TestInAUnit(t *testing.T) {
	type split struct {
		figure string
		each   float64
	}
	for _, c := range []struct {
		text, unit string
		want       split
	}{
		{"700", "mL", split{"700", 1}}, {"70cl", "mL", split{"70", 10}}, {" 0,7 L ", "mL", split{"0,7", 1000}}, {"1 ltr", "mL", split{"1", 1000}}, {"700 mL btl", "mL", split{"700", 1}},
		{"1 kg", "g", split{"1", 1000}}, {"500 grams", "g", split{"500", 1}}, {"40 %", "% vol", split{"40", 1}}, {"40% ABV", "% vol", split{"40", 1}}, {"80 proof", "% vol", split{"80", 0.5}},
		{"66 °Bx", "°Bx", split{"66", 1}}, {"300 g/l", "g/L", split{"300", 1}}, {"2 bottles", "bottles", split{"2", 1}}, {"a lot", "mL", split{"a lot", 1}},
	} {
		figure, each, ok := numeral.In(c.text, c.unit)
		assert.True(t, ok, c.text)
		assert.Equal(t, c.want, split{figure, each}, c.text)
	}
	for text, unit := range map[string]string{"1 kg": "mL", "70 cl": "g", "40 mL": "% vol", "1e3": "mL", "3 glimmers": "mL", "5 %": "bottles"} {
		_, _, ok := numeral.In(text, unit)
		assert.False(t, ok, text)
	}
}

func TestPriced(t *testing.T) {
	for cell, want := range map[string][]any{
		"$18.50": {"18.50", "USD", true}, "18,50 €": {"18,50", "EUR", false}, "CAD 12": {"12", "CAD", false}, "US$ 9 each": {"9", "USD", false}, "12.50": {"12.50", "", false}, "18.-": {"18", "", false},
	} {
		figure, code, shared := numeral.Priced(cell)
		assert.Equal(t, want, []any{figure, code, shared}, cell)
	}
}
