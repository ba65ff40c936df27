package cover

import (
	"container/heap"
	"context"
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/flavor"
)

const alexander = "1 oz cognac\n1 oz creme de cacao\n1 oz heavy cream\nshake, up"

// A guest's limits leave a search as exact as it is without them, where next to
// nothing keeps to them, too.
func TestSearchForGuestsIsExact(t *testing.T) {
	b := newBench(t)
	free := Guest{NoAlcohol: true}
	weak := Guest{MaxABV: 15}
	prices := map[string]float64{}
	for i, p := range b.catalogue.Profiles() {
		prices[p.ID] = 0.005 * float64(1+i%7)
	}
	for _, c := range []struct {
		name, text, missing string
		parts, sample       int
		guest               Guest
	}{
		{"alcohol-free, three pours go", alexander, "heavy cream", 2, 5, free},
		{"alcohol-free, three pours go, one part", alexander, "heavy cream", 1, 1, free},
		{"alcohol-free, the base goes", agaveDaisy, "triple sec", 2, 5, free},
		{"alcohol-free, all goes", bitterThird, "red bitter aperitif", 2, 6, free},
		{"weak", bitterThird, "red bitter aperitif", 2, 14, weak},
		{"weak, one part", bitterThird, "london dry gin", 1, 1, weak},
		{"weak, stirred up", "1 1/2 oz vodka\n3/4 oz amaretto\nstir, rocks", "vodka", 2, 14, weak},
		{"cheap", agaveDaisy, "triple sec", 2, 12, Guest{MaxCost: 0.3, Prices: prices}},
	} {
		t.Run(c.name, func(t *testing.T) {
			covers := 0
			r := b.request(t, c.text, c.missing, c.parts, 8)
			r.Guest = c.guest
			var some []*flavor.Profile
			for i := 0; i < len(r.Candidates); i += c.sample {
				some = append(some, r.Candidates[i])
			}
			r.Candidates = some
			require.NoError(t, r.check())
			for _, strict := range []bool{true, false} {
				task := b.task(t, &r)
				task.strict = strict
				got, err := task.search(context.Background())
				require.NoError(t, err)
				want := exhaustive(t, task, c.parts, math.Inf(1))
				require.Equal(t, len(want), len(got), "strict %v", strict)
				covers += len(got)
				for i := range want {
					assert.Equal(t, want[i].parts, got[i].parts, "strict %v, cover %d", strict, i)
					assert.Equal(t, want[i].amounts, got[i].amounts, "strict %v, cover %d", strict, i)
					assert.Equal(t, want[i].moves, got[i].moves, "strict %v, cover %d", strict, i)
				}
			}
			assert.Positive(t, covers)
		})
	}
}

// The first rounding is the nearest of all pourable amounts and moves, and the
// others follow in order, whatever the edge.
func TestRoundAgainstAllAmounts(t *testing.T) {
	b := newBench(t)
	const tolerance = 1e-9
	rng := rand.New(rand.NewPCG(3, 8))
	for _, c := range []struct{ text, missing string }{{tropical, "falernum"}, {artichoke, "artichoke amaro"}, {agaveDaisy, "triple sec"}} {
		r := b.request(t, c.text, c.missing, 2, 10)
		require.NoError(t, r.check())
		task := b.task(t, &r)
		for round := range 60 {
			parts := rng.Perm(len(task.cands))[:1+rng.IntN(2)]
			if round < 6 {
				parts = rng.Perm(len(task.cands))[:3]
			}
			slices.Sort(parts)
			got := task.round(parts, math.Inf(1))
			require.NotEmpty(t, got)
			assert.True(t, slices.IsSortedFunc(got, task.compare))
			assert.LessOrEqual(t, len(got), roundings)
			assert.InDelta(t, task.nearest(parts), got[0].rank, tolerance)
			edge := got[len(got)/2].rank
			within := slices.DeleteFunc(slices.Clone(got), func(x found) bool { return x.rank > edge })
			assert.Equal(t, within, task.round(parts, edge), "an edge leaves out what lies beyond it and nothing else")
		}
	}
}

// nearest returns the least rank over every amount of every part and every set
// of moves.
func (t *task) nearest(parts []int) float64 {
	best := math.Inf(1)
	var pour func(k int, left vector, cost float64)
	pour = func(k int, left vector, cost float64) {
		if k == len(parts) {
			best = min(best, math.Sqrt(dot(&left, &left))+cost)
			return
		}
		c := &t.cands[parts[k]]
		for _, a := range c.amounts {
			next := left
			next.add(&c.per, -a.ml)
			pour(k+1, next, cost)
		}
	}
	for _, set := range t.sets {
		left := t.gap
		for _, m := range set.moves {
			left.add(&t.moves[m].by, -1)
		}
		pour(0, left, set.cost+t.partCost(len(parts))+t.rareCost(parts))
	}
	return best
}

