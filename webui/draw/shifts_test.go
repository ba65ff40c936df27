package draw

import (
	"math"
	"os"
	"path/filepath"
	"regexp"
	"strconv"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

func TestShiftsGolden(t *testing.T) {
	got := string(ShiftsSVG("moved-1", "What changes", []Shift{
		{Word: "drier", Steps: -1.8}, {Word: "longer", Steps: 0.5}, {Word: "less marzipan", Steps: -7, Aroma: true}, {Word: "more clove", Steps: 2.2, Aroma: true}}))
	path := filepath.Join("testdata", "shifts.golden.svg")
	if *update {
		require.NoError(t, os.WriteFile(path, []byte(got), 0o644))
	}
	want, err := os.ReadFile(path)
	require.NoError(t, err, "run with -update to write it")
	assert.Equal(t, string(want), got)
	assert.Contains(t, got, "Drier by 1.8 noticeable steps: a guest may notice; longer by 0.5 noticeable steps: a guest won&#39;t notice; less marzipan by 7.0 noticeable steps: a guest will notice;")
}

// A mark stands in the dark shade exactly where a guest won't notice, and never
// outside the drawing.
func TestShiftIsDrawnInItsShade(t *testing.T) {
	shade := regexp.MustCompile(`<rect class="wont" x="([\d.]+)" width="([\d.]+)"`)
	disc := regexp.MustCompile(`<circle cx="([\d.]+)"`)
	number := func(s string) float64 {
		v, err := strconv.ParseFloat(s, 64)
		require.NoError(t, err)
		return v
	}
	rapid.Check(t, func(t *rapid.T) {
		steps := rapid.Float64Range(-20, 20).Draw(t, "steps")
		got := string(ShiftsSVG("a", "b", []Shift{{Word: "sweeter & <drier>", Steps: steps}}))
		m := shade.FindStringSubmatch(got)
		require.NotNil(t, m)
		left, right := number(m[1]), number(m[1])+number(m[2])
		at := disc.FindStringSubmatch(got)
		if math.Abs(steps) > shiftMost {
			assert.Nil(t, at, "an arrow stands for what is beyond the end")
			return
		}
		require.NotNil(t, at)
		x := number(at[1])
		assert.True(t, x >= 0 && x <= shiftsWidth)
		if math.Abs(math.Abs(steps)-1) > 0.01 { // a tenth of a unit is drawn, 18 units are a step
			assert.Equal(t, math.Abs(steps) < 1, x > left && x < right)
		}
		wellFormed(t, got)
	})
}
