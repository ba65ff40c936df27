package index

import (
	"cmp"
	"context"
	"fmt"
	"slices"

	"counterpour/flavor"
	"counterpour/flavor/lookup"
)

// mostWrites is how often a line is written to before it is begun anew: a search
// takes a few times as long by then.
const mostWrites = 40

// Follow returns an index over other profiles, most of which are those of x:
// only what is new, gone, or another profile under the same id is written, so
// that a bottle more takes a moment and not a new start. Profiles are compared
// by address; if nothing changed, the result is x itself.
//
// Both share one store, and so do all that follow either; they are a line, and
// to close one closes all. x goes on answering for its own profiles; while both
// are in use, its totals and facets may count what only the other has, and its
// filters may go by the newer record. What a guest must not have is checked on
// the profile itself, in every index. Every write leaves documents behind that
// searches pass over, so after mostWrites of them a line is begun anew, and the
// old one is closed once nobody uses it.
//
// Indexes of a line are followed one at a time. If it fails, x may miss some of
// its profiles until it is followed again, or for good: then build a new one.
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
	case x.line.closed.Load(): // while this waited
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

// sameSet reports whether other profiles are those of an index, in any order.
func sameSet(ours, others []*flavor.Profile) bool {
	if len(ours) != len(others) || slices.Contains(others, nil) {
		return false
	}
	byID := slices.SortedFunc(slices.Values(others), func(a, b *flavor.Profile) int { return cmp.Compare(a.ID, b.ID) })
	return slices.Equal(ours, byID)
}
