package cover

import (
	"context"
	"fmt"
	"math"
	"math/rand/v2"
	"strconv"
	"sync"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/data"
	"counterpour/data/datatest"
	"counterpour/flavor"
	"counterpour/flavor/balance"
	"counterpour/flavor/cover/sister"
	"counterpour/flavor/guest"
	"counterpour/flavor/template"
	"counterpour/flavor/weigh"
)

// bench is the whole catalogue with a finder over it.
type bench struct {
	catalogue *data.Catalogue
	book      []template.Labelled
	common    *flavor.Commonness
	usual     []*flavor.Profile // what stands in most bars
	finder    *Finder
}

var loadBench = sync.OnceValues(func() (*bench, error) {
	d, err := datatest.Calibrated()
	if err != nil {
		return nil, err
	}
	c := d.Catalogue
	customs, err := c.Customs()
	if err != nil {
		return nil, err
	}
	common, err := c.Commonness(d.Proven)
	if err != nil {
		return nil, err
	}
	usual, err := c.UsualBar()
	if err != nil {
		return nil, err
	}
	finder := NewFinder(d.Mixer, balance.NewJudge(d.Mixer, d.Set, balance.Pantry{}), c.Space(), customs, DefaultWeights())
	proven := make([]sister.Drink, len(d.Proven))
	for i := range d.Proven {
		proven[i] = sister.Drink{Spec: &d.Proven[i].Spec, Current: d.Proven[i].Current}
	}
	finder.Know(proven)
	return &bench{catalogue: c, book: d.Proven, common: common, usual: usual, finder: finder}, nil
})

func newBench(t testing.TB) *bench {
	b, err := loadBench()
	require.NoError(t, err)
	return b
}

