package riff

import (
	"cmp"
	"context"
	"slices"
	"strings"

	"counterpour/flavor"
)

// How far the search goes before it stops to be quick.
const (
	secondParents = 8 // riffs that a second move starts from, if one move finds too few
	rootsKept     = 3 // ways to make a drink pourable that are kept
	poolSpare     = 3 // times the limit that the first round must bring for a second to be spared
)

// explore solves one move away from the drink, and two where that finds too
// little, and returns what is balanced and within every limit and wish.
func (w *work) explore(ctx context.Context, limit int) ([]*solved, error) {
	roots, err := w.roots(ctx)
	if err != nil {
		return nil, err
	}
	x := search{work: w, seen: map[string]bool{}}
	if len(roots) > 1 {
		w.each = draftsSome
	}
	for _, root := range roots {
		drafts := append([]draft{w.portioned(root)}, w.variations(root)...)
		if err := x.try(ctx, drafts); err != nil {
			return nil, err
		}
	}
	if len(x.pool) >= poolSpare*limit {
		return x.pool, nil
	}
	for _, s := range w.promising(x.pool, x.near) {
		if err := x.try(ctx, w.variations(w.parentFrom(s))); err != nil {
			return nil, err
		}
	}
	return x.pool, nil
}

// search gathers the drinks that drafts come to, each draft solved once.
type search struct {
	work       *work
	seen       map[string]bool
	pool, near []*solved // good, and not
}

func (x *search) try(ctx context.Context, drafts []draft) error {
	for i := range drafts {
		key := keyOf(&drafts[i].spec)
		if x.seen[key] {
			continue
		}
		x.seen[key] = true
		if err := stopped(ctx); err != nil {
			return err
		}
		s, err := x.work.solve(&drafts[i])
		if err != nil {
			return err
		}
		if s == nil {
			continue
		}
		fate, err := x.work.fate(s)
		if err != nil {
			return err
		}
		if fate == fateGood {
			x.pool = append(x.pool, s)
		} else {
			x.near = append(x.near, s)
		}
	}
	return nil
}

// promising returns the drinks that a second move starts from.
func (w *work) promising(pool, near []*solved) []*solved {
	all := slices.Concat(pool, near)
	slices.SortStableFunc(all, func(a, b *solved) int {
		return cmp.Or(cmp.Compare(b.merit, a.merit), strings.Compare(keyOf(&a.spec), keyOf(&b.spec)))
	})
	return all[:min(len(all), secondParents)]
}

// roots returns the drink with every pour that may not be poured replaced or
// left out: the drink itself if there is none.
func (w *work) roots(ctx context.Context) ([]*parent, error) {
	beam := []*parent{w.parentOf(ptr(snapped(w.spec)), KindPortion, 0)}
	for {
		at := w.barred(&beam[0].spec)
		if at < 0 {
			return beam, nil
		}
		var next []*solved
		for _, p := range beam {
			drafts := w.swaps(p, at, draftsEach)
			if part := p.spec.Pours[at].Profile.Class.Part(); len(p.spec.Pours) > 1 && (len(drafts) == 0 || optional(part)) {
				drafts = append(drafts, w.without(p, at))
			}
			for i := range drafts {
				if err := stopped(ctx); err != nil {
					return nil, err
				}
				s, err := w.solve(&drafts[i])
				if err != nil {
					return nil, err
				}
				if s != nil {
					next = append(next, s)
				}
			}
		}
		if beam = w.kept(next); len(beam) == 0 {
			return nil, nil
		}
	}
}

func ptr[T any](v T) *T { return &v }

// optional reports whether a drink stands without a part.
func optional(p flavor.Part) bool {
	return p == flavor.PartSeasoning || p == flavor.PartTexture
}

// barred returns the first pour that may not be poured, or −1. Drinks of one
// beam have the same ones.
func (w *work) barred(s *flavor.Spec) int {
	return slices.IndexFunc(s.Pours, func(p flavor.Pour) bool { _, ok := w.has(p.Profile); return !ok })
}

// rankPoints is what the rank of a draft is worth in points of score when only
// one of many ways to replace a pour is kept.
const rankPoints = 20.0

// kept returns the best of the solved drinks whose next barred pour is the same.
func (w *work) kept(found []*solved) []*parent {
	slices.SortStableFunc(found, func(a, b *solved) int {
		return cmp.Or(cmp.Compare(b.merit+rankPoints*b.rank, a.merit+rankPoints*a.rank), strings.Compare(keyOf(&a.spec), keyOf(&b.spec)))
	})
	var out []*parent
	for _, s := range found {
		if len(out) == rootsKept {
			break
		}
		p := w.parentFrom(s)
		if len(out) > 0 && w.barred(&p.spec) != w.barred(&out[0].spec) {
			continue
		}
		out = append(out, p)
	}
	return out
}
