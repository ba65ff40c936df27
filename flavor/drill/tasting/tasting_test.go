package tasting

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"gonum.org/v1/gonum/stat/distuv"

	"counterpour/data/datatest"
	"counterpour/flavor"
	"counterpour/flavor/balance/threshold"
	"counterpour/flavor/ratio"
)

// newTable is the catalogue with a mixer over it.
func newTable(t *testing.T) *datatest.Data {
	t.Helper()
	d, err := datatest.Calibrated()
	require.NoError(t, err)
	return d
}

// The square for four as Williams 1949 constructs it, its first row 1, 2, 4, 3 (from
// memory), counted from 0.
func TestWilliamsOfFour(t *testing.T) {
	got, err := Williams(4)
	require.NoError(t, err)
	assert.Equal(t, [][]int{{0, 1, 3, 2}, {1, 2, 0, 3}, {2, 3, 1, 0}, {3, 0, 2, 1}}, got)
}

func TestWilliamsIsBalanced(t *testing.T) {
	for n := 2; n <= 12; n++ {
		rows, err := Williams(n)
		require.NoError(t, err)
		want := 1
		if n%2 == 1 {
			want = 2
		}
		require.Len(t, rows, want*n)
		place, follows := map[[2]int]int{}, map[[2]int]int{}
		for _, row := range rows {
			for i, v := range row {
				place[[2]int{i, v}]++
				if i > 0 {
					follows[[2]int{row[i-1], v}]++
				}
			}
		}
		for a := range n {
			for b := range n {
				assert.Equal(t, want, place[[2]int{a, b}], "%d: %d in place %d", n, b, a)
				if a != b {
					assert.Equal(t, want, follows[[2]int{a, b}], "%d: %d after %d", n, b, a)
				}
			}
		}
	}
	_, err := Williams(1)
	assert.ErrorIs(t, err, flavor.ErrInvalid)
}

const (
	sourText  = "2 oz London dry gin\n3/4 oz lemon juice\n3/4 oz simple syrup\nshake, up"
	thirds    = "1 oz gin\n1 oz red bitter aperitif\n1 oz sweet vermouth\nstir, rocks"
	longText  = "45 ml gin\n30 ml lemon juice\n15 ml simple syrup\n60 ml soda water\nbuild, long"
	bareSpiri = "2 oz London dry gin\nstir, up"
)

// Each build has in the glass what the step says, to a twentieth of a noticeable
// difference once pours are rounded, and fills its glass.
func TestFlightSteps(t *testing.T) {
	s := newTable(t)
	for _, c := range []struct {
		text   string
		axis   ratio.Axis
		builds int
		step   float64
	}{{sourText, ratio.Sweet, 3, 1}, {sourText, ratio.Sour, 3, 1}, {sourText, ratio.Strong, 3, 1}, {thirds, ratio.Bitter, 3, 1.5}, {longText, ratio.Long, 5, 1}, {longText, ratio.Sweet, 5, 2}} {
		f, err := PlanFlight(s.Mixer, FlightRequest{Spec: s.Spec(t, c.text), Axis: c.axis, Builds: c.builds, Step: c.step, Tasters: 6, BuildML: 40, Seed: 5})
		require.NoError(t, err, c.text)
		require.Len(t, f.Builds, c.builds)
		middle := f.Builds[c.builds/2]
		var grams float64
		seen := map[int]bool{}
		for _, b := range f.Builds {
			assert.InDelta(t, float64(b.Step)*c.step, b.JND, 1e-9)
			want := b.JND * math.Log1p(threshold.Weber(c.axis))
			got := math.Log(b.Value / middle.Value)
			assert.InDelta(t, want/math.Log1p(threshold.Weber(c.axis)), got/math.Log1p(threshold.Weber(c.axis)), 0.05, "%v %+d", c.axis, b.Step)
			assert.InDelta(t, 40, b.Drink.VolumeML, 0.3)
			assert.InDelta(t, b.Sheet.PourML, b.Sheet.TotalML/b.Sheet.Servings, 1e-6)
			assert.InDelta(t, 7, b.Sheet.Servings, 1e-9, "one to spare")
			grams += b.Drink.After.Ethanol
			assert.False(t, seen[b.Code], "codes differ")
			seen[b.Code] = true
			assert.True(t, b.Code >= 100 && b.Code <= 999)
			assert.NotEmpty(t, b.Line())
		}
		assert.InDelta(t, grams, f.EthanolG, 1e-9)
		assert.InDelta(t, grams/14, f.Drinks, 1e-9)
		require.Len(t, f.Orders, 6)
		for _, row := range f.Orders {
			assert.Len(t, row, c.builds)
			for _, code := range row {
				assert.True(t, seen[code])
			}
		}
		assert.NotEmpty(t, f.Cautions)
		for _, m := range f.Marks {
			wine := m.Certainty == flavor.Contains && m.Allergen == flavor.Sulphites ||
				m.Certainty == flavor.MayContain && (m.Allergen == flavor.Eggs || m.Allergen == flavor.Milk)
			assert.True(t, wine || m.Certainty == flavor.Unstated, "nothing but the vermouth of one carries an allergen: %v", m)
		}
	}
	nuts, err := PlanFlight(s.Mixer, FlightRequest{Spec: s.Spec(t, "2 oz London dry gin\n3/4 oz lemon juice\n3/4 oz orgeat\nshake, up"), Axis: ratio.Sweet, Builds: 3, Step: 1, Tasters: 1, BuildML: 30})
	require.NoError(t, err)
	assert.Contains(t, nuts.Marks, flavor.AllergenMark{Allergen: flavor.TreeNuts, Certainty: flavor.Contains})
}