// demoMenu is what the demo house pours.
func (b *bench) demoMenu(t testing.TB) []*flavor.Spec {
	demo, err := b.catalogue.Demo()
	require.NoError(t, err)
	specs := make([]*flavor.Spec, len(demo.Specs))
	for i := range demo.Specs {
		specs[i] = &demo.Specs[i].Spec
	}
	return specs
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

// request asks for covers over the whole catalogue.
func (b *bench) request(t testing.TB, text, missing string, parts, limit int, avoid ...flavor.Allergen) Request {
	spec, err := b.catalogue.ReadSpec("", text)
	require.NoError(t, err)
	p, _, found := b.catalogue.ByName(missing)
	require.True(t, found, missing)
	return Request{Spec: &spec, Missing: []*flavor.Profile{p}, Candidates: b.catalogue.Profiles(), Guest: guest.Guest{Avoid: avoid}, Parts: parts, Limit: limit}
}

// task is a request ready to be searched.
func (b *bench) task(t testing.TB, r *Request) *task {
	task, err := b.finder.newTask(r, false)
	require.NoError(t, err)
	require.NoError(t, task.AddCandidates())
	task.AddMoves(false)
	return task
}

const (
	tropical    = "1 1/4 oz gin\n3/4 oz lemon juice\n1/2 oz passion fruit syrup\n1/4 oz orgeat\n1/4 oz falernum\nshake, up"
	artichoke   = "1 oz gin\n1 oz artichoke amaro\n3/4 oz lemon juice\n1/2 oz simple syrup\n2 thin orange slices\nshake, up"
	bitterThird = "1 oz gin\n1 oz red bitter aperitif\n1 oz sweet vermouth\nstir, rocks"
	agaveDaisy  = "2 oz blanco tequila\n1 oz triple sec\n3/4 oz lime juice\nshake, up"
)

// Common practice, no source: the first two drinks are the ones that a bar
// covers when its falernum or its artichoke amaro is out.
func TestFindCoversBestFirst(t *testing.T) {
	b := newBench(t)
	for _, c := range []struct{ text, missing string }{{tropical, "falernum"}, {artichoke, "artichoke amaro"}} {
		r, err := b.finder.Find(context.Background(), b.request(t, c.text, c.missing, 2, 10))
		require.NoError(t, err)
		require.GreaterOrEqual(t, len(r.Covers), 3, c.missing)
		assert.False(t, r.Unbalanced)
		for i, x := range r.Covers {
			if i > 0 {
				assert.LessOrEqual(t, r.Covers[i-1].Rank, x.Rank, "best first")
			}
			assert.GreaterOrEqual(t, x.Score, math.Min(weigh.BalancedFrom, r.ScoreBefore-5)-1e-9, x.Text)
			assert.NotEmpty(t, x.Parts)
			for _, p := range x.Spec.Pours {
				assert.NotEqual(t, c.missing, p.Profile.Name)
				assert.Positive(t, p.ML)
			}
		}
	}
}

func TestAvoidTreeNutsLeavesNoAlmond(t *testing.T) {
	b := newBench(t)
	r, err := b.finder.Find(context.Background(), b.request(t, tropical, "falernum", 2, 20, flavor.TreeNuts))
	require.NoError(t, err)
	require.NotEmpty(t, r.Covers)
	require.Len(t, r.Removed, 2, "orgeat goes too")
	for _, x := range r.Covers {
		for _, p := range x.Spec.Pours {
			_, has := p.Profile.Allergen(flavor.TreeNuts)
			assert.False(t, has, "%s carries tree nuts", p.Profile.Name)
		}
	}
}

// A near twin is the first cover.
func TestTwinIsFirst(t *testing.T) {
	b := newBench(t)
	for _, c := range []struct {
		text, missing string
		twins         []string
	}{
		{bitterThird, "red bitter aperitif", []string{"plant-red-bitter-aperitif"}},
		{agaveDaisy, "triple sec", []string{"orange-curacao", "dry-orange-curacao", "mandarin-liqueur"}},
		{"2 oz bourbon\n1 oz sweet vermouth\n2 dashes aromatic bitters\nstir, up", "bourbon",
			[]string{"bonded-bourbon", "wheated-bourbon", "high-rye-bourbon", "tennessee-style-whiskey", "rye-whiskey"}},
	} {
		r, err := b.finder.Find(context.Background(), b.request(t, c.text, c.missing, 1, 5))
		require.NoError(t, err)
		require.NotEmpty(t, r.Covers)
		assert.Contains(t, c.twins, r.Covers[0].Parts[0].Profile.ID)
	}
}

func TestRequestFaults(t *testing.T) {
	b := newBench(t)
	ok := b.request(t, agaveDaisy, "triple sec", 1, 5)
	for name, spoil := range map[string]func(*Request){
		"no spec":       func(r *Request) { r.Spec = nil },
		"not in drink":  func(r *Request) { p, _ := b.catalogue.ByID("falernum"); r.Missing = []*flavor.Profile{p} },
		"too many":      func(r *Request) { r.Parts = 4 },
		"limit too big": func(r *Request) { r.Limit = 101 },
		"negative":      func(r *Request) { r.Limit = -1 },
	} {
		r := ok
		spoil(&r)
		_, err := b.finder.Find(context.Background(), r)
		assert.Error(t, err, name)
	}
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	big := b.request(t, tropical, "falernum", 3, 10)
	_, err := b.finder.Find(ctx, big)
	assert.ErrorIs(t, err, context.Canceled)
}

func BenchmarkFind(bm *testing.B) {
	b := newBench(bm)
	for _, parts := range []int{1, 2, 3} {
		r := b.request(bm, tropical, "falernum", parts, 10)
		bm.Run(string(rune('0'+parts))+"parts", func(bm *testing.B) {
			bm.ReportAllocs()
			for bm.Loop() {
				if _, err := b.finder.Find(context.Background(), r); err != nil {
					bm.Fatal(err)
				}
			}
		})
	}
}

// shelfOf returns a made-up shelf of n profiles near those of the catalogue, in
// the order of their ids, as the index gives them.
func (b *bench) shelfOf(n int) []*flavor.Profile {
	rng := rand.New(rand.NewPCG(1, 3))
	all := b.catalogue.Profiles()
	out := make([]*flavor.Profile, n)
	for i := range out {
		p := *all[rng.IntN(len(all))]
		p.ID = fmt.Sprintf("%06d-%s", i, p.ID)
		for f := range p.Aroma {
			p.Aroma[f] *= math.Exp(0.3 * rng.NormFloat64())
		}
		p.Bitter.Value *= math.Exp(0.3 * rng.NormFloat64())
		out[i] = &p
	}
	return out
}

// BenchmarkShelf shows how the cost grows with the shelf.
func BenchmarkShelf(bm *testing.B) {
	b := newBench(bm)
	for _, n := range []int{1_000, 10_000, 100_000} {
		bm.Run(strconv.Itoa(n), func(bm *testing.B) {
			shelf := b.shelfOf(n)
			for _, parts := range []int{1, 2, 3} {
				if parts == 3 && n > 10_000 {
					continue
				}
				r := b.request(bm, tropical, "falernum", parts, 10)
				r.Candidates = shelf
				bm.Run(fmt.Sprintf("parts=%d", parts), func(bm *testing.B) {
					bm.ReportAllocs()
					for bm.Loop() {
						if _, err := b.finder.Find(context.Background(), r); err != nil {
							bm.Fatal(err)
						}
					}
				})
			}
		})
	}
}
