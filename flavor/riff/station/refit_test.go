package station

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/data"
	"counterpour/flavor"
	"counterpour/flavor/measure"
	"counterpour/flavor/riff/aim"
	"counterpour/flavor/riff/precedent"
	"counterpour/flavor/riff/serve"
)

func provenPractice(t *testing.T) (*data.Catalogue, *precedent.Practice, []flavor.Spec) {
	t.Helper()
	c, book := provenBook(t)
	var specs []flavor.Spec
	for i := range book {
		specs = append(specs, book[i].Spec)
	}
	return c, precedent.NewPractice(book), specs
}

// Needles of rosemary and dashes of bitters are counted in hands, not in hundreds.
func TestMostPieces(t *testing.T) {
	c, p, _ := provenPractice(t)
	j := (&Station{practice: p, book: &precedent.Book{}}).NewJob(c.Profiles(), &aim.Limits{}, "oz", 0)
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
		assert.Empty(t, serve.BreachesOf(&s), x.text)
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
