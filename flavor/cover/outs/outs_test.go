package outs

import (
	"context"
	"runtime"
	"sync"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/data"
	"counterpour/data/datatest"
	"counterpour/flavor"
	"counterpour/flavor/balance"
	"counterpour/flavor/cover"
	"counterpour/flavor/cover/choice"
)

// bench is the whole catalogue with a finder over it.
type bench struct {
	catalogue *data.Catalogue
	finder    *cover.Finder
}

var loadBench = sync.OnceValues(func() (*bench, error) {
	d, err := datatest.Calibrated()
	if err != nil {
		return nil, err
	}
	customs, err := d.Catalogue.Customs()
	if err != nil {
		return nil, err
	}
	judge := balance.NewJudge(d.Mixer, d.Set, balance.Pantry{})
	return &bench{d.Catalogue, cover.NewFinder(d.Mixer, judge, d.Catalogue.Space(), customs, cover.DefaultWeights())}, nil
})

func newBench(t testing.TB) *bench {
	b, err := loadBench()
	require.NoError(t, err)
	return b
}

// house is the demo menu and its stock.
func (b *bench) house(t testing.TB) ([]*flavor.Spec, []*flavor.Profile) {
	demo, err := b.catalogue.Demo()
	require.NoError(t, err)
	specs := make([]*flavor.Spec, len(demo.Specs))
	for i := range demo.Specs {
		specs[i] = &demo.Specs[i].Spec
	}
	return specs, demo.Stock
}

func (b *bench) profiles(t testing.TB, ids ...string) []*flavor.Profile {
	out := make([]*flavor.Profile, len(ids))
	for i, id := range ids {
		p, ok := b.catalogue.ByID(id)
		require.True(t, ok, id)
		out[i] = p
	}
	return out
}

// menu is the drinks of some texts.
func (b *bench) menu(t testing.TB, texts ...string) []*flavor.Spec {
	out := make([]*flavor.Spec, len(texts))
	for i, text := range texts {
		s, err := b.catalogue.ReadSpec("", text)
		require.NoError(t, err)
		out[i] = &s
	}
	return out
}

func TestOuts(t *testing.T) {
	b := newBench(t)
	specs, stock := b.house(t)
	out := b.profiles(t, "falernum", "artichoke-amaro", "triple-sec")
	r, err := Find(context.Background(), b.finder, Request{Specs: specs, Out: out, Stock: stock})
	require.NoError(t, err)
	require.NotEmpty(t, r.Touched)
	for i := range r.Touched {
		touched := &r.Touched[i]
		assert.NotEmpty(t, touched.Missing)
		for _, c := range touched.Covers {
			for _, p := range c.Spec.Pours {
				assert.False(t, has(out, p.Profile), "%s is out", p.Profile.Name)
			}
			for _, p := range c.Parts {
				assert.True(t, has(stock, p.Profile), "%s is not in stock", p.Profile.Name)
			}
		}
		if i > 0 {
			assert.LessOrEqual(t, r.Touched[i-1].compare(*touched), 0)
		}
	}
	// Every drink that needs one of the bottles is listed, and no other.
	n := 0
	for _, s := range specs {
		if len(missingFrom(s, out)) > 0 {
			n++
		}
	}
	assert.Len(t, r.Touched, n)
	// Serving the menu together needs no more substitutes than apart.
	assert.GreaterOrEqual(t, r.Spared, 0)
	assert.LessOrEqual(t, r.Given, choice.OpenCost*float64(r.Spared)+1e-9)
	require.Len(t, r.Fetch, 3)
	for i := 1; i < len(r.Fetch); i++ {
		assert.GreaterOrEqual(t, r.Fetch[i-1].Drinks+1000*r.Fetch[i-1].Lost, r.Fetch[i].Drinks+1000*r.Fetch[i].Lost)
	}
	again, err := Find(context.Background(), b.finder, Request{Specs: specs, Out: out, Stock: stock})
	require.NoError(t, err)
	assert.Equal(t, r, again, "the same menu gives the same answer")
}

