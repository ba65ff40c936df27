package draw

import (
	"flag"
	"math"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/flavor/ratio"
)

var sourRanges = [ratio.NumAxes]Range{
	ratio.Strong: {Has: true, Low: 48.2, Centre: 56.4, High: 64.1, PlusMinus: 1.6},
	ratio.Sweet:  {Has: true, Low: 14.1, Centre: 19.8, High: 27.2, PlusMinus: 1.1},
	ratio.Sour:   {Has: true, Low: 15.6, Centre: 20.7, High: 32.4, PlusMinus: 0.8},
	ratio.Bitter: {High: 10.6, PlusMinus: 0.2},
	ratio.Long:   {High: 11.3},
}

var update = flag.Bool("update", false, "write the golden files anew")

// drawn has one strip of each kind: in the band, above it, beyond the left end,
// a part that the family lacks, and more of such a part than it carries.
func drawn() []Strip {
	return []Strip{
		{ratio.Strong, 60.6, sourRanges[ratio.Strong]},
		{ratio.Sweet, 29.2, sourRanges[ratio.Sweet]},
		{ratio.Sour, 2.4, sourRanges[ratio.Sour]},
		{ratio.Bitter, 0.9, sourRanges[ratio.Bitter]},
		{ratio.Long, 90, sourRanges[ratio.Long]},
	}
}

func TestStripsGolden(t *testing.T) {
	got := string(StripsSVG("strips", "The drink beside proven drinks of its family, Sour", drawn()))
	path := filepath.Join("testdata", "strips.golden.svg")
	if *update {
		require.NoError(t, os.WriteFile(path, []byte(got), 0o644))
	}
	want, err := os.ReadFile(path)
	require.NoError(t, err, "run with -update to write it")
	assert.Equal(t, string(want), got)
}

func TestStripsAreWellFormedAndSayWhatTheyShow(t *testing.T) {
	got := string(StripsSVG(`a"b`, "Gin & <tonic>", drawn()))
	wellFormed(t, got)
	assert.Contains(t, got, "Gin &amp; &lt;tonic&gt;")
	assert.Contains(t, got, "Sweet is above the range, sour is below the range and long is more than the family carries.")
	assert.NotContains(t, got, "style=")
}

func TestStripPlaces(t *testing.T) {
	const (
		inBand, aboveBand, belowBand = "in the range", "above the range", "below the range"
		noPart, tooMuch              = "no more than the family carries", "more than the family carries"
	)
	has := Range{Has: true, Low: 10, Centre: 20, High: 40}
	for _, c := range []struct {
		name  string
		strip Strip
		x     float64
		place string
	}{
		{"the middle", Strip{ML: 20, Range: has}, bandMiddle, inBand},
		{"the low edge", Strip{ML: 10, Range: has}, bandLeft, inBand},
		{"the high edge", Strip{ML: 40, Range: has}, bandRight, inBand},
		{"a factor of the square root of two", Strip{ML: 20 * math.Sqrt2, Range: has}, bandMiddle + 35, inBand},
		{"above", Strip{ML: 50, Range: has}, 272.5, aboveBand},
		{"far above", Strip{ML: 5000, Range: has}, rightEnd, aboveBand},
		{"none of it", Strip{Range: has}, leftEnd, belowBand},
		{"no part, none", Strip{Range: Range{High: 10}}, leftEnd, noPart},
		{"no part, some", Strip{ML: 5, Range: Range{High: 10}}, (leftEnd + bandRight) / 2, noPart},
		{"no part, too much", Strip{ML: 12, Range: Range{High: 10}}, 297.6, tooMuch},
		{"no part, none allowed, none there", Strip{}, leftEnd, noPart},
		{"no part, none allowed, some there", Strip{ML: 1}, rightEnd, tooMuch},
		{"no number", Strip{ML: math.NaN(), Range: has}, bandMiddle, inBand},
		{"a range without width", Strip{ML: 5, Range: Range{Has: true, Low: 5, Centre: 5, High: 5}}, bandMiddle, inBand},
	} {
		x, _ := c.strip.at(c.strip.ML)
		assert.InDelta(t, c.x, x, 0.1, c.name)
		assert.Equal(t, c.place, c.strip.Place(), c.name)
		assert.Equal(t, c.place == inBand || c.place == noPart, c.strip.within(), c.name)
	}
}
