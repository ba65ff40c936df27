package riff

import (
	"context"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/flavor"
	"counterpour/flavor/cover"
	"counterpour/flavor/measure"
	"counterpour/flavor/template"
)

func TestRelatives(t *testing.T) {
	b := newBar(t)
	for i := range b.proven {
		if i%23 != 0 {
			continue
		}
		got, err := b.riffer.Relatives(&b.proven[i].Spec, 3, cover.Guest{})
		require.NoError(t, err)
		require.Len(t, got, 3)
		assert.Zero(t, got[0].Distance, "a proven drink is its own nearest")
		assert.LessOrEqual(t, got[1].Distance, got[2].Distance)
	}
	got, err := b.riffer.Relatives(b.spec(t, ginSour), 1, cover.Guest{})
	require.NoError(t, err)
	assert.Equal(t, "sour", got[0].Proven.Family)
	_, err = b.riffer.Relatives(b.spec(t, ginSour), 0, cover.Guest{})
	assert.Error(t, err)

	nuts := []flavor.Allergen{flavor.TreeNuts}
	for _, c := range []struct {
		text  string
		guest cover.Guest
	}{{tropical, cover.Guest{Avoid: nuts}}, {tropical, cover.Guest{NoAlcohol: true}}, {ginSour, cover.Guest{NoAnimal: []string{"honey", "egg"}, MaxCost: 1}}} {
		got, err := b.riffer.Relatives(b.spec(t, c.text), 5, c.guest)
		require.NoError(t, err)
		require.Len(t, got, 5)
		for _, x := range got {
			for _, p := range x.Proven.Spec.Pours {
				assert.True(t, p.Profile.Avoids(c.guest.Avoid), "%s: %s", x.Proven.Spec.Name, p.Profile.Name)
				assert.False(t, c.guest.NoAlcohol && p.Profile.ABV.Value > cover.NoAlcoholABV, "%s: %s", x.Proven.Spec.Name, p.Profile.Name)
				for _, a := range c.guest.NoAnimal {
					assert.NotContains(t, p.Profile.Animal, a, "%s: %s", x.Proven.Spec.Name, p.Profile.Name)
				}
			}
		}
	}
}

// Six bottles that must move are all used, each draft in balance, and within
// what the guest may have.
func TestUseUpMovesEveryBottle(t *testing.T) {
	b := newBar(t)
	house, err := b.catalogue.Demo()
	require.NoError(t, err)
	var six []*flavor.Profile
	for _, name := range []string{"fino sherry", "apricot liqueur", "mezcal", "grenadine", "gentian amaro", "ruby port"} {
		six = append(six, b.bottle(t, name))
	}
	req := UseRequest{Bottles: six, Stock: house.Stock, Limit: 10}
	res, err := b.riffer.UseUp(context.Background(), req)
	require.NoError(t, err)
	assert.Empty(t, res.Unused)
	require.GreaterOrEqual(t, len(res.Drafts), 6)
	families := map[string]bool{}
	for i := range res.Drafts {
		d := &res.Drafts[i]
		require.NotEmpty(t, d.Uses, d.Text)
		for _, u := range d.Uses {
			assert.GreaterOrEqual(t, u.ML, leastUse(u.Profile), "%s moves %s", d.Text, u.Profile.Name)
			assert.Contains(t, d.Text, u.Profile.Name)
		}
		checkAmounts(t, &d.Spec)
		assert.GreaterOrEqual(t, d.Score, template.BalancedFrom)
		families[d.FamilyID] = true
		for j := range i {
			apart, err := Distance(b.mixer, &d.Spec, &res.Drafts[j].Spec)
			require.NoError(t, err)
			assert.GreaterOrEqual(t, apart, LeastDistance)
		}
	}
	assert.GreaterOrEqual(t, len(families), 4, "over the families")

	again, err := b.riffer.UseUp(context.Background(), req)
	require.NoError(t, err)
	require.Len(t, again.Drafts, len(res.Drafts))
	for i := range again.Drafts {
		assert.Equal(t, res.Drafts[i].Text, again.Drafts[i].Text)
	}
	req.Families = []string{"sour"}
	_, err = b.riffer.UseUp(context.Background(), req)
	require.NoError(t, err)

	// Wine may be fined with egg, and the amaro's recipe is not stated.
	avoid := []flavor.Allergen{flavor.Eggs}
	guarded, err := b.riffer.UseUp(context.Background(), UseRequest{Bottles: six, Stock: house.Stock, Limit: 10, Guest: cover.Guest{Avoid: avoid}})
	require.NoError(t, err)
	var unused []string
	for _, u := range guarded.Unused {
		unused = append(unused, u.Profile.ID)
	}
	assert.ElementsMatch(t, []string{"fino-sherry", "gentian-amaro", "ruby-port"}, unused)
	require.NotEmpty(t, guarded.Drafts)
	for i := range guarded.Drafts {
		assert.Equal(t, flavor.Free, guarded.Drafts[i].Spec.Clear(avoid), guarded.Drafts[i].Text)
	}
	req.Families = []string{"nothing"}
	_, err = b.riffer.UseUp(context.Background(), req)
	assert.ErrorIs(t, err, flavor.ErrUnknown)
}