// A flight says what else moves further from the middle than its axis from one build to the
// next, and nothing where hardly anything does; and what it teaches.
func TestFlightSaysWhatElseMoves(t *testing.T) {
	s := newTable(t)
	for _, c := range []struct {
		text  string
		axis  ratio.Axis
		stray bool
		of    ratio.Axis
		foams bool
	}{
		{text: "2 oz rye whiskey\n1 oz sweet vermouth\n2 dashes aromatic bitters\nstir, up", axis: ratio.Strong, stray: true, of: ratio.Sweet},
		{text: sourText, axis: ratio.Sour},
		{text: "2 oz gin\n3/4 oz lemon juice\n3/4 oz simple syrup\n1/2 oz egg white\nshake, up", axis: ratio.Sour, foams: true},
	} {
		f, err := PlanFlight(s.Mixer, FlightRequest{Spec: s.Spec(t, c.text), Axis: c.axis, Builds: 3, Step: 1, Tasters: 2, BuildML: 30})
		require.NoError(t, err)
		most := 0.0
		for _, b := range f.Builds {
			most = max(most, b.Drift)
		}
		if c.stray {
			require.NotNil(t, f.Stray, c.text)
			assert.Equal(t, c.of, f.Stray.Axis)
			assert.InDelta(t, most, f.Stray.Steps, 1e-9)
			assert.Greater(t, f.Stray.Steps, 1.0)
		} else {
			assert.Nil(t, f.Stray, c.text)
			assert.LessOrEqual(t, most, 1.0)
		}
		assert.Equal(t, c.foams, f.Foams)
		assert.NotEmpty(t, f.Lesson)
	}
}

// Bitters change the bitterness of a stirred drink, whatever else in it is bitter; a sour has
// nothing that does and leaves its acid alone; and a step out of reach names one that is not.
func TestWhatMovesAnAxis(t *testing.T) {
	s := newTable(t)
	const stirred = "2 oz rye whiskey\n1 oz sweet vermouth\n2 dashes aromatic bitters\nstir, up"
	bitter, err := PlanFlight(s.Mixer, FlightRequest{Spec: s.Spec(t, stirred), Axis: ratio.Bitter, Builds: 3, Step: 1.5, Tasters: 4, BuildML: 30})
	require.NoError(t, err)
	assert.Nil(t, bitter.Stray, "the dashes move hardly anything else")
	first, last := bitter.Builds[0].Spec.Pours, bitter.Builds[2].Spec.Pours
	assert.Greater(t, last[2].ML, 1.5*first[2].ML, "the bitters")
	assert.InDelta(t, first[0].ML/first[1].ML, last[0].ML/last[1].ML, 0.05, "whiskey to vermouth")

	_, err = PlanFlight(s.Mixer, FlightRequest{Spec: s.Spec(t, "2 oz white rum\n1 oz lime juice\n3/4 oz simple syrup\nshake, up"), Axis: ratio.Bitter, Builds: 3, Step: 2, Tasters: 4})
	require.ErrorIs(t, err, flavor.ErrInvalid)
	assert.ErrorContains(t, err, "changes its bitterness and little else")

	far := FlightRequest{Spec: s.Spec(t, stirred), Axis: ratio.Strong, Builds: 3, Step: 3, Tasters: 4, BuildML: 30}
	_, err = PlanFlight(s.Mixer, far)
	var fault *flavor.DataFault
	require.ErrorAs(t, err, &fault)
	assert.Contains(t, fault.Message, "cannot change the strength of this drink so far; use a step of ")
	_, err = fmt.Sscanf(fault.Message[strings.LastIndex(fault.Message, "of ")+3:], "%f", &far.Step)
	require.NoError(t, err)
	_, err = PlanFlight(s.Mixer, far)
	require.NoError(t, err, "the step that was named is in reach")
}

