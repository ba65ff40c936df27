package riff

import (
	"context"
	"math"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/data/bartest"
	"counterpour/flavor"
	"counterpour/flavor/measure"
	"counterpour/flavor/riff/station"
	"counterpour/flavor/riff/wish"
	"counterpour/flavor/sense"
	"counterpour/flavor/weigh"
)

// checkRiffs holds a list to all that is promised of it.
func checkRiffs(t *testing.T, b *bartest.Bar, req *Request, res *Result) {
	t.Helper()
	may := map[string]bool{}
	for _, p := range req.Stock {
		may[p.ID] = true
	}
	for i := range res.Riffs {
		x := &res.Riffs[i]
		judged, err := b.Station.Judge.Score(&x.Spec)
		require.NoError(t, err)
		assert.Empty(t, judged.Faults, "%s has no fault", x.Text)
		score := judged.Judgement.Score
		assert.InDelta(t, score, x.Score, bartest.Rounding, "the score is the engine's")
		assert.GreaterOrEqual(t, score, weigh.BalancedFrom, x.Text)
		for _, p := range x.Spec.Pours {
			for _, a := range req.Guest.Avoid {
				_, has := p.Profile.Allergen(a)
				assert.False(t, has, "%s may hold %s", p.Profile.Name, a)
			}
			assert.True(t, may[p.Profile.ID], "%s is in stock", p.Profile.Name)
			assert.InDelta(t, measure.Snap(p.ML, p.Unit, p.Profile), p.Amount, bartest.Rounding, "%s is a step of the jigger", p.Profile.Name)
			if p.Profile.Class.Part() == flavor.PartBase && !req.Spec.HasProfile(p.Profile) {
				assert.GreaterOrEqual(t, p.ML, min(station.LeastBaseML, smallestBase(req.Spec)), "%s: a base is no dash: %s", x.Text, p.Profile.Name)
			}
		}
		if req.Guest.MaxABV > 0 {
			assert.LessOrEqual(t, x.Drink.ABV, req.Guest.MaxABV, x.Text)
		}
		if req.Guest.MaxCost > 0 {
			cost, unpriced := x.Spec.Cost(req.Guest.Prices)
			assert.LessOrEqual(t, cost, req.Guest.MaxCost)
			assert.Empty(t, unpriced)
		}
		checkKept(t, req, x)
		if x.FamilyID == "hot" {
			assert.Equal(t, flavor.Up, x.Spec.Service, "%s: a hot drink is on no ice", x.Text)
		}
		checkServed(t, req.Spec, x)
		checkSaid(t, b, req.Spec, x)
		from := b.Apart(t, req.Spec, &x.Spec)
		assert.InDelta(t, from, x.Distance, bartest.Rounding)
		if !slices.ContainsFunc(req.Spec.Pours, func(p flavor.Pour) bool { return !may[p.Profile.ID] }) {
			assert.GreaterOrEqual(t, from, res.Least, "of a drink that can be poured") // of one that cannot, the nearest is listed too
		}
		for j := range i {
			assert.NotEqual(t, station.MadeOf(&res.Riffs[j].Spec), station.MadeOf(&x.Spec), "two riffs are made of the same things")
			apart := b.Apart(t, &x.Spec, &res.Riffs[j].Spec)
			assert.GreaterOrEqual(t, apart, res.Least, "%s / %s", x.Text, res.Riffs[j].Text)
		}
		assert.NotEmpty(t, x.Text)
		assert.NotContains(t, x.Text, "\n", "one line")
	}
}

// checkSaid holds what a riff says of itself to its own numbers.
func checkSaid(t *testing.T, b *bartest.Bar, from *flavor.Spec, x *Riff) {
	t.Helper()
	assert.Equal(t, x.Recipe+": "+x.Effect, x.Text)
	assert.NotEmpty(t, x.Name)
	assert.NotEmpty(t, x.Why)
	assert.Contains(t, []sense.Notice{sense.NoticeOf(x.Distance, false), sense.NoticeOf(x.Distance, true)}, x.Notice)
	drink, err := b.Station.Mixer.Mix(from)
	require.NoError(t, err)
	before, after := b.Station.Space.Percept(from, drink), x.Glass
	checkName(t, x)
	for _, c := range []struct {
		word  string
		by    float64
		above bool
	}{
		{"lighter at", x.Drink.ABV - drink.ABV, false}, {"stronger at", x.Drink.ABV - drink.ABV, true},
		{"sweeter", after.Holds[sense.Sweet] - before.Holds[sense.Sweet], true}, {"drier", after.Holds[sense.Sweet] - before.Holds[sense.Sweet], false},
		{"sharper", after.Holds[sense.Sour] - before.Holds[sense.Sour], true}, {"rounder", after.Holds[sense.Sour] - before.Holds[sense.Sour], false},
		{"more bitter", after.Holds[sense.Bitter] - before.Holds[sense.Bitter], true}, {"less bitter", after.Holds[sense.Bitter] - before.Holds[sense.Bitter], false},
		{"longer", x.Drink.VolumeML - drink.VolumeML, true}, {"shorter", x.Drink.VolumeML - drink.VolumeML, false},
	} {
		if strings.Contains(x.Effect, c.word) {
			assert.Equal(t, c.above, c.by > 0, "%s says %q and moves by %v", x.Text, c.word, c.by)
		}
	}
	for f := range flavor.NumAromaFamilies {
		by := x.Drink.Aroma[f] - drink.Aroma[f]
		more, less, _ := strings.Cut(x.Effect, "less ")
		if strings.Contains(more, "more "+flavor.AromaFamily(f).String()) {
			assert.Positive(t, by, "%s: %s", x.Text, flavor.AromaFamily(f))
		}
		if strings.HasPrefix(less, flavor.AromaFamily(f).String()) {
			assert.Negative(t, by, "%s: %s", x.Text, flavor.AromaFamily(f))
		}
	}
}

