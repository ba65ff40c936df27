package index

import (
	"cmp"
	"context"
	"fmt"
	"slices"

	"counterpour/flavor"
	"counterpour/flavor/lookup"
)

// mostWrites is how often a line is written to before the bleve index is rebuilt. By then
// a search takes a few times as long.
const mostWrites = 40

// Follow returns an index over other profiles, most of which are those of x. Only
// profiles that are new, removed or replaced are written, so one more bottle takes
// milliseconds and not a complete build. Profiles are compared by pointer; if nothing
// changed, Follow returns x.
//
// Both indexes, and all derived from them, share one bleve index: they form a line, and
// closing one closes all. x still answers for its own profiles. While both are in use,
// totals and facets of x may count ingredients that only the other has, and filters may
// use the newer record. What a guest must not have is always checked on the index's own
// profiles. Every write leaves deleted documents that searches skip, so after mostWrites
// a line gets a new bleve index; the old one is closed when no index uses it.
//
// Do not call Follow concurrently on one line. If it fails, x may miss some of its
// profiles until Follow succeeds; otherwise build a new index.
func (x *Index) Follow(ctx context.Context, profiles []*flavor.Profile, progress Progress) (*Index, error) {
	if x.line.closed.Load() {
		return nil, lookup.ErrClosed
	}
	if sameSet(x.profiles, profiles) {
		return x, nil
	}
	if x.line.writes >= mostWrites {
		return Build(ctx, profiles, progress)
	}
	next, err := newIndex(profiles)
	if err != nil {
		return nil, err
	}
	next.line = x.line
	x.line.mu.Lock()
	defer x.line.mu.Unlock()
	switch {
	case x.line.closed.Load(): // closed while this call waited
		return nil, lookup.ErrClosed
	case !x.line.open.Load():
		x.line.profiles = next.profiles
		return next, nil
	}
	next.line.writes++
	gone := x.line.bleve.NewBatch()
	for _, p := range x.profiles {
		if _, still := next.position[p.ID]; !still {
			gone.Delete(p.ID)
		}
	}
	var changed []*flavor.Profile
	for _, p := range next.profiles {
		if old, there := x.Profile(p.ID); !there || old != p {
			changed = append(changed, p)
		}
	}
	if err := fill(ctx, x.line.bleve, changed, progress); err != nil {
		return nil, err
	}
	if gone.Size() == 0 {
		return next, nil
	}
	if err := x.line.bleve.Batch(gone); err != nil {
		return nil, fmt.Errorf("index: follow: %w", err)
	}
	return next, nil
}

// sameSet reports whether two lists hold the same profiles, in any order.
func sameSet(ours, others []*flavor.Profile) bool {
	if len(ours) != len(others) || slices.Contains(others, nil) {
		return false
	}
	byID := slices.SortedFunc(slices.Values(others), func(a, b *flavor.Profile) int { return cmp.Compare(a.ID, b.ID) })
	return slices.Equal(ours, byID)
}