// What nothing lengthens but its ice is tasted stirred too short, rightly and too long: the
// pours stay in proportion, each glass is as full as the others and holds as much less alcohol
// as it is longer, and the water is what differs.
func TestFlightOfWater(t *testing.T) {
	s := newTable(t)
	for _, text := range []string{"2 1/2 oz London dry gin\n1/2 oz dry vermouth\nstir, up", sourText, thirds} {
		f, err := PlanFlight(s.Mixer, FlightRequest{Spec: s.Spec(t, text), Axis: ratio.Long, Builds: 3, Step: 1.5, Tasters: 6, BuildML: 40})
		require.NoError(t, err, text)
		assert.True(t, f.Watered)
		assert.Nil(t, f.Stray)
		middle := f.Builds[1]
		times := math.Pow(1+threshold.Weber(ratio.Long), 1.5)
		for i, b := range f.Builds {
			assert.InDelta(t, 40, b.Sheet.PourML, 0.5, "to the marks of a vessel")
			assert.InDelta(t, 7*b.Sheet.PourML, b.Sheet.TotalML, 1e-6)
			assert.InDelta(t, middle.Value*math.Pow(times, float64(i-1)), b.Value, 0.01*b.Value)
			assert.InDelta(t, b.Value, b.Sheet.PourML/(b.Drink.ABV*b.Drink.VolumeML/100), 0.01*b.Value, "mL of drink for each mL of alcohol")
			assert.InDelta(t, b.Spec.Pours[0].ML/b.Spec.Pours[1].ML, middle.Spec.Pours[0].ML/middle.Spec.Pours[1].ML, 0.02)
			if i > 0 {
				assert.Greater(t, b.Sheet.WaterML, f.Builds[i-1].Sheet.WaterML)
			}
		}
	}
	long, err := PlanFlight(s.Mixer, FlightRequest{Spec: s.Spec(t, longText), Axis: ratio.Long, Builds: 3, Step: 1, Tasters: 4})
	require.NoError(t, err)
	assert.False(t, long.Watered, "soda lengthens it")
}

// A plain syrup is moved before what brings an aroma with its sugar, as far as it reaches;
// what no tongue finds does not count as moved.
func TestThePlainSyrupIsMoved(t *testing.T) {
	s := newTable(t)
	const nutty = "2 oz aged rum\n1 oz lime juice\n1/2 oz dry orange curaçao\n1/2 oz orgeat\n1/4 oz simple syrup\nshake, crushed"
	near, err := PlanFlight(s.Mixer, FlightRequest{Spec: s.Spec(t, nutty), Axis: ratio.Sweet, Builds: 3, Step: 1, Tasters: 2, BuildML: 30})
	require.NoError(t, err)
	less, more := near.Builds[0].Spec.Pours, near.Builds[2].Spec.Pours
	assert.InDelta(t, less[3].ML/less[0].ML, more[3].ML/more[0].ML, 0.01, "the orgeat stays in proportion")
	assert.Greater(t, more[4].ML, 2*less[4].ML, "the syrup")
	far, err := PlanFlight(s.Mixer, FlightRequest{Spec: s.Spec(t, nutty), Axis: ratio.Sweet, Builds: 5, Step: 2, Tasters: 2, BuildML: 30})
	require.NoError(t, err)
	assert.Greater(t, far.Builds[4].Spec.Pours[3].ML, 2*far.Builds[0].Spec.Pours[3].ML, "the syrup is too little for that")

	sour, err := PlanFlight(s.Mixer, FlightRequest{Spec: s.Spec(t, "2 oz white rum\n3/4 oz lime juice\n3/4 oz simple syrup\nshake, up"), Axis: ratio.Sour, Builds: 5, Step: 1, Tasters: 2, BuildML: 30})
	require.NoError(t, err)
	for _, b := range sour.Builds {
		assert.NotEqual(t, ratio.Bitter, b.DriftOf, "the bitterness of lime juice")
	}
}

