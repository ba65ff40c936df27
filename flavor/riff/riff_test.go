package riff

import (
	"context"
	"fmt"
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/flavor"
	"counterpour/flavor/cover"
	"counterpour/flavor/measure"
	"counterpour/flavor/template"
)

// rounding absorbs the last digits of a number that is worked out twice.
const rounding = 1e-9

// texts are what a riff was asked for, to compare lists by.
func texts(r *Result) (out []string) {
	for _, x := range r.Riffs {
		out = append(out, fmt.Sprintf("%s %.6f %s", x.Kind, x.Score, measure.Format(x.Spec)))
	}
	return out
}

// checkRiffs holds a list to all that is promised of it.
func checkRiffs(t *testing.T, b *bar, req *Request, res *Result) {
	t.Helper()
	may := map[string]bool{}
	for _, p := range req.Stock {
		may[p.ID] = true
	}
	for i := range res.Riffs {
		x := &res.Riffs[i]
		score, err := b.riffer.judge.ScoreOnly(&x.Spec)
		require.NoError(t, err)
		assert.InDelta(t, score, x.Score, rounding, "the score is the engine's")
		assert.GreaterOrEqual(t, score, template.BalancedFrom, x.Text)
		for _, p := range x.Spec.Pours {
			for _, a := range req.Guest.Avoid {
				_, has := p.Profile.Allergen(a)
				assert.False(t, has, "%s may hold %s", p.Profile.Name, a)
			}
			assert.True(t, may[p.Profile.ID], "%s is in stock", p.Profile.Name)
			assert.InDelta(t, measure.Snap(p.ML, p.Unit, p.Profile), p.Amount, rounding, "%s is a step of the jigger", p.Profile.Name)
			if p.Profile.Class.Part() == flavor.PartBase && !poured(req.Spec, p.Profile) {
				assert.GreaterOrEqual(t, p.ML, min(leastBaseML, smallestBase(req.Spec)), "%s: a base is no dash: %s", x.Text, p.Profile.Name)
			}
		}
		if req.Guest.MaxABV > 0 {
			assert.LessOrEqual(t, x.Drink.ABV, req.Guest.MaxABV, x.Text)
		}
		if req.Guest.MaxCost > 0 {
			assert.LessOrEqual(t, costOf(&x.Spec, req.Guest.Prices), req.Guest.MaxCost)
		}
		checkKept(t, req, x)
		if x.FamilyID == hotFamily {
			assert.Equal(t, flavor.Up, x.Spec.Service, "%s: a hot drink is on no ice", x.Text)
		}
		from, err := Distance(b.mixer, req.Spec, &x.Spec)
		require.NoError(t, err)
		assert.InDelta(t, from, x.Distance, rounding)
		assert.GreaterOrEqual(t, from, LeastDistance)
		for j := range i {
			apart, err := Distance(b.mixer, &x.Spec, &res.Riffs[j].Spec)
			require.NoError(t, err)
			assert.GreaterOrEqual(t, apart, LeastDistance, "%s / %s", x.Text, res.Riffs[j].Text)
		}
		assert.NotEmpty(t, x.Text)
		assert.NotContains(t, x.Text, "\n", "one line")
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
	b := newBar(t)
	wishes := [][]string{nil, {"more bitter"}, {"less sweet"}, {"nuttier"}, {"no nuts"}, {"below 12 %"}, {"lighter"}, {"longer"}, {"more smoke", "no egg"}}
	rng := rand.New(rand.NewPCG(7, 7))
	found, rounds := 0, 24
	if testing.Short() {
		rounds = 6
	}
	for round := range rounds {
		spec := b.proven[rng.IntN(len(b.proven))].Spec
		if len(spec.Pours) > MaxPours {
			continue
		}
		toward, err := ParseWishes(wishes[round%len(wishes)])
		require.NoError(t, err)
		req := Request{Spec: &spec, Toward: toward, Limit: 8, Seed: rng.Uint64(), Stock: b.stock(3+rng.IntN(4), 300)}
		if round%3 != 0 {
			req.Stock = with(req.Stock, &spec)
		}
		req.Guest.Avoid = [][]flavor.Allergen{nil, {flavor.Sulphites}, {flavor.Eggs, flavor.TreeNuts}, {flavor.Milk}}[rng.IntN(4)]
		if round%5 == 0 {
			req.Guest.MaxABV = 18
		}
		res, err := b.riffer.Riff(context.Background(), req)
		require.NoError(t, err, spec.Name)
		checkRiffs(t, b, &req, res)
		again, err := b.riffer.Riff(context.Background(), req)
		require.NoError(t, err)
		assert.Equal(t, texts(res), texts(again), "the same seed gives the same list")
		found += len(res.Riffs)
	}
	assert.Greater(t, found, rounds*4, "and there is something to read")
}

// Each wish is met in the finished drink by a step that can be told.
func TestWishesAreMet(t *testing.T) {
	b := newBar(t)
	for _, c := range []struct {
		text, wish string
		met        func(r *Riff, before *place) bool
	}{
		{ginSour, "more bitter", func(r *Riff, p *place) bool { return r.at[rowBitter]-p[rowBitter] >= leastStep }},
		{ginSour, "less sweet", func(r *Riff, p *place) bool { return p[rowSweet]-r.at[rowSweet] >= leastStep }},
		{oldWhiskey, "nuttier", func(r *Riff, p *place) bool {
			return r.at[rowAroma+int(flavor.Nut)]-p[rowAroma+int(flavor.Nut)] >= tellsAroma
		}},
		{agaveDaisy, "below 12 %", func(r *Riff, _ *place) bool { return r.Drink.ABV <= 12 }},
		{bitterThird, "lighter", func(r *Riff, p *place) bool { return p[rowStrong]-r.at[rowStrong] >= leastStep }},
		{bitterThird, "longer", func(r *Riff, p *place) bool { return r.at[rowVolume]-p[rowVolume] >= leastStep }},
		{oldWhiskey, "no clove", func(r *Riff, _ *place) bool {
			return r.Drink.Aroma[flavor.Clove] < cover.DefaultWeights().AromaFloor
		}},
		{ginSour, "no gin", func(r *Riff, _ *place) bool { return largestClass(&r.Spec) != flavor.ClassGin }},
	} {
		spec := b.spec(t, c.text)
		toward, err := ParseWishes([]string{c.wish})
		require.NoError(t, err)
		res, err := b.riffer.Riff(context.Background(), Request{Spec: spec, Toward: toward, Stock: with(b.stock(2, 400), spec)})
		require.NoError(t, err)
		require.GreaterOrEqual(t, len(res.Riffs), 5, c.wish)
		drink, err := b.mixer.Mix(spec)
		require.NoError(t, err)
		before := placeOf(spec, drink)
		for i := range res.Riffs {
			assert.True(t, c.met(&res.Riffs[i], &before), "%s: %s", c.wish, res.Riffs[i].Text)
		}
	}
}

func largestClass(s *flavor.Spec) flavor.Class {
	return s.Pours[max(0, largest(s, flavor.PartBase))].Profile.Class
}

// What loses a pour to the guest loses no other to a wish: gin and tonic is no
// riff of gin, bitter and vermouth.
func TestARiffKeepsTheDrink(t *testing.T) {
	b := newBar(t)
	spec := b.spec(t, bitterThird)
	toward, err := ParseWishes([]string{"lighter"})
	require.NoError(t, err)
	house, err := b.catalogue.Demo()
	require.NoError(t, err)
	req := Request{Spec: spec, Stock: with(house.Stock, spec), Toward: toward, Limit: 20, Guest: cover.Guest{Avoid: []flavor.Allergen{flavor.Sulphites}}}
	res, err := b.riffer.Riff(context.Background(), req)
	require.NoError(t, err)
	require.NotEmpty(t, res.Riffs)
	checkRiffs(t, b, &req, res)
}

// Coffee lengthens a stirred drink to one that reads as a hot one; on ice it is
// not listed.
func TestHotDrinksAreOnNoIce(t *testing.T) {
	b := newBar(t)
	spec := b.spec(t, oldWhiskey)
	var stock []*flavor.Profile
	for _, p := range b.catalogue.Profiles() {
		if p.Class.Kin() == flavor.KinTea {
			stock = append(stock, p)
		}
	}
	toward, err := ParseWishes([]string{"below 15 %"})
	require.NoError(t, err)
	req := Request{Spec: spec, Stock: with(stock, spec), Toward: toward, Limit: MaxLimit}
	res, err := b.riffer.Riff(context.Background(), req)
	require.NoError(t, err)
	checkRiffs(t, b, &req, res)
}

// An ingredient whose allergens nobody has stated is poured for nobody who
// avoids any.
func TestUnknownAllergensCountAsPresent(t *testing.T) {
	b := newBar(t)
	spec := b.spec(t, ginSour)
	secret := *b.bottle(t, "mezcal")
	secret.ID, secret.AllergensKnown = "unlabelled-spirit", false
	stock := append(with(nil, spec), &secret)
	ask := func(avoid ...flavor.Allergen) bool {
		res, err := b.riffer.Riff(context.Background(), Request{Spec: spec, Stock: stock, Guest: cover.Guest{Avoid: avoid}})
		require.NoError(t, err)
		for i := range res.Riffs {
			if poured(&res.Riffs[i].Spec, &secret) {
				return true
			}
		}
		return false
	}
	assert.True(t, ask(), "it is poured for anybody else")
	assert.False(t, ask(flavor.Celery))
}

func TestCostIsOfTheWholeDrink(t *testing.T) {
	b := newBar(t)
	spec := b.spec(t, ginSour)
	stock := with(b.stock(5, 200), spec)
	prices := map[string]float64{}
	for i, p := range stock {
		if i%4 != 0 || poured(spec, p) {
			prices[p.ID] = 0.01 + 0.0005*float64(i%90)
		}
	}
	req := Request{Spec: spec, Stock: stock, Guest: cover.Guest{Prices: prices, MaxCost: 2.4}}
	res, err := b.riffer.Riff(context.Background(), req)
	require.NoError(t, err)
	require.NotEmpty(t, res.Riffs)
	checkRiffs(t, b, &req, res)
	for i := range res.Riffs {
		for _, p := range res.Riffs[i].Spec.Pours {
			assert.Contains(t, prices, p.Profile.ID, "without a price it is not poured")
		}
	}
}

func TestSeedsDifferAndLimitsHold(t *testing.T) {
	b := newBar(t)
	spec := b.spec(t, ginSour)
	req := Request{Spec: spec, Stock: with(b.stock(2, 400), spec), Limit: MaxLimit}
	long, err := b.riffer.Riff(context.Background(), req)
	require.NoError(t, err)
	assert.Greater(t, len(long.Riffs), 30)
	checkRiffs(t, b, &req, long)
	req.Limit = 10
	one, err := b.riffer.Riff(context.Background(), req)
	require.NoError(t, err)
	req.Seed = 99
	other, err := b.riffer.Riff(context.Background(), req)
	require.NoError(t, err)
	assert.NotEqual(t, texts(one), texts(other))
	kinds := map[Kind]int{}
	for _, x := range one.Riffs {
		kinds[x.Kind]++
	}
	assert.GreaterOrEqual(t, len(kinds), 5, "a list worth reading is of many kinds: %v", kinds)
}

func TestRequestFaults(t *testing.T) {
	b := newBar(t)
	spec := b.spec(t, ginSour)
	ok := Request{Spec: spec, Stock: b.stock(10, 100)}
	for name, spoil := range map[string]func(*Request){
		"no spec":         func(r *Request) { r.Spec = nil },
		"empty spec":      func(r *Request) { r.Spec = &flavor.Spec{} },
		"no ingredient":   func(r *Request) { r.Spec = &flavor.Spec{Pours: []flavor.Pour{{ML: 30}}} },
		"no stock":        func(r *Request) { r.Stock = nil },
		"limit too big":   func(r *Request) { r.Limit = MaxLimit + 1 },
		"limit negative":  func(r *Request) { r.Limit = -1 },
		"strength absurd": func(r *Request) { r.Guest.MaxABV = math.NaN() },
		"cost negative":   func(r *Request) { r.Guest.MaxCost = -1 },
		"wish unknown":    func(r *Request) { r.Toward = []Wish{{Kind: "odd"}} },
	} {
		r := ok
		spoil(&r)
		_, err := b.riffer.Riff(context.Background(), r)
		var fault *flavor.Fault
		require.ErrorAs(t, err, &fault, name)
		assert.NotEmpty(t, fault.Message)
	}
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	_, err := b.riffer.Riff(ctx, ok)
	assert.ErrorIs(t, err, context.Canceled)
}

func TestDistanceIsADistance(t *testing.T) {
	b := newBar(t)
	a, c, d := b.spec(t, ginSour), b.spec(t, bitterThird), b.spec(t, collins)
	dist := func(x, y *flavor.Spec) float64 {
		v, err := Distance(b.mixer, x, y)
		require.NoError(t, err)
		return v
	}
	assert.Zero(t, dist(a, a))
	assert.InDelta(t, dist(a, c), dist(c, a), rounding)
	assert.LessOrEqual(t, dist(a, d), dist(a, c)+dist(c, d))
	// One Weber fraction of sugar in a sweet drink is about one difference.
	more := b.spec(t, "2 oz London dry gin\n3/4 oz lemon juice\n0.8625 oz simple syrup\nshake, up")
	assert.InDelta(t, 1, dist(a, more), 0.35)
}
