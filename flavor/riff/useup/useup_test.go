package useup

import (
	"context"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/data/bartest"
	"counterpour/flavor"
	"counterpour/flavor/guest"
	"counterpour/flavor/ratio"
	"counterpour/flavor/riff/aim"
	"counterpour/flavor/riff/station"
	"counterpour/flavor/riff/wish"
	"counterpour/flavor/weigh"
)

// Six bottles that must move are all used, each draft in balance, and within
// what the guest may have.
func TestUseUpMovesEveryBottle(t *testing.T) {
	b := bartest.New(t)
	house, err := b.Catalogue.Demo()
	require.NoError(t, err)
	var six []*flavor.Profile
	for _, name := range []string{"fino sherry", "apricot liqueur", "mezcal", "grenadine", "gentian amaro", "ruby port"} {
		six = append(six, b.Bottle(t, name))
	}
	req := Request{Bottles: six, Stock: house.Stock, Limit: 10}
	res, err := Find(context.Background(), b.Station, req)
	require.NoError(t, err)
	assert.Empty(t, res.Unused)
	require.GreaterOrEqual(t, len(res.Drafts), 6)
	families := map[string]bool{}
	for i := range res.Drafts {
		d := &res.Drafts[i]
		require.NotEmpty(t, d.Uses, d.Text)
		for _, u := range d.Uses {
			assert.GreaterOrEqual(t, u.ML, b.Station.NewJob(nil, &aim.Limits{}, "oz", 0).LeastUse(u.Profile), "%s moves %s", d.Text, u.Profile.Name)
			assert.Contains(t, d.Text, u.Profile.Name)
		}
		bartest.CheckAmounts(t, &d.Spec)
		assert.GreaterOrEqual(t, d.Score, weigh.BalancedFrom)
		families[d.FamilyID] = true
		for j := range i {
			apart := b.Apart(t, &d.Spec, &res.Drafts[j].Spec)
			assert.GreaterOrEqual(t, apart, station.LeastDistance)
		}
	}
	assert.GreaterOrEqual(t, len(families), 4, "over the families")

	again, err := Find(context.Background(), b.Station, req)
	require.NoError(t, err)
	require.Len(t, again.Drafts, len(res.Drafts))
	for i := range again.Drafts {
		assert.Equal(t, res.Drafts[i].Text, again.Drafts[i].Text)
	}
	req.Families = []string{"sour"}
	_, err = Find(context.Background(), b.Station, req)
	require.NoError(t, err)

	// Wine may be fined with egg, and the amaro's recipe is not stated.
	avoid := []flavor.Allergen{flavor.Eggs}
	guarded, err := Find(context.Background(), b.Station, Request{Bottles: six, Stock: house.Stock, Limit: 10, Guest: guest.Guest{Avoid: avoid}})
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
	_, err = Find(context.Background(), b.Station, req)
	assert.ErrorIs(t, err, flavor.ErrUnknown)
}

// A bottle in no draft says why.
func TestUseUpSaysWhyNot(t *testing.T) {
	b := bartest.New(t)
	house, err := b.Catalogue.Demo()
	require.NoError(t, err)
	bottles := func(names ...string) (out []*flavor.Profile) {
		for _, n := range names {
			out = append(out, b.Bottle(t, n))
		}
		return out
	}
	sulphites := guest.Guest{Avoid: []flavor.Allergen{flavor.Sulphites}}
	for _, c := range []struct {
		name string
		req  Request
		want map[string]Why
	}{
		{"guest", Request{Bottles: bottles("fino sherry", "mezcal"), Guest: sulphites}, map[string]Why{"fino-sherry": WhyGuest}},
		{"a wish", Request{Bottles: bottles("mezcal"), Toward: []wish.Wish{{Kind: wish.Class, Class: b.Bottle(t, "mezcal").Class}}}, map[string]Why{"mezcal": WhyGuest}},
		{"limit", Request{Bottles: bottles("mezcal"), Toward: []wish.Wish{{Kind: wish.Above, ABV: 60}}}, map[string]Why{"mezcal": WhyLimit}},
		{"no place", Request{Bottles: bottles("mezcal"), Families: []string{"flip"}, Stock: bottles("soda water")}, map[string]Why{"mezcal": WhyNoPlace}},
		{"asked for twice", Request{Bottles: bottles("fino sherry", "fino sherry"), Guest: sulphites}, map[string]Why{"fino-sherry": WhyGuest}},
	} {
		if c.req.Stock == nil {
			c.req.Stock = house.Stock
		}
		res, err := Find(context.Background(), b.Station, c.req)
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
	b := bartest.New(t)
	u := &user{work: b.Station.NewJob(b.Usual, &aim.Limits{}, "oz", 0)}
	off := b.Spec(t, "3 oz London dry gin\n1/4 oz lemon juice\n1 1/2 oz simple syrup\nshake, up")
	sized, err := u.sized(&frame{spec: *off, family: "sour"})
	require.NoError(t, err)
	centre, err := b.Station.Set.Centre("sour")
	require.NoError(t, err)
	apart := func(s *flavor.Spec) float64 {
		e := ratio.EquivalentsOf(s)
		d, err := ratio.AitchisonDistance(e[:len(centre)], centre) // strong, sweet, sour
		require.NoError(t, err)
		return d
	}
	// Half a step of the jigger in three quarters of an ounce is 0.15 of a logarithm, and two pours round.
	assert.Less(t, apart(sized), 0.30)
	assert.Greater(t, apart(off), 1.0)
}

// With room for one draft of several bottles, a bottle that good drafts move
// says that others came first.
func TestUseUpSaysWhenItIsCrowded(t *testing.T) {
	b := bartest.New(t)
	res, err := Find(context.Background(), b.Station, Request{Bottles: b.Bottles(t, "fino sherry", "mezcal", "ruby port", "coffee liqueur", "orgeat"), Stock: b.Usual, Limit: 1})
	require.NoError(t, err)
	require.Len(t, res.Drafts, 1)
	require.NotEmpty(t, res.Unused)
	for _, u := range res.Unused {
		assert.Equal(t, WhyCrowded, u.Why, u.Profile.Name)
		assert.NotContains(t, res.Drafts[0].Text, u.Profile.Name)
	}
}

// Once its time is over, a search answers with what it has, and says of which bottles
// nobody knows.
func TestUseUpOutOfTime(t *testing.T) {
	b := bartest.New(t)
	over, cancel := context.WithDeadline(context.Background(), time.Now())
	defer cancel()
	res, err := Find(over, b.Station, Request{Bottles: b.Bottles(t, "fino sherry", "orgeat"), Stock: b.Usual,
		Guest: guest.Guest{Avoid: []flavor.Allergen{flavor.TreeNuts}}})
	require.NoError(t, err)
	assert.True(t, res.CutShort)
	require.Len(t, res.Unused, 2)
	assert.Equal(t, WhyTime, res.Unused[0].Why)
	assert.Equal(t, WhyGuest, res.Unused[1].Why)
	gone, leave := context.WithCancel(context.Background())
	leave()
	_, err = Find(gone, b.Station, Request{Bottles: b.Bottles(t, "fino sherry"), Stock: b.Usual})
	assert.ErrorIs(t, err, context.Canceled)
}
