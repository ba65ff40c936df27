package evening_test

import (
	"context"
	"fmt"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"counterpour/api/service/evening"
	"counterpour/flavor"
	"counterpour/flavor/balance"
	"counterpour/flavor/cover"
	"counterpour/flavor/cover/outs"
	"counterpour/flavor/guest"
	"counterpour/flavor/mix"
	"counterpour/flavor/sense"
)

// bar keeps a drink that lacks rum alone, with brandy in its place, and no other; every drink has
// 20 % vol.
type bar struct{}

var (
	rum     = profile("rum")
	brandy  = profile("brandy")
	lime    = profile("lime juice")
	orgeat  = profile("orgeat", flavor.AllergenMark{Allergen: flavor.TreeNuts, Certainty: flavor.Contains})
	bitters = &flavor.Profile{ID: "bitters", Name: "bitters"} // nobody has stated them
	water   = &flavor.Profile{ID: "water", Name: "water", AllergensKnown: true, Class: flavor.ClassWater}
)

func profile(name string, marks ...flavor.AllergenMark) *flavor.Profile {
	return &flavor.Profile{ID: name, Name: name, AllergensKnown: true, AllergenMarks: marks}
}

func drink(name string, pours ...*flavor.Profile) *flavor.Spec {
	s := &flavor.Spec{Name: name}
	for _, p := range pours {
		s.Pours = append(s.Pours, flavor.Pour{Profile: p, ML: 30})
	}
	return s
}

func (bar) Judge(*flavor.Spec) (*balance.Result, error) {
	return &balance.Result{Drink: &mix.Drink{ABV: 20}}, nil
}

func (bar) Outs(_ context.Context, r outs.Request) (*outs.Result, error) {
	out := &outs.Result{}
	for _, s := range r.Specs {
		t := outs.Touched{Spec: s, Chosen: -1}
		for _, p := range s.Pours {
			if slices.Contains(r.Out, p.Profile) {
				t.Missing = append(t.Missing, p.Profile)
			}
		}
		if len(t.Missing) == 0 {
			continue
		}
		t.Removed = slices.Clone(t.Missing)
		for _, p := range s.Pours {
			if !r.Guest.Accepts(p.Profile) && !slices.Contains(t.Missing, p.Profile) {
				t.Removed = append(t.Removed, p.Profile)
			}
		}
		if slices.Equal(t.Missing, []*flavor.Profile{rum}) && slices.Contains(r.Stock, brandy) && !slices.Contains(r.Out, brandy) {
			t.Covers, t.Chosen, t.Near = []cover.Cover{{}}, 0, true
		}
		out.Touched = append(out.Touched, t)
	}
	return out, nil
}

