package search

import (
	"context"
	"math"
	"math/rand/v2"
	"slices"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// dims is how many places of a row the made-up problems use.
const dims = 6

// drawRow draws a row; places from rising on are never below zero.
func drawRow(t *rapid.T, rising int, scale float64) Row {
	var r Row
	for i := range dims {
		low := -scale
		if i >= rising {
			low = 0
		}
		r[i] = rapid.Float64Range(low, scale).Draw(t, "x")
	}
	return r
}

// drawProblem draws a small problem. Its last two directions rise. A little noise
// keeps any two fillings from being equally good to the last digit.
func drawProblem(t *rapid.T) *Problem {
	p := drawRound(t)
	rng := rand.New(rand.NewPCG(1, 2))
	shake := func(r *Row) {
		for i := range dims {
			r[i] += 1e-3 * rng.Float64()
		}
	}
	shake(&p.Gap)
	for i := range p.Parts {
		shake(&p.Parts[i].Per)
	}
	for i := 0; i < len(p.Moves); i += 2 { // the two steps of a pour stay on one line
		back, forth := &p.Moves[i].By, &p.Moves[i+1].By
		share := 0.0
		if square := dot(forth, forth); square > 0 {
			share = dot(back, forth) / square
		}
		shake(forth)
		*back = Row{}
		add(back, forth, share)
	}
	return p
}

func drawRound(t *rapid.T) *Problem {
	p := &Problem{Costs: Costs{Part: 0.6, Move: 0.25, Unlike: 0.4, Earn: rapid.SampledFrom([]float64{0.0371, 0.317, 1.03}).Draw(t, "earn")},
		Most: rapid.IntRange(1, MaxParts).Draw(t, "most"), Limit: rapid.IntRange(1, 8).Draw(t, "limit"),
		PerKind: rapid.IntRange(1, 3).Draw(t, "per kind"), Tail: rapid.SampledFrom([]float64{0, 0.713, 3}).Draw(t, "tail")}
	out := rapid.IntRange(1, 2).Draw(t, "out")
	for range rapid.IntRange(1, 9).Draw(t, "parts") {
		part := Part{Per: drawRow(t, dims-2, 0.2), Odd: rapid.IntRange(0, 3).Draw(t, "odd") == 0,
			Price: rapid.SampledFrom([]float64{0, 0, 0.5, 2}).Draw(t, "price")}
		ml := 0.0
		for range rapid.IntRange(1, 5).Draw(t, "amounts") {
			ml += rapid.Float64Range(1, 10).Draw(t, "ml")
			part.Amounts = append(part.Amounts, ml)
		}
		if rapid.Bool().Draw(t, "alike") {
			part.Alike = rapid.SampledFrom(part.Amounts).Draw(t, "like for like")
			part.Firm = rapid.SampledFrom([]float64{0, 0.3, 2}).Draw(t, "firm")
		}
		for range out {
			part.Strange = append(part.Strange, rapid.SampledFrom([]float64{0, 0.2, 1, math.Inf(1)}).Draw(t, "strange"))
		}
		p.Parts = append(p.Parts, part)
	}
	for i := range p.Parts { // what is missing is much like a mix of the parts
		add(&p.Gap, &p.Parts[i].Per, rapid.Float64Range(0, 12).Draw(t, "gap"))
	}
	for pour := range rapid.IntRange(0, 3).Draw(t, "pours") {
		m := Move{Pour: pour, By: drawRow(t, dims, 1)}
		back := Move{Pour: pour}
		add(&back.By, &m.By, -rapid.Float64Range(0.5, 1).Draw(t, "back"))
		p.Moves = append(p.Moves, back, m)
	}
	p.Rising = []Row{{dims - 2: 1}, {dims - 2: 0.5, dims - 1: 1}}
	if len(p.Parts) > 2 && rapid.Bool().Draw(t, "known") {
		p.Known = map[Combination]float64{Combine(1): rapid.Float64Range(-1, 1).Draw(t, "standing"), Combine(0, 2): 0.1}
	}
	return p
}

// distances calls do with the distance of every amount of every part and every
// set of moves.
func distances(t *task, parts []int, do func(amounts [MaxParts]int, set *moveSet, square float64)) {
	var amounts [MaxParts]int
	var pour func(k int, left Row, set *moveSet)
	pour = func(k int, left Row, set *moveSet) {
		if k == len(parts) {
			do(amounts, set, dot(&left, &left))
			return
		}
		for i, ml := range t.Parts[parts[k]].Amounts {
			amounts[k] = i
			next := left
			add(&next, t.per(parts[k]), -ml)
			pour(k+1, next, set)
		}
	}
	for s := range t.sets {
		left := t.Gap
		for _, m := range t.sets[s].moves {
			add(&left, &t.Moves[m].By, -1)
		}
		pour(0, left, &t.sets[s])
	}
}

func nearest(t *task, parts []int) float64 {
	least := math.Inf(1)
	distances(t, parts, func(_ [MaxParts]int, _ *moveSet, square float64) { least = min(least, square) })
	return math.Sqrt(least)
}

// mustReach is how near a combination must come for each part to earn its place.
func mustReach(t *task, parts []int) float64 {
	least := math.Inf(1)
	if _, known := t.Known[Combine(parts...)]; known {
		return least
	}
	for some := 1; some < 1<<len(parts)-1; some++ {
		var fewer []int
		for k, i := range parts {
			if some&(1<<k) != 0 {
				fewer = append(fewer, i)
			}
		}
		least = min(least, nearest(t, fewer))
	}
	return least - t.Costs.Earn
}

// combinations lists all that may be listed at all.
func combinations(t *task) (out [][]int) {
	var walk func(parts []int, from int)
	walk = func(parts []int, from int) {
		if len(parts) > 0 {
			_, known := t.Known[Combine(parts...)]
			if known || t.plain(parts) && !math.IsInf(t.Standing(parts), 1) {
				out = append(out, parts)
			}
		}
		if len(parts) == t.Most {
			return
		}
		for i := from; i < len(t.Parts); i++ {
			if t.self[i] == 0 {
				continue // brings nothing
			}
			walk(append(slices.Clone(parts), i), i+1)
		}
	}
	walk(nil, 0)
	return out
}

// unlikeCost is what one part alone costs that is not poured like for like.
func unlikeCost(t *task, parts []int, amounts [MaxParts]int) float64 {
	p := &t.Parts[parts[0]]
	if len(parts) > 1 || p.Alike == 0 || p.Alike == p.Amounts[amounts[0]] {
		return 0
	}
	doublings := math.Abs(math.Log2(p.Amounts[amounts[0]]) - math.Log2(p.Alike))
	return p.Firm + t.Costs.Unlike*doublings
}

// listOf makes the list from one filling of each combination, all at once.
func listOf(t *task, all []Filling) (out []Filling) {
	slices.SortFunc(all, compare)
	kinds := map[kind]int{}
	for i := range all {
		if t.Tail > 0 && all[i].Rank > all[0].Rank+t.Tail {
			break
		}
		of := t.kindOf(&all[i])
		if kinds[of]++; kinds[of] <= t.PerKind && len(out) < t.Limit {
			out = append(out, all[i])
		}
	}
	return out
}

// The plain search tries every amount of every combination with every set of
// moves, and knows no bound.
func TestFindAgreesWithPlainSearch(t *testing.T) {
	const tolerance = 1e-7 // rounding: the one adds up rows, the other products
	found := 0
	rapid.Check(t, func(rt *rapid.T) {
		p := drawProblem(rt)
		got, err := Find(context.Background(), p)
		require.NoError(rt, err)
		require.True(rt, got.Proven)
		task := newTask(p, new(room))
		var all []Filling
		for _, parts := range combinations(task) {
			best := Filling{Rank: math.Inf(1)}
			far := mustReach(task, parts)
			distances(task, parts, func(amounts [MaxParts]int, set *moveSet, square float64) {
				x := Filling{Parts: parts, Amounts: amounts, Moves: set.moves, Square: square,
					Rank: math.Sqrt(square) + set.cost + task.standing(parts) + unlikeCost(task, parts, amounts)}
				if x.Distance() <= far && compare(x, best) < 0 {
					best = x
				}
			})
			if !math.IsInf(best.Rank, 1) {
				all = append(all, best)
			}
		}
		want := listOf(task, all)
		require.Equal(rt, len(want), len(got.Fillings))
		for i := range want {
			assert.Equal(rt, want[i].Parts, got.Fillings[i].Parts)
			assert.Equal(rt, want[i].Amounts, got.Fillings[i].Amounts)
			assert.InDelta(rt, want[i].Rank, got.Fillings[i].Rank, tolerance)
		}
		found += len(want)
	})
	assert.Positive(t, found)
}

// What may be served is asked of the roundings in order, and the search stays
// exact though most are sent back.
func TestFindAgreesWhereMostIsSentBack(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		p := drawProblem(rt)
		served := func(x *Filling) bool { return (x.Amounts[0]*7+x.Amounts[1]*5+x.Parts[0]*3+len(x.Moves))%3 == 0 }
		p.Allows = func(x *Filling) bool { return (x.Amounts[0]+x.Parts[0])%4 != 1 }
		p.Choose = func(some []Filling) (int, error) {
			return slices.IndexFunc(some, func(x Filling) bool { return p.Allows(&x) && served(&x) }), nil
		}
		got, err := Find(context.Background(), p)
		require.NoError(rt, err)
		task := newTask(p, new(room))
		var all []Filling
		for _, parts := range combinations(task) {
			r := rounder{task: task, room: new(room)}
			some := r.round(parts, math.Inf(1), mustReach(task, parts))
			if at, _ := p.Choose(some); at >= 0 {
				all = append(all, some[at])
			}
		}
		want := listOf(task, all)
		require.Equal(rt, len(want), len(got.Fillings))
		for i := range want {
			assert.Equal(rt, want[i], got.Fillings[i])
		}
	})
}

