package outs

import (
	"context"
	"math"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/flavor"
	"counterpour/flavor/guest"
	"counterpour/flavor/weigh"
)

// Each drink says for itself whether its covers keep the balance, as the same
// drink does alone.
func TestOutsSaysWhereBalanceIsLost(t *testing.T) {
	b := newBench(t)
	specs, _ := b.house(t)
	short, err := b.catalogue.ReadSpec("", "4 oz red wine\n12 g white sugar\n2 slices orange\nshake, crushed")
	require.NoError(t, err)
	specs = append(specs, &short)
	out := b.profiles(t, "london-dry-gin", "artichoke-amaro", "lemon-juice", "red-wine")
	stock := b.profiles(t, "old-tom-gin", "orange-juice", "fernet", "ruby-port") // little to put the rest right with
	r, err := Find(context.Background(), b.finder, Request{Specs: specs, Out: out, Stock: stock, Parts: 1})
	require.NoError(t, err)
	var kept, lost int
	for i := range r.Touched {
		touched := &r.Touched[i]
		least := math.Min(weigh.BalancedFrom, touched.ScoreBefore-5)
		for _, c := range touched.Covers {
			assert.Equal(t, touched.Unbalanced, c.Score < least, "%s: %s scores %.1f", touched.Spec.Name, c.Text, c.Score)
		}
		if touched.Unbalanced {
			assert.NotEmpty(t, touched.Covers, "no cover is no cover out of balance")
			lost++
		} else if len(touched.Covers) > 0 {
			kept++
		}
	}
	assert.Positive(t, kept)
	assert.Positive(t, lost)
}

// No bottle is proposed to be fetched that the guest must not have, and no drink
// counts as whole again that the guest must not have even so.
func TestFetchKeepsToTheGuest(t *testing.T) {
	b := newBench(t)
	const (
		almond    = "2 oz aged rum\n3/4 oz lime juice\n1/2 oz orgeat\nshake, up"
		spice     = "2 oz aged rum\n3/4 oz lime juice\n1/2 oz cinnamon syrup\nshake, up"
		both      = "1 oz aged rum\n3/4 oz lime juice\n1/2 oz cinnamon syrup\n1/4 oz orgeat\nshake, up"
		honeyed   = "2 oz gin\n3/4 oz lemon juice\n3/4 oz honey syrup\nshake, up"
		foamy     = "2 oz gin\n3/4 oz lemon juice\n3/4 oz simple syrup\n1 piece egg white\nshake, up"
		temperate = "1 oz cinnamon syrup\n1 oz lime juice\n4 oz soda water\nbuild, long"
	)
	stock := b.profiles(t, "lemon-juice", "lime-juice", "simple-syrup", "aged-rum", "soda-water", "demerara-syrup")
	out := []string{"orgeat", "cinnamon-syrup", "honey-syrup", "egg-white", "london-dry-gin"}
	for _, c := range []struct {
		name  string
		menu  []string
		guest guest.Guest
		want  map[string]int // the drinks that each bottle brings back
	}{
		{"anyone", []string{almond, spice, both, honeyed, foamy, temperate}, guest.Guest{},
			map[string]int{"orgeat": 1, "cinnamon-syrup": 2, "honey-syrup": 0, "egg-white": 0, "london-dry-gin": 0}},
		{"tree nuts", []string{almond, spice, both}, guest.Guest{Avoid: []flavor.Allergen{flavor.TreeNuts}},
			map[string]int{"cinnamon-syrup": 1, "honey-syrup": 0, "egg-white": 0, "london-dry-gin": 0}},
		{"vegan", []string{honeyed, foamy, spice}, guest.Guest{NoAnimal: []string{"honey", "egg"}},
			map[string]int{"orgeat": 0, "cinnamon-syrup": 1, "london-dry-gin": 0}},
		{"no alcohol", []string{spice, temperate}, guest.Guest{NoAlcohol: true},
			map[string]int{"orgeat": 0, "cinnamon-syrup": 1, "honey-syrup": 0, "egg-white": 0}},
		{"little alcohol", []string{spice, temperate}, guest.Guest{MaxABV: 8},
			map[string]int{"orgeat": 0, "cinnamon-syrup": 1, "honey-syrup": 0, "egg-white": 0, "london-dry-gin": 0}},
		{"a limit on what covers cost", []string{almond, spice}, guest.Guest{MaxCost: 1, Prices: map[string]float64{"simple-syrup": 0.01}},
			map[string]int{"orgeat": 1, "cinnamon-syrup": 1, "honey-syrup": 0, "egg-white": 0, "london-dry-gin": 0}},
	} {
		r, err := Find(context.Background(), b.finder, Request{Specs: b.menu(t, c.menu...), Out: b.profiles(t, out...),
			Stock: stock, Guest: c.guest, Parts: 1})
		require.NoError(t, err, c.name)
		got := map[string]int{}
		for _, f := range r.Fetch {
			got[f.Profile.ID] = f.Drinks
			assert.LessOrEqual(t, f.Lost, f.Drinks)
		}
		assert.Equal(t, c.want, got, c.name)
	}
}

