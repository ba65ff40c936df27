package weigh_test

import (
	"math"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"counterpour/flavor"
	"counterpour/flavor/ratio"
	"counterpour/flavor/template/templatetest"
	"counterpour/flavor/weigh"
)

// Every line of the arithmetic follows from those before it, and the last is
// the score.
func TestDetailAddsUp(t *testing.T) {
	k := newKitchen(t)
	rapid.Check(t, func(t *rapid.T) {
		b := k.build(t, k.draft(t))
		ml := b.Amounts()
		d := b.Detail(ml)
		assert.Equal(t, b.Score(ml), d.Score, "to the last bit")

		var sum ratio.Equivalents
		for _, p := range d.Pours {
			for a := range sum {
				sum[a] += p[a]
			}
		}
		for a := range sum {
			assert.InDelta(t, sum[a], d.Sum[a], same*1e3, "the pours add up")
			assert.InDelta(t, d.Equivalents[a], d.Share[a]*d.TotalML, same*1e3, "the shares are of the total")
		}
		assert.InDelta(t, max(0, d.Sum[ratio.Long]), d.Equivalents[ratio.Long], same)
		var mean, odds float64
		for i := range d.Families {
			f := &d.Families[i]
			checkFamily(t, &d, f)
			mean += f.Probability * f.Score
			odds += math.Exp(f.MakeUp + f.Ratio)
		}
		for i := range d.Families {
			f := &d.Families[i]
			assert.InDelta(t, math.Exp(f.MakeUp+f.Ratio)/odds, f.Probability, same)
		}
		assert.InDelta(t, d.Mean, mean, same)
		assert.InDelta(t, d.Ratio, weigh.Excuse(d.Mean, d.Excused), same)
		var habit, bound float64
		for _, x := range d.Beyond {
			assert.Greater(t, x.Edges, 0.0)
			if x.Edges > 1 {
				assert.Greater(t, x.Amount, x.Most, "beyond the most")
			}
			habit = max(habit, x.Edges)
		}
		for _, x := range d.Bounds {
			bound = max(bound, x.Edges)
		}
		for _, x := range d.Method {
			bound = max(bound, x.Edges)
		}
		away := math.Log(d.Ratio/100) / math.Log(0.7)
		both := math.Pow(math.Pow(away*away*away+habit*habit*habit, 2)+math.Pow(d.Uneven.Edges, 6), 1.0/6)
		assert.InDelta(t, d.Score, min(weigh.ScoreAt(both), weigh.ScoreAt(bound)), same)
	})
}

func checkFamily(t *rapid.T, d *weigh.Detail, f *weigh.FamilyDetail) {
	var square float64
	for j := range f.Coordinates {
		c := &f.Coordinates[j]
		var logs float64
		for i := range c.Of {
			logs += math.Log(f.Part[i] + f.Floor[f.Axes[i]])
		}
		n := float64(len(c.Of))
		assert.InDelta(t, math.Sqrt(n/(n+1))*(logs/n-math.Log(f.Part[j+1]+f.Floor[f.Axes[j+1]])), c.Value, same)
		assert.InDelta(t, math.Sqrt(n/(n+1)), c.Factor(), same)
		assert.InDelta(t, c.Widths, (c.Value-c.Centre-c.Carried)/c.Width, 1e-7)
		square += c.Widths * c.Widths
	}
	for _, x := range f.Excess {
		assert.NotContains(t, f.Axes, x.Axis)
		assert.InDelta(t, (d.Share[x.Axis]-x.Allowance)/x.Unit, x.Edges, same)
		square += f.SquaredEdge * x.Edges * x.Edges
	}
	assert.GreaterOrEqual(t, f.Size, 0.0)
	assert.GreaterOrEqual(t, f.Unknown, 0.7)
	assert.InDelta(t, (square+f.Size)/f.Unknown, f.SquaredAway, same*max(1, square))
	assert.LessOrEqual(t, f.SlipAway, f.SquaredAway*(1+same)+same, "a part of the whole")
	assert.InDelta(t, max(f.SquaredAway/f.SquaredEdge, f.SlipEdges()), f.Edges, same*max(1, f.Edges))
	assert.InDelta(t, 100*math.Pow(0.7, f.Edges), f.Score, same)
	var whole float64
	for _, p := range f.Centre {
		whole += p
	}
	assert.InDelta(t, 1, whole, same)
}

