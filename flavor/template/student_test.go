package template_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"gonum.org/v1/gonum/stat/distuv"

	"counterpour/flavor"
	"counterpour/flavor/template"
)

// Upper critical values as NIST/SEMATECH, e-Handbook of Statistical Methods,
// sections 1.3.6.7.2 (Student t) and 1.3.6.7.3 (F), tabulates them to three
// decimals (from memory).
const tableDigits = 6e-4

func TestDistributionsAgreeWithTheTables(t *testing.T) {
	for _, c := range []struct{ share, d1, d2, want float64 }{
		{0.95, 1, 10, 4.965}, {0.95, 2, 10, 4.103}, {0.95, 3, 10, 3.708}, {0.95, 3, 20, 3.098}, {0.95, 1, 20, 4.351}, {0.95, 2, 20, 3.493},
		{0.90, 1, 20, 2.975}, {0.90, 2, 10, 2.924}, {0.90, 2, 20, 2.589}, {0.90, 3, 20, 2.380},
		{0.90, 2, 30, 2.489}, {0.90, 4, 30, 2.142},
	} {
		f := distuv.F{D1: c.d1, D2: c.d2}
		assert.InDelta(t, c.want, f.Quantile(c.share), tableDigits, "F %v; %v, %v", c.share, c.d1, c.d2)
		assert.InDelta(t, 1-c.share, f.Survival(c.want), tableDigits, "beyond F %v; %v, %v", c.share, c.d1, c.d2)
	}
	for _, c := range []struct{ share, nu, want float64 }{
		{0.95, 10, 1.812}, {0.975, 10, 2.228}, {0.95, 20, 1.725}, {0.975, 20, 2.086}, {0.975, 30, 2.042},
	} {
		d := distuv.StudentsT{Mu: 0, Sigma: 1, Nu: c.nu}
		assert.InDelta(t, c.want, d.Quantile(c.share), tableDigits, "t %v; %v", c.share, c.nu)
	}
}

// plain is an ingredient of one equivalent and nothing else.
func plain(id string, class flavor.Class, abv, sugar, acid float64) *flavor.Profile {
	figure := func(v float64) flavor.Figure { return flavor.Figure{Value: v, Origin: flavor.OriginPractice} }
	return &flavor.Profile{ID: id, Name: id, Class: class, ABV: figure(abv), Sugar: figure(sugar), Acid: figure(acid),
		Sugars: flavor.SugarBlend{Name: "sucrose", Sucrose: 1}, Acids: flavor.AcidBlend{Name: "citric", Citric: 1}}
}

// Ingredients that are the equivalents themselves.
var (
	spirit = plain("spirit", flavor.ClassVodka, 40, 0, 0)
	syrup  = plain("syrup", flavor.ClassSyrup, 0, 614.8, 0)
	lemon  = plain("lemon", flavor.ClassSourJuice, 0, 0, 50)
)

func spec(pours ...flavor.Pour) *flavor.Spec {
	return &flavor.Spec{Method: flavor.Shake, Service: flavor.Up, Pours: pours}
}

func of(p *flavor.Profile, ml float64) flavor.Pour {
	return flavor.Pour{Profile: p, Amount: ml, Unit: flavor.Millilitre, ML: ml}
}

// unproven is how much wider the squared spread is where nothing alike is proven.
const unproven = 0.7 + 0.9/0.7

// floor is what is added to every share before its logarithm is taken.
func floor(t *testing.T, s *template.Set, d *flavor.Spec) float64 {
	b, err := s.Prepare(d)
	require.NoError(t, err)
	return b.Detail(b.Amounts()).Families[0].Floor[template.Strong]
}

// One family of two parts is a Student t on a line: at the edge the score is
// 70 and 15 in 1000 lie further out; where 5 and 10 in 100 do is tabulated.
func TestOneCoordinateIsAStudentT(t *testing.T) {
	family := template.Family{ID: "duo", Name: "Duo", Axes: []template.Axis{template.Strong, template.Sweet},
		Ratio: []float64{3, 1}, Source: "made up for this test"}
	const width = 0.3
	fitted := template.Fitted{ID: "duo", Centre: []float64{math.Log(3) / math.Sqrt2}, Scale: []float64{width * width}, Freedom: 20}
	set, err := template.NewSet([]template.Family{family}, []template.Fitted{fitted}, nil, template.DefaultTuning())
	require.NoError(t, err)
	lift := floor(t, set, spec(of(spirit, 1), of(syrup, 1)))

	// A drink whose lifted shares are exp(√2 · (centre + z)) to 1.
	// Nothing alike is proven, so the spread is wider.
	at := func(z float64) template.Judgement {
		z *= math.Sqrt(unproven)
		r := math.Exp(math.Sqrt2 * (fitted.Centre[0] + z))
		sweet := (1+2*lift)/(1+r) - lift
		b, err := set.Prepare(spec(of(spirit, 100*(1-sweet)), of(syrup, 100*sweet)))
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
	b, err := set.Prepare(spec(of(spirit, 3), of(syrup, 1)))
	require.NoError(t, err)
	f := b.Detail(b.Amounts()).Families[0]
	assert.InDelta(t, slipEdge, f.SlipEdge, same)
	assert.InDelta(t, distuv.F{D1: 1, D2: 20}.Quantile(0.99), f.SquaredEdge, same)
	assert.InDelta(t, f.SquaredAway, f.SlipAway, same)
}

// Two coordinates: the squared edge is twice F (0.99; 2, 20), and with
// a scale of one the squared distance is the Aitchison distance squared.
func TestTwoCoordinatesAreAnF(t *testing.T) {
	family := template.Family{ID: "sour", Name: "Sour", Axes: []template.Axis{template.Strong, template.Sweet, template.Sour},
		Ratio: []float64{2, 1, 1}, Source: "made up for this test"}
	fitted := template.Fitted{ID: "sour", Centre: []float64{0, 0}, Scale: []float64{1, 0, 0, 1}, Freedom: 20}
	set, err := template.NewSet([]template.Family{family}, []template.Fitted{fitted}, nil, template.DefaultTuning())
	require.NoError(t, err)
	b, err := set.Prepare(spec(of(spirit, 60), of(syrup, 25), of(lemon, 15)))
	require.NoError(t, err)
	f := b.Detail(b.Amounts()).Families[0]
	assert.InDelta(t, 2*distuv.F{D1: 2, D2: 20}.Quantile(0.99), f.SquaredEdge, same)
	// Spirit, syrup and lemon juice leave hardly any length beside them.
	d, err := template.AitchisonDistance([]float64{0.60 + f.Floor[template.Strong], 0.25 + f.Floor[template.Sweet], 0.15 + f.Floor[template.Sour]}, []float64{1, 1, 1})
	require.NoError(t, err)
	assert.InDelta(t, d*d/f.Unknown, f.SquaredAway, 1e-3)
	assert.InDelta(t, unproven, f.Unknown, same)
}
