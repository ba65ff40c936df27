package station

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/data"
	"counterpour/flavor"
	"counterpour/flavor/measure"
)

func provenPractice(t *testing.T) (*data.Catalogue, *practice, []flavor.Spec) {
	t.Helper()
	c, err := data.Embedded()
	require.NoError(t, err)
	_, book, err := c.Set()
	require.NoError(t, err)
	var specs []flavor.Spec
	for i := range book {
		specs = append(specs, book[i].Spec)
	}
	return c, newPractice(book), specs
}

// The rules of the trade hold for the drinks that the trade has proven, all but
// a few: shares counted on them, with room for one drink in a hundred.
func TestProvenDrinksKeepTheRules(t *testing.T) {
	_, p, specs := provenPractice(t)
	slips, beyond, pours := 0, 0, 0
	for i := range specs {
		s := &specs[i]
		if len(slipsOf(s)) > 0 {
			slips++
		}
		for _, x := range s.Pours {
			pours++
			if x.ML > p.mostML(x.Profile)+sameML {
				beyond++
			}
		}
	}
	n := float64(len(specs))
	assert.Less(t, float64(slips)/n, 0.06, "mixed and served otherwise")
	assert.Less(t, float64(beyond)/float64(pours), 0.03, "poured beyond the most")
}

// What is strong in taste is poured by the spoon and the half ounce at most,
// what carries a drink by two and a half: common practice, no source.
func TestMostThatIsPoured(t *testing.T) {
	c, p, _ := provenPractice(t)
	for _, x := range []struct {
		id          string
		least, most float64 // mL
	}{
		{"allspice-dram", 7, 22}, {"absinthe", 5, 20}, {"creme-de-violette", 7, 30}, {"clove-tincture", 0.05, 3},
		{"aromatic-bitters", 1.6, 12}, {"orange-flower-water", 0.5, 5}, {"london-dry-gin", 58, 76}, {"bourbon", 58, 80},
		{"triple-sec", 22, 50}, {"simple-syrup", 20, 40}, {"soda-water", 100, 210}, {"lemon-juice", 22, 52},
	} {
		profile, ok := c.ByID(x.id)
		require.True(t, ok, x.id)
		got := p.mostML(profile)
		assert.GreaterOrEqual(t, got, x.least, x.id)
		assert.LessOrEqual(t, got, x.most, x.id)
	}
	novel := &flavor.Profile{ID: "new", Class: flavor.ClassCider}
	assert.InDelta(t, beyondMost*flavor.ClassCider.MostML(), p.mostML(novel), 1e-9, "no proven drink pours one: common practice alone")
}

// Needles of rosemary and dashes of bitters are counted in hands, not in hundreds.
func TestMostPieces(t *testing.T) {
	c, p, _ := provenPractice(t)
	j := (&Station{practice: p, book: &book{}}).NewJob(c.Profiles(), &Limits{maxABV: 100}, "oz", 0)
	for i := range j.Shelf {
		it := &j.Shelf[i]
		per, _ := measure.MLPerUnit(it.Unit, it.Profile)
		switch n := j.MostUsual(it.Profile) / per; {
		case it.Unit.Counted():
			assert.LessOrEqual(t, n, 12.0+1e-9, "%s by the %s", it.Profile.Name, it.Unit)
		case it.Unit == flavor.Dash:
			assert.LessOrEqual(t, n, 10.0, "%s by the dash", it.Profile.Name)
		}
		if made, ok := j.Usual(it); ok && it.Unit.Counted() {
			assert.LessOrEqual(t, made.Amount, 12.0, it.Profile.Name)
		}
	}
}

// How a draft is mixed follows from what is in it.
func TestRefit(t *testing.T) {
	c, _, _ := provenPractice(t)
	for _, x := range []struct {
		text    string
		method  flavor.Method
		service flavor.Service
	}{
		{"2 oz gin\n3/4 oz lemon juice\n3/4 oz simple syrup\nstir, up", flavor.Shake, flavor.Up},
		{"2 oz gin\n1 oz dry vermouth\nshake, up", flavor.Stir, flavor.Up},
		{"2 oz gin\n3/4 oz lemon juice\n3/4 oz simple syrup\n1 egg white\nshake, up", flavor.Shake, flavor.Up},
		{"2 oz gin\n3/4 oz lemon juice\n3/4 oz simple syrup\n1 egg white\nbuild, rocks", flavor.DryShake, flavor.Rocks},
		{"2 oz gin\n4 oz tonic water\nshake, up", flavor.Build, flavor.Long},
		{"2 oz gin\n3/4 oz lemon juice\n3 oz soda water\nblend, up", flavor.Shake, flavor.Long},
		{"1 oz gin\n3 oz prosecco\n1/2 oz lemon juice\nshake, up", flavor.Shake, flavor.Up},
		{"1 1/2 oz brandy\n1 oz dark crème de cacao\n1 oz heavy cream\nstir, up", flavor.Shake, flavor.Up},
	} {
		s, err := c.ReadSpec("", x.text)
		require.NoError(t, err)
		(&Job{}).Refit(&s)
		assert.Equal(t, x.method, s.Method, x.text)
		assert.Equal(t, x.service, s.Service, x.text)
		assert.Empty(t, slipsOf(&s), x.text)
		for _, p := range s.Pours {
			assert.Equal(t, p.Profile.Carbonated && s.Method != flavor.Build, p.After, "%s sparkles and goes in last", p.Profile.Name)
		}
	}
}

// A drink that was given keeps the way in which it is made.
func TestGivenDrinksAreNotQuestioned(t *testing.T) {
	c, _, _ := provenPractice(t)
	s, err := c.ReadSpec("", "2 oz gin\n1 oz dry vermouth\nshake, up")
	require.NoError(t, err)
	j := &Job{Given: []*flavor.Spec{&s}}
	own := s.Clone()
	j.Refit(&own)
	assert.Equal(t, flavor.Shake, own.Method)
}

// How drinks are not mixed and served, one slip each: common practice, no source.
func TestSlips(t *testing.T) {
	c, _, _ := provenPractice(t)
	for _, x := range []struct {
		text string
		want []slip
	}{
		{"2 oz gin\n3/4 oz lemon juice\n3/4 oz simple syrup\nstir, up", []slip{clouded}},
		{"2 oz rye\n1 oz sweet vermouth\nshake, up", []slip{bruised}},
		{"1 1/2 oz vodka\n1 oz coffee liqueur\n1 oz espresso\nstir, up", []slip{dull}},
		{"2 oz red bitter aperitif\n3 oz prosecco\nstir, rocks", []slip{deadened}},
		{"2 oz gin\n3 oz tonic water\n3 oz ginger beer\nbuild, long", []slip{motley}},
		{"2 oz bourbon\n2 oz ginger ale\n2 oz soda water\nbuild, long", nil},
		{"6 oz lager\n6 oz sparkling lemonade\nbuild, long", nil},
		{"2 oz gin\n3/4 oz lemon juice\n1 egg white\nstir, up", []slip{unbeaten, clouded}},
		{"2 oz gin\n3/4 oz lemon juice\n3 oz soda water\nblend, long", []slip{flat}},
		{"2 oz gin\n3/4 oz lemon juice\nshake, long", []slip{bare}},
		{"2 oz gin\n1 oz dry vermouth\nstir, up", nil},
	} {
		s, err := c.ReadSpec("", x.text)
		require.NoError(t, err, x.text)
		assert.ElementsMatch(t, x.want, slipsOf(&s), x.text)
	}
}