// The centre that a drink is held against scores 100 in its family.
func TestCentreScoresFull(t *testing.T) {
	k := newKitchen(t)
	b := k.build(t, k.read(t, usualSour))
	f := b.Detail(b.Amounts()).Families[0]
	require.Equal(t, "sour", f.ID)
	for j, c := range f.Coordinates {
		parts, err := mustBasis(t, len(f.Axes)).Coordinates(f.Centre)
		require.NoError(t, err)
		assert.InDelta(t, c.Centre, parts[j], same)
	}
}

func TestBandsHoldTheCentre(t *testing.T) {
	k := newKitchen(t)
	s := k.read(t, usualSour)
	b := k.build(t, s)
	e := b.Equivalents(b.Amounts())
	bands, ok := b.Bands("sour", b.Amounts())
	require.True(t, ok)
	for _, a := range ratio.Axes() {
		band := bands[a]
		assert.Equal(t, slices.Contains([]ratio.Axis{ratio.Strong, ratio.Sweet, ratio.Sour}, a), band.Has, "%v", a)
		assert.LessOrEqual(t, band.Low, band.Centre)
		assert.LessOrEqual(t, band.Centre, band.High)
		if band.Has {
			assert.True(t, band.Low < e[a] && e[a] < band.High, "a usual sour lies within: %v %v", a, band)
		}
	}
	_, ok = b.Bands("no such family", b.Amounts())
	assert.False(t, ok)
}

func TestPrepareFaults(t *testing.T) {
	k := newKitchen(t)
	_, err := k.set.Prepare(&flavor.Spec{})
	assert.ErrorContains(t, err, "no pours")
	_, err = k.set.Prepare(templatetest.Spec(flavor.Pour{ML: 10}))
	assert.ErrorContains(t, err, "pour 1 has no ingredient")
	_, err = k.set.Prepare(templatetest.Spec(templatetest.Of(templatetest.Spirit, 0)))
	assert.ErrorContains(t, err, "to weigh")
}

// A mixer that is sweet itself makes a mule of what syrup and soda make a collins: common
// practice, no source. What is shaken as a sour with a little of it on top is told by that.
func TestASweetMixerMakesAMule(t *testing.T) {
	k := newKitchen(t)
	for text, want := range map[string]string{
		"2 oz vodka\n1/2 oz lime juice\n4 oz ginger beer\nbuild, long":                           "buck",
		"2 oz vodka\n1/2 oz lime juice\n1/2 oz simple syrup\n4 oz ginger beer\nbuild, long":      "buck",
		"45 ml dark rum\n15 ml lime juice\n10 ml honey syrup\n120 ml ginger ale\nbuild, long":    "buck",
		"2 oz vodka\n1/2 oz lime juice\n1/2 oz simple syrup\n4 oz soda water\nbuild, long":       "collins",
		"2 oz gin\n1 oz lemon juice\n3/4 oz simple syrup\n2 oz soda water\nshake, long":          "collins",
		"2 oz bourbon\n3/4 oz lemon juice\n3/4 oz honey syrup\n1 1/2 oz ginger ale\nshake, long": "collins",
	} {
		b := k.build(t, k.read(t, text))
		assert.Equal(t, want, b.Detail(b.Amounts()).Families[0].ID, text)
	}
}

// What bars have proven is well made, as the drinks made of the same are.
func TestProvenDrinksHaveNoFaultOfMethod(t *testing.T) {
	k := newKitchen(t)
	for i := range k.book {
		b := k.build(t, &k.book[i].Spec)
		for _, x := range b.Detail(b.Amounts()).Method {
			assert.Less(t, x.Edges, 1.0, "%s: %s", k.book[i].Spec.Name, x.Flaw)
		}
	}
}