// Where no base can move, letting it move changes nothing, so that search may be
// left out.
func TestBaseMoves(t *testing.T) {
	b := newBench(t)
	var moving, fixed int
	for i := range b.book {
		spec := &b.book[i].Spec
		for _, g := range []Guest{{}, {NoAlcohol: true}} {
			task, err := b.finder.newTask(&Request{Spec: spec, Missing: []*flavor.Profile{spec.Pours[0].Profile}, Guest: g})
			require.NoError(t, err)
			task.shelf = &shelf{}
			task.addMoves(false)
			without := len(task.moves)
			task.addMoves(true)
			assert.Equal(t, task.baseMoves(), len(task.moves) > without, spec.Name)
			if task.baseMoves() {
				moving++
			} else {
				fixed++
			}
		}
	}
	assert.Positive(t, moving)
	assert.Positive(t, fixed)
}

// The order in which candidates are given does not matter, though many have one
// name, and neither does what the finder searched before.
func TestOrderOfCandidatesDoesNotMatter(t *testing.T) {
	b := newBench(t)
	r := b.request(t, tropical, "falernum", 2, 20)
	r.Candidates = b.shelfOf(600)
	for i := range 200 { // the same thing under several ids
		twin := *r.Candidates[i%20]
		twin.ID = fmt.Sprintf("%06d-twin", 600+i)
		r.Candidates = append(r.Candidates, &twin)
	}
	want, err := b.finder.Find(context.Background(), r)
	require.NoError(t, err)
	require.NotEmpty(t, want.Covers)
	rng := rand.New(rand.NewPCG(5, 6))
	for round := range 6 {
		t.Run(fmt.Sprint(round), func(t *testing.T) {
			shuffled := r
			shuffled.Candidates = slices.Clone(r.Candidates)
			rng.Shuffle(len(shuffled.Candidates), func(i, j int) {
				shuffled.Candidates[i], shuffled.Candidates[j] = shuffled.Candidates[j], shuffled.Candidates[i]
			})
			t.Parallel() // searches at once leave each other alone
			for range 3 {
				other := b.request(t, agaveDaisy, "triple sec", 1, 5)
				_, err := b.finder.Find(context.Background(), other)
				require.NoError(t, err)
				got, err := b.finder.Find(context.Background(), shuffled)
				require.NoError(t, err)
				assert.Equal(t, want, got)
			}
		})
	}
}

// A crowd of combinations waits in order.
func TestQueue(t *testing.T) {
	rng := rand.New(rand.NewPCG(9, 9))
	s := &search{task: &task{}, list: &shortlist{edge: math.Inf(1)}}
	for range 500 {
		s.hope([]int{rng.IntN(9), rng.IntN(9)}, float64(rng.IntN(20)))
	}
	last := hope{least: -1}
	for len(s.pending) > 0 {
		h := s.pending[0]
		assert.False(t, queue{h, last}.Less(0, 1), "%v before %v", last, h)
		last = h
		heap.Pop(&s.pending)
	}
}

// BenchmarkGuests asks for what is hardest to find: next to nothing is good
// enough, so that the edge stays far and very many combinations are weighed.
func BenchmarkGuests(bm *testing.B) {
	b := newBench(bm)
	const manyPours = "1 1/2 oz gold rum\n1/2 oz gin\n1 oz cognac\n1/2 oz fino sherry\n2 oz lemon juice\n1 oz orange juice\n1/2 oz orgeat\nshake, crushed"
	for _, c := range []struct {
		name, text, missing string
		guest               Guest
	}{
		{"alcohol-free, three pours go", alexander, "heavy cream", Guest{NoAlcohol: true}},
		{"alcohol-free, four pours go", manyPours, "gin", Guest{NoAlcohol: true}},
		{"weak", "1 1/2 oz vodka\n3/4 oz amaretto\nbuild, rocks", "vodka", Guest{MaxABV: 15}},
	} {
		r := b.request(bm, c.text, c.missing, 2, 10)
		r.Guest = c.guest
		bm.Run(c.name, func(bm *testing.B) {
			bm.ReportAllocs()
			for bm.Loop() {
				if _, err := b.finder.Find(context.Background(), r); err != nil {
					bm.Fatal(err)
				}
			}
		})
	}
}
