package station_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"counterpour/data/bartest"
	"counterpour/flavor"
	"counterpour/flavor/guest"
	"counterpour/flavor/measure"
)

// What the limits forbid is not on the shelf, what may be poured is there once.
func TestShelfKeepsToTheLimits(t *testing.T) {
	b := bartest.New(t)
	all := b.Catalogue.Profiles()
	rapid.Check(t, func(rt *rapid.T) {
		avoid := rapid.SampledFrom(flavor.Allergens()).Draw(rt, "avoid")
		l := b.Limits(rt, guest.Guest{Avoid: []flavor.Allergen{avoid}}, rapid.SampledFrom([]string{"no rum", "no smoke", "no honey"}).Draw(rt, "wish"))
		var stock []*flavor.Profile
		for range rapid.IntRange(1, 60).Draw(rt, "bottles") {
			stock = append(stock, all[rapid.IntRange(0, len(all)-1).Draw(rt, "bottle")])
		}
		j := b.Station.NewJob(stock, l, measure.Imperial, 1)
		seen := map[string]bool{}
		for i := range j.Shelf {
			p := j.Shelf[i].Profile
			assert.False(rt, seen[p.ID], "%s is there twice", p.ID)
			seen[p.ID] = true
			assert.True(rt, l.Accepts(p), p.ID)
			assert.Equal(rt, flavor.Free, p.Clear([]flavor.Allergen{avoid}), p.ID)
			assert.Contains(rt, stock, p)
		}
		refused := map[string]bool{}
		for _, p := range stock {
			_, has := j.Has(p)
			assert.Equal(rt, seen[p.ID], has, p.ID)
			if !l.Accepts(p) {
				refused[p.ID] = true
			}
		}
		assert.Equal(rt, len(refused), j.Left.ByGuest)
	})
}

// What counts as moving a bottle is never more than what is poured of it at most,
// and a usual pour is within that too.
func TestPoursAreWithinWhatIsPoured(t *testing.T) {
	b := bartest.New(t)
	const slack = 1e-6
	j := b.Station.NewJob(b.Catalogue.Profiles(), b.Limits(t, guest.Guest{}), measure.Imperial, 1)
	require.NotEmpty(t, j.Shelf)
	for i := range j.Shelf {
		it := &j.Shelf[i]
		most := j.MostUsual(it.Profile)
		assert.Positive(t, most, it.Profile.ID)
		assert.LessOrEqual(t, j.LeastUse(it.Profile), most+slack, it.Profile.ID)
		assert.Equal(t, most, j.MostOf(it.Profile), "nothing was given")
		if p, ok := j.Usual(it); ok {
			assert.Positive(t, p.ML, it.Profile.ID)
			step := measure.Step(p.Unit)
			per, known := measure.MLPerUnit(p.Unit, it.Profile)
			require.True(t, known)
			assert.LessOrEqual(t, p.ML, most+step*per+slack, "%s: beyond the most by more than a step", it.Profile.ID)
		}
	}
}

// A drink costs what its pours do, one by one.
func TestCostAddsUp(t *testing.T) {
	b := bartest.New(t)
	rapid.Check(t, func(rt *rapid.T) {
		s := &b.Proven[rapid.IntRange(0, len(b.Proven)-1).Draw(rt, "drink")].Spec
		prices := map[string]float64{}
		var want float64
		for _, p := range s.Pours {
			if _, told := prices[p.Profile.ID]; !told && rapid.Bool().Draw(rt, "priced") {
				prices[p.Profile.ID] = rapid.Float64Range(0, 0.2).Draw(rt, "price")
			}
		}
		for _, p := range s.Pours {
			want += p.ML * prices[p.Profile.ID]
		}
		got, _ := s.Cost(prices)
		assert.InDelta(rt, want, got, 1e-9)
	})
}
