package cover

import (
	"context"
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"sync"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/data"
	"counterpour/flavor"
	"counterpour/flavor/balance"
	"counterpour/flavor/mix"
	"counterpour/flavor/template"
)

// bench is the whole catalogue with a finder over it.
type bench struct {
	catalogue *data.Catalogue
	book      []template.Labelled
	finder    *Finder
}

var loadBench = sync.OnceValues(func() (*bench, error) {
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
	return &bench{catalogue: c, book: book, finder: NewFinder(mixer, balance.NewJudge(mixer, set, balance.Pantry{}), DefaultWeights())}, nil
})

func newBench(t testing.TB) *bench {
	b, err := loadBench()
	require.NoError(t, err)
	return b
}

// request asks for covers over the whole catalogue.
func (b *bench) request(t testing.TB, text, missing string, parts, limit int, avoid ...flavor.Allergen) Request {
	spec, err := b.catalogue.ReadSpec("", text)
	require.NoError(t, err)
	p, _, found := b.catalogue.ByName(missing)
	require.True(t, found, missing)
	return Request{Spec: &spec, Missing: []*flavor.Profile{p}, Candidates: b.catalogue.Profiles(), Guest: Guest{Avoid: avoid}, Parts: parts, Limit: limit}
}

// task is a request ready to be searched.
func (b *bench) task(t testing.TB, r *Request) *task {
	task, err := b.finder.newTask(r)
	require.NoError(t, err)
	task.shelf = &shelf{}
	task.addCandidates()
	task.addMoves(false)
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
				assert.LessOrEqual(t, r.Covers[i-1].rank, x.rank, "best first")
			}
			assert.GreaterOrEqual(t, x.Score, math.Min(template.BalancedFrom, r.ScoreBefore-5)-1e-9, x.Text)
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

// exhaustive is search without bounds: every combination is rounded, and the
// list is made from all of them at the end. Roundings that rank beyond cutoff
// are not kept, or the whole catalogue would not fit into memory.
func exhaustive(t *testing.T, task *task, parts int, cutoff float64) []found {
	var all []found
	var walk func(chosen []int, from int)
	walk = func(chosen []int, from int) {
		if len(chosen) > 0 {
			all = append(all, task.round(chosen, cutoff)...)
		}
		if len(chosen) == parts {
			return
		}
		for c := from; c < len(task.cands); c++ {
			next := append(slices.Clone(chosen), c)
			odd := 0
			for _, n := range next {
				if task.cands[n].odd {
					odd++
				}
			}
			if odd <= 1 {
				walk(next, c+1)
			}
		}
	}
	walk(nil, 0)
	slices.SortFunc(all, task.compare)
	var out []found
	taken := map[[MaxParts]int]bool{}
	perLeadCount := map[int]int{}
	for i := range all {
		x := &all[i]
		key := [MaxParts]int{-1, -1, -1}
		copy(key[:], x.parts)
		lead := task.lead(x)
		if taken[key] || !task.withinGuest(t, x) {
			continue
		}
		if task.strict {
			spec := task.specOf(x)
			score, err := task.finder.judge.ScoreOnly(&spec)
			require.NoError(t, err)
			if score < task.leastScore() {
				continue
			}
		}
		taken[key] = true // a combination stands for its best rounding
		if perLeadCount[lead] == perLead {
			continue
		}
		perLeadCount[lead]++
		if out = append(out, *x); len(out) == task.req.Limit {
			break
		}
	}
	return out
}

// withinGuest mixes a cover and adds up what it costs, without any shortcut.
func (t *task) withinGuest(tt *testing.T, x *found) bool {
	g := &t.req.Guest
	spec := t.specOf(x)
	drink, err := t.finder.mixer.Mix(&spec)
	require.NoError(tt, err)
	var cost float64
	for k, i := range x.parts {
		c := &t.cands[i]
		cost += g.Prices[c.profile.ID] * c.amounts[x.amounts[k]].ml
	}
	return (g.MaxABV <= 0 || drink.ABV <= g.MaxABV) && (g.MaxCost <= 0 || cost <= g.MaxCost)
}

