package habit

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"

	"counterpour/flavor"
)

// mostOf returns what all but a share rare stay below.
func mostOf(amounts, weights []float64, rare float64) float64 {
	var samples []sample
	for i, a := range amounts {
		samples = append(samples, sampleOf(a, i, closeReach))
	}
	sortSamples(samples)
	t := tail{weights: make([]float64, len(samples))}
	for i := range samples {
		t.add(i, samples[i].at, weights[samples[i].drink])
	}
	return math.Exp(t.most(columnsOf(samples).lift, rare, closeReach, make([]float64, len(samples))))
}

// limitOf asks a book of an ingredient, doseOf of its dose beside others.
func limitOf(b *Book, p *flavor.Profile, first bool, near []float64) Limit {
	a := b.Ask(p, func(n int) []float64 { return make([]float64, n) })
	return a.Limit(first, near)
}

func doseOf(b *Book, p *flavor.Profile, near []float64) Limit {
	a := b.Ask(p, func(n int) []float64 { return make([]float64, n) })
	return a.LimitOfDose(false, near)
}

// One drink alone allows e^(reach · ln(1/rare)) times its own amount.
func TestOneDrinkAllowsMore(t *testing.T) {
	most := mostOf([]float64{0.1}, []float64{1}, 0.05)
	assert.InDelta(t, 0.1*math.Exp(closeReach*math.Log(20)), most, 1e-12)
}

// Hundred drinks alike allow no more than one does, and one of a hundred that
// pours ten times as much does not count while it is rarer than rare.
func TestOneStrangeDrinkIsNoHabit(t *testing.T) {
	amounts, weights := []float64{1}, []float64{1}
	for range 99 {
		amounts, weights = append(amounts, 0.1), append(weights, 1)
	}
	most := mostOf(amounts, weights, 0.05)
	assert.Less(t, most, 0.25)
	assert.Greater(t, most, 0.1)
}

// The answer satisfies the equation that it is said to solve.
func TestMostSolvesItsEquation(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		amounts := rapid.SliceOfN(rapid.Float64Range(1e-4, 1), 1, 30).Draw(t, "amounts")
		weights := rapid.SliceOfN(rapid.Float64Range(1e-3, 1), len(amounts), len(amounts)).Draw(t, "weights")
		rare := rapid.Float64Range(0.01, 0.3).Draw(t, "rare")
		y := math.Log(mostOf(amounts, weights, rare))
		var tail, total float64
		for i, w := range weights {
			tail += w * math.Min(1, math.Exp((math.Log(amounts[i])-y)/closeReach))
			total += w
		}
		assert.InEpsilon(t, rare*total, tail, 1e-6)
	})
}

func profile(id string, class flavor.Class, smell flavor.AromaFamily, intensity float64) *flavor.Profile {
	p := &flavor.Profile{ID: id, Name: id, Class: class}
	p.Aroma[smell] = intensity
	return p
}

func TestLimitsFollowTheNearest(t *testing.T) {
	absinthe := profile("absinthe", flavor.ClassAniseSpirit, flavor.Anise, 30)
	pastis := profile("pastis", flavor.ClassAniseSpirit, flavor.Anise, 20)
	mint := profile("mint spirit", flavor.ClassAniseSpirit, flavor.Mint, 20)
	gin := profile("gin", flavor.ClassGin, flavor.Juniper, 14)
	beside := func(p *flavor.Profile, share float64) Part { return Part{Profile: p, Share: share} }
	first := func(p *flavor.Profile, share float64) Part { return Part{Profile: p, Share: share, Lead: 1} }
	var drinks [][]Part
	for range 10 { // by the dash in one kind of drink, by the barspoon in another, and alone
		drinks = append(drinks, []Part{first(gin, 0.99), beside(absinthe, 0.01)}, []Part{first(gin, 0.9), beside(absinthe, 0.1)}, []Part{first(absinthe, 0.6)})
	}
	b := NewBook(drinks)
	near := func(dashes, spoons float64) []float64 {
		out := make([]float64, len(drinks))
		for i := range out {
			out[i] = []float64{dashes, spoons, 0}[i%3]
		}
		return out
	}
	dashes, spoons := limitOf(b, absinthe, false, near(1, 0)), limitOf(b, absinthe, false, near(0, 1))
	assert.True(t, dashes.Own)
	assert.Less(t, dashes.Most, 0.15)
	assert.Greater(t, spoons.Most, dashes.Most)
	assert.Less(t, dashes.Usual, 0.02)
	assert.Greater(t, limitOf(b, absinthe, true, near(1, 0)).Most, 0.5, "what a drink is made of first is another matter")
	assert.InEpsilon(t, dashes.Most*Strength(absinthe), limitOf(b, pastis, false, near(1, 0)).Most*Strength(pastis), 0.35, "what smells alike goes by the same dose")
	assert.False(t, limitOf(b, pastis, false, near(1, 0)).Own)
	assert.Greater(t, dashes.Support, limitOf(b, pastis, false, near(1, 0)).Support)
	assert.Greater(t, limitOf(b, pastis, false, near(1, 0)).Support, 10*limitOf(b, mint, false, near(1, 0)).Support, "nothing speaks for what smells of something else")

	salt := &flavor.Profile{ID: "salt", Class: flavor.ClassSaline, Salt: flavor.Figure{Value: 2160}}
	saline := &flavor.Profile{ID: "saline", Class: flavor.ClassSaline, Salt: flavor.Figure{Value: 230}}
	assert.Greater(t, limitOf(b, saline, false, near(1, 1)).Most, limitOf(b, salt, false, near(1, 1)).Most, "by common practice alone, as strong as it is")
	assert.InDelta(t, 0.8/90, limitOf(b, salt, false, near(1, 1)).Most, 1e-9, "a dash in a small glass is never too much")
}

