package riff

import (
	"cmp"
	"context"
	"errors"
	"fmt"
	"slices"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/riff/station"
)

// How far the search goes before it stops to be quick.
const (
	secondParents = 8 // riffs that a second move starts from, if one move finds too few
	rootsKept     = 3 // ways to make a drink pourable that are kept
	poolSpare     = 2 // times the limit that the first round must bring for a second to be spared
)

// explore solves one move away from the drink, and two where that finds too
// little, and returns what is balanced and within every limit and wish, and what is not;
// what of it was found by then, if the deadline of ctx cuts it short.
func (w *work) explore(ctx context.Context, limit int) (x *search, cutShort bool, err error) {
	x = &search{work: w, seen: map[string]bool{}}
	err = x.moves(ctx, limit)
	if errors.Is(err, context.DeadlineExceeded) {
		return x, true, nil
	}
	return x, false, err
}

// moves tries one move away from the drink, and two where that finds too little.
func (x *search) moves(ctx context.Context, limit int) error {
	w := x.work
	roots, err := w.roots(ctx)
	if err != nil {
		return err
	}
	if len(roots) > 1 {
		w.each = draftsSome
	}
	if len(roots) > 0 && roots[0].Moves > 0 && len(w.Limits.Aims) > 0 {
		if err := w.WishFrom(&roots[0].Spec); err != nil {
			return err
		}
	}
	// The ways to make the drink pourable come before all variations: one that a variation
	// of another comes to as well is still the nearer.
	var drafts []station.Sketch
	for _, root := range roots {
		drafts = append(drafts, w.portioned(root))
	}
	for _, root := range roots {
		related, err := w.related(root)
		if err != nil {
			return err
		}
		drafts = append(append(drafts, w.variations(root)...), related...)
	}
	if err := x.try(ctx, drafts); err != nil {
		return err
	}
	met := 0
	for _, s := range x.pool {
		met += asked(s)
	}
	if met >= poolSpare*limit {
		return nil
	}
	for _, s := range w.promising(x.pool, x.near) {
		if err := x.try(ctx, w.variations(w.ParentFrom(s))); err != nil {
			return err
		}
	}
	return nil
}

// search gathers the drinks that drafts come to, each draft solved once.
type search struct {
	work       *work
	seen       map[string]bool
	pool, near []*station.Settled // good, and not
}

func (x *search) try(ctx context.Context, drafts []station.Sketch) error {
	for i := range drafts {
		for _, way := range x.work.Limits.Ways(&drafts[i].Spec) {
			drafts[i].Spec.Method, drafts[i].Spec.Service = way.Method, way.Service
		}
		x.work.cool(&drafts[i].Spec)
		x.work.Refit(&drafts[i].Spec)
		key := station.KeyOf(&drafts[i].Spec)
		if drafts[i].Turned {
			key += turnedKey(&drafts[i])
		}
		if x.seen[key] {
			continue
		}
		x.seen[key] = true
		if err := station.Stopped(ctx); err != nil {
			return err
		}
		if !x.work.Limits.Wished() && x.work.Shuns(&drafts[i]) {
			continue // where there are wishes a second move may lead on from it
		}
		s, err := x.work.Settle(&drafts[i])
		if err != nil {
			return err
		}
		if s == nil {
			continue
		}
		fate, err := x.work.Fate(s)
		if err != nil {
			return err
		}
		if fate == station.Good {
			x.pool = append(x.pool, s)
		} else {
			x.near = append(x.near, s)
		}
	}
	return nil
}

// turnedKey tells drafts of the same things apart by the amounts that each keeps to.
func turnedKey(d *station.Sketch) (key string) {
	for i := range d.Spec.Pours {
		if most, kept := d.Most[d.Spec.Pours[i].Profile.ID]; kept {
			key += fmt.Sprintf(" %s up to %.1f", d.Spec.Pours[i].Profile.ID, most)
		}
	}
	return key
}

