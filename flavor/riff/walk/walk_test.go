package walk

import (
	"context"
	"flag"
	"fmt"
	"slices"
	"strconv"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"counterpour/data/bartest"
	"counterpour/flavor"
	"counterpour/flavor/guest"
	"counterpour/flavor/riff/station"
	"counterpour/flavor/weigh"
)

// A walk between drinks in different measures stays in that of the first.
func TestWalkKeepsTheMeasure(t *testing.T) {
	b := bartest.New(t)
	found, err := Find(context.Background(), b.Station, Request{From: b.Spec(t, bartest.BitterThird), To: b.Spec(t, bartest.OldWhiskey)})
	require.NoError(t, err)
	stops := found.Stops
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
		Guest: guest.Guest{Avoid: []flavor.Allergen{flavor.TreeNuts}}})
	var faults flavor.DataFaults
	require.ErrorAs(t, err, &faults)
	assert.Equal(t, "to.pours[3]", faults[0].Location)
	assert.Contains(t, faults[0].Message, "orgeat")
	_, err = Find(context.Background(), b.Station, Request{From: b.Spec(t, bartest.GinSour), To: &flavor.Spec{}})
	var fault *flavor.DataFault
	require.ErrorAs(t, err, &fault)
	assert.Equal(t, "to", fault.Location)
}

// What only its label clears for the guest closes no walk: it is found, and the label named.
// What surely carries what the guest avoids does, whatever else is unclear.
func TestWalkThatALabelMayClear(t *testing.T) {
	b := bartest.New(t)
	var vegan guest.Guest
	require.NoError(t, vegan.Keep("vegan"))
	bitters := b.Bottle(t, "aromatic bitters")
	require.False(t, vegan.Accepts(bitters), "nobody has stated all that they carry")
	found, err := Find(context.Background(), b.Station, Request{From: b.Spec(t, bartest.OldWhiskey), To: b.Spec(t, bartest.AgaveDaisy), Guest: vegan})
	require.NoError(t, err)
	assert.Len(t, found.Stops, DefaultSteps+2)
	assert.Equal(t, []*flavor.Profile{bitters}, found.Labels)
	for _, to := range []string{"2 oz gin\n3/4 oz lemon juice\n3/4 oz honey syrup\nshake, up", "2 oz gin\n3/4 oz lemon juice\n3/4 oz simple syrup\n1 egg white\nshake, up"} {
		_, err = Find(context.Background(), b.Station, Request{From: b.Spec(t, bartest.OldWhiskey), To: b.Spec(t, to), Guest: vegan})
		var faults flavor.DataFaults
		require.ErrorAs(t, err, &faults)
		assert.Contains(t, faults[0].Location, "to.pours")
	}
}