func TestWhatCanBePoured(t *testing.T) {
	all := []*flavor.Profile{rum, brandy, lime, orgeat, bitters}
	apricot := profile("apricot liqueur", flavor.AllergenMark{Allergen: flavor.TreeNuts, Certainty: flavor.MayContain})
	walnut := profile("walnut liqueur", flavor.AllergenMark{Allergen: flavor.TreeNuts, Certainty: flavor.Contains})
	vermouth := &flavor.Profile{ID: "vermouth", Name: "vermouth"}
	house := append([]*flavor.Profile{apricot, walnut, vermouth}, all...)
	noNuts := guest.Guest{Avoid: []flavor.Allergen{flavor.TreeNuts}}
	for name, c := range map[string]struct {
		of      *flavor.Spec
		stock   []*flavor.Profile
		out     []*flavor.Profile
		guest   guest.Guest
		state   evening.State
		because string
		waits   bool
		spares  bool
	}{
		"all is there":                             {of: drink("a", rum, lime), stock: all, state: evening.Ready},
		"water is always there":                    {of: drink("a", rum, water), stock: all, state: evening.Ready},
		"a house without a list keeps everything":  {of: drink("a", rum, lime), state: evening.Ready},
		"what is missing has a cover":              {of: drink("a", rum, lime), stock: all, out: []*flavor.Profile{rum}, state: evening.Covered},
		"what is missing has none":                 {of: drink("a", rum, lime), stock: all, out: []*flavor.Profile{lime}, state: evening.Missing},
		"what was never kept is missing as well":   {of: drink("a", brandy, lime), stock: []*flavor.Profile{lime}, state: evening.Missing},
		"what was never kept may have a cover":     {of: drink("a", rum, lime), stock: []*flavor.Profile{lime, brandy}, state: evening.Covered},
		"nuts":                                     {of: drink("a", rum, orgeat), stock: all, guest: noNuts, state: evening.NotFor, because: "orgeat contains tree nuts"},
		"nuts for who may have them":               {of: drink("a", rum, orgeat), stock: all, state: evening.Ready},
		"a label decides":                          {of: drink("a", rum, bitters), stock: all, guest: noNuts, state: evening.NotFor, because: "bitters may carry tree nuts (nobody has stated it: read the label)", waits: true},
		"a label decides, and nuts are in it":      {of: drink("a", bitters, orgeat), stock: all, guest: noNuts, state: evening.NotFor, because: "orgeat contains tree nuts; bitters may carry tree nuts (nobody has stated it: read the label)"},
		"what is certain comes first":              {of: drink("a", bitters, apricot, vermouth, orgeat, walnut), stock: house, guest: noNuts, state: evening.NotFor, because: "orgeat contains tree nuts, and walnut liqueur too; apricot liqueur may contain tree nuts; bitters may carry tree nuts (nobody has stated it: read the label), and vermouth too"},
		"what may be there before the unstated":    {of: drink("a", bitters, apricot), stock: house, guest: noNuts, state: evening.NotFor, because: "apricot liqueur may contain tree nuts; bitters may carry tree nuts (nobody has stated it: read the label)", waits: true},
		"a label decides, and nothing covers lime": {of: drink("a", lime, bitters), stock: all, out: []*flavor.Profile{lime}, guest: noNuts, state: evening.NotFor, because: "bitters may carry tree nuts (nobody has stated it: read the label)", waits: true},
		"a cover leaves out what a label decides":  {of: drink("a", rum, bitters), stock: all, out: []*flavor.Profile{rum}, guest: noNuts, state: evening.Covered, spares: true},
		"what is missing has nuts":                 {of: drink("a", lime, orgeat), stock: all, out: []*flavor.Profile{orgeat}, guest: noNuts, state: evening.NotFor, because: "orgeat is out, it contains tree nuts, and nothing keeps the drink without it"},
		"what is missing has nuts, another may":    {of: drink("a", orgeat, bitters), stock: all, out: []*flavor.Profile{orgeat}, guest: noNuts, state: evening.NotFor, because: "orgeat (out) contains tree nuts; bitters may carry tree nuts (nobody has stated it: read the label)", waits: true},
		"what is missing may have nuts":            {of: drink("a", lime, bitters), stock: all, out: []*flavor.Profile{bitters}, guest: noNuts, state: evening.NotFor, because: "bitters is out, it may carry tree nuts (nobody has stated it: read the label), and nothing keeps the drink without it"},
		"too strong, and something is missing":     {of: drink("a", rum, lime), stock: all, out: []*flavor.Profile{lime}, guest: guest.Guest{MaxABV: 12}, state: evening.NotFor, because: "20.0\u00a0% vol"},
		"too strong":                               {of: drink("a", rum, lime), stock: all, guest: guest.Guest{MaxABV: 12}, state: evening.NotFor, because: "20.0\u00a0% vol"},
		"too strong, whatever a label says":        {of: drink("a", rum, bitters), stock: all, guest: guest.Guest{MaxABV: 12, Avoid: noNuts.Avoid}, state: evening.NotFor, because: "bitters may carry tree nuts (nobody has stated it: read the label)"},
	} {
		got, err := evening.Of(t.Context(), bar{}, evening.Request{Menu: []*flavor.Spec{c.of}, Stock: c.stock, Out: c.out, Guest: c.guest})
		require.NoError(t, err, name)
		d := got.Of(c.of)
		require.NotNil(t, d, name)
		assert.Equal(t, c.state, d.State, name)
		assert.Equal(t, c.because, d.Because, name)
		assert.Equal(t, c.waits, d.Waits(), name)
		assert.Equal(t, c.spares, d.Spares(), name)
	}
}

