package draw

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/flavor"
)

func TestAromasGolden(t *testing.T) {
	var before, after flavor.Aroma
	before[flavor.Nut], after[flavor.Nut] = 4, 1
	before[flavor.Citrus], after[flavor.Citrus] = 2.25, 2.25
	after[flavor.Clove] = 3
	before[flavor.Smoke] = 0.01
	bars := AromaBars(&before, &after)
	require.Len(t, bars, 3, "a trace is not told")
	assert.Equal(t, flavor.Nut, bars[0].Family, "the strongest first")
	got := string(AromasSVG("aromas-1", "Aromas before and after", bars))
	path := filepath.Join("testdata", "aromas.golden.svg")
	if *update {
		require.NoError(t, os.WriteFile(path, []byte(got), 0o644))
	}
	want, err := os.ReadFile(path)
	require.NoError(t, err, "run with -update to write it")
	assert.Equal(t, string(want), got)
}