// Every link of the chain is no more than what it speaks for.
func TestLowerBoundsHold(t *testing.T) {
	const tolerance = 1e-7
	rapid.Check(t, func(rt *rapid.T) {
		task := newTask(drawProblem(rt), new(room))
		task.workAlone()
		some := task.all()
		m, err := task.newMetric(some)
		require.NoError(rt, err)
		for _, parts := range combinations(task) {
			p := task.productsOf(parts)
			distance, cost := task.lowerBound(parts, &p)
			least := nearest(task, parts)
			assert.LessOrEqual(rt, distance, least+tolerance)
			assert.LessOrEqual(rt, distance, cost+tolerance, "moves cost something")
			place := func(i int) int { return slices.Index(some, i) }
			switch len(parts) {
			case 1:
				assert.InDelta(rt, least, task.alone[parts[0]], tolerance)
				assert.LessOrEqual(rt, task.lowerBoundAlone(parts[0]), cost+tolerance)
			case 2:
				assert.InDelta(rt, least, task.pairDistance(parts[0], parts[1]), tolerance)
				row := m.row(place(parts[0]))
				assert.LessOrEqual(rt, m.pair(&row, place(parts[0]), place(parts[1])), m.limit(least)+tolerance)
			case 3:
				table := m.table(tableOf)
				a, b, c := place(parts[0]), place(parts[1]), place(parts[2])
				assert.LessOrEqual(rt, table.triple(table.with(a, 0), table.with(b, 1), a, b, c), m.limit(least)+tolerance)
			}
			r := task.newReach()
			r.within(least+tolerance, len(parts))
			for _, i := range parts {
				assert.Contains(rt, r.alive, i)
			}
		}
	})
}

