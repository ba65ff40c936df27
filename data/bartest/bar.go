// Package bartest sets a bar up for tests that work on drafts: the whole catalogue with a
// station over it, drinks to start from, and stocks of fixed ingredients. Tests with a
// fixed stock do not change when the catalogue grows.
package bartest

import (
	"slices"
	"sync"
	"testing"

	"github.com/stretchr/testify/require"

	"counterpour/data"
	"counterpour/data/datatest"
	"counterpour/flavor"
	"counterpour/flavor/balance"
	"counterpour/flavor/guest"
	"counterpour/flavor/measure"
	"counterpour/flavor/riff/aim"
	"counterpour/flavor/riff/station"
	"counterpour/flavor/riff/wish"
	"counterpour/flavor/sense"
	"counterpour/flavor/template"
)

// Rounding is the tolerance between two computations of the same number.
const Rounding = 1e-9

// Drinks to start from: common practice, no source.
const (
	GinSour     = "2 oz London dry gin\n3/4 oz lemon juice\n3/4 oz simple syrup\nshake, up"
	Tropical    = "1 1/4 oz gin\n3/4 oz lemon juice\n1/2 oz passion fruit syrup\n1/4 oz orgeat\n1/4 oz falernum\nshake, up"
	BitterThird = "1 oz gin\n1 oz red bitter aperitif\n1 oz sweet vermouth\nstir, rocks"
	AgaveDaisy  = "2 oz blanco tequila\n1 oz triple sec\n3/4 oz lime juice\nshake, up"
	OldWhiskey  = "60 ml bourbon\n5 ml demerara syrup\n2 dashes aromatic bitters\nstir, rocks"
	Collins     = "45 ml gin\n30 ml lemon juice\n15 ml simple syrup\n60 ml soda water\nbuild, long"
)

// Bar is the whole catalogue, with a station over it.
type Bar struct {
	Catalogue *data.Catalogue
	Station   *station.Station
	Proven    []template.Labelled
	Usual     []*flavor.Profile // ingredients that most bars stock
}

var load = sync.OnceValues(func() (*Bar, error) {
	d, err := datatest.Calibrated()
	if err != nil {
		return nil, err
	}
	c := d.Catalogue
	usual, err := c.UsualBar()
	if err != nil {
		return nil, err
	}
	carriers, err := c.Carriers()
	if err != nil {
		return nil, err
	}
	serves, err := c.Serves()
	if err != nil {
		return nil, err
	}
	customs, err := c.Customs()
	if err != nil {
		return nil, err
	}
	st, err := station.New(d.Mixer, balance.NewJudge(d.Mixer, d.Set, c.Pantry()), d.Set, c.Space(), station.Lore{Proven: d.Proven, Serves: serves, Carriers: carriers, Customs: customs})
	return &Bar{Catalogue: c, Station: st, Proven: d.Proven, Usual: usual}, err
})

// New returns the bar. Tests share it and must not change it.
func New(t testing.TB) *Bar {
	t.Helper()
	b, err := load()
	require.NoError(t, err)
	return b
}

// Spec reads a draft.
func (b *Bar) Spec(t testing.TB, text string) *flavor.Spec {
	t.Helper()
	s, err := b.Catalogue.ReadSpec("", text)
	require.NoError(t, err)
	return &s
}

// Bottle returns the ingredient with a name.
func (b *Bar) Bottle(t testing.TB, name string) *flavor.Profile {
	t.Helper()
	p, _, found := b.Catalogue.ByName(name)
	require.True(t, found, name)
	return p
}

// Bottles returns the ingredients with these names.
func (b *Bar) Bottles(t testing.TB, names ...string) []*flavor.Profile {
	t.Helper()
	var out []*flavor.Profile
	for _, n := range names {
		out = append(out, b.Bottle(t, n))
	}
	return out
}

// Limits returns what a guest and wishes forbid and ask for; the wishes may name everything in
// the catalogue.
func (b *Bar) Limits(t require.TestingT, g guest.Guest, wishes ...string) *aim.Limits {
	read, err := wish.Parse(wishes, wish.NamesIn(b.Catalogue.Profiles()))
	require.NoError(t, err, wishes)
	l, err := aim.NewLimits(&g, read)
	require.NoError(t, err, wishes)
	return l
}

// Apart returns how far apart two drinks are in the glass, in just-noticeable differences over
// every sense.
func (b *Bar) Apart(t require.TestingT, x, y *flavor.Spec) float64 {
	var glasses [2]*sense.Percept
	for i, s := range []*flavor.Spec{x, y} {
		drink, err := b.Station.Mixer.Mix(s)
		require.NoError(t, err)
		glasses[i] = b.Station.Space.Percept(s, drink)
	}
	return station.Apart(glasses[0], glasses[1])
}

// With returns a stock with the ingredients of a drink added.
func With(stock []*flavor.Profile, s *flavor.Spec) []*flavor.Profile {
	out := slices.Clone(stock)
	for i := range s.Pours {
		out = append(out, s.Pours[i].Profile)
	}
	return out
}

// Some returns every nth usual bottle, starting at the index from.
func (b *Bar) Some(from, every int) []*flavor.Profile {
	var out []*flavor.Profile
	for i := from; i < len(b.Usual); i += every {
		out = append(out, b.Usual[i])
	}
	return out
}

// CheckAmounts checks that every pour is a step of the jigger, and that its millilitres
// match its amount.
func CheckAmounts(t testing.TB, s *flavor.Spec) {
	t.Helper()
	for _, p := range s.Pours {
		per, ok := measure.MLPerUnit(p.Unit, p.Profile)
		require.True(t, ok)
		if d := p.ML - p.Amount*per; d > Rounding || d < -Rounding {
			t.Errorf("%s: %v %s is not %v mL", p.Profile.Name, p.Amount, p.Unit, p.ML)
		}
		if p.Unit == flavor.Top {
			continue
		}
		if d := measure.Snap(p.ML, p.Unit, p.Profile) - p.Amount; d > Rounding || d < -Rounding {
			t.Errorf("%s: %v %s is no step of the jigger", p.Profile.Name, p.Amount, p.Unit)
		}
	}
}