// A bottle in no draft says why.
func TestUseUpSaysWhyNot(t *testing.T) {
	b := newBar(t)
	house, err := b.catalogue.Demo()
	require.NoError(t, err)
	bottles := func(names ...string) (out []*flavor.Profile) {
		for _, n := range names {
			out = append(out, b.bottle(t, n))
		}
		return out
	}
	sulphites := cover.Guest{Avoid: []flavor.Allergen{flavor.Sulphites}}
	for _, c := range []struct {
		name string
		req  UseRequest
		want map[string]Why
	}{
		{"guest", UseRequest{Bottles: bottles("fino sherry", "mezcal"), Guest: sulphites}, map[string]Why{"fino-sherry": WhyGuest}},
		{"a wish", UseRequest{Bottles: bottles("mezcal"), Toward: []Wish{{Kind: WishClass, Class: b.bottle(t, "mezcal").Class}}}, map[string]Why{"mezcal": WhyGuest}},
		{"no room", UseRequest{Bottles: bottles("fino sherry", "mezcal", "ruby port"), Limit: 1}, map[string]Why{"mezcal": WhyCrowded}},
		{"limit", UseRequest{Bottles: bottles("mezcal"), Toward: []Wish{{Kind: WishAbove, ABV: 60}}}, map[string]Why{"mezcal": WhyLimit}},
		{"no place", UseRequest{Bottles: bottles("mezcal"), Families: []string{"flip"}, Stock: bottles("soda water")}, map[string]Why{"mezcal": WhyNoPlace}},
		{"asked for twice", UseRequest{Bottles: bottles("fino sherry", "fino sherry"), Guest: sulphites}, map[string]Why{"fino-sherry": WhyGuest}},
	} {
		if c.req.Stock == nil {
			c.req.Stock = house.Stock
		}
		res, err := b.riffer.UseUp(context.Background(), c.req)
		require.NoError(t, err, c.name)
		got := map[string]Why{}
		for _, u := range res.Unused {
			_, twice := got[u.Profile.ID]
			assert.False(t, twice, "%s: told once", c.name)
			got[u.Profile.ID] = u.Why
		}
		for id, why := range c.want {
			assert.Equal(t, why, got[id], "%s: %s", c.name, id)
		}
	}
}

// The fitted ratio of a family is what its frames are sized to.
func TestSizedHasTheRatio(t *testing.T) {
	b := newBar(t)
	w := b.riffer.newWork(b.catalogue.Profiles(), &limits{}, "oz", 0)
	off := b.spec(t, "3 oz London dry gin\n1/4 oz lemon juice\n1 1/2 oz simple syrup\nshake, up")
	sized, err := w.sized(&frame{spec: *off, family: "sour"})
	require.NoError(t, err)
	centre, err := b.riffer.set.Centre("sour")
	require.NoError(t, err)
	apart := func(s *flavor.Spec) float64 {
		e := template.EquivalentsOf(s)
		d, err := template.AitchisonDistance(e[:len(centre)], centre) // strong, sweet, sour
		require.NoError(t, err)
		return d
	}
	// Half a step of the jigger in three quarters of an ounce is 0.15 of a logarithm, and two pours round.
	assert.Less(t, apart(sized), 0.30)
	assert.Greater(t, apart(off), 1.0)
}

