package evening

import (
	"context"
	"errors"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"counterpour/data/datatest"
	"counterpour/flavor"
	"counterpour/flavor/balance"
	"counterpour/flavor/cover/outs"
	"counterpour/flavor/guest"
	"counterpour/flavor/measure/draft/reading"
)

// unasked is a kitchen of which nothing has run out.
type unasked struct{}

func (unasked) Outs(context.Context, outs.Request) (*outs.Result, error) {
	return nil, errors.New("nothing is out")
}

func (unasked) Judge(*flavor.Spec) (*balance.Result, error) {
	return nil, flavor.Invalid("", "", "is not judged")
}

// What is laid on a drink and not for the guest is left off, or the drink is not for the guest;
// what nobody knows counts as present. Its words are common practice, no source.
func TestNothingIsLaidOnADrinkThatTheGuestAvoids(t *testing.T) {
	d, err := datatest.Calibrated()
	require.NoError(t, err)
	things := []struct {
		said   string
		brings flavor.Allergen
	}{{"toasted hazelnuts", flavor.TreeNuts}, {"crushed almonds", flavor.TreeNuts}, {"salted peanuts", flavor.Peanuts}, {"marzipan", flavor.TreeNuts}, {"whipped cream", flavor.Milk}, {"meringue", flavor.Eggs},
		{"celery salt", flavor.Celery}, {"blue cheese olive", flavor.Milk}, {"anchovy", flavor.Fish}, {"sesame seeds", flavor.Sesame}, {"squid ink", flavor.Molluscs}, {"biscuit crumbs", flavor.Gluten}, {"dragon dust", flavor.Lupin}}
	rapid.Check(t, func(t *rapid.T) {
		thing := rapid.SampledFrom(things).Draw(t, "thing")
		where := rapid.SampledFrom([]string{"garnish: ", "rim: ", "garnish: lime wheel, ", "garnish: mint sprig and ", "Garnish with "}).Draw(t, "where")
		s, err := reading.Read("Laid Sour\n2 oz blanco tequila\n.75 oz lime juice\n.75 oz simple syrup\nshake, up\n"+where+thing.said, d.Catalogue)
		if err != nil {
			t.Fatal(err)
		}
		g := guest.Guest{Avoid: []flavor.Allergen{thing.brings}}
		a, err := Of(context.Background(), unasked{}, Request{Menu: []*flavor.Spec{&s}, Guest: g})
		if err != nil {
			t.Fatal(err)
		}
		now := &a.Drinks[0]
		assert.NotEqual(t, Ready, now.State, "%s%s", where, thing.said)
		if poured := now.Poured(); poured != nil {
			assert.True(t, g.MayHaveAll(poured), "%s%s", where, thing.said)
			assert.NotContains(t, poured.Garnish+poured.Rim, thing.said)
			assert.Contains(t, poured.LeaveOff(), "leave off")
		}
	})
}