// A bottle whose allergens nobody has stated may hold any of them.
func TestFetchCountsUnknownAllergensAsPresent(t *testing.T) {
	b := newBench(t)
	unknown := *b.profiles(t, "cinnamon-syrup")[0]
	unknown.AllergensKnown, unknown.AllergenMarks = false, nil
	spec := b.menu(t, "2 oz aged rum\n3/4 oz lime juice\n1/2 oz cinnamon syrup\nshake, up")[0]
	for i := range spec.Pours {
		if spec.Pours[i].Profile.ID == unknown.ID {
			spec.Pours[i].Profile = &unknown
		}
	}
	request := Request{Specs: []*flavor.Spec{spec}, Out: []*flavor.Profile{&unknown}, Stock: b.profiles(t, "simple-syrup", "demerara-syrup")}
	for _, a := range flavor.Allergens() {
		request.Guest.Avoid = []flavor.Allergen{a}
		r, err := Find(context.Background(), b.finder, request)
		require.NoError(t, err)
		assert.Empty(t, r.Fetch, a)
	}
	request.Guest.Avoid = nil
	r, err := Find(context.Background(), b.finder, request)
	require.NoError(t, err)
	require.Len(t, r.Fetch, 1)
	assert.Equal(t, 1, r.Fetch[0].Drinks)
}

// Over the demo menu, whatever the guest avoids, nothing is fetched that carries
// it.
func TestFetchNeverCarriesWhatIsAvoided(t *testing.T) {
	b := newBench(t)
	specs, stock := b.house(t)
	out := b.profiles(t, "falernum", "orgeat", "heavy-cream", "egg-white", "sweet-vermouth", "triple-sec")
	specs = onePouring(specs, out)
	fetched := 0
	for _, a := range flavor.Allergens() {
		r, err := Find(context.Background(), b.finder, Request{Specs: specs, Out: out, Stock: stock,
			Guest: guest.Guest{Avoid: []flavor.Allergen{a}}, Parts: 1})
		require.NoError(t, err)
		for _, f := range r.Fetch {
			fetched++
			assert.True(t, f.Profile.AllergensKnown, "%s for a guest who avoids %s", f.Profile.Name, a)
			assert.False(t, slices.ContainsFunc(f.Profile.AllergenMarks, func(m flavor.AllergenMark) bool { return m.Allergen == a }),
				"%s for a guest who avoids %s", f.Profile.Name, a)
		}
		for _, p := range out {
			if p.Avoids([]flavor.Allergen{a}) {
				assert.True(t, slices.ContainsFunc(r.Fetch, func(f Fetch) bool { return f.Profile.ID == p.ID }), "%s is free of %s", p.Name, a)
			}
		}
	}
	assert.Positive(t, fetched)
}

// onePouring returns, for each of some bottles, the first spec that pours it.
func onePouring(specs []*flavor.Spec, bottles []*flavor.Profile) (out []*flavor.Spec) {
	for _, bottle := range bottles {
		at := slices.IndexFunc(specs, func(s *flavor.Spec) bool {
			return slices.ContainsFunc(s.Pours, func(p flavor.Pour) bool { return p.Profile == bottle })
		})
		if at >= 0 && !slices.Contains(out, specs[at]) {
			out = append(out, specs[at])
		}
	}
	return out
}
