package evening_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/api/service/evening"
	"counterpour/flavor"
	"counterpour/flavor/balance"
	"counterpour/flavor/mix"
)

// taproom is [bar] with drinks of 100 mL, of 20 % vol.
type taproom struct{ bar }

func (taproom) Judge(*flavor.Spec) (*balance.Result, error) {
	d := &mix.Drink{VolumeML: 100, ABV: 20}
	d.After.Ethanol = mix.EthanolG(20, 100)
	return &balance.Result{Drink: d}, nil
}

// A flight pours each drink as it can be poured now; a drink that cannot be, one that is
// asked for twice, and too much alcohol are refused, each by its place.
func TestFlightOf(t *testing.T) {
	menu := []*flavor.Spec{drink("daisy", rum, lime), drink("fizz", brandy, lime), drink("cup", orgeat, lime)}
	now, err := evening.Of(t.Context(), taproom{}, evening.Request{Menu: menu, Stock: []*flavor.Profile{rum, brandy, lime}, Out: []*flavor.Profile{rum}})
	require.NoError(t, err)
	daisy, fizz, cup := &now.Drinks[0], &now.Drinks[1], &now.Drinks[2]

	f, err := evening.FlightOf(taproom{}, []*evening.Drink{fizz, daisy}, 30, 4)
	require.NoError(t, err)
	require.Len(t, f.Glasses, 2)
	assert.Same(t, daisy, f.Glasses[0].Drink, "names order what is alike")
	assert.Same(t, &daisy.Touched.Covers[0].Spec, f.Glasses[0].Spec, "poured with its cover")
	assert.Same(t, menu[1], f.Glasses[1].Spec)
	assert.Equal(t, 2, f.Glasses[0].Make)
	assert.InDelta(t, 80, f.Glasses[0].LeftML, 1e-9, "200 mL less 4 × 30 mL")
	assert.InDelta(t, 2*mix.EthanolG(20, 30), f.EthanolG, 1e-9)
	assert.NotEmpty(t, f.Cautions)

	for name, c := range map[string]struct {
		drinks []*evening.Drink
		each   float64
		places []string
	}{
		"one cannot be poured":   {[]*evening.Drink{fizz, cup}, 30, []string{"drinks[1]"}},
		"one is asked for twice": {[]*evening.Drink{fizz, fizz}, 30, []string{"drinks[1]"}},
		"one is no flight":       {[]*evening.Drink{fizz}, 30, []string{"drinks"}},
		"too much alcohol":       {[]*evening.Drink{fizz, daisy}, 120, []string{"each_ml"}},
		"a bad size as well":     {[]*evening.Drink{cup, fizz}, 500, []string{"drinks[0]", "each_ml"}},
	} {
		_, err := evening.FlightOf(taproom{}, c.drinks, c.each, 2)
		var places []string
		for _, f := range flavor.DataFaultsOf(err) {
			places = append(places, f.Location)
		}
		assert.Equal(t, c.places, places, name)
	}
}
