package habit

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"

	"counterpour/flavor"
)

func samplesOf(amounts ...float64) []sample {
	var out []sample
	for i, a := range amounts {
		out = append(out, sampleOf(a, i, i))
	}
	sortSamples(out)
	return out
}

// One drink alone allows e^(reach · ln(1/rare)) times its own amount.
func TestOneDrinkAllowsMore(t *testing.T) {
	most := math.Exp(mostOf(samplesOf(0.1), []float64{1}, 0.05))
	assert.InDelta(t, 0.1*math.Exp(reach*math.Log(20)), most, 1e-12)
}

// Hundred drinks alike allow no more than one does, and one of a hundred that
// pours ten times as much does not count while it is rarer than rare.
func TestOneStrangeDrinkIsNoHabit(t *testing.T) {
	amounts, weights := []float64{1}, []float64{1}
	for range 99 {
		amounts, weights = append(amounts, 0.1), append(weights, 1)
	}
	most := math.Exp(mostOf(samplesOf(amounts...), weights, 0.05))
	assert.Less(t, most, 0.25)
	assert.Greater(t, most, 0.1)
}

// The answer satisfies the equation that it is said to solve.
func TestMostSolvesItsEquation(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		amounts := rapid.SliceOfN(rapid.Float64Range(1e-4, 1), 1, 30).Draw(t, "amounts")
		samples := samplesOf(amounts...)
		weights := rapid.SliceOfN(rapid.Float64Range(1e-3, 1), len(samples), len(samples)).Draw(t, "weights")
		rare := rapid.Float64Range(0.01, 0.3).Draw(t, "rare")
		y := mostOf(samples, weights, rare)
		var tail, total float64
		for i, w := range weights {
			tail += w * math.Min(1, math.Exp((samples[i].at-y)/reach))
			total += w
		}
		assert.InEpsilon(t, rare*total, tail, 1e-6)
	})
}

func profile(id string, class flavor.Class, smell flavor.Family, intensity float64) *flavor.Profile {
	p := &flavor.Profile{ID: id, Name: id, Class: class}
	p.Aroma[smell] = intensity
	return p
}

func TestLimitsFollowTheNearest(t *testing.T) {
	absinthe := profile("absinthe", flavor.ClassAniseSpirit, flavor.Anise, 30)
	pastis := profile("pastis", flavor.ClassAniseSpirit, flavor.Anise, 20)
	mint := profile("mint spirit", flavor.ClassAniseSpirit, flavor.Mint, 20)
	gin := profile("gin", flavor.ClassGin, flavor.Juniper, 14)
	var drinks [][]Part
	for range 10 { // by the dash in one kind of drink, by the jigger in another
		drinks = append(drinks, []Part{{gin, 0.99}, {absinthe, 0.01}}, []Part{{gin, 0.8}, {absinthe, 0.2}})
	}
	b := NewBook(drinks)
	near := func(dashes, jiggers float64) []float64 {
		out := make([]float64, len(drinks))
		for i := range out {
			out[i] = []float64{dashes, jiggers}[i%2]
		}
		return out
	}
	limit := func(p *flavor.Profile, near []float64) Limit { return b.Limits([]Part{{p, 0.1}}, near)[0] }

	dashes, jiggers := limit(absinthe, near(1, 0)), limit(absinthe, near(0, 1))
	assert.True(t, dashes.Own)
	assert.Less(t, dashes.Most, 0.15)
	assert.Greater(t, jiggers.Most, 0.2)
	assert.Less(t, dashes.Usual, 0.02)
	assert.InDelta(t, dashes.Most, limit(pastis, near(1, 0)).Most, 0.05, "what smells alike goes by the same")
	assert.False(t, limit(pastis, near(1, 0)).Own)
	assert.Greater(t, limit(mint, near(1, 0)).Most, 0.0, "the class, where nothing smells alike")

	salt := &flavor.Profile{ID: "salt", Class: flavor.ClassSaline, Salt: flavor.Figure{Value: 2160}}
	saline := &flavor.Profile{ID: "saline", Class: flavor.ClassSaline, Salt: flavor.Figure{Value: 230}}
	assert.InEpsilon(t, 2160.0/230, limit(saline, near(1, 1)).Most/limit(salt, near(1, 1)).Most, 1e-6, "by common practice alone, as strong as it is")
}

func TestBoundsOfLevels(t *testing.T) {
	salt := &flavor.Profile{ID: "salt", Class: flavor.ClassSaline, Salt: flavor.Figure{Value: 2000}}
	gin := profile("gin", flavor.ClassGin, flavor.Juniper, 14)
	var drinks [][]Part
	var near []float64
	for range 20 {
		drinks = append(drinks, []Part{{gin, 1}}, []Part{{gin, 0.999}, {salt, 0.001}})
		near = append(near, 1, 1)
	}
	b := NewBook(drinks)
	assert.False(t, b.High(Salty, 1), "what half of them carry is not high")
	assert.True(t, b.High(Salty, 5))
	x := b.Bound(Salty, near)
	assert.Greater(t, x.Most, 2.0)
	assert.Less(t, x.Most, 12.0)
	assert.LessOrEqual(t, x.Usual, x.Most)
	assert.False(t, NewBook(nil).High(Salty, 1e6), "nothing is known")
	assert.True(t, math.IsInf(NewBook(nil).Bound(Salty, nil).Most, 1))
	seen := map[string]bool{}
	for l := range NumLevels {
		assert.False(t, seen[Level(l).String()], "%v", Level(l))
		seen[Level(l).String()] = true
		assert.NotEmpty(t, Level(l).Unit())
		assert.Greater(t, Level(l).Floor(), 0.0)
	}
}
