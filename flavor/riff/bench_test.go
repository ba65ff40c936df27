package riff

import (
	"context"
	"slices"
	"sync"
	"testing"

	"github.com/stretchr/testify/require"

	"counterpour/data"
	"counterpour/flavor"
	"counterpour/flavor/balance"
	"counterpour/flavor/mix"
	"counterpour/flavor/template"
)

// bar is the whole catalogue with a riffer over it.
type bar struct {
	catalogue *data.Catalogue
	riffer    *Riffer
	proven    []template.Labelled
	mixer     *mix.Mixer
}

var loadBar = sync.OnceValues(func() (*bar, error) {
	c, err := data.Embedded()
	if err != nil {
		return nil, err
	}
	set, book, err := c.Set()
	if err != nil {
		return nil, err
	}
	mixer, err := mix.NewMixer()
	if err != nil {
		return nil, err
	}
	r, err := NewRiffer(mixer, balance.NewJudge(mixer, set, balance.Pantry{}), set, book)
	return &bar{catalogue: c, riffer: r, proven: book, mixer: mixer}, err
})

func newBar(t testing.TB) *bar {
	b, err := loadBar()
	require.NoError(t, err)
	return b
}

func (b *bar) spec(t testing.TB, text string) *flavor.Spec {
	s, err := b.catalogue.ReadSpec("", text)
	require.NoError(t, err)
	return &s
}

func (b *bar) bottle(t testing.TB, name string) *flavor.Profile {
	p, _, found := b.catalogue.ByName(name)
	require.True(t, found, name)
	return p
}

// with is a stock and the pours of a drink.
func with(stock []*flavor.Profile, s *flavor.Spec) []*flavor.Profile {
	out := slices.Clone(stock)
	for i := range s.Pours {
		out = append(out, s.Pours[i].Profile)
	}
	return out
}

// stock is every nth ingredient, so many at most.
func (b *bar) stock(every, most int) []*flavor.Profile {
	var out []*flavor.Profile
	all := b.catalogue.Profiles()
	for i := 0; i < len(all) && len(out) < most; i += every {
		out = append(out, all[i])
	}
	return out
}

const (
	ginSour     = "2 oz London dry gin\n3/4 oz lemon juice\n3/4 oz simple syrup\nshake, up"
	tropical    = "1 1/4 oz gin\n3/4 oz lemon juice\n1/2 oz passion fruit syrup\n1/4 oz orgeat\n1/4 oz falernum\nshake, up"
	bitterThird = "1 oz gin\n1 oz red bitter aperitif\n1 oz sweet vermouth\nstir, rocks"
	agaveDaisy  = "2 oz blanco tequila\n1 oz triple sec\n3/4 oz lime juice\nshake, up"
	oldWhiskey  = "60 ml bourbon\n5 ml demerara syrup\n2 dashes aromatic bitters\nstir, rocks"
	collins     = "45 ml gin\n30 ml lemon juice\n15 ml simple syrup\n60 ml soda water\nbuild, long"
)

func BenchmarkRiff(bm *testing.B) {
	b := newBar(bm)
	stock := b.stock(2, 400)
	for _, c := range []struct {
		name, text string
		whole      bool // everything in the drink is in stock
	}{{"sour", ginSour, true}, {"five pours", tropical, true}, {"bitter third", bitterThird, true}, {"two bottles out", tropical, false}} {
		bm.Run(c.name, func(bm *testing.B) {
			bm.ReportAllocs()
			s := b.spec(bm, c.text)
			some := stock
			if c.whole {
				some = with(stock, s)
			}
			for bm.Loop() {
				res, err := b.riffer.Riff(context.Background(), Request{Spec: s, Stock: some, Limit: 10})
				if err != nil || len(res.Riffs) != 10 {
					bm.Fatal(err, len(res.Riffs))
				}
			}
		})
	}
}