// claims are what words of a name say of a glass.
var claims = map[string]func(x *Riff) bool{
	"beer drink": func(x *Riff) bool { return poursClass(&x.Spec, flavor.ClassBeer) },
	"lemonade":   func(x *Riff) bool { return x.Drink.ABV <= flavor.NoAlcoholABV },
	"spritz":     func(x *Riff) bool { return sparkles(&x.Spec) && x.Spec.Service != flavor.Up },
	"collins":    func(x *Riff) bool { return sparkles(&x.Spec) },
	"frozen":     func(x *Riff) bool { return x.Spec.Method == flavor.Blend },
	"swizzle":    func(x *Riff) bool { return x.Spec.Service == flavor.Crushed },
	"hot drink":  func(x *Riff) bool { return x.Spec.Service == flavor.Hot },
	"stirred": func(x *Riff) bool {
		return !slices.ContainsFunc(x.Spec.Pours, func(p flavor.Pour) bool { return p.Profile.Class.Shaken() })
	},
	"milk punch": func(x *Riff) bool {
		return poursClass(&x.Spec, flavor.ClassDairy) || poursClass(&x.Spec, flavor.ClassPlantMilk) || poursClass(&x.Spec, flavor.ClassCreamLiqueur)
	},
	"equal-parts": func(x *Riff) bool { return largestPour(&x.Spec) < 2*smallestCarried(&x.Spec) },
}

// checkName holds a name to its form and to what is in the glass.
func checkName(t *testing.T, x *Riff) {
	t.Helper()
	lead, rest, ok := strings.Cut(x.Name, ": ")
	assert.True(t, ok, "%q has a lead and a family", x.Name)
	words, service, ok := strings.Cut(rest, ", ")
	assert.True(t, ok, "%q says how it is served", x.Name)
	assert.Contains(t, service, map[flavor.Service]string{flavor.Rocks: "on the rocks", flavor.Crushed: "on crushed ice", flavor.Up: "up", flavor.Long: "long", flavor.Hot: "hot", flavor.Neat: "neat"}[x.Spec.Service])
	first := strings.ToLower(strings.Split(strings.Split(lead, ", ")[0], " and ")[0])
	assert.True(t, slices.ContainsFunc(x.Spec.Pours, func(p flavor.Pour) bool { return strings.HasPrefix(strings.ToLower(p.Profile.Name), first) }), "%q leads with what is poured", x.Name)
	for word, holds := range claims {
		if strings.Contains(words, word) {
			assert.True(t, holds(x), "%q claims %s", x.Name, word)
		}
	}
}

func poursClass(s *flavor.Spec, c flavor.Class) bool {
	return slices.ContainsFunc(s.Pours, func(p flavor.Pour) bool { return p.Profile.Class == c })
}

func sparkles(s *flavor.Spec) bool {
	return slices.ContainsFunc(s.Pours, func(p flavor.Pour) bool { return p.Profile.Carbonated })
}

// largestPour and smallestCarried are of what carries a drink, in mL.
func largestPour(s *flavor.Spec) (most float64) {
	for _, p := range s.Pours {
		if carriesDrink(&p) {
			most = max(most, p.ML)
		}
	}
	return most
}

func smallestCarried(s *flavor.Spec) float64 {
	least := math.Inf(1)
	for _, p := range s.Pours {
		if carriesDrink(&p) {
			least = min(least, p.ML)
		}
	}
	return least
}

func carriesDrink(p *flavor.Pour) bool {
	return p.Profile.ABV.Value > flavor.NoAlcoholABV && p.Profile.Class.Part() != flavor.PartSeasoning && !p.Unit.Small()
}

