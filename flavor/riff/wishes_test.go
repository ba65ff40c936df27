package riff

import (
	"context"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/data/bartest"
	"counterpour/flavor"
	"counterpour/flavor/guest"
	"counterpour/flavor/riff/wish"
)

// A wish is met by what a bartender reaches for: each riff pours one of these, or more
// of it, and none gets there by a bottle that hardly smells of it. Common practice, no
// source.
func TestWishesAreMetByWhatIsKnownForThem(t *testing.T) {
	b := bartest.New(t)
	for _, c := range []struct {
		text, wish string
		known      func(p *flavor.Profile) bool
	}{
		{bartest.GinSour, "smokier", func(p *flavor.Profile) bool { return p.Aroma[flavor.Smoke] >= p.Aroma.Total()/6 }},
		{bartest.OldWhiskey, "nuttier", func(p *flavor.Profile) bool { return p.Aroma[flavor.Nut] >= p.Aroma.Total()/6 }},
		{bartest.GinSour, "longer", func(p *flavor.Profile) bool { return p.Class.Part() == flavor.PartLength }},
		{"2 oz vodka\n1/2 oz dry vermouth\nstir, up", "saltier", func(p *flavor.Profile) bool { return p.Salt.Value > 0 }},
	} {
		spec := b.Spec(t, c.text)
		toward, err := wish.Parse([]string{c.wish}, wish.NamesIn(b.Usual))
		require.NoError(t, err)
		res, err := Vary(context.Background(), b.Station, Request{Spec: spec, Toward: toward, Stock: bartest.With(b.Usual, spec)})
		require.NoError(t, err)
		require.NotEmpty(t, res.Riffs, c.wish)
		for i := range res.Riffs {
			found := false
			for _, p := range res.Riffs[i].Spec.Pours {
				found = found || c.known(p.Profile)
			}
			assert.True(t, found, "%s: %s", c.wish, res.Riffs[i].Text)
		}
	}
	// The first that salts a stirred drink is what salts it in proven ones.
	spec := b.Spec(t, "2 oz vodka\n1/2 oz dry vermouth\nstir, up")
	toward, err := wish.Parse([]string{"saltier"}, wish.NamesIn(b.Usual))
	require.NoError(t, err)
	res, err := Vary(context.Background(), b.Station, Request{Spec: spec, Toward: toward, Stock: bartest.With(b.Usual, spec)})
	require.NoError(t, err)
	require.NotEmpty(t, res.Riffs)
	assert.True(t, res.Riffs[0].Spec.HasProfile(b.Bottle(t, "olive brine")), res.Riffs[0].Text)
}

// What a bartender pours first toward a wish, in each drink one of these, and what no
// list may hold: common practice, no source.
func TestWishesAreMetAsABartenderWould(t *testing.T) {
	b := bartest.New(t)
	for _, c := range []struct {
		text, wish string
		first      []string // the first riff pours one of these, which the drink did not, or more of it
		none       []string // and no riff of the first five one of these
	}{
		{"2 oz rye whiskey\n1 oz sweet vermouth\n2 dashes aromatic bitters\nstir, up", "more bitter", []string{"artichoke-amaro", "fernet", "medium-amaro", "red-bitter-aperitif", "gentian-aperitif"}, nil},
		{"2 oz dark rum\n1 oz cream of coconut\n2 oz pineapple juice\nshake, up", "more sour", []string{"lime-juice", "lemon-juice"}, []string{"heavy-cream"}},
		{"2 oz aged rum\n1 oz sweet vermouth\n2 dashes aromatic bitters\nstir, up", "coffee", []string{"coffee-liqueur"}, []string{"creme-de-cacao"}},
		{"2 oz gin\n3/4 oz dry vermouth\nstir, up", "more savoury", []string{"olive-brine", "celery-bitters", "fino-sherry", "saline", "salt", "cucumber"}, []string{"tonic-water"}},
		{"2 oz blanco tequila\n1 oz triple sec\n3/4 oz lime juice\nshake, up", "more chilli", []string{"fresh-chilli", "hot-pepper-sauce", "black-pepper"}, nil},
		{"2 oz gin\n1 oz triple sec\n3/4 oz lemon juice\nshake, up", "frothier", []string{"egg-white", "chickpea-water"}, nil},
		{"1 1/2 oz vodka\n1 oz espresso\n3/4 oz coffee liqueur\nshake, up", "creamier", []string{"heavy-cream", "coconut-cream", "oat-drink", "irish-cream-liqueur"}, []string{"lime-juice", "lemon-juice"}},
		{"1 1/2 oz cognac\n3/4 oz white crème de cacao\nstir, rocks", "creamier", []string{"heavy-cream", "half-and-half", "irish-cream-liqueur"}, nil},
		{"2 oz vodka\n4 oz tonic water\nbuild, long", "more citrusy", []string{"lime-juice", "lemon-juice", "grapefruit-juice", "citrus-vodka", "limoncello"}, nil},
		{"2 oz white rum\n3/4 oz lime juice\n3/4 oz simple syrup\nshake, up", "more tropical", []string{"pineapple-juice", "passion-fruit-syrup", "passion-fruit-puree", "banana-liqueur", "pineapple-syrup"}, nil},
		{"2 oz gin\n3/4 oz lemon juice\n3/4 oz simple syrup\nshake, up", "more vanilla", []string{"vanilla-syrup", "vanilla-anise-liqueur", "vanilla-extract"}, nil},
	} {
		spec := b.Spec(t, c.text)
		toward, err := wish.Parse([]string{c.wish}, wish.NamesIn(b.Usual))
		require.NoError(t, err)
		res, err := Vary(context.Background(), b.Station, Request{Spec: spec, Toward: toward, Stock: bartest.With(b.Usual, spec), Limit: 5})
		require.NoError(t, err)
		require.NotEmpty(t, res.Riffs, c.wish)
		pours := func(x *Riff, ids []string) bool {
			return slices.ContainsFunc(x.Spec.Pours, func(p flavor.Pour) bool { return slices.Contains(ids, p.Profile.ID) })
		}
		assert.True(t, pours(&res.Riffs[0], c.first), "%s: %s", c.wish, res.Riffs[0].Text)
		for i := range res.Riffs {
			assert.False(t, pours(&res.Riffs[i], c.none), "%s: %s", c.wish, res.Riffs[i].Text)
		}
	}
}

