package data_test

import (
	"bytes"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/data"
	"counterpour/flavor/template"
)

// fitSlack is how far a fitted value may lie from the file, relative to it and
// at least by this much: the file keeps five digits, and the search for the
// signs stops a little short of its end.
const fitSlack = 2e-3

// The file of fitted values is what the families and the proven drinks give.
func TestFittedFileIsFresh(t *testing.T) {
	c, err := data.Embedded()
	require.NoError(t, err)
	want, err := c.Calibrate(template.DefaultTuning())
	require.NoError(t, err)
	got, err := data.Fitted()
	require.NoError(t, err)
	const remedy = "run: go run ./cmd/counterpour calibrate --write data/fitted.toml"
	require.Len(t, got, len(want), remedy)
	for i := range want {
		w, g := &want[i], &got[i]
		require.Equal(t, w.ID, g.ID, remedy)
		assert.Equal(t, w.Drinks, g.Drinks, "%s: drinks; %s", w.ID, remedy)
		assert.InDelta(t, w.Freedom, g.Freedom, fitSlack, "%s: freedom; %s", w.ID, remedy)
		near(t, w.Centre, g.Centre, "%s: centre; %s", w.ID, remedy)
		near(t, w.Scale, g.Scale, "%s: scale; %s", w.ID, remedy)
		near(t, w.Allowance[:], g.Allowance[:], "%s: allowance; %s", w.ID, remedy)
		near(t, append(w.Weights[:], w.Bias), append(g.Weights[:], g.Bias), "%s: signs; %s", w.ID, remedy)
	}
}

func near(t *testing.T, want, got []float64, message string, args ...any) {
	t.Helper()
	require.Len(t, got, len(want))
	for i := range want {
		if math.Abs(want[i]-got[i]) > fitSlack*math.Max(1, math.Abs(want[i])) {
			assert.InDelta(t, want[i], got[i], fitSlack, append([]any{message}, args...)...)
			return // one value tells that the file is stale
		}
	}
}

// What is written reads as what it was written from.
func TestWriteFittedKeepsFiveDigits(t *testing.T) {
	c, err := data.Embedded()
	require.NoError(t, err)
	fitted, err := data.Fitted()
	require.NoError(t, err)
	var first, second bytes.Buffer
	require.NoError(t, data.WriteFitted(&first, fitted))
	require.NoError(t, data.WriteFitted(&second, fitted))
	assert.Equal(t, first.String(), second.String())
	assert.Contains(t, first.String(), "do not edit")
	assert.NotRegexp(t, `\d\.\d{6,}`, first.String(), "no digits that processors differ in")
	assert.NotRegexp(t, `-0\.0[,\]]`, first.String(), "no minus before a zero")

	p := c.Pantry()
	assert.NotNil(t, p.Syrup)
	assert.NotNil(t, p.Sour)
	assert.NotNil(t, p.Bitters)
	assert.NotNil(t, p.Length)
}

// Who reads the trial must know how little of it was read: 49 drinks stand as
// their list prints them, the others as they are remembered.
func TestProvenDrinksStateTheirStatus(t *testing.T) {
	c, err := data.Embedded()
	require.NoError(t, err)
	_, book, err := c.Set()
	require.NoError(t, err)
	read, recalled := 0, 0
	for i := range book {
		switch {
		case book[i].Recalled():
			recalled++
		case book[i].Status == template.StatusRead:
			read++
			assert.Contains(t, book[i].Source, "International Bartenders Association", "%s: no other list was read", book[i].Spec.Name)
		default:
			t.Errorf("%s: status %q", book[i].Spec.Name, book[i].Status)
		}
	}
	assert.Equal(t, 49, read)
	assert.Equal(t, len(book)-49, recalled)
}
