package riff

import (
	"context"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/flavor"
	"counterpour/flavor/cover"
	"counterpour/flavor/template"
)

func TestRelatives(t *testing.T) {
	b := newBar(t)
	for i := range b.proven {
		if i%23 != 0 {
			continue
		}
		got, err := b.riffer.Relatives(&b.proven[i].Spec, 3)
		require.NoError(t, err)
		require.Len(t, got, 3)
		assert.Zero(t, got[0].Distance, "a proven drink is its own nearest")
		assert.LessOrEqual(t, got[1].Distance, got[2].Distance)
	}
	got, err := b.riffer.Relatives(b.spec(t, ginSour), 1)
	require.NoError(t, err)
	assert.Equal(t, "sour", got[0].Proven.Family)
	_, err = b.riffer.Relatives(b.spec(t, ginSour), 0)
	assert.Error(t, err)
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
	req := UseRequest{Bottles: six, Stock: house.Stock, Limit: 10, Guest: cover.Guest{Avoid: []flavor.Allergen{flavor.Eggs}}}
	res, err := b.riffer.UseUp(context.Background(), req)
	require.NoError(t, err)
	assert.Empty(t, res.Unused)
	require.GreaterOrEqual(t, len(res.Drafts), 6)
	families := map[string]bool{}
	for i := range res.Drafts {
		d := &res.Drafts[i]
		require.NotEmpty(t, d.Uses, d.Text)
		assert.GreaterOrEqual(t, d.Score, template.BalancedFrom)
		families[d.FamilyID] = true
		for _, p := range d.Spec.Pours {
			_, has := p.Profile.Allergen(flavor.Eggs)
			assert.False(t, has)
		}
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
	req.Families = []string{"nothing"}
	_, err = b.riffer.UseUp(context.Background(), req)
	assert.ErrorIs(t, err, flavor.ErrUnknown)
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
			}
		}
	}
	same := b.spec(t, ginSour)
	_, err := b.riffer.Walk(context.Background(), WalkRequest{From: same, To: same, Between: 3})
	assert.ErrorIs(t, err, flavor.ErrInvalid, "nothing lies between a drink and itself")
	_, err = b.riffer.Walk(context.Background(), WalkRequest{From: same, To: same, Between: MaxSteps + 1})
	assert.ErrorIs(t, err, flavor.ErrInvalid)
}
