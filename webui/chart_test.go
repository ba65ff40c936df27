package webui

import (
	"encoding/xml"
	"io"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/flavor"
)

// charted has a mark of each kind, two marks on one place, and one alone.
func charted() Chart {
	return Chart{Title: "The stock as a map", Sentence: "Six ingredients.", Right: "strong", Left: "sweet and sour", Up: "bitter", Down: "grain",
		Places: []Place{
			{1, "gin", kindPoured, 3, 0}, {2, "rum", kindStock, 3, 0}, {3, "lemon juice", kindMissing, -2, 1},
			{4, "lime juice", kindCover, -1.9, 1}, {5, "falernum", kindDry, -1, -1}, {6, "aromatic bitters", kindStock, 2, 3}}}
}

func TestChartGolden(t *testing.T) {
	got := string(DrawChart("map", charted()))
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
	got := string(DrawChart(`a"b`, c))
	d := xml.NewDecoder(strings.NewReader(got))
	for {
		_, err := d.Token()
		if err == io.EOF {
			break
		}
		require.NoError(t, err)
	}
	assert.NotContains(t, got, " style=")
	assert.NotContains(t, got, "NaN")
}

func TestMarksDoNotHideEachOther(t *testing.T) {
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
		assert.NotContains(t, string(DrawChart("map", Chart{Places: one})), "NaN")
	}
}

func TestPlaces(t *testing.T) {
	stock, err := newFakeHouse().Stock(t.Context())
	require.NoError(t, err)
	at, ok := placesOf(stock)
	require.True(t, ok)
	place := func(p *flavor.Profile) (float64, float64) {
		for i := range stock {
			if stock[i] == p {
				return at.X[i], at.Y[i]
			}
		}
		panic(p.Name)
	}
	far := func(a, b *flavor.Profile) float64 {
		ax, ay := place(a)
		bx, by := place(b)
		return math.Hypot(ax-bx, ay-by)
	}
	assert.Less(t, far(orgeat, almond), far(orgeat, gin), "what is alike lies near")
	gx, _ := place(gin)
	sx, _ := place(syrup)
	assert.Greater(t, gx, sx, "right is stronger")
	assert.GreaterOrEqual(t, at.Axes[0].Share, at.Axes[1].Share)
	assert.LessOrEqual(t, at.Axes[0].Share+at.Axes[1].Share, 1+1e-9)
	assert.Contains(t, at.Axes[0].More, "strong")
	var mean float64
	for i := range at.X {
		mean += at.X[i] + at.Y[i]
	}
	assert.InDelta(t, 0, mean, 1e-9, "the middle of the stock is the middle of the map")

	again, _ := placesOf(stock)
	assert.Equal(t, at, again)
	_, ok = placesOf(stock[:3])
	assert.False(t, ok, "too few")
	_, ok = placesOf([]*flavor.Profile{clove, clove, clove, clove, clove})
	assert.False(t, ok, "all alike")
}