// promising returns the drinks that a second move starts from: those that meet the
// wishes as a bartender would, the good ones first, then the rest, by what their amounts
// came to.
func (w *work) promising(pool, near []*station.Settled) []*station.Settled {
	best := func(all []*station.Settled) []*station.Settled {
		all = slices.Clone(all)
		slices.SortStableFunc(all, func(a, b *station.Settled) int {
			return cmp.Or(cmp.Compare(asked(b), asked(a)), cmp.Compare(b.Merit, a.Merit), strings.Compare(station.KeyOf(&a.Spec), station.KeyOf(&b.Spec)))
		})
		return all[:min(len(all), secondParents)]
	}
	all := best(pool)
	return append(all, best(near)[:min(len(near), max(leastNear, secondParents-len(all)))]...)
}

// leastNear is how many drinks that are not yet good a second move starts from.
const leastNear = secondParents / 2

// asked is 1 for a drink that meets the wishes as a bartender would, else 0.
func asked(s *station.Settled) int {
	if s.AsAsked() {
		return 1
	}
	return 0
}

// roots returns the drink with every pour that may not be poured replaced or
// left out: the drink itself if there is none.
func (w *work) roots(ctx context.Context) ([]*station.Parent, error) {
	w = w.unwished()
	beam := []*station.Parent{w.ParentOf(ptr(station.Snapped(w.From)), KindPortion, 0)}
	if s, other := w.atItsHeat(); other {
		w.Refit(&s)
		beam[0] = w.ParentOf(&s, KindMethod, 1)
	}
	for {
		at := w.barred(&beam[0].Spec)
		if at < 0 {
			return beam, nil
		}
		var next []*station.Settled
		for _, p := range beam {
			drafts := w.swaps(p, at, draftsEach)
			if part := p.Spec.Pours[at].Profile.Class.Part(); len(p.Spec.Pours) > 1 && (len(drafts) == 0 || station.Optional(part) || w.fills(p, at)) {
				drafts = append(drafts, w.without(p, at))
				if unsweet, ok := w.unsoured(p, at); ok {
					drafts = append(drafts, unsweet)
				}
			}
			for i := range drafts {
				if err := station.Stopped(ctx); err != nil {
					return nil, err
				}
				s, err := w.Settle(&drafts[i])
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

// unwished is the work without what is wished more or less of, and without a limit of strength:
// what stands in for a pour that is not there is chosen for what it is, beside as much of the
// rest as there was, and the wish is met after that.
func (w *work) unwished() *work {
	job := *w.Job
	job.Limits = w.Limits.Unwished()
	return &work{Job: &job, each: w.each}
}

func ptr[T any](v T) *T { return &v }

// barred returns the first pour that may not be poured, or −1. Drinks of one
// beam have the same ones.
func (w *work) barred(s *flavor.Spec) int {
	return slices.IndexFunc(s.Pours, func(p flavor.Pour) bool { _, ok := w.Has(p.Profile); return !ok })
}

// rankPoints is what the rank of a draft is worth in points of score when only
// one of many ways to replace a pour is kept.
const rankPoints = 20.0

// kept returns the best of the solved drinks whose next barred pour is the same.
func (w *work) kept(found []*station.Settled) []*station.Parent {
	slices.SortStableFunc(found, func(a, b *station.Settled) int {
		return cmp.Or(cmp.Compare(b.Merit+rankPoints*b.Rank, a.Merit+rankPoints*a.Rank), strings.Compare(station.KeyOf(&a.Spec), station.KeyOf(&b.Spec)))
	})
	var out []*station.Parent
	for _, s := range found {
		if len(out) == rootsKept {
			break
		}
		p := w.ParentFrom(s)
		if len(out) > 0 && w.barred(&p.Spec) != w.barred(&out[0].Spec) {
			continue
		}
		out = append(out, p)
	}
	return out
}