func TestSearchIsExact(t *testing.T) {
	b := newBench(t)
	for _, c := range []struct {
		name, text, missing  string
		parts, limit, sample int // every sample-th candidate
		// dense: too many combinations to keep every rounding of
		dense bool
	}{
		{"one part, whole catalogue", tropical, "falernum", 1, 10, 1, false},
		{"one part, whole catalogue, metric", "30 ml gin\n30 ml artichoke amaro\n22.5 ml lemon juice\n15 ml simple syrup\nshake, up", "artichoke amaro", 1, 10, 1, false},
		{"two parts, whole catalogue", bitterThird, "red bitter aperitif", 2, 10, 1, true},
		{"two parts, few moves", bitterThird, "red bitter aperitif", 2, 10, 3, false},
		{"two parts, many moves, whole catalogue", tropical, "falernum", 2, 10, 1, true},
		{"two parts, many moves", tropical, "falernum", 2, 10, 8, false},
		{"two parts, base", agaveDaisy, "blanco tequila", 2, 6, 8, false},
		{"three parts", tropical, "falernum", 3, 10, 40, false},
		{"three parts, more of them", tropical, "falernum", 3, 10, 12, true},
		{"three parts, bitter", bitterThird, "red bitter aperitif", 3, 10, 25, false},
		{"three parts, bitter, more of them", bitterThird, "red bitter aperitif", 3, 10, 8, true},
	} {
		t.Run(c.name, func(t *testing.T) {
			if testing.Short() && c.dense {
				t.Skip("left out of a short run")
			}
			r := b.request(t, c.text, c.missing, c.parts, c.limit)
			var some []*flavor.Profile
			for i := 0; i < len(r.Candidates); i += c.sample {
				some = append(some, r.Candidates[i])
			}
			r.Candidates = some
			require.NoError(t, r.check())
			task := b.task(t, &r)
			task.strict = true
			got, err := task.search(context.Background())
			require.NoError(t, err)
			cutoff := math.Inf(1)
			if c.dense && len(got) == c.limit {
				cutoff = got[len(got)-1].rank + 1
			}
			want := exhaustive(t, task, c.parts, cutoff)
			require.Equal(t, len(want), len(got))
			for i := range want {
				assert.Equal(t, want[i].parts, got[i].parts, "cover %d", i)
				assert.Equal(t, want[i].amounts, got[i].amounts, "cover %d", i)
				assert.Equal(t, want[i].moves, got[i].moves, "cover %d", i)
			}
		})
	}
}

// Neither bound of a combination is more than the rank of any of its
// roundings, and reach keeps every rounding that is near enough.
func TestBoundsHold(t *testing.T) {
	b := newBench(t)
	const tolerance = 1e-9
	for _, c := range []struct{ text, missing string }{{tropical, "falernum"}, {artichoke, "artichoke amaro"}, {agaveDaisy, "triple sec"}} {
		r := b.request(t, c.text, c.missing, 2, 10)
		require.NoError(t, r.check())
		task := b.task(t, &r)
		all := make([]int, len(task.cands))
		for i := range all {
			all[i] = i
		}
		metric, err := task.newMetric(all)
		require.NoError(t, err)
		table := metric.table()
		for i := 0; i < len(task.cands); i += 7 {
			j, k := (i*31+5)%len(task.cands), (i*17+11)%len(task.cands)
			for _, parts := range [][]int{{i}, {min(i, j), max(i, j)}, sortedThree(i, j, k)} {
				if len(slices.Compact(slices.Clone(parts))) != len(parts) {
					continue
				}
				p := task.productsOf(parts)
				least := task.leastRank(parts, &p)
				for _, x := range task.round(parts, math.Inf(1)) {
					assert.LessOrEqual(t, least, x.rank+tolerance)
					limit := metric.limit(math.Sqrt(x.square)) + tolerance
					if len(parts) == 2 {
						row := metric.row(parts[0])
						assert.LessOrEqual(t, metric.pair(&row, parts[0], parts[1]), limit)
					}
					if len(parts) == 3 {
						assert.LessOrEqual(t, table.triple(parts[0], parts[1], parts[2]), limit)
					}
				}
				if best := task.round(parts, math.Inf(1)); len(best) > 0 && i%49 == 0 {
					reach := task.newReach()
					reach.within(math.Sqrt(best[0].square)+tolerance, len(parts))
					for n, part := range parts {
						assert.Contains(t, reach.alive, part)
						assert.Less(t, best[0].amounts[n], reach.usable[part])
					}
				}
			}
		}
	}
}

func sortedThree(i, j, k int) []int {
	out := []int{i, j, k}
	slices.Sort(out)
	return out
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
		shelf := b.shelfOf(n)
		for _, parts := range []int{1, 2, 3} {
			if parts == 3 && n > 10_000 {
				continue
			}
			r := b.request(bm, tropical, "falernum", parts, 10)
			r.Candidates = shelf
			bm.Run(fmt.Sprintf("%d/parts=%d", n, parts), func(bm *testing.B) {
				bm.ReportAllocs()
				for bm.Loop() {
					if _, err := b.finder.Find(context.Background(), r); err != nil {
						bm.Fatal(err)
					}
				}
			})
		}
	}
}