// Where the acid goes, the sugar that answered it goes with it.
func TestNoRiffLeavesHalfABalance(t *testing.T) {
	b := bartest.New(t)
	spec := b.Spec(t, "2 oz vodka\n1 oz lime juice\n3/4 oz simple syrup\n4 oz ginger beer\nbuild, long")
	toward, err := wish.Parse([]string{"no citrus"}, wish.NamesIn(b.Usual))
	require.NoError(t, err)
	res, err := Vary(context.Background(), b.Station, Request{Spec: spec, Toward: toward, Stock: bartest.With(b.Usual, spec), Limit: 10})
	require.NoError(t, err)
	require.NotEmpty(t, res.Riffs)
	for i := range res.Riffs {
		sweet := 0.0
		for _, p := range res.Riffs[i].Spec.Pours {
			if p.Profile.Class.Part() == flavor.PartSweetener {
				sweet += p.ML
			}
		}
		assert.LessOrEqual(t, sweet, 15.0, res.Riffs[i].Text)
	}
}

// What has no alcohol goes in by the measure of the spirit that it stands for, though it
// smells of less: common practice, no source.
func TestASpiritWithoutAlcoholIsPouredByItsMeasure(t *testing.T) {
	b := bartest.New(t)
	spec := b.Spec(t, "60 ml gin\n150 ml tonic water\nbuild, long")
	toward, err := wish.Parse([]string{"no alcohol"}, wish.NamesIn(b.Usual))
	require.NoError(t, err)
	free := b.Bottle(t, "alcohol-free juniper spirit")
	res, err := Vary(context.Background(), b.Station, Request{Spec: spec, Toward: toward, Stock: []*flavor.Profile{free, b.Bottle(t, "tonic water")}})
	require.NoError(t, err)
	require.NotEmpty(t, res.Riffs)
	got := res.Riffs[0].Spec.Pours
	i := slices.IndexFunc(got, func(p flavor.Pour) bool { return p.Profile.ID == free.ID })
	require.GreaterOrEqual(t, i, 0)
	assert.Equal(t, 60.0, got[i].ML)
}

// What a bartender pours for a wish about strength, a named bottle or bitterness, and what no list
// may hold: common practice, no source.
func TestWishesChangeWhatIsPoured(t *testing.T) {
	b := bartest.New(t)
	riffs := func(text, asked string) (*flavor.Spec, []Riff) {
		spec := b.Spec(t, text)
		toward, err := wish.Parse([]string{asked}, wish.NamesIn(b.Usual))
		require.NoError(t, err)
		res, err := Vary(context.Background(), b.Station, Request{Spec: spec, Toward: toward, Stock: bartest.With(b.Usual, spec), Limit: 5})
		require.NoError(t, err)
		require.NotEmpty(t, res.Riffs, asked)
		return spec, res.Riffs
	}
	alcohol := func(s *flavor.Spec) (ml float64) {
		for i := range s.Pours {
			ml += s.Pours[i].ML * s.Pours[i].Profile.ABV.Value / 100
		}
		return ml
	}
	const less = 0.86 // of the alcohol in the glass, rounding apart
	for _, text := range []string{"2 oz rye whiskey\n1 oz sweet vermouth\n2 dashes aromatic bitters\nstir, up", "2 oz white rum\n1 oz lime juice\n3/4 oz simple syrup\nshake, up"} {
		spec, found := riffs(text, "lower alcohol")
		for i := range found {
			assert.LessOrEqual(t, alcohol(&found[i].Spec), less*alcohol(spec), found[i].Text)
		}
	}
	_, martini := riffs("2 oz London dry gin\n1/2 oz dry vermouth\n1 dash orange bitters\nstir, up", "with fino sherry")
	assert.Equal(t, "½ oz fino sherry for dry vermouth", martini[0].Recipe)
	_, finished := riffs("2 oz London dry gin\n1/2 oz dry vermouth\n1 dash orange bitters\nstir, up", "use up the fino sherry")
	assert.Equal(t, martini[0].Text, finished[0].Text)
	_, word := riffs("3/4 oz London dry gin\n3/4 oz green herbal liqueur\n3/4 oz maraschino liqueur\n3/4 oz lime juice\nshake, up", "more bitter")
	traded := func(r Riff) bool { return !r.Spec.HasProfile(b.Bottle(t, "maraschino liqueur")) }
	assert.True(t, slices.ContainsFunc(word, traded), "a bitter stands for a liqueur in some riff")
	assert.False(t, !slices.ContainsFunc(word, func(r Riff) bool { return !traded(r) }), "and beside it in another")
}