// Roundings come in order, the first is the nearest of all, and a cutoff leaves
// out what lies beyond it and nothing else.
func TestRound(t *testing.T) {
	const tolerance = 1e-7
	rapid.Check(t, func(rt *rapid.T) {
		task := newTask(drawProblem(rt), new(room))
		all := combinations(task)
		if len(all) == 0 {
			return
		}
		parts := rapid.SampledFrom(all).Draw(rt, "combination")
		r := rounder{task: task, room: new(room)}
		got := slices.Clone(r.round(parts, math.Inf(1), math.Inf(1)))
		require.NotEmpty(rt, got)
		assert.True(rt, slices.IsSortedFunc(got, compare))
		assert.LessOrEqual(rt, len(got), roundingsAlone)
		least := math.Inf(1)
		distances(task, parts, func(amounts [MaxParts]int, set *moveSet, square float64) {
			least = min(least, math.Sqrt(square)+set.cost+task.standing(parts)+unlikeCost(task, parts, amounts))
		})
		assert.InDelta(rt, least, got[0].Rank, tolerance)
		cutoff := got[len(got)/2].Rank
		within := slices.DeleteFunc(slices.Clone(got), func(x Filling) bool { return x.Rank > cutoff })
		assert.Equal(rt, within, r.round(parts, cutoff, math.Inf(1)))
		far := got[len(got)/2].Distance()
		for _, x := range r.round(parts, math.Inf(1), far) {
			assert.LessOrEqual(rt, x.Distance(), far)
		}
	})
}

