package cover

import (
	"context"
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/flavor"
	"counterpour/flavor/guest"
)

func TestTastingsShiftTheRanking(t *testing.T) {
	b := newBench(t)
	plain := b.request(t, tropical, "falernum", 2, 10)
	before, err := b.finder.Find(context.Background(), plain)
	require.NoError(t, err)
	first := before.Covers[0]
	ids := make([]string, len(first.Parts))
	for i, p := range first.Parts {
		ids[i] = p.Profile.ID
	}
	with := func(liked float64, times int) *Result {
		r := plain
		for range times {
			r.Tastings = append(r.Tastings, Tasting{Missing: "falernum", Parts: ids, Liked: liked})
		}
		got, err := b.finder.Find(context.Background(), r)
		require.NoError(t, err)
		return got
	}
	assert.Equal(t, before.Covers, with(1, 0).Covers, "with no results nothing changes")
	rankOf := func(r *Result) int {
		for i := range r.Covers {
			if r.Covers[i].Text == first.Text {
				return i
			}
		}
		return len(r.Covers)
	}
	assert.Zero(t, rankOf(with(1, 5)))
	assert.Positive(t, rankOf(with(0, 20)), "a cover that is always sent back gives up the first place")
	last := before.Covers[len(before.Covers)-1]
	ids = ids[:0]
	for _, p := range last.Parts {
		ids = append(ids, p.Profile.ID)
	}
	first = last
	assert.Less(t, rankOf(with(1, 20)), len(before.Covers)-1, "one that is always kept moves up")
}

func TestGuestLimits(t *testing.T) {
	b := newBench(t)
	r := b.request(t, agaveDaisy, "triple sec", 2, 10)
	r.Guest = guest.Guest{NoAnimal: []string{"honey", "milk", "egg", "insect", "fish"}}
	got, err := b.finder.Find(context.Background(), r)
	require.NoError(t, err)
	require.NotEmpty(t, got.Covers)
	for _, c := range got.Covers {
		for _, p := range c.Spec.Pours {
			for _, a := range r.Guest.NoAnimal {
				assert.NotContains(t, p.Profile.Animal, a)
			}
		}
	}
	r.Guest = guest.Guest{MaxABV: 15}
	got, err = b.finder.Find(context.Background(), r)
	require.NoError(t, err)
	for _, c := range got.Covers {
		drink, err := b.finder.tools.Mixer.Mix(&c.Spec)
		require.NoError(t, err)
		assert.LessOrEqual(t, drink.ABV, 15.0)
	}
	r.Guest = guest.Guest{MaxCost: 0.6, Prices: map[string]float64{"orange-curacao": 0.03, "mandarin-liqueur": 0.01, "blue-curacao": 0.02}}
	got, err = b.finder.Find(context.Background(), r)
	require.NoError(t, err)
	for _, c := range got.Covers {
		var cost float64
		for _, p := range c.Parts {
			perML, priced := r.Guest.Prices[p.Profile.ID]
			assert.True(t, priced, "%s has no price", p.Profile.Name)
			cost += perML * p.ML
		}
		assert.LessOrEqual(t, cost, 0.6)
	}
	for _, bad := range []guest.Guest{{MaxABV: -1}, {MaxABV: 101}, {MaxCost: -1}} {
		r.Guest = bad
		_, err := b.finder.Find(context.Background(), r)
		assert.ErrorIs(t, err, flavor.ErrInvalid)
	}
}

