package tasting

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"counterpour/flavor"
	"counterpour/flavor/balance/threshold"
	"counterpour/flavor/mix"
	"counterpour/flavor/ratio"
)

func TestMeasured(t *testing.T) {
	for ml, want := range map[float64]float64{0: 0, -1: 0, 0.01: 0.1, 0.83: 0.8, 1.1: 1, 5.21: 5.25, 12.3: 12.5, 57.6: 58, 145.7: 146, 199.5: 200, 376.3: 375, 1234: 1230} {
		assert.InDelta(t, want, Measured(ml), 1e-9, ml)
	}
	rapid.Check(t, func(t *rapid.T) {
		ml := rapid.Float64Range(2.5, 5000).Draw(t, "ml")
		got := Measured(ml)
		assert.InDelta(t, ml, got, 0.05*ml, "a twentieth at most, and from 5 mL on a fortieth")
		if ml >= 5 {
			assert.InDelta(t, ml, got, 0.025*ml+1e-9)
		}
		assert.InDelta(t, got, Measured(got), 1e-9, "a mark is its own mark")
	})
}

func TestCounted(t *testing.T) {
	for _, c := range []struct {
		amount float64
		unit   flavor.Unit
		want   float64
	}{{27.02, flavor.Gram, 27}, {9.87, flavor.Gram, 9.9}, {0.01, flavor.Gram, 0.1}, {1.56, flavor.Pinch, 2}, {0.2, flavor.Pinch, 1}, {8.2, flavor.Leaf, 9}, {9, flavor.Leaf, 9}} {
		assert.InDelta(t, c.want, counted(c.amount, c.unit), 1e-9, "%v %s", c.amount, c.unit)
	}
}

// What is measured to the marks lies where the flight says it lies, to three tenths of a step
// of the smallest batch of a usual one, and the middle is not moved to another side.
func TestWhatIsMeasuredKeepsTheSteps(t *testing.T) {
	s := newTable(t)
	bare, err := s.Mixer.WithIce(mix.Ice{Kind: mix.NoIce})
	require.NoError(t, err)
	for _, c := range []struct {
		text string
		axis ratio.Axis
	}{{sourText, ratio.Sweet}, {sourText, ratio.Sour}, {thirds, ratio.Bitter}} {
		for _, tasters := range []int{2, 6, 20} {
			f, err := PlanFlight(s.Mixer, FlightRequest{Spec: s.Spec(t, c.text), Axis: c.axis, Builds: 3, Step: 1.5, Tasters: tasters, BuildML: 40, Seed: 5})
			require.NoError(t, err)
			for _, b := range f.Builds {
				all := b.Spec.Clone()
				all.Pours = b.Sheet.Pours
				for _, p := range b.Sheet.Pours {
					assert.InDelta(t, p.ML, Measured(p.ML), 1e-9, p.Profile.Name)
				}
				made, err := bare.Mix(&all)
				require.NoError(t, err)
				share := Value(c.axis, made) * made.VolumeML / b.Sheet.TotalML
				off := math.Log(share/b.Value) / math.Log1p(threshold.Weber(c.axis))
				assert.InDelta(t, 0, off, 0.3, "%v %+d for %d", c.axis, b.Step, tasters)
			}
		}
	}
}
