package station

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/data"
	"counterpour/flavor"
	"counterpour/flavor/template"
)

// keeper works out pairs as a job does.
func keeper(proven []template.Labelled, c *data.Catalogue) *Job {
	return &Job{Station: &Station{companions: newCompanions(proven, c.Space())}, keeps: map[string]*kept{}, pairs: map[[2]string]*pair{}}
}

func provenBook(t *testing.T) (*data.Catalogue, []template.Labelled) {
	t.Helper()
	c, err := data.Embedded()
	require.NoError(t, err)
	_, book, err := c.Set()
	require.NoError(t, err)
	return c, book
}

// What the trade pours together and what it does not: common practice, no source.
func TestPairsOfTheTrade(t *testing.T) {
	c, book := provenBook(t)
	j := keeper(book, c)
	of := func(a, b string) *pair {
		p, ok := c.ByID(a)
		require.True(t, ok, a)
		q, ok := c.ByID(b)
		require.True(t, ok, b)
		return j.pairOf(p, q)
	}
	for _, x := range [][2]string{
		{"coffee-liqueur", "espresso"}, {"pineapple-juice", "coconut-cream"}, {"creme-de-violette", "london-dry-gin"}, {"melon-liqueur", "lemon-juice"},
		{"stout", "brut-champagne"}, {"vodka", "tomato-juice"}, {"egg-white", "lemon-juice"}, {"cola", "vodka"}, {"rye-whiskey", "cognac"}, {"absinthe", "orange-juice"},
	} {
		p := of(x[0], x[1])
		assert.Negative(t, p.odd(), "%v go together", x)
		assert.False(t, p.shunned(), x)
	}
	for _, x := range [][2]string{
		{"mint", "sweet-vermouth"}, {"sweet-vermouth", "tomato-juice"}, {"espresso", "sweet-vermouth"}, {"lemon-juice", "whole-milk"}, {"espresso", "lemon-juice"},
		{"red-wine", "london-dry-gin"}, {"pastis", "water"},
	} {
		assert.True(t, of(x[0], x[1]).shunned(), "nobody pours %v", x)
	}
	for _, x := range [][2]string{{"tonic-water", "bourbon"}, {"cola", "grapefruit-juice"}, {"cola", "pineapple-juice"}, {"dry-cider", "fino-sherry"}, {"stout", "coffee-liqueur"}, {"irish-cream-liqueur", "white-quinquina"}} {
		assert.Positive(t, of(x[0], x[1]).odd(), "hardly anybody pours %v", x)
	}
	vodka, whiskey := of("melon-liqueur", "vodka"), of("melon-liqueur", "bourbon")
	assert.Less(t, vodka.odd(), whiskey.odd(), "melon liqueur is poured with what is clear")
}

// A pair is the same whichever way round it is asked for.
func TestPairsAreSymmetric(t *testing.T) {
	c, book := provenBook(t)
	all := c.Profiles()
	const slack = 1e-9
	a, b := keeper(book, c), keeper(book, c)
	for i := 0; i < len(all); i += 7 {
		for k := 3; k < len(all); k += 11 {
			x, y := a.pairOf(all[i], all[k]), b.pairOf(all[k], all[i])
			assert.InDelta(t, x.lift, y.lift, slack*x.lift, "%s, %s", all[i].ID, all[k].ID)
			assert.InDelta(t, x.same, y.same, slack*(1+x.same))
			assert.Positive(t, x.lift)
		}
	}
}

// Proven drinks keep the company that the other proven drinks keep: each is judged
// by a book without it and without every fifth other, so the share is on the high
// side. Room for a change of a few drinks.
func TestProvenDrinksKeepCompany(t *testing.T) {
	c, book := provenBook(t)
	const folds = 5
	shunned := 0
	for fold := range folds {
		var rest []template.Labelled
		for i := range book {
			if i%folds != fold {
				rest = append(rest, book[i])
			}
		}
		j := keeper(rest, c)
		for i := fold; i < len(book); i += folds {
			if _, bad := j.company(&book[i].Spec, nil); bad {
				shunned++
			}
		}
	}
	share := float64(shunned) / float64(len(book))
	t.Logf("%.1f %% of proven drinks would be shunned by the others", 100*share)
	assert.Less(t, share, 0.26)
	own := keeper(book, c)
	for i := range book {
		_, bad := own.company(&book[i].Spec, nil)
		assert.False(t, bad, "%s is shunned by the book that it is in", book[i].Spec.Name)
	}
}

// Pairs that somebody brought are not questioned.
func TestGivenCompanyIsNotQuestioned(t *testing.T) {
	c, book := provenBook(t)
	s, err := c.ReadSpec("", "2 oz bourbon\n1 oz lemon juice\n2 oz whole milk\nshake, up")
	require.NoError(t, err)
	j := keeper(book, c)
	_, bad := j.company(&s, nil)
	assert.True(t, bad)
	j.Given = []*flavor.Spec{&s}
	odd, bad := j.company(&s, nil)
	assert.False(t, bad)
	assert.Zero(t, odd)
}

// What is poured hot is known for it: common practice, no source.
func TestHotCompany(t *testing.T) {
	c, book := provenBook(t)
	j := keeper(book, c)
	hot := func(id string) *pair {
		p, ok := c.ByID(id)
		require.True(t, ok, id)
		x := j.Station.companions.inHot(j.keptOf(p))
		return &x
	}
	for _, id := range []string{"coffee", "whole-milk", "honey", "dark-rum", "cognac", "cinnamon-stick"} {
		assert.LessOrEqual(t, hot(id).odd(), 0.0, id)
	}
	for _, id := range []string{"red-bitter-aperitif", "passion-fruit-syrup", "dry-vermouth", "absinthe", "pineapple-juice"} {
		assert.Positive(t, hot(id).odd(), id)
	}
}
