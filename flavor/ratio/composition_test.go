package ratio_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"counterpour/flavor/ratio"
)

// digits is the tolerance of numbers worked out by hand to four decimals.
const digits = 2e-4

// same is how far two ways of adding up the same numbers may differ.
const same = 1e-9

// Worked compositions. The data are recalled from Aitchison, The Statistical
// Analysis of Compositional Data, 1986 (from memory); the coordinates are
// arithmetic, as shown.
func TestCoordinatesOfWorkedCompositions(t *testing.T) {
	for _, c := range []struct {
		name string
		x    []float64
		want []float64
	}{
		// Arctic lake sediment 1, per cent of sand, silt and clay:
		// √½ · ln(77.5/19.5) = 0.7071 · 1.3799
		// √⅔ · ln(√(77.5 · 19.5)/3.0) = 0.8165 · 2.5618
		{"Arctic lake 1", []float64{77.5, 19.5, 3.0}, []float64{0.9757, 2.0917}},
		// Hongite 1: logarithms 3.8877, 3.4563, 1.3350, 1.8563, 2.2300;
		// √½ · (3.8877 − 3.4563) = 0.3050
		// √⅔ · ((3.8877 + 3.4563)/2 − 1.3350) = 1.9082
		// √¾ · ((3.8877 + 3.4563 + 1.3350)/3 − 1.8563) = 0.8978
		// √⅘ · ((3.8877 + 3.4563 + 1.3350 + 1.8563)/4 − 2.2300) = 0.3612
		{"Hongite 1", []float64{48.8, 31.7, 3.8, 6.4, 9.3}, []float64{0.3050, 1.9082, 0.8978, 0.3612}},
		// Egozcue, Pawlowsky-Glahn, Mateu-Figueras and Barceló-Vidal, Math.
		// Geology 35:279, 2003: coordinate i is √(i/(i+1)) times the logarithm
		// of the geometric mean of the first i parts over part i+1, so that
		// one part e times the others gives 1/√2, 1/√6, 1/√12.
		{"one part e times the others", []float64{math.E, 1, 1, 1}, []float64{1 / math.Sqrt2, 1 / math.Sqrt(6), 1 / math.Sqrt(12)}},
		{"the neutral composition", []float64{7, 7, 7}, []float64{0, 0}},
	} {
		t.Run(c.name, func(t *testing.T) {
			z, err := mustBasis(t, len(c.x)).Coordinates(c.x)
			require.NoError(t, err)
			require.Len(t, z, len(c.want))
			for i := range z {
				assert.InDelta(t, c.want[i], z[i], digits, "coordinate %d", i+1)
			}
		})
	}
}

// The example with which Pawlowsky-Glahn, Egozcue and Tolosana-Delgado, Modeling
// and Analysis of Compositional Data, 2015, bring in the Aitchison distance
// (from memory): two pairs as far apart as the other by ruler, but a part that
// doubles is further than one that grows by a tenth.
func TestAitchisonDistanceOfTheTextbookPairs(t *testing.T) {
	// ln 2 = 0.6931, ln(60/65) = −0.0800, 0: mean 0.2044, so
	// √(0.4888² + 0.2844² + 0.2044²) = 0.6013
	far, err := ratio.AitchisonDistance([]float64{5, 65, 30}, []float64{10, 60, 30})
	require.NoError(t, err)
	assert.InDelta(t, 0.6013, far, digits)
	// ln 1.1 = 0.0953, ln 0.75 = −0.2877, 0: mean −0.0641, so
	// √(0.1594² + 0.2236² + 0.0641²) = 0.2820
	near, err := ratio.AitchisonDistance([]float64{50, 20, 30}, []float64{55, 15, 30})
	require.NoError(t, err)
	assert.InDelta(t, 0.2820, near, digits)
}

// The length of the coordinates is that of the centred log-ratios: Hongite 1,
// 1.3347² + 0.9033² + 1.2181² + 0.6968² + 0.3231² = 4.6707.
func TestCoordinatesAreIsometric(t *testing.T) {
	z, err := mustBasis(t, 5).Coordinates([]float64{48.8, 31.7, 3.8, 6.4, 9.3})
	require.NoError(t, err)
	var square float64
	for _, v := range z {
		square += v * v
	}
	assert.InDelta(t, 4.6707, square, 5*digits)
}

func compositions(parts int) *rapid.Generator[[]float64] {
	return rapid.SliceOfN(rapid.Float64Range(1e-3, 1e3), parts, parts)
}

// What Aitchison asks of a distance between compositions: scale does not
// matter, nor does perturbing both alike, and a subcomposition is no further
// apart than the whole.
func TestAitchisonGeometry(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(3, 5).Draw(t, "parts")
		x, y, p := compositions(n).Draw(t, "x"), compositions(n).Draw(t, "y"), compositions(n).Draw(t, "p")
		scale := rapid.Float64Range(1e-3, 1e3).Draw(t, "scale")
		d, err := ratio.AitchisonDistance(x, y)
		require.NoError(t, err)
		var xs, xp, yp []float64
		for i := range x {
			xs, xp, yp = append(xs, scale*x[i]), append(xp, x[i]*p[i]), append(yp, y[i]*p[i])
		}
		scaled, err := ratio.AitchisonDistance(xs, y)
		require.NoError(t, err)
		assert.InDelta(t, d, scaled, same)
		perturbed, err := ratio.AitchisonDistance(xp, yp)
		require.NoError(t, err)
		assert.InDelta(t, d, perturbed, same)
		part, err := ratio.AitchisonDistance(x[:n-1], y[:n-1])
		require.NoError(t, err)
		assert.LessOrEqual(t, part, d+same)
	})
}

func TestCompositionUndoesCoordinates(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		x := compositions(4).Draw(t, "x")
		b, err := ratio.NewBasis(4)
		require.NoError(t, err)
		z, err := b.Coordinates(x)
		require.NoError(t, err)
		back, err := b.Composition(z)
		require.NoError(t, err)
		for i := range x {
			assert.InEpsilon(t, x[i]/(x[0]+x[1]+x[2]+x[3]), back[i], 1e-12)
		}
	})
}

func TestCompositionFaults(t *testing.T) {
	_, err := ratio.NewBasis(1)
	assert.ErrorContains(t, err, "at least 2 parts")
	b := mustBasis(t, 3)
	for _, x := range [][]float64{{1, 2}, {1, 0, 2}, {1, -1, 2}, {1, math.NaN(), 2}, {1, math.Inf(1), 2}} {
		_, err := b.Coordinates(x)
		assert.Error(t, err, "%v", x)
		_, err = ratio.AitchisonDistance(x, []float64{1, 1, 1})
		assert.Error(t, err, "%v", x)
	}
	for _, z := range [][]float64{{1}, {1, math.NaN()}, {math.Inf(-1), 0}} {
		_, err := b.Composition(z)
		assert.Error(t, err, "%v", z)
	}
}

func mustBasis(t *testing.T, parts int) *ratio.Basis {
	b, err := ratio.NewBasis(parts)
	require.NoError(t, err)
	return b
}