// No cover ever carries what a guest avoids, whatever the drink, the bottle
// out, the stock and the allergens. Candidates are checked one by one: every
// ingredient is tried on that check for every allergen and every two, and searches
// show that nothing gets past it.
func TestAllergensNeverPass(t *testing.T) {
	b := newBench(t)
	rng := rand.New(rand.NewPCG(20, 26))
	all := b.catalogue.Profiles()
	allergens := flavor.Allergens()
	pick := func() []flavor.Allergen {
		var out []flavor.Allergen
		for range 1 + rng.IntN(3) {
			out = append(out, allergens[rng.IntN(len(allergens))])
		}
		return out
	}
	carries := func(p *flavor.Profile, avoid []flavor.Allergen) bool {
		for _, a := range avoid {
			if !p.AllergensKnown && !slices.Contains(p.FreeOf, a) {
				return true
			}
			for _, m := range p.AllergenMarks {
				if m.Allergen == a {
					return true
				}
			}
		}
		return false
	}
	for i, a := range allergens { // one and the same twice is one
		for _, other := range allergens[i:] {
			g := guest.Guest{Avoid: []flavor.Allergen{a, other}}
			for _, p := range all {
				if g.Accepts(p) == carries(p, g.Avoid) {
					t.Fatalf("%s for a guest who avoids %v", p.ID, g.Avoid)
				}
			}
		}
	}
	specs := b.demoMenu(t)
	rounds := 90 // whom an ingredient suits is tried whole above: here, that only such are poured
	if testing.Short() {
		rounds = 30
	}
	covers := 0
	for range rounds {
		s := specs[rng.IntN(len(specs))]
		r := Request{Spec: s, Missing: []*flavor.Profile{s.Pours[rng.IntN(len(s.Pours))].Profile},
			Guest: guest.Guest{Avoid: pick()}, Parts: 1 + rng.IntN(2), Limit: 5}
		for range 120 {
			r.Candidates = append(r.Candidates, all[rng.IntN(len(all))])
		}
		got, err := b.finder.Find(context.Background(), r)
		require.NoError(t, err)
		for _, c := range got.Covers {
			covers++
			for _, p := range c.Spec.Pours {
				require.False(t, carries(p.Profile, r.Guest.Avoid), "%s in %s for a guest who avoids %v", p.Profile.ID, s.Name, r.Guest.Avoid)
			}
			for _, m := range c.Marks {
				require.NotContains(t, r.Guest.Avoid, m.Allergen)
			}
		}
	}
	require.Greater(t, covers, rounds, "the searches found covers to check")
}

// What a guest avoids beside the allergens of the law is never poured, nor what keeps its recipe;
// soda stands for the tonic, and no other tonic. Common practice, no source.
func TestCoversForWhoAvoidsASubstance(t *testing.T) {
	b := newBench(t)
	for _, c := range []struct {
		drink, out string
		avoid      flavor.Allergen
		shelf      []string
		none       []string // of these
	}{
		{"60 ml London dry gin\n150 ml tonic water\nbuild, long", "tonic-water", flavor.Quinine,
			[]string{"light-tonic-water", "bitter-lemon", "soda-water", "grapefruit-soda", "lemon-lime-soda"}, []string{"light-tonic-water", "bitter-lemon"}},
		{"60 ml blanco tequila\n15 ml lime juice\n120 ml grapefruit soda\nbuild, long", "grapefruit-soda", flavor.Grapefruit,
			[]string{"grapefruit-juice", "soda-water", "lemon-lime-soda", "grapefruit-cordial", "simple-syrup"}, []string{"grapefruit-juice", "grapefruit-cordial"}},
		{"60 ml rye whiskey\n30 ml sweet vermouth\n2 dashes orange bitters\nstir, up", "sweet-vermouth", flavor.Liquorice,
			[]string{"blanc-vermouth", "ruby-port", "medium-amaro", "madeira"}, []string{"blanc-vermouth", "medium-amaro"}},
	} {
		got := b.found(t, c.drink, c.out, guest.Guest{Avoid: []flavor.Allergen{c.avoid}}, c.shelf...)
		for i := range got.Covers {
			for _, p := range got.Covers[i].Spec.Pours {
				assert.True(t, p.Profile.Avoids([]flavor.Allergen{c.avoid}), "%s: %s", c.avoid, got.Covers[i].Text)
				assert.NotContains(t, c.none, p.Profile.ID, got.Covers[i].Text)
			}
		}
		if c.avoid != flavor.Liquorice {
			assert.NotEmpty(t, got.Covers, c.out)
		}
	}
}
