package weigh_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"gonum.org/v1/gonum/stat/distuv"

	"counterpour/flavor"
	"counterpour/flavor/ratio"
	"counterpour/flavor/template"
	"counterpour/flavor/template/templatetest"
	"counterpour/flavor/weigh"
)

// unproven is how much wider the squared spread is where nothing alike is proven.
const unproven = 0.7 + 0.9/0.7

// floor is what is added to every share before its logarithm is taken.
func floor(t *testing.T, s *weigh.Set, d *flavor.Spec) float64 {
	b, err := s.Prepare(d)
	require.NoError(t, err)
	return b.Detail(b.Amounts()).Families[0].Floor[ratio.Strong]
}

// One family of two parts is a Student t on a line: at the edge the score is
// 70 and 15 in 1000 lie further out; where 5 and 10 in 100 do is tabulated.
func TestOneCoordinateIsAStudentT(t *testing.T) {
	family := template.Family{ID: "duo", Name: "Duo", Axes: []ratio.Axis{ratio.Strong, ratio.Sweet},
		Ratio: []float64{3, 1}, Source: "made up for this test"}
	const width = 0.3
	fitted := template.Fitted{ID: "duo", Centre: []float64{math.Log(3) / math.Sqrt2}, Scale: []float64{width * width}, Freedom: 20}
	set, err := weigh.NewSet([]template.Family{family}, []template.Fitted{fitted}, nil, template.DefaultTuning())
	require.NoError(t, err)
	lift := floor(t, set, templatetest.Spec(templatetest.Of(templatetest.Spirit, 1), templatetest.Of(templatetest.Syrup, 1)))

	// A drink whose lifted shares are exp(√2 · (centre + z)) to 1.
	// Nothing alike is proven, so the spread is wider.
	at := func(z float64) weigh.Judgement {
		z *= math.Sqrt(unproven)
		r := math.Exp(math.Sqrt2 * (fitted.Centre[0] + z))
		sweet := (1+2*lift)/(1+r) - lift
		b, err := set.Prepare(templatetest.Spec(templatetest.Of(templatetest.Spirit, 100*(1-sweet)), templatetest.Of(templatetest.Syrup, 100*sweet)))
		require.NoError(t, err)
		return b.Judge(b.Amounts())
	}
	assert.InDelta(t, 100, at(0).Ratio, 1e-6)
	assert.InDelta(t, 1, at(0).Fits[0].Tail(), 1e-6)
	slipEdge := distuv.F{D1: 1, D2: 20}.Quantile(0.9865) // with one coordinate any slip explains all
	for _, sign := range []float64{-1, 1} {
		assert.InDelta(t, 0.05, at(sign * 2.0860 * width).Fits[0].Tail(), 1e-4, "t (0.975; 20) to four decimals")
		assert.InDelta(t, 0.10, at(sign * 1.7247 * width).Fits[0].Tail(), 1e-4, "t (0.95; 20)")
		edge := at(sign * math.Sqrt(slipEdge) * width)
		assert.InDelta(t, 70, edge.Ratio, 0.01)
		assert.InDelta(t, 0.0135, edge.Fits[0].Tail(), 1e-4)
	}
	b, err := set.Prepare(templatetest.Spec(templatetest.Of(templatetest.Spirit, 3), templatetest.Of(templatetest.Syrup, 1)))
	require.NoError(t, err)
	f := b.Detail(b.Amounts()).Families[0]
	assert.InDelta(t, slipEdge, f.SlipEdge, same)
	assert.InDelta(t, distuv.F{D1: 1, D2: 20}.Quantile(0.99), f.SquaredEdge, same)
	assert.InDelta(t, f.SquaredAway, f.SlipAway, same)
}

// Two coordinates: the squared edge is twice F (0.99; 2, 20), and with
// a scale of one the squared distance is the Aitchison distance squared.
func TestTwoCoordinatesAreAnF(t *testing.T) {
	family := template.Family{ID: "sour", Name: "Sour", Axes: []ratio.Axis{ratio.Strong, ratio.Sweet, ratio.Sour},
		Ratio: []float64{2, 1, 1}, Source: "made up for this test"}
	fitted := template.Fitted{ID: "sour", Centre: []float64{0, 0}, Scale: []float64{1, 0, 0, 1}, Freedom: 20}
	set, err := weigh.NewSet([]template.Family{family}, []template.Fitted{fitted}, nil, template.DefaultTuning())
	require.NoError(t, err)
	b, err := set.Prepare(templatetest.Spec(templatetest.Of(templatetest.Spirit, 60), templatetest.Of(templatetest.Syrup, 25), templatetest.Of(templatetest.Lemon, 15)))
	require.NoError(t, err)
	f := b.Detail(b.Amounts()).Families[0]
	assert.InDelta(t, 2*distuv.F{D1: 2, D2: 20}.Quantile(0.99), f.SquaredEdge, same)
	// Spirit, syrup and lemon juice leave hardly any length beside them.
	d, err := ratio.AitchisonDistance([]float64{0.60 + f.Floor[ratio.Strong], 0.25 + f.Floor[ratio.Sweet], 0.15 + f.Floor[ratio.Sour]}, []float64{1, 1, 1})
	require.NoError(t, err)
	assert.InDelta(t, d*d/f.Unknown, f.SquaredAway, 1e-3)
	assert.InDelta(t, unproven, f.Unknown, same)
}