// No flight is planned that would take a taster beyond the limit; the fault says
// by how much and what to do, and doing it helps.
func TestFlightRefusesTooMuch(t *testing.T) {
	s := newTable(t)
	r := FlightRequest{Spec: s.Spec(t, sourText), Axis: ratio.Sweet, Builds: 5, Step: 1, Tasters: 4}
	fits, err := PlanFlight(s.Mixer, r)
	require.NoError(t, err, "a size that nobody asked for gives way")
	assert.LessOrEqual(t, fits.Drinks, MaxTasterDrinks)
	assert.InDelta(t, 45, fits.Builds[0].Sheet.PourML, 0.5)
	r.BuildML = DefaultBuildML
	_, err = PlanFlight(s.Mixer, r)
	var fault *flavor.DataFault
	require.ErrorAs(t, err, &fault)
	assert.Contains(t, fault.Message, "standard drinks")
	assert.Contains(t, fault.Message, "pour 45 ml each or taste 3 builds")
	r.BuildML = 45
	f, err := PlanFlight(s.Mixer, r)
	require.NoError(t, err)
	assert.LessOrEqual(t, f.Drinks, MaxTasterDrinks)
	r.MaxDrinks = 3
	_, err = PlanFlight(s.Mixer, r)
	assert.ErrorIs(t, err, flavor.ErrInvalid, "the limit is not raised")

	r.BuildML, r.MaxDrinks = 60, 1.5
	_, err = PlanFlight(s.Mixer, r)
	require.ErrorAs(t, err, &fault)
	assert.NotContains(t, fault.Message, "taste 3", "three of 60 mL hold 1.6")
	r.BuildML = 45
	_, err = PlanFlight(s.Mixer, r)
	require.ErrorAs(t, err, &fault)
	assert.Contains(t, fault.Message, "taste 3 builds")
	r.Builds = 3
	_, err = PlanFlight(s.Mixer, r)
	require.NoError(t, err)
	r.BuildML, r.MaxDrinks = 10, 0.1
	_, err = PlanFlight(s.Mixer, r)
	require.ErrorAs(t, err, &fault)
	assert.Contains(t, fault.Message, "taste a weaker drink")
	assert.NotContains(t, fault.Message, "ml each", "no build is so small")
}

func TestFlightFaults(t *testing.T) {
	s := newTable(t)
	ok := FlightRequest{Spec: s.Spec(t, sourText), Axis: ratio.Sweet, Builds: 3, Step: 1, Tasters: 4}
	for name, spoil := range map[string]func(*FlightRequest){
		"no spec":       func(r *FlightRequest) { r.Spec = nil },
		"two builds":    func(r *FlightRequest) { r.Builds = 2 },
		"no step":       func(r *FlightRequest) { r.Step = 0 },
		"step too fine": func(r *FlightRequest) { r.Step = 0.4 },
		"step not real": func(r *FlightRequest) { r.Step = math.NaN() },
		"no tasters":    func(r *FlightRequest) { r.Tasters = 0 },
		"a bucket":      func(r *FlightRequest) { r.BuildML = 500 },
		"no such axis":  func(r *FlightRequest) { r.Axis = 9 },
		"no bitter":     func(r *FlightRequest) { r.Axis = ratio.Bitter },
		"no ice": func(r *FlightRequest) {
			r.Spec, r.Axis = s.Spec(t, "2 oz London dry gin\n1/4 oz simple syrup\nneat"), ratio.Long
		},
		"no such water": func(r *FlightRequest) { r.Axis, r.Builds, r.Step = ratio.Long, 5, 4 },
		"topped": func(r *FlightRequest) {
			r.Spec, r.Axis = s.Spec(t, "1 oz gin\n1/2 oz lemon juice\n1/2 oz simple syrup\n2 oz champagne\nshake, up"), ratio.Long
		},
		"a foam": func(r *FlightRequest) {
			r.Spec, r.Axis = s.Spec(t, "2 oz gin\n3/4 oz lemon juice\n3/4 oz simple syrup\n1/2 oz egg white\nshake, up"), ratio.Long
		},
		"else moves":   func(r *FlightRequest) { r.Spec, r.Step = s.Spec(t, thirds), 0.5 },
		"out of reach": func(r *FlightRequest) { r.Spec, r.Axis = s.Spec(t, bareSpiri), ratio.Strong },
	} {
		r := ok
		spoil(&r)
		_, err := PlanFlight(s.Mixer, r)
		assert.ErrorIs(t, err, flavor.ErrInvalid, name)
	}
}

// ISO 4120, Table A.1, at an alpha of 0.05 (from memory).
func TestLeastRightIsThatOfTheStandard(t *testing.T) {
	for n, want := range map[int]int{12: 8, 18: 10, 24: 13, 30: 15, 36: 18} {
		assert.Equal(t, want, LeastRight(n, 0.05), "of %d", n)
	}
	assert.Equal(t, 3, LeastRight(2, 0.05), "two tasters can show nothing")
}

