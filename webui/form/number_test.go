package form

import (
	"math"
	"net/url"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/flavor"
)

func TestNumber(t *testing.T) {
	for text, want := range map[string]float64{"2": 2, "2.5": 2.5, "2,5": 2.5, "+2": 2, "-1": -1, ".5": 0.5, ",5": 0.5, "3.": 3, "0,750": 0.75, "1500": 1500, "12,5": 12.5} {
		v, err := Number(text, "in g")
		require.NoError(t, err, text)
		assert.InDelta(t, want, v, 0, text)
	}
	for text, want := range map[string]string{
		"":       `"" is not a number; write digits alone, in g`,
		"a lot":  `"a lot" is not a number; write digits alone, in g`,
		"NaN":    `"NaN" is not a number; write digits alone, in g`,
		"Inf":    `"Inf" is not a number; write digits alone, in g`,
		"-inf":   `"-inf" is not a number; write digits alone, in g`,
		"1e3":    `"1e3" is not a number; write digits alone, in g`,
		"0x10":   `"0x10" is not a number; write digits alone, in g`,
		"1_000":  `"1_000" is not a number; write digits alone, in g`,
		"1,2,3":  `"1,2,3" is not a number; write digits alone, in g`,
		"1,500":  `"1,500" can be read two ways; write 1500 or 1.500`,
		" 2":     `" 2" is not a number; write digits alone, in g`,
		"2 000":  `"2 000" is not a number; write digits alone, in g`,
		"1.000,": `"1.000," is not a number; write digits alone, in g`,
	} {
		_, err := Number(text, "in g")
		assert.EqualError(t, err, want)
	}
	_, err := Number(strings.Repeat("9", 400), "in g")
	assert.ErrorContains(t, err, "is too large")
}

// Every form reads what a stock list may hold, and is as strict with its figures as
// before.
func TestQuantityReadsUnits(t *testing.T) {
	const tolerance = 1e-9
	for _, c := range []struct {
		text, in string
		want     float64
	}{{"70cl", "mL", 700}, {"1L", "mL", 1000}, {"0,7 l", "mL", 700}, {"1 ltr", "mL", 1000}, {"150", "mL", 150}, {"1 kg", "g", 1000}, {"40 %", "% vol", 40}, {"66°Bx", "°Bx", 66}, {"12,5", "", 12.5}} {
		v, err := Quantity(c.text, c.in)
		require.NoError(t, err, c.text)
		assert.InDelta(t, c.want, v, tolerance, c.text)
	}
	for text, want := range map[string]float64{"1/2 L": 500, "½ L": 500, "1 1/2 L": 1500, "1½": 1.5} {
		v, err := Quantity(text, "mL")
		require.NoError(t, err, text)
		assert.InDelta(t, want, v, tolerance, text)
	}
	_, err := Quantity("1/0 L", "mL")
	assert.Error(t, err)
	for text, want := range map[string]string{
		"1,500 ml": `"1,500" can be read two ways; write 1500 or 1.500`,
		"1 kg":     `"1 kg" is not a number; write digits alone, in mL`,
		"1e3":      `"1e3" is not a number; write digits alone, in mL`,
		"":         `"" is not a number; write digits alone, in mL`,
	} {
		_, err := Quantity(text, "mL")
		assert.EqualError(t, err, want)
	}
	sum, code, shared, err := Price("$18.50", "such as 18.50")
	require.NoError(t, err)
	assert.Equal(t, []any{18.5, "USD", true}, []any{sum, code, shared})
	_, _, _, err = Price("€1,500", "such as 18.50")
	assert.ErrorIs(t, err, errTwoWays)
	for text, currency := range map[string]string{"$12": "USD", "$ 12": "AUD", "12": "EUR", "€12": "EUR"} {
		v, err := PriceIn(text, currency, "such as 12.50")
		require.NoError(t, err, text)
		assert.InDelta(t, 12, v, tolerance, text)
	}
	_, err = PriceIn("$12", "EUR", "such as 12.50")
	assert.ErrorIs(t, err, ErrCurrency)
}

// A number of so many digits that its unit or its fraction makes it infinite is refused.
func TestQuantityIsFinite(t *testing.T) {
	digits := strings.Repeat("9", 308) // the largest that a float64 holds has 309
	for _, text := range []string{digits + " l", digits + " kg", digits + " 1/2 l", digits + "9 1/2", digits + "/1 l", digits + "9/1"} {
		for _, in := range []string{"mL", "g", "% vol", ""} {
			v, err := Quantity(text, in)
			assert.Error(t, err, "%s in %q", text, in)
			assert.Zero(t, v)
		}
	}
	v, err := Quantity(digits, "mL")
	require.NoError(t, err)
	assert.False(t, math.IsInf(v, 0))
}

// Whatever is read is a number that can be reckoned with.
func FuzzNumber(f *testing.F) {
	for _, text := range []string{"2.5", "2,5", "NaN", "1e309", "1,500", "", "−1"} {
		f.Add(text)
	}
	f.Fuzz(func(t *testing.T, text string) {
		for _, read := range []func(string, string) (float64, error){Number, Quantity} {
			if v, err := read(text, "mL"); err == nil {
				assert.False(t, math.IsNaN(v) || math.IsInf(v, 0), "%q", text)
			} else {
				assert.Zero(t, v)
			}
		}
	})
}

func TestValuesNumberIsAFaultOfItsField(t *testing.T) {
	sent := Values(url.Values{"each": {" 12,5 "}, "step": {"NaN"}, "share": {"1,500"}})
	v, err := sent.Number("each", "what a glass holds", "mL")
	require.NoError(t, err)
	assert.InDelta(t, 12.5, v, 0)
	for field, want := range map[string]string{
		"step":  "write the amount as a number, in mL",
		"none":  "write the amount as a number, in mL",
		"share": `"1,500" can be read two ways; write 1500 or 1.500`,
	} {
		_, err := sent.Number(field, "the amount", "mL")
		faults := flavor.DataFaultsOf(err)
		require.Len(t, faults, 1, field)
		assert.Equal(t, field, faults[0].Location)
		assert.Equal(t, want, faults[0].Message)
		assert.ErrorIs(t, err, flavor.ErrInvalid)
	}
}

func TestVersion(t *testing.T) {
	for text, want := range map[string]int64{"": 0, "0": 0, "7": 7} {
		v, err := Version(url.Values{"version": {text}})
		require.NoError(t, err, text)
		assert.Equal(t, want, v)
	}
	for _, text := range []string{"-1", "one", "1.5", "99999999999999999999"} {
		_, err := Version(url.Values{"version": {text}})
		assert.ErrorIs(t, err, ErrUnreadable, text)
	}
}