// A deadline leaves the best so far, without a claim; a search that is called
// off fails.
func TestDeadline(t *testing.T) {
	p := rapid.Custom(drawProblem).Example(7)
	p.Most = 3
	ctx, cancel := context.WithDeadline(context.Background(), time.Now().Add(-time.Second))
	defer cancel()
	got, err := Find(ctx, p)
	require.NoError(t, err)
	assert.False(t, got.Proven)
	ctx, cancel = context.WithCancel(context.Background())
	cancel()
	_, err = Find(ctx, p)
	assert.ErrorIs(t, err, context.Canceled)
}

// More parts than a table may hold are multiplied as they are needed, to the
// same end.
func TestTableOfMany(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		task := newTask(drawProblem(rt), new(room))
		m, err := task.newMetric(task.all())
		require.NoError(rt, err)
		n := len(m.some)
		whole, few := m.table(n), m.table(0)
		for a := range n {
			for b := range n {
				if a != b { // both rows are at hand at once
					few.with(b, 1)
					assert.InDelta(rt, whole.with(a, 0)[b], few.with(a, 0)[b], 1e-9)
				}
			}
		}
	})
}

func TestProblemFaults(t *testing.T) {
	ok := func() *Problem {
		return &Problem{Most: 1, Limit: 1, PerKind: 1, Parts: []Part{{Amounts: []float64{1}}}}
	}
	for name, spoil := range map[string]func(*Problem){
		"most":    func(p *Problem) { p.Most = 4 },
		"limit":   func(p *Problem) { p.Limit = 0 },
		"costs":   func(p *Problem) { p.Costs.Earn = -1 },
		"amounts": func(p *Problem) { p.Parts[0].Amounts = nil },
		"price":   func(p *Problem) { p.Parts[0].Price = -1 },
		"strange": func(p *Problem) { p.Parts = append(p.Parts, Part{Amounts: []float64{1}, Strange: []float64{1}}) },
	} {
		p := ok()
		spoil(p)
		_, err := Find(context.Background(), p)
		assert.Error(t, err, name)
	}
	_, err := Find(context.Background(), ok())
	assert.NoError(t, err)
}

// A search that may hardly work lists what is found of one part, without a
// claim, and the same every time.
func TestEffort(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		p := drawProblem(rt)
		whole, err := Find(context.Background(), p)
		require.NoError(rt, err)
		p.Effort = whole.Effort
		again, err := Find(context.Background(), p)
		require.NoError(rt, err)
		assert.Equal(rt, whole, again, "as much as it takes is enough")
		p.Effort = 1
		little, err := Find(context.Background(), p)
		require.NoError(rt, err)
		if little.Proven {
			assert.Equal(rt, whole.Fillings, little.Fillings)
			return
		}
		p.Most, p.Effort = 1, 0
		one, err := Find(context.Background(), p)
		require.NoError(rt, err)
		assert.Equal(rt, one.Fillings, little.Fillings)
	})
}
