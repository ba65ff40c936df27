package draw

import (
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestCurveGolden(t *testing.T) {
	c := Curve{Title: "Name the fault, sweet", Tells: 4.4, Rounds: []Played{{6, true}, {6, true}, {4.2, true}, {4.2, false}, {5, true}, {5, true}, {4.2, true}}}
	got := string(CurveSVG("curve-1", &c))
	path := filepath.Join("testdata", "curve.golden.svg")
	if *update {
		require.NoError(t, os.WriteFile(path, []byte(got), 0o644))
	}
	want, err := os.ReadFile(path)
	require.NoError(t, err, "run with -update to write it")
	assert.Equal(t, string(want), got)
	wellFormed(t, got)
	assert.Contains(t, got, "7 rounds, 6 right: from 6.0 steps in the first to 4.2 in the last; the smallest step noticed is 4.4 steps.")
	assert.Equal(t, 1, strings.Count(got, "dot out"))
}

// Whatever was played, every mark is a number and lies within the drawing.
func TestCurvesStayWithin(t *testing.T) {
	for _, rounds := range [][]Played{nil, {{3, true}}, {{0, false}}, {{math.NaN(), true}, {2, true}}, {{0.05, true}, {24, false}}, {{5, true}, {5, true}}} {
		c := Curve{Title: "<b>", Rounds: rounds}
		got := string(CurveSVG(`a"b`, &c))
		wellFormed(t, got)
		assert.NotContains(t, got, "NaN")
		assert.NotContains(t, got, "Inf")
		low, high := c.ends()
		assert.GreaterOrEqual(t, high, 2*low*0.999)
	}
	for _, tells := range []float64{math.Inf(1), math.NaN(), -1} {
		got := string(CurveSVG("a", &Curve{Rounds: []Played{{3, true}}, Tells: tells}))
		assert.NotContains(t, got, "Inf")
		assert.NotContains(t, got, "smallest step noticed", "%v is no size", tells)
	}
}
