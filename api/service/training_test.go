package service_test

import (
	"math/rand/v2"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/api/service/coaching"
	"counterpour/api/service/servicetest"
	"counterpour/data/house"
	"counterpour/flavor"
	"counterpour/flavor/drill"
	"counterpour/flavor/measure"
)

// A round is poured in the units of the house, whatever the drinks are written in, and is made
// again in them; each amount is as much as is written.
func TestRoundsAreInTheUnitsOfTheHouse(t *testing.T) {
	v := servicetest.OpenDemo(t, nil)
	for _, c := range []struct {
		units measure.System
		other []flavor.Unit
	}{{measure.Metric, []flavor.Unit{flavor.Ounce, flavor.Centilitre}}, {measure.Imperial, []flavor.Unit{flavor.Millilitre, flavor.Centilitre}}} {
		said := v.Now().Settings
		said.Units = c.units
		kept, err := house.All[house.Settings](t.Context(), v.Store())
		require.NoError(t, err)
		at := int64(0)
		if len(kept) > 0 {
			at = kept[0].Version
		}
		_, err = v.Store().Write(t.Context(), house.By{Actor: "Wren", At: time.Date(2026, 5, 1, 20, 0, 0, 0, time.UTC)}, house.Put(said, at))
		require.NoError(t, err)
		s := v.Now()
		for i, kind := range drill.Kinds() {
			round, err := s.Round(coaching.RoundRequest{Wish: coaching.RoundWish{Kind: kind}, Rand: rand.New(rand.NewPCG(uint64(i), 7))})
			require.NoError(t, err, kind)
			for _, d := range append(round.Drinks(), shown(round)...) {
				for _, p := range d.Pours {
					assert.NotContains(t, c.other, p.Unit, "%s: %s in %s", kind, p.Profile.Name, d.Name)
					if p.Unit == c.units.Unit() {
						ml, err := measure.ToML(p.Amount, p.Unit, p.Profile)
						require.NoError(t, err)
						assert.InDelta(t, ml, p.ML, 1e-6)
					}
				}
			}
			_, err = s.RoundAgain(round.Request, coaching.Looks(round))
			assert.NoError(t, err, kind)
		}
	}
}

// shown are the drinks of a round as they are shown.
func shown(r *drill.Round) (out []*flavor.Spec) {
	for i := range r.Specs {
		out = append(out, &r.Specs[i])
	}
	return out
}