// Every tail and power against the binomial of gonum, summed.
func TestPowerAgainstTheBinomial(t *testing.T) {
	for _, n := range []int{6, 12, 30, 77} {
		for _, share := range []float64{0, 0.2, 0.5, 0.9} {
			for x := 0; x <= n+1; x++ {
				b := distuv.Binomial{N: float64(n), P: share + (1-share)/3}
				var want float64
				for k := x; k <= n; k++ {
					want += b.Prob(float64(k))
				}
				assert.InDelta(t, want, powerOfTriangle(n, x, share), 1e-9, "n %d, x %d, share %v", n, x, share)
			}
		}
	}
}

func TestPlanTriangle(t *testing.T) {
	plan, err := PlanTriangle(TriangleRequest{Power: 0.9, Share: 0.4, Seed: 8})
	require.NoError(t, err)
	assert.GreaterOrEqual(t, plan.Power, 0.9)
	assert.LessOrEqual(t, plan.RealAlpha, 0.05)
	fewer := plan.Tasters - 1
	assert.Less(t, powerOfTriangle(fewer, LeastRight(fewer, 0.05), 0.4), 0.9, "one fewer will not do")

	plan, err = PlanTriangle(TriangleRequest{Tasters: 24, Seed: 8})
	require.NoError(t, err)
	assert.Equal(t, 13, plan.LeastRight)
	count := map[string]int{}
	for _, s := range plan.Servings {
		count[s.Order]++
		assert.NotEqual(t, s.Codes[0], s.Codes[1])
		assert.NotEqual(t, s.Codes[1], s.Codes[2])
		assert.NotEqual(t, s.Codes[0], s.Codes[2])
	}
	require.Len(t, count, 6)
	for order, n := range count {
		assert.Equal(t, 4, n, order)
	}
	again, err := PlanTriangle(TriangleRequest{Tasters: 24, Seed: 8})
	require.NoError(t, err)
	assert.Equal(t, plan, again)
	for _, s := range plan.Servings {
		assert.Equal(t, OddOf(s.Order), s.Odd)
	}
	assert.Equal(t, []int{2, 1, 0, 2, 1, 0, -1, -1, -1}, []int{OddOf("AAB"), OddOf("ABA"), OddOf("BAA"), OddOf("BBA"), OddOf("BAB"), OddOf("ABB"), OddOf("AAA"), OddOf(""), OddOf("ABAB")})
	for _, r := range []TriangleRequest{{Tasters: 3}, {Alpha: 0.9}, {Power: 1}, {Share: 2}, {Share: 0.01, Power: 0.99}} {
		_, err := PlanTriangle(r)
		assert.ErrorIs(t, err, flavor.ErrInvalid, "%+v", r)
	}
}

// answers picks the odd glass for the first n tasters and another one for the
// others.
func answers(plan *Triangle, right int) []int {
	out := make([]int, len(plan.Servings))
	for i, s := range plan.Servings {
		at := s.Odd
		if i >= right {
			at = (at + 1) % 3
		}
		out[i] = s.Codes[at]
	}
	return out
}

func TestJudgeTriangle(t *testing.T) {
	plan, err := PlanTriangle(TriangleRequest{Tasters: 30, Seed: 1})
	require.NoError(t, err)
	for right := 0; right <= 30; right++ {
		v, err := plan.Judge(answers(plan, right))
		require.NoError(t, err)
		assert.Equal(t, right, v.Right)
		assert.Equal(t, right >= 15, v.Different, "15 of 30")
		assert.LessOrEqual(t, v.Low, v.Share)
		assert.LessOrEqual(t, v.Share, v.High)
		assert.True(t, v.Low >= 0 && v.High <= 1, "%+v", v)
		assert.Contains(t, v.Text, "of 30")
	}
	// Clopper and Pearson for 15 of 30 at 95 %: 0.313 to 0.687, worked out from
	// the binomial.
	v, err := plan.Judge(answers(plan, 15))
	require.NoError(t, err)
	assert.InDelta(t, 0.25, v.Share, 1e-9)
	assert.InDelta(t, 0, v.Low, 1e-9)
	assert.InDelta(t, (0.687-1.0/3)*1.5, v.High, 1e-3)

	some := answers(plan, 15)
	some[0] = 0
	v, err = plan.Judge(some)
	require.NoError(t, err)
	assert.Equal(t, 29, v.Answers)
	some[0] = 7
	_, err = plan.Judge(some)
	assert.ErrorIs(t, err, flavor.ErrInvalid, "that glass was not there")
	_, err = plan.Judge(make([]int, 30))
	assert.ErrorIs(t, err, flavor.ErrInvalid, "nobody answered")
	_, err = plan.Judge(nil)
	assert.ErrorIs(t, err, flavor.ErrInvalid)
}