// Every drink of a menu has one state, a drink that is ready holds nothing that is missing
// or that the guest must not have, and what waits for a label is not for the guest before.
func TestTheStatesOfAMenuAddUp(t *testing.T) {
	all := []*flavor.Profile{rum, brandy, lime, orgeat, bitters, water}
	some := rapid.SliceOfNDistinct(rapid.SampledFrom(all), 1, -1, func(p *flavor.Profile) string { return p.ID })
	few := rapid.SliceOfDistinct(rapid.SampledFrom(all), func(p *flavor.Profile) string { return p.ID })
	rapid.Check(t, func(t *rapid.T) {
		r := evening.Request{Stock: few.Draw(t, "stock"), Guest: guest.Guest{Avoid: rapid.SliceOfDistinct(rapid.SampledFrom([]flavor.Allergen{flavor.TreeNuts, flavor.Milk}), rapid.ID).Draw(t, "avoid")}}
		r.Out = slices.DeleteFunc(few.Draw(t, "out"), func(p *flavor.Profile) bool { return !slices.Contains(r.Stock, p) })
		for i := range rapid.IntRange(0, 4).Draw(t, "drinks") {
			r.Menu = append(r.Menu, drink(fmt.Sprint(i), some.Draw(t, "pours")...))
		}
		a, err := evening.Of(context.Background(), bar{}, r)
		require.NoError(t, err)
		require.Len(t, a.Drinks, len(r.Menu))
		for i := range a.Drinks {
			d := &a.Drinks[i]
			assert.Same(t, r.Menu[i], d.Spec)
			assert.Equal(t, d.State == evening.NotFor, d.Because != "")
			assert.False(t, d.Waits() && d.State != evening.NotFor)
			if d.State != evening.Ready {
				continue
			}
			for _, p := range d.Spec.Pours {
				assert.True(t, r.Guest.Accepts(p.Profile))
				assert.False(t, slices.Contains(r.Out, p.Profile) || slices.Contains(a.NotKept, p.Profile))
			}
		}
	})
}

// A drink without what is missing is not told of where a nearer cover is noticed no more.
func TestWithout(t *testing.T) {
	near, far := &cover.Cover{Distance: 2, Notice: sense.MayNotice}, &cover.Cover{Distance: 6, Notice: sense.WillNotice}
	assert.Nil(t, evening.Without(nil, near))
	assert.Same(t, near, evening.Without(near, far), "it is nearer")
	assert.Same(t, far, evening.Without(far, nil), "there is no cover")
	assert.Nil(t, evening.Without(far, near), "the cover is nearer")
}

// What is there and not for the guest is covered as if it had run out, and told as covered; what only a
// label decides waits for it, and without its alcohol a drink is another.
func TestAPourThatIsNotForTheGuestIsCovered(t *testing.T) {
	nutty := profile("nutty rum", flavor.AllergenMark{Allergen: flavor.TreeNuts, Certainty: flavor.Contains})
	kitchen := forGuests{bar{}, nutty}
	menu := []*flavor.Spec{drink("Nut Daiquiri", nutty, lime), drink("Orgeat Sour", brandy, orgeat), drink("Open", bitters, lime)}
	stock := []*flavor.Profile{nutty, brandy, lime, orgeat, bitters}
	of := func(g guest.Guest) *evening.Answer {
		a, err := evening.Of(context.Background(), kitchen, evening.Request{Menu: menu, Stock: stock, Guest: g})
		require.NoError(t, err)
		return a
	}
	a := of(guest.Guest{Avoid: []flavor.Allergen{flavor.TreeNuts}})
	covered := a.Drinks[0]
	assert.Equal(t, evening.Covered, covered.State)
	require.NotNil(t, covered.Touched)
	assert.Empty(t, covered.Touched.Missing, "nothing ran out")
	assert.Equal(t, []*flavor.Profile{nutty}, covered.Touched.Removed)
	assert.Empty(t, covered.Because)
	assert.Equal(t, evening.NotFor, a.Drinks[1].State, "nothing covers it")
	assert.True(t, a.Drinks[2].Waits())
	assert.Nil(t, a.Result, "no bottle is missing")
	for _, d := range of(guest.Guest{}).Drinks {
		assert.Equal(t, evening.Ready, d.State)
	}
}

// forGuests keeps a drink that lacks one bottle alone, which the guest must not have.
type forGuests struct {
	bar
	gone *flavor.Profile
}

func (f forGuests) Outs(_ context.Context, r outs.Request) (*outs.Result, error) {
	out := &outs.Result{}
	for _, s := range r.Specs {
		t := outs.Touched{Spec: s, Chosen: -1}
		for _, p := range s.Pours {
			if slices.Contains(r.Out, p.Profile) {
				t.Missing, t.Removed = append(t.Missing, p.Profile), append(t.Removed, p.Profile)
			}
		}
		if slices.Equal(t.Missing, []*flavor.Profile{f.gone}) {
			t.Covers, t.Chosen, t.Near = []cover.Cover{{}}, 0, true
		}
		if len(t.Missing) > 0 {
			out.Touched = append(out.Touched, t)
		}
	}
	return out, nil
}