func TestOutsFaults(t *testing.T) {
	b := newBench(t)
	specs, stock := b.house(t)
	_, err := Find(context.Background(), b.finder, Request{Specs: specs, Stock: stock})
	assert.Error(t, err)
	r, err := Find(context.Background(), b.finder, Request{Specs: specs, Out: b.profiles(t, "soju"), Stock: stock})
	require.NoError(t, err)
	assert.Empty(t, r.Touched, "a bottle that no drink needs touches none")
}

// A menu that there is no time for is answered all the same, and says so; one whose
// work is limited has the same answer every time.
func TestOutsOutOfTime(t *testing.T) {
	b := newBench(t)
	specs, stock := b.house(t)
	out := []*flavor.Profile{specs[0].Pours[0].Profile}
	over, cancel := context.WithDeadline(context.Background(), time.Now())
	defer cancel()
	late, err := Find(over, b.finder, Request{Specs: specs, Out: out, Stock: stock, Parts: 3})
	require.NoError(t, err)
	require.NotEmpty(t, late.Touched)
	assert.True(t, late.CutShort)
	for i := range late.Touched {
		assert.False(t, late.Touched[i].Proven)
	}
	gone, leave := context.WithCancel(context.Background())
	leave()
	_, err = Find(gone, b.finder, Request{Specs: specs, Out: out, Stock: stock, Parts: 3})
	assert.ErrorIs(t, err, context.Canceled)

	some, err := Find(context.Background(), b.finder, Request{Specs: specs, Out: out, Stock: stock, Parts: 3, Effort: 1})
	require.NoError(t, err)
	assert.False(t, some.CutShort)
	for i := range some.Touched {
		assert.NotEmpty(t, some.Touched[i].Covers, "one part alone is always looked at")
	}
}

func BenchmarkOuts(bm *testing.B) {
	b := newBench(bm)
	demo, stock := b.house(bm)
	var specs []*flavor.Spec
	for len(specs) < 200 {
		specs = append(specs, demo...)
	}
	specs = specs[:200]
	out := b.profiles(bm, "falernum", "artichoke-amaro", "triple-sec", "orgeat", "red-bitter-aperitif",
		"cinnamon-syrup", "sweet-vermouth", "ginger-beer", "creme-de-cassis", "fernet")
	bm.ReportAllocs()
	for bm.Loop() {
		if _, err := Find(context.Background(), b.finder, Request{Specs: specs, Out: out, Stock: stock}); err != nil {
			bm.Fatal(err)
		}
	}
}

// However many cores search, the same is found.
func TestTheSameIsFoundOnAnyNumberOfCores(t *testing.T) {
	b := newBench(t)
	specs, stock := b.house(t)
	r := Request{Specs: specs, Out: b.profiles(t, "falernum", "triple-sec"), Stock: stock}
	var first *Result
	defer runtime.GOMAXPROCS(runtime.GOMAXPROCS(1))
	for _, cores := range []int{1, 3} {
		runtime.GOMAXPROCS(cores)
		found, err := Find(t.Context(), b.finder, r)
		require.NoError(t, err)
		if first == nil {
			first = found
		}
		assert.Equal(t, first, found, "%d cores", cores)
	}
}

// No drink is given a new allergen to spare a bottle.
func TestTheMenuIsCoveredWithoutNewAllergens(t *testing.T) {
	b := newBench(t)
	specs, stock := b.house(t)
	r, err := Find(context.Background(), b.finder, Request{Specs: specs, Out: b.profiles(t, "falernum", "triple-sec", "artichoke-amaro"), Stock: stock})
	require.NoError(t, err)
	for i := range r.Touched {
		x := &r.Touched[i]
		if x.Chosen >= 0 && len(x.Covers[x.Chosen].NewAllergens) > 0 {
			assert.NotEmpty(t, x.Covers[0].NewAllergens, "%s: %s before %s", x.Spec.Name, x.Covers[x.Chosen].Text, x.Covers[0].Text)
		}
	}
}
