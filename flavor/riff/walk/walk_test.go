package walk

import (
	"context"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/data/bartest"
	"counterpour/flavor"
	"counterpour/flavor/cover"
	"counterpour/flavor/template"
)

// A walk between drinks in different measures stays in that of the first.
func TestWalkKeepsTheMeasure(t *testing.T) {
	b := bartest.New(t)
	stops, err := Find(context.Background(), b.Station, Request{From: b.Spec(t, bartest.BitterThird), To: b.Spec(t, bartest.OldWhiskey)})
	require.NoError(t, err)
	require.Len(t, stops, DefaultSteps+2)
	for _, s := range stops[1 : DefaultSteps+1] {
		for _, p := range s.Spec.Pours {
			assert.False(t, p.Unit == flavor.Millilitre && p.ML > spoonML, "%s: %v ml", p.Profile.Name, p.Amount)
		}
	}
}

// What an end holds that the guest must not have is named with its end.
func TestWalkForAGuest(t *testing.T) {
	b := bartest.New(t)
	_, err := Find(context.Background(), b.Station, Request{From: b.Spec(t, bartest.GinSour), To: b.Spec(t, bartest.Tropical),
		Guest: cover.Guest{Avoid: []flavor.Allergen{flavor.TreeNuts}}})
	var faults flavor.Faults
	require.ErrorAs(t, err, &faults)
	assert.Equal(t, "to.pours[3]", faults[0].Location)
	assert.Contains(t, faults[0].Message, "orgeat")
	_, err = Find(context.Background(), b.Station, Request{From: b.Spec(t, bartest.GinSour), To: &flavor.Spec{}})
	var fault *flavor.Fault
	require.ErrorAs(t, err, &fault)
	assert.Equal(t, "to", fault.Location)
}

func TestWalk(t *testing.T) {
	b := bartest.New(t)
	for _, c := range []struct{ from, to string }{{bartest.GinSour, bartest.AgaveDaisy}, {bartest.BitterThird, bartest.OldWhiskey}, {bartest.GinSour, bartest.BitterThird}, {bartest.GinSour, bartest.Collins}} {
		from, to := b.Spec(t, c.from), b.Spec(t, c.to)
		for _, n := range []int{1, 3, 4} {
			stops, err := Find(context.Background(), b.Station, Request{From: from, To: to, Between: n})
			require.NoError(t, err)
			require.Len(t, stops, n+2)
			assert.Equal(t, from.Pours, stops[0].Spec.Pours, "it begins with the one")
			assert.Equal(t, to.Pours, stops[n+1].Spec.Pours, "and ends with the other")
			for i := range stops[:n+1] {
				assert.GreaterOrEqual(t, stops[i].Score, template.BalancedFrom)
				apart, err := b.Station.Distance(&stops[i].Spec, &stops[i+1].Spec)
				require.NoError(t, err)
				assert.InDelta(t, apart, stops[i+1].Hop, bartest.Rounding)
				assert.GreaterOrEqual(t, apart, leastHop)
				assert.NotNil(t, stops[i].Drink)
				bartest.CheckAmounts(t, &stops[i].Spec)
			}
		}
	}
	same := b.Spec(t, bartest.GinSour)
	_, err := Find(context.Background(), b.Station, Request{From: same, To: same, Between: 3})
	assert.ErrorIs(t, err, flavor.ErrInvalid, "nothing lies between a drink and itself")
	_, err = Find(context.Background(), b.Station, Request{From: same, To: same, Between: MaxSteps + 1})
	assert.ErrorIs(t, err, flavor.ErrInvalid)
}

// A walk that there is no time for is not said to be impossible.
func TestWalkOutOfTime(t *testing.T) {
	b := bartest.New(t)
	over, cancel := context.WithDeadline(context.Background(), time.Now())
	defer cancel()
	_, err := Find(over, b.Station, Request{From: b.Spec(t, bartest.GinSour), To: b.Spec(t, bartest.AgaveDaisy)})
	assert.ErrorIs(t, err, context.DeadlineExceeded)
}
