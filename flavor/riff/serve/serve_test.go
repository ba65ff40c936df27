package serve

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/data"
)

// The rules of the trade hold for the drinks that the trade has proven, all but a few:
// a share counted on them, with room for one drink in a hundred.
func TestProvenDrinksAreServedSo(t *testing.T) {
	c, err := data.Embedded()
	require.NoError(t, err)
	_, book, err := c.Set()
	require.NoError(t, err)
	breaches := 0
	for i := range book {
		if len(BreachesOf(&book[i].Spec)) > 0 {
			breaches++
		}
	}
	assert.Less(t, float64(breaches)/float64(len(book)), 0.06, "mixed and served otherwise")
}

// How drinks are not mixed and served, one breach each: common practice, no source.
func TestBreaches(t *testing.T) {
	c, err := data.Embedded()
	require.NoError(t, err)
	for _, x := range []struct {
		text string
		want []Breach
	}{
		{"2 oz gin\n3/4 oz lemon juice\n3/4 oz simple syrup\nstir, up", []Breach{clouded}},
		{"2 oz rye\n1 oz sweet vermouth\nshake, up", []Breach{bruised}},
		{"1 1/2 oz vodka\n1 oz coffee liqueur\n1 oz espresso\nstir, up", []Breach{dull}},
		{"2 oz red bitter aperitif\n3 oz prosecco\nstir, rocks", []Breach{deadened}},
		{"2 oz orange juice\n4 oz prosecco\nshake, up", []Breach{needless}},
		{"2 oz orange juice\n4 oz prosecco\nbuild, up", nil},
		{"4 oz prosecco\n1/2 oz passion fruit puree\n2 dashes aromatic bitters\nbuild, crushed", []Breach{watered}},
		{"2 oz gin\n3 oz tonic water\n3 oz ginger beer\nbuild, long", []Breach{motley}},
		{"2 oz bourbon\n2 oz ginger ale\n2 oz soda water\nbuild, long", nil},
		{"6 oz lager\n6 oz sparkling lemonade\nbuild, long", nil},
		{"2 oz gin\n3/4 oz lemon juice\n1 egg white\nstir, up", []Breach{unbeaten, clouded}},
		{"2 oz oloroso sherry\n1/2 oz simple syrup\n1 egg white\ndry shake, up", []Breach{flabby}},
		{"2 oz oloroso sherry\n1/2 oz simple syrup\n1 whole egg\nshake, up", nil},
		{"2 oz gin\n3/4 oz lemon juice\n1 egg white\n2 oz lemon-lime soda\ndry shake, long", []Breach{cloying}},
		{"2 oz gin\n3/4 oz lemon juice\n3/4 oz simple syrup\n1 egg white\n2 oz soda water\ndry shake, long", nil},
		{"2 oz bourbon\n3/4 oz lemon juice\n3/4 oz simple syrup\n1 egg white\n3 oz black tea\ndry shake, long", []Breach{drenched}},
		{"2 oz cognac\n1/2 oz simple syrup\n1 whole egg\n3 oz soda water\nshake, long", []Breach{custardy}},
		{"2 oz gin\n3/4 oz lemon juice\n3/4 oz simple syrup\n1 oz heavy cream\nshake, up", []Breach{curdled}},
		{"2 oz gin\n3/4 oz lemon juice\n3/4 oz simple syrup\n1 oz heavy cream\n1 egg white\nshake, up", nil},
		{"2 oz rye whiskey\n1/2 oz lemon juice\n4 oz water\nshake, hot", []Breach{scalded}},
		{"2 oz rye whiskey\n1/2 oz lemon juice\n3 oz soda water\n2 oz water\nbuild, hot", []Breach{fizzed}},
		{"2 oz rye whiskey\n1/2 oz lemon juice\n1/2 oz honey syrup\nbuild, hot", []Breach{tepid}},
		{"2 oz gin\n3/4 oz lemon juice\n3/4 oz simple syrup\n1 whole egg\n2 oz soda water\nshake, long", nil},
		{"2 oz pisco\n3/4 oz lime juice\n1 oz pineapple juice\n1/2 oz simple syrup\n1 egg white\ndry shake, up", nil},
		{"2 oz gin\n3/4 oz lemon juice\n3 oz soda water\nblend, long", []Breach{flat}},
		{"2 oz gin\n3/4 oz lemon juice\nshake, long", []Breach{bare}},
		{"2 oz gin\n1 oz dry vermouth\n6 basil leaves\nstir, up", []Breach{whole}},
		{"2 oz gin\n1 oz dry vermouth\nstir, up", nil},
	} {
		s, err := c.ReadSpec("", x.text)
		require.NoError(t, err, x.text)
		assert.ElementsMatch(t, x.want, BreachesOf(&s), x.text)
	}
}