// checkServed holds a riff to what can be mixed and served, as far as the drink
// that it came from is.
func checkServed(t *testing.T, from *flavor.Spec, x *Riff) {
	t.Helper()
	assert.LessOrEqual(t, len(x.Spec.Pours), max(7, len(from.Pours)), x.Text)
	assert.GreaterOrEqual(t, x.Drink.VolumeML, 50.0, x.Text)
	assert.LessOrEqual(t, x.Drink.VolumeML, 450.0, x.Text)
	for _, p := range x.Spec.Pours {
		new := !from.HasProfile(p.Profile)
		if p.Profile.Carbonated {
			assert.NotEqual(t, flavor.Blend, x.Spec.Method, "%s goes flat in %s", p.Profile.Name, x.Text)
			assert.True(t, p.After || x.Spec.Method == flavor.Build, "%s is shaken in %s", p.Profile.Name, x.Text)
			assert.True(t, !new || p.ML >= 29, "%s: a splash of %s", x.Text, p.Profile.Name)
		}
		if new && (p.Profile.Class.Shaken() || p.Profile.Class == flavor.ClassCoffee) && from.Method != flavor.Stir && from.Method != flavor.Throw {
			assert.NotContains(t, []flavor.Method{flavor.Stir, flavor.Throw}, x.Spec.Method, "%s is stirred in %s", p.Profile.Name, x.Text)
		}
		if p.Profile.Class == flavor.ClassEgg && x.Spec.Service != flavor.Hot {
			assert.Contains(t, []flavor.Method{flavor.Shake, flavor.DryShake, flavor.Blend}, x.Spec.Method, x.Text)
		}
	}
}

// checkKept holds a riff to what makes it one: beside what the guest or the
// stock rules out, it loses at most one pour without anything in its place.
func checkKept(t *testing.T, req *Request, x *Riff) {
	t.Helper()
	may := map[string]bool{}
	for _, p := range req.Stock {
		may[p.ID] = p.Avoids(req.Guest.Avoid)
	}
	lost, barred := strings.Count(strings.ToLower(x.Text), "leave out"), 0
	for i := range req.Spec.Pours {
		if !may[req.Spec.Pours[i].Profile.ID] {
			barred++
		}
	}
	assert.LessOrEqual(t, lost, max(1, barred), "%s loses more than one pour of %s", x.Text, req.Spec.Name)
}

// smallestBase is the smallest base that a drink pours, in mL.
func smallestBase(s *flavor.Spec) float64 {
	least := math.Inf(1)
	for i := range s.Pours {
		if s.Pours[i].Profile.Class.Part() == flavor.PartBase {
			least = min(least, s.Pours[i].ML)
		}
	}
	return least
}

// Whatever is asked of whatever drink, every riff is balanced, within every
// limit and unlike the others, and the seed alone decides the list.
func TestRiffsKeepTheirPromises(t *testing.T) {
	b := bartest.New(t)
	wishes := [][]string{nil, {"more bitter"}, {"less sweet"}, {"nuttier"}, {"no nuts"}, {"below 12 %"}, {"lighter"}, {"longer"}, {"more smoke", "no egg"}}
	rng := rand.New(rand.NewPCG(7, 7))
	found, rounds := 0, 24
	if testing.Short() {
		rounds = 6
	}
	for round := range rounds {
		spec := b.Proven[rng.IntN(len(b.Proven))].Spec
		if len(spec.Pours) > station.MaxPours {
			continue
		}
		toward, err := wish.Parse(wishes[round%len(wishes)], wish.NamesIn(b.Usual))
		require.NoError(t, err)
		req := Request{Spec: &spec, Toward: toward, Limit: 8, Seed: rng.Uint64(), Stock: b.Some(rng.IntN(2), 1+rng.IntN(2))}
		if round%3 != 0 {
			req.Stock = bartest.With(req.Stock, &spec)
		}
		req.Guest.Avoid = [][]flavor.Allergen{nil, {flavor.Sulphites}, {flavor.Eggs, flavor.TreeNuts}, {flavor.Milk}}[rng.IntN(4)]
		if round%5 == 0 {
			req.Guest.MaxABV = 18
		}
		res, err := Vary(context.Background(), b.Station, req)
		require.NoError(t, err, spec.Name)
		checkRiffs(t, b, &req, res)
		if round%4 == 0 {
			again, err := Vary(context.Background(), b.Station, req)
			require.NoError(t, err)
			assert.Equal(t, texts(res), texts(again), "the same seed gives the same list")
		}
		found += len(res.Riffs)
	}
	assert.Greater(t, found, rounds*4, "and there is something to read")
}