// checkAmounts holds every pour to a step of the jigger, and what it says to
// what is in the glass.
func checkAmounts(t *testing.T, s *flavor.Spec) {
	t.Helper()
	for _, p := range s.Pours {
		per, ok := measure.MLPerUnit(p.Unit, p.Profile)
		require.True(t, ok)
		assert.InDelta(t, p.ML, p.Amount*per, rounding, "%s: %v %s", p.Profile.Name, p.Amount, p.Unit)
		assert.InDelta(t, measure.Snap(p.ML, p.Unit, p.Profile), p.Amount, rounding, p.Profile.Name)
	}
}

// A walk between drinks in different measures stays in that of the first.
func TestWalkKeepsTheMeasure(t *testing.T) {
	b := newBar(t)
	stops, err := b.riffer.Walk(context.Background(), WalkRequest{From: b.spec(t, bitterThird), To: b.spec(t, oldWhiskey)})
	require.NoError(t, err)
	require.Len(t, stops, DefaultSteps+2)
	for _, s := range stops[1 : DefaultSteps+1] {
		for _, p := range s.Spec.Pours {
			assert.False(t, p.Unit == flavor.Millilitre && p.ML > spoonML, "%s: %v ml", p.Profile.Name, p.Amount)
		}
	}
}

// What an end holds that the guest must not have is named with its end.
func TestWalkForAGuest(t *testing.T) {
	b := newBar(t)
	_, err := b.riffer.Walk(context.Background(), WalkRequest{From: b.spec(t, ginSour), To: b.spec(t, tropical),
		Guest: cover.Guest{Avoid: []flavor.Allergen{flavor.TreeNuts}}})
	var faults flavor.Faults
	require.ErrorAs(t, err, &faults)
	assert.Equal(t, "to.pours[3]", faults[0].Location)
	assert.Contains(t, faults[0].Message, "orgeat")
	_, err = b.riffer.Walk(context.Background(), WalkRequest{From: b.spec(t, ginSour), To: &flavor.Spec{}})
	var fault *flavor.Fault
	require.ErrorAs(t, err, &fault)
	assert.Equal(t, "to", fault.Location)
}

func TestWalk(t *testing.T) {
	b := newBar(t)
	for _, c := range []struct{ from, to string }{{ginSour, agaveDaisy}, {bitterThird, oldWhiskey}, {ginSour, bitterThird}, {ginSour, collins}} {
		from, to := b.spec(t, c.from), b.spec(t, c.to)
		for _, n := range []int{1, 3, 4} {
			stops, err := b.riffer.Walk(context.Background(), WalkRequest{From: from, To: to, Between: n})
			require.NoError(t, err)
			require.Len(t, stops, n+2)
			assert.Equal(t, from.Pours, stops[0].Spec.Pours, "it begins with the one")
			assert.Equal(t, to.Pours, stops[n+1].Spec.Pours, "and ends with the other")
			for i := range stops[:n+1] {
				assert.GreaterOrEqual(t, stops[i].Score, template.BalancedFrom)
				apart, err := Distance(b.mixer, &stops[i].Spec, &stops[i+1].Spec)
				require.NoError(t, err)
				assert.InDelta(t, apart, stops[i+1].Hop, rounding)
				assert.GreaterOrEqual(t, apart, leastHop)
				assert.NotNil(t, stops[i].Drink)
				checkAmounts(t, &stops[i].Spec)
			}
		}
	}
	same := b.spec(t, ginSour)
	_, err := b.riffer.Walk(context.Background(), WalkRequest{From: same, To: same, Between: 3})
	assert.ErrorIs(t, err, flavor.ErrInvalid, "nothing lies between a drink and itself")
	_, err = b.riffer.Walk(context.Background(), WalkRequest{From: same, To: same, Between: MaxSteps + 1})
	assert.ErrorIs(t, err, flavor.ErrInvalid)
}
