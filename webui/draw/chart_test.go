package draw

import (
	"math"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// charted has a mark of each kind, two marks on one place, and one alone.
func charted() Chart {
	return Chart{Title: "The stock as a map", Sentence: "Six ingredients.", Right: "strong", Left: "sweet and sour", Up: "bitter", Down: "grain",
		Places: []Place{
			{1, "gin", KindPoured, 3, 0}, {2, "rum", kindStock, 3, 0}, {3, "lemon juice", KindMissing, -2, 1},
			{4, "lime juice", KindCover, -1.9, 1}, {5, "falernum", KindDry, -1, -1}, {6, "aromatic bitters", kindStock, 2, 3}}}
}

func TestChartGolden(t *testing.T) {
	got := string(ChartSVG("map", charted()))
	path := filepath.Join("testdata", "chart.golden.svg")
	if *update {
		require.NoError(t, os.WriteFile(path, []byte(got), 0o644))
	}
	want, err := os.ReadFile(path)
	require.NoError(t, err, "run with -update to write it")
	assert.Equal(t, string(want), got)
}

func TestChartIsWellFormed(t *testing.T) {
	c := charted()
	c.Title, c.Places[0].Name = "Gin & <tonic>", "<b>"
	got := string(ChartSVG(`a"b`, c))
	wellFormed(t, got)
	assert.NotContains(t, got, " style=")
	assert.NotContains(t, got, "NaN")
}

func TestMarksDoNotOverlap(t *testing.T) {
	var places []Place
	for i := range 60 {
		places = append(places, Place{Number: i + 1, X: float64(i % 3), Y: float64(i % 2)})
	}
	spots := spotsOf(places)
	for i := range spots {
		for k := range i {
			assert.Greater(t, math.Hypot(spots[i].x-spots[k].x, spots[i].y-spots[k].y), 2*discRadius-1.5, "%d and %d", i, k)
		}
	}
	for _, one := range [][]Place{nil, {{Number: 1}}, {{Number: 1, X: math.NaN()}, {Number: 2, X: math.Inf(1)}}} {
		assert.NotContains(t, string(ChartSVG("map", Chart{Places: one})), "NaN")
	}
}
