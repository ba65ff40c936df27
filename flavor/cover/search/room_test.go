package search

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"
)

// What a room lends is zero and nobody else's, whoever had it before; and it keeps no more than
// it may.
func TestARoomLendsZeros(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := new(room)
		for range rapid.IntRange(1, 3).Draw(t, "searches") {
			var lent [][]float64
			for _, n := range rapid.SliceOfN(rapid.OneOf(rapid.IntRange(0, 100), rapid.IntRange(mostNumbers/2, mostNumbers+1)), 1, 6).Draw(t, "numbers") {
				list := r.take(n)
				assert.Len(t, list, n)
				for i := range list {
					if list[i] != 0 {
						t.Fatal("what was lent before is left")
					}
					list[i] = float64(len(lent) + 1)
				}
				lent = append(lent, list)
			}
			for k, list := range lent {
				for i := range list {
					if list[i] != float64(k+1) {
						t.Fatalf("list %d shares its memory with another", k)
					}
				}
			}
			r.pending = append(r.pending, make(queue, rapid.SampledFrom([]int{1, mostPending + 1}).Draw(t, "pending"))...)
			r.clean()
			assert.LessOrEqual(t, cap(r.numbers), mostNumbers)
			assert.LessOrEqual(t, cap(r.pending), mostPending)
			assert.Empty(t, r.pending)
		}
	})
}
