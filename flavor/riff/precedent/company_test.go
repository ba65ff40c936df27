package precedent

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/data"
	"counterpour/data/datatest"
	"counterpour/flavor"
	"counterpour/flavor/template"
)

// keeper works out each pair once.
type keeper struct {
	*Companions
	keeps map[*flavor.Profile]*Kept
}

func newKeeper(proven []template.Labelled, c *data.Catalogue) *keeper {
	return &keeper{NewCompanions(proven, c.Space()), map[*flavor.Profile]*Kept{}}
}

func (k *keeper) keptOf(p *flavor.Profile) *Kept {
	if k.keeps[p] == nil {
		k.keeps[p] = k.Keeping(p)
	}
	return k.keeps[p]
}

func (k *keeper) pair(a, b *flavor.Profile) *Pair {
	p := k.PairOf(a, b, k.keptOf(a), k.keptOf(b))
	return &p
}

func provenBook(t *testing.T) (*data.Catalogue, []template.Labelled) {
	t.Helper()
	d, err := datatest.Calibrated()
	require.NoError(t, err)
	return d.Catalogue, d.Proven
}

// What the trade pours together and what it does not: common practice, no source.
func TestPairsOfTheTrade(t *testing.T) {
	c, book := provenBook(t)
	j := newKeeper(book, c)
	of := func(a, b string) *Pair {
		p, ok := c.ByID(a)
		require.True(t, ok, a)
		q, ok := c.ByID(b)
		require.True(t, ok, b)
		return j.pair(p, q)
	}
	for _, x := range [][2]string{
		{"coffee-liqueur", "espresso"}, {"pineapple-juice", "coconut-cream"}, {"creme-de-violette", "london-dry-gin"}, {"melon-liqueur", "lemon-juice"},
		{"stout", "brut-champagne"}, {"vodka", "tomato-juice"}, {"egg-white", "lemon-juice"}, {"cola", "vodka"}, {"rye-whiskey", "cognac"}, {"absinthe", "orange-juice"},
	} {
		p := of(x[0], x[1])
		assert.Negative(t, p.Odd(), "%v go together", x)
		assert.False(t, p.Shunned(), x)
	}
	for _, x := range [][2]string{
		{"mint", "sweet-vermouth"}, {"espresso", "sweet-vermouth"}, {"lemon-juice", "whole-milk"}, {"espresso", "lemon-juice"},
		{"red-wine", "london-dry-gin"}, {"pastis", "water"},
	} {
		assert.True(t, of(x[0], x[1]).Shunned(), "nobody pours %v", x)
	}
	for _, x := range [][2]string{{"tonic-water", "bourbon"}, {"cola", "grapefruit-juice"}, {"cola", "pineapple-juice"}, {"dry-cider", "fino-sherry"}, {"stout", "coffee-liqueur"}, {"irish-cream-liqueur", "white-quinquina"}} {
		assert.Positive(t, of(x[0], x[1]).Odd(), "hardly anybody pours %v", x)
	}
	juniper, bitter := of("alcohol-free-juniper", "heavy-cream"), of("alcohol-free-red-bitter", "heavy-cream")
	assert.Greater(t, bitter.Odd(), juniper.Odd(), "a bitter without alcohol keeps the company of bitters: none is poured with cream")
	vodka, whiskey := of("melon-liqueur", "vodka"), of("melon-liqueur", "bourbon")
	assert.Less(t, vodka.Odd(), whiskey.Odd(), "melon liqueur is poured with what is clear")
}

// A pair is the same whichever way round it is asked for.
func TestPairsAreSymmetric(t *testing.T) {
	c, book := provenBook(t)
	all := c.Profiles()
	const slack = 1e-9
	a, b := newKeeper(book, c), newKeeper(book, c)
	for i := 0; i < len(all); i += 7 {
		for k := 3; k < len(all); k += 11 {
			x, y := a.pair(all[i], all[k]), b.pair(all[k], all[i])
			assert.InDelta(t, x.lift, y.lift, slack*x.lift, "%s, %s", all[i].ID, all[k].ID)
			assert.InDelta(t, x.same, y.same, slack*(1+x.same))
			assert.Positive(t, x.lift)
		}
	}
}

// What is poured hot is known for it: common practice, no source.
func TestHotCompany(t *testing.T) {
	c, book := provenBook(t)
	j := newKeeper(book, c)
	hot := func(id string) *Pair {
		p, ok := c.ByID(id)
		require.True(t, ok, id)
		x := j.InHot(j.keptOf(p))
		return &x
	}
	for _, id := range []string{"coffee", "whole-milk", "honey", "dark-rum", "cognac", "cinnamon-stick"} {
		assert.LessOrEqual(t, hot(id).Odd(), 0.0, id)
	}
	for _, id := range []string{"red-bitter-aperitif", "passion-fruit-syrup", "dry-vermouth", "absinthe", "pineapple-juice"} {
		assert.Positive(t, hot(id).Odd(), id)
	}
}