// Who wants a drink stronger gets more of its own spirit, or one of its class that is bottled
// stronger, before any other: the first riff pours nothing of another class of spirit and is no
// smaller in alcohol, by as much as a half ounce gives. Common practice, no source.
func TestStrongerIsMoreOfTheSameSpirit(t *testing.T) {
	b := bartest.New(t)
	for _, text := range []string{
		"2 oz gin\n1/4 oz dry vermouth\nstir, up", "2 oz rye whiskey\n1 oz sweet vermouth\n2 dashes aromatic bitters\nstir, up",
		"2 oz bourbon\n1 tsp simple syrup\n2 dashes aromatic bitters\nstir, rocks", "1 1/2 oz gin\n5 oz tonic water\nbuild, long",
		"2 oz white rum\n1 oz lime juice\n3/4 oz simple syrup\nshake, up",
	} {
		spec := b.Spec(t, text)
		toward, err := wish.Parse([]string{"stronger"}, nil)
		require.NoError(t, err)
		res, err := Vary(context.Background(), b.Station, Request{Spec: spec, Toward: toward, Stock: bartest.With(b.Usual, spec), Limit: 3})
		require.NoError(t, err)
		require.NotEmpty(t, res.Riffs, text)
		drink, err := b.Station.Mixer.Mix(spec)
		require.NoError(t, err)
		first := &res.Riffs[0]
		for _, p := range first.Spec.Pours {
			assert.True(t, !p.Profile.Base() || spec.HasClass(p.Profile.Class), "%s: %s", text, first.Text)
		}
		assert.Greater(t, first.Drink.Before.Ethanol, 1.05*drink.Before.Ethanol, first.Text)
		assert.Greater(t, first.Drink.ABV, 0.97*drink.ABV, first.Text)
	}
}

// What already carries a wish in the drink goes last: a drink on ginger that should be spicier keeps
// its ginger in the first riffs, and one that cannot have its cream comes first as what is left of
// it, if that is a drink. Common practice, no source.
func TestWhatIsThereStaysFirst(t *testing.T) {
	b := bartest.New(t)
	ginger := b.Spec(t, "2 oz dark rum\n1/2 oz lime juice\n4 oz ginger beer\nbuild, long")
	toward, err := wish.Parse([]string{"spicier"}, nil)
	require.NoError(t, err)
	res, err := Vary(context.Background(), b.Station, Request{Spec: ginger, Toward: toward, Stock: bartest.With(b.Usual, ginger), Limit: 2})
	require.NoError(t, err)
	require.NotEmpty(t, res.Riffs)
	for i := range res.Riffs {
		assert.True(t, res.Riffs[i].Spec.HasProfile(b.Bottle(t, "ginger beer")), res.Riffs[i].Text)
	}
	milky := b.Spec(t, "1 1/2 oz vodka\n3/4 oz coffee liqueur\n1 oz heavy cream\nbuild, rocks")
	stock := []*flavor.Profile{b.Bottle(t, "vodka"), b.Bottle(t, "coffee liqueur"), b.Bottle(t, "blanco tequila"), b.Bottle(t, "dark rum"), b.Bottle(t, "crème de cacao")}
	res, err = Vary(context.Background(), b.Station, Request{Spec: milky, Guest: guest.Guest{Avoid: []flavor.Allergen{flavor.Milk}}, Stock: stock, Limit: 3})
	require.NoError(t, err)
	require.NotEmpty(t, res.Riffs)
	first := &res.Riffs[0]
	assert.Len(t, first.Spec.Pours, 2, first.Text)
	assert.True(t, first.Spec.HasProfile(stock[0]) && first.Spec.HasProfile(stock[1]), first.Text)
}