func TestWalk(t *testing.T) {
	b := bartest.New(t)
	for _, c := range []struct{ from, to string }{{bartest.GinSour, bartest.AgaveDaisy}, {bartest.BitterThird, bartest.OldWhiskey}, {bartest.GinSour, bartest.BitterThird}, {bartest.GinSour, bartest.Collins}} {
		from, to := b.Spec(t, c.from), b.Spec(t, c.to)
		for _, n := range []int{1, 3, 4} {
			found, err := Find(context.Background(), b.Station, Request{From: from, To: to, Between: n})
			require.NoError(t, err)
			stops := found.Stops
			assert.Empty(t, found.Labels)
			require.Len(t, stops, n+2)
			assert.Equal(t, from.Pours, stops[0].Spec.Pours, "it begins with the one")
			assert.Equal(t, to.Pours, stops[n+1].Spec.Pours, "and ends with the other")
			for i := range stops[:n+1] {
				assert.GreaterOrEqual(t, stops[i].Score, weigh.BalancedFrom)
				apart := b.Apart(t, &stops[i].Spec, &stops[i+1].Spec)
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

// Every stop keeps to how strong and how dear the guest has it, and an end that does
// not is named.
func TestWalkWithinLimits(t *testing.T) {
	b := bartest.New(t)
	from, to := b.Spec(t, bartest.GinSour), b.Spec(t, bartest.Collins)
	prices := map[string]float64{}
	for _, s := range []*flavor.Spec{from, to} {
		for i := range s.Pours {
			prices[s.Pours[i].Profile.ID] = 0.02
		}
	}
	cost := func(s *flavor.Spec) float64 { sum, _ := s.Cost(prices); return sum }
	dearest := max(cost(from), cost(to))
	weak := guest.Guest{MaxABV: 20, MaxCost: dearest, Prices: prices}
	found, err := Find(context.Background(), b.Station, Request{From: from, To: to, Guest: weak})
	require.NoError(t, err)
	stops := found.Stops
	for i := range stops {
		assert.LessOrEqual(t, stops[i].Drink.ABV, weak.MaxABV)
		assert.LessOrEqual(t, cost(&stops[i].Spec), weak.MaxCost)
	}
	for _, c := range []struct {
		name   string
		guest  guest.Guest
		at     string
		naming string
	}{
		{"too strong", guest.Guest{MaxABV: 12}, "from", "above the limit of 12.0"},
		{"too dear", guest.Guest{MaxCost: dearest / 2, Prices: prices}, "from", "costs"},
		{"without a price", guest.Guest{MaxCost: dearest, Prices: map[string]float64{from.Pours[0].Profile.ID: 0.01}}, "from.pours[1]", "has no price"},
	} {
		_, err := Find(context.Background(), b.Station, Request{From: from, To: to, Guest: c.guest})
		var faults flavor.DataFaults
		require.ErrorAs(t, err, &faults, c.name)
		assert.Equal(t, c.at, faults[0].Location, c.name)
		assert.Contains(t, faults[0].Message, c.naming, c.name)
	}
}

// Who asks for too many drinks between two is told how many there are, and gets them.
func TestTooManyBetween(t *testing.T) {
	b := bartest.New(t)
	from := b.Spec(t, "2 1/4 oz citrus-forward gin\n1/2 oz dry vermouth\n1/4 oz manzanilla sherry\nstir, up")
	to := b.Spec(t, "2 oz aged aquavit\n3/4 oz blanc vermouth\n1/4 oz manzanilla sherry\n1 dash orange bitters\nstir, up")
	_, err := Find(context.Background(), b.Station, Request{From: from, To: to, Between: 4})
	var fault *flavor.DataFault
	require.ErrorAs(t, err, &fault)
	var asked, most int
	_, err = fmt.Sscanf(fault.Message, "there are not %d balanced drinks in a row between these two, %d at most", &asked, &most)
	require.NoError(t, err, fault.Message)
	assert.Equal(t, 4, asked)
	require.Positive(t, most)
	told := fault.Message
	found, err := Find(context.Background(), b.Station, Request{From: from, To: to, Between: most})
	require.NoError(t, err)
	assert.Len(t, found.Stops, most+2)
	for _, s := range found.Stops[1 : most+1] {
		assert.Contains(t, told, s.Text, "what lies between is told")
	}
}

// Every stop between two proven drinks is balanced, made of what the two hold, and
// mixed so that nothing sparkling is shaken; each step changes something.
func TestEveryStopCanBePoured(t *testing.T) {
	b := bartest.New(t)
	checks(t, 15) // a walk takes a third of a second, and each run draws other pairs
	rapid.Check(t, func(rt *rapid.T) {
		at := rapid.IntRange(0, len(b.Proven)-1)
		from, to := b.Proven[at.Draw(rt, "from")].Spec, b.Proven[at.Draw(rt, "to")].Spec
		if len(from.Pours) > station.MaxPours || len(to.Pours) > station.MaxPours {
			return
		}
		found, err := Find(context.Background(), b.Station, Request{From: &from, To: &to, Between: 1 + rapid.IntRange(0, 2).Draw(rt, "between")})
		if err != nil {
			assert.ErrorIs(rt, err, flavor.ErrInvalid) // nothing lies between
			return
		}
		stops := found.Stops
		for i := 1; i < len(stops)-1; i++ {
			s := &stops[i].Spec
			assert.GreaterOrEqual(rt, stops[i].Score, weigh.BalancedFrom)
			for _, p := range s.Pours {
				if p.Profile.Carbonated {
					assert.NotEqual(rt, flavor.Blend, s.Method)
					assert.True(rt, p.After || s.Method == flavor.Build, "%s is shaken", p.Profile.Name)
				}
				assert.True(rt, from.HasProfile(p.Profile) || to.HasProfile(p.Profile), "%s is of neither end", p.Profile.Name)
			}
			assert.NotEmpty(rt, stops[i].Changes)
			assert.Positive(rt, stops[i].Hop)
		}
	})
}

// From what is savoury to what is sweet and sparkles a walk takes the sauces off on the
// way: nobody pours them in tonic water.
func TestNoSauceInASoda(t *testing.T) {
	b := bartest.New(t)
	found, err := Find(context.Background(), b.Station, Request{
		From: b.Spec(t, "2 oz vodka\n4 oz tomato juice\n1/2 oz lemon juice\n3 dashes Worcestershire-style sauce\n2 dashes hot pepper sauce\nbuild, long"),
		To:   b.Spec(t, "2 oz gin\n4 oz tonic water\n1/2 oz lime juice\nbuild, long")})
	require.NoError(t, err)
	for _, s := range found.Stops {
		sauce, soda := false, false
		for _, p := range s.Spec.Pours {
			sauce = sauce || p.Profile.Class.Kin() == flavor.KinSavoury
			soda = soda || p.Profile.ID == "tonic-water"
		}
		assert.False(t, sauce && soda, s.Text)
	}
}

// Between a sour and a stirred drink the last juice is a long hop. Proven drinks shorten it:
// by name, poured from the stock, and none where there is no stock or no long hop.
func TestALongHopIsBridged(t *testing.T) {
	b := bartest.New(t)
	for _, c := range []struct {
		from, to string
		shorter  bool
	}{{bartest.GinSour, bartest.OldWhiskey, true}, {bartest.OldWhiskey, bartest.AgaveDaisy, true}, {bartest.GinSour, bartest.Collins, false}} {
		req := Request{From: b.Spec(t, c.from), To: b.Spec(t, c.to)}
		without, err := Find(context.Background(), b.Station, req)
		require.NoError(t, err)
		for _, s := range without.Stops[1 : DefaultSteps+1] {
			assert.Empty(t, s.Spec.Name)
		}
		req.Stock = b.Catalogue.Profiles()
		with, err := Find(context.Background(), b.Station, req)
		require.NoError(t, err)
		if !c.shorter {
			assert.Equal(t, without.Stops, with.Stops)
			continue
		}
		assert.Less(t, longest(with.Stops), longest(without.Stops), c.from)
		names := map[string]bool{}
		for i := range b.Proven {
			names[b.Proven[i].Spec.Name] = true
		}
		named := 0
		for _, s := range with.Stops[1 : DefaultSteps+1] {
			if s.Spec.Name != "" {
				named++
				assert.True(t, names[s.Spec.Name], s.Spec.Name)
			}
			bartest.CheckAmounts(t, &s.Spec)
		}
		assert.Positive(t, named)
	}
}

// A proven drink on the way is for the guest: what they avoid, or what nobody has stated to
// be free of it, is in none, whatever lies in the stock; and there is no alcohol in any where
// neither end has some.
func TestABridgeIsForTheGuest(t *testing.T) {
	b := bartest.New(t)
	avoid := []flavor.Allergen{flavor.TreeNuts, flavor.Eggs, flavor.Milk}
	checks(t, 6)
	rapid.Check(t, func(rt *rapid.T) {
		at := rapid.IntRange(0, len(b.Proven)-1)
		from, to := b.Proven[at.Draw(rt, "from")].Spec, b.Proven[at.Draw(rt, "to")].Spec
		req := Request{From: &from, To: &to, Stock: b.Catalogue.Profiles(), Guest: guest.Guest{Avoid: []flavor.Allergen{rapid.SampledFrom(avoid).Draw(rt, "avoid")}}}
		found, err := Find(context.Background(), b.Station, req)
		if err != nil {
			assert.ErrorIs(rt, err, flavor.ErrInvalid)
			return
		}
		for _, s := range found.Stops {
			for _, p := range s.Spec.Pours {
				assert.True(rt, req.Guest.MayHave(p.Profile) || slices.Contains(found.Labels, p.Profile), "%s is not for the guest", p.Profile.Name)
			}
		}
	})
	dry, also := b.Spec(t, "4 oz tomato juice\n1/2 oz lemon juice\n3 dashes Worcestershire-style sauce\nbuild, long"), b.Spec(t, "3/4 oz lemon juice\n3/4 oz simple syrup\n4 oz soda water\nbuild, long")
	found, err := Find(context.Background(), b.Station, Request{From: dry, To: also, Between: 1, Stock: b.Catalogue.Profiles()})
	if err == nil {
		for _, s := range found.Stops {
			assert.Less(t, s.Drink.ABV, flavor.NoAlcoholABV)
		}
	} else {
		assert.ErrorIs(t, err, flavor.ErrInvalid)
	}
}

// checks sets how often rapid tries a property of this test, a fifth as often with -short.
func checks(t *testing.T, n int) {
	t.Helper()
	usual := flag.Lookup("rapid.checks").Value.String()
	require.NoError(t, flag.Set("rapid.checks", strconv.Itoa(n)))
	t.Cleanup(func() { require.NoError(t, flag.Set("rapid.checks", usual)) })
}

// A proven drink on the way is poured as the trade does: nothing sparkling is shaken in it, though
// books write its pours in one list.
func TestAProvenStopIsTopped(t *testing.T) {
	b := bartest.New(t)
	topped := 0
	for _, x := range [][2]string{
		{"2 oz gin\n1/2 oz lemon juice\n1/2 oz lime juice\n1 oz simple syrup\n1/2 oz heavy cream\n1 egg white\n1 1/2 oz soda water\ndry shake, long", "1 1/2 oz gin\n1 oz white quinquina\n3/4 oz gentian aperitif\nstir, rocks"},
		{"2 oz white rum\n3/4 oz lemon juice\n3/4 oz simple syrup\n1 egg white\n3 oz soda water\nshake, long", "2 oz gin\n1 oz dry vermouth\nstir, up"},
	} {
		from, to := b.Spec(t, x[0]), b.Spec(t, x[1])
		found, err := Find(context.Background(), b.Station, Request{From: from, To: to, Between: 2})
		require.NoError(t, err)
		for i := 1; i < len(found.Stops)-1; i++ {
			for _, p := range found.Stops[i].Spec.Pours {
				if p.Profile.Carbonated && found.Stops[i].Spec.Method != flavor.Build {
					topped++
					assert.True(t, p.After, found.Stops[i].Text)
				}
			}
		}
	}
	assert.Positive(t, topped)
}