func TestBoundsOfLevels(t *testing.T) {
	salt := &flavor.Profile{ID: "salt", Class: flavor.ClassSaline, Salt: flavor.Figure{Value: 2000}}
	gin := profile("gin", flavor.ClassGin, flavor.Juniper, 14)
	var drinks [][]Part
	var near []float64
	for range 20 {
		drinks = append(drinks, []Part{{Profile: gin, Share: 1}}, []Part{{Profile: gin, Share: 0.999}, {Profile: salt, Share: 0.001}})
		near = append(near, 1, 1)
	}
	b := NewBook(drinks)
	assert.GreaterOrEqual(t, b.NeverHigh(Salty), 1.0, "what half of them carry is not high")
	assert.Less(t, b.NeverHigh(Salty), 5.0)
	x := b.Bound(Salty, near)
	assert.Greater(t, x.Most, 2.0)
	assert.Less(t, x.Most, 12.0)
	assert.LessOrEqual(t, x.Usual, x.Most)
	assert.True(t, math.IsInf(NewBook(nil).NeverHigh(Salty), 1), "nothing is known")
	assert.True(t, math.IsInf(NewBook(nil).Bound(Salty, nil).Most, 1))
	seen := map[string]bool{}
	for l := range NumLevels {
		assert.False(t, seen[Level(l).String()], "%v", Level(l))
		seen[Level(l).String()] = true
		assert.NotEmpty(t, Level(l).Unit())
		assert.Greater(t, Level(l).Floor(), 0.0)
	}
}

// One known drink allows e^(reach·ln(1/rare)) times its own amount, as the rule of the
// tail says; what weighs nothing has no say, and without any weight all is allowed.
func TestRange(t *testing.T) {
	r := NewRange(InGlass(), OfAll([]float64{100, 400}))
	assert.InEpsilon(t, 100*math.Pow(1/0.03, 0.14), r.Most([]float64{1, 0}), 1e-9)
	assert.InEpsilon(t, 400*math.Pow(1/0.03, 0.14), r.Most([]float64{0, 1}), 1e-9)
	assert.True(t, math.IsInf(r.Most([]float64{0, 0}), 1))
	both := r.Most([]float64{1, 1})
	assert.Greater(t, both, 400.0)
	assert.Less(t, both, r.Most([]float64{0, 1}), "half of them are small")
	rapid.Check(t, func(t *rapid.T) {
		weight, amount := rapid.Float64Range(0, 1), rapid.Float64Range(1, 1000)
		r := NewRange(InGlass(), OfAll(rapid.SliceOfN(amount, 1, 8).Draw(t, "amounts")))
		near := rapid.SliceOfN(weight, len(r.sure), len(r.sure)).Draw(t, "near")
		most := r.Most(near)
		if asked := amount.Draw(t, "asked"); math.Abs(math.Log(asked/most)) > 1e-6 {
			assert.Equal(t, asked <= most, r.Reaches(near, asked), "%g", most)
		}
	})
}

// To pour twice as much of a part makes its dose twice as large, and a dose is as much of
// the drink as it was; a large pour has more room as a share than as a dose.
func TestDoses(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		ml, rest := rapid.Float64Range(1, 100).Draw(t, "ml"), rapid.Float64Range(10, 200).Draw(t, "rest")
		once, twice := ml/(ml+rest), 2*ml/(2*ml+rest)
		assert.InEpsilon(t, 2*Dose(once), Dose(twice), 1e-9)
		assert.InEpsilon(t, once, ShareOf(Dose(once)), 1e-9)
	})
	liqueur, gin := profile("liqueur", flavor.ClassLiqueur, flavor.Citrus, 20), profile("gin", flavor.ClassGin, flavor.Juniper, 14)
	var drinks [][]Part
	near := []float64{}
	for range 10 {
		drinks, near = append(drinks, []Part{{Profile: liqueur, Share: 0.4}, {Profile: gin, Share: 0.6, Lead: 1}}), append(near, 1)
	}
	b := NewBook(drinks)
	share, dose := limitOf(b, liqueur, false, near), doseOf(b, liqueur, near)
	assert.Less(t, ShareOf(dose.Most), share.Most)
	assert.Greater(t, ShareOf(dose.Most), 0.4)
	assert.Less(t, dose.Usual, dose.Most)
	assert.True(t, b.Pours(liqueur))
	assert.False(t, b.Pours(profile("other", flavor.ClassLiqueur, flavor.Citrus, 20)))
}
