// Package shared caches the covers for a whole menu, and lets concurrent requests with
// the same content share one search.
package shared

import (
	"context"
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"io"
	"slices"
	"sync"
	"time"

	lru "github.com/hashicorp/golang-lru/v2"
	"golang.org/x/sync/singleflight"

	"counterpour/flavor"
	"counterpour/flavor/cover/outs"
	"counterpour/flavor/weigh"
)

// mostKept is the size of the cache. A shift sees few states of the house, each perhaps
// for a few guests.
const mostKept = 64

// searchTime is the longest time that a shared search may take. It is less than the
// deadline of a page, so that a page can still show what was found.
const searchTime = 9 * time.Second

// Menus caches the covers for menus, so that all screens that show the same state of the
// house share one search. Its results must not be changed.
type Menus struct {
	kept    *lru.Cache[string, *answer]
	running singleflight.Group

	mu    sync.Mutex
	asked map[string]*waiters // the requests that wait for a running search
}

// waiters counts the requests that wait for one search. The search is cancelled when the
// last of them leaves.
type waiters struct {
	waiting int
	ctx     context.Context
	stop    context.CancelFunc
}

// answer is a cached result and the specs of the request that it answered.
type answer struct {
	specs  []*flavor.Spec
	result *outs.Result
}

// Search finds the covers for a menu.
type Search func(context.Context, outs.Request) (*outs.Result, error)

// New returns an empty cache.
func New() (*Menus, error) {
	kept, err := lru.New[string, *answer](mostKept)
	if err != nil {
		return nil, err
	}
	return &Menus{kept: kept, asked: map[string]*waiters{}}, nil
}

// join adds a request to those that wait for the search with a key, until it calls leave.
// It returns the context of the search.
func (m *Menus) join(ctx context.Context, key string) (shared context.Context, leave func()) {
	m.mu.Lock()
	defer m.mu.Unlock()
	c := m.asked[key]
	if c == nil {
		c = &waiters{}
		c.ctx, c.stop = context.WithTimeout(context.WithoutCancel(ctx), searchTime)
		m.asked[key] = c
	}
	c.waiting++
	return c.ctx, func() {
		m.mu.Lock()
		defer m.mu.Unlock()
		if c.waiting--; c.waiting == 0 {
			c.stop()
			delete(m.asked, key)
			m.running.Forget(key) // the next request must not wait for a cancelled search
		}
	}
}

// Outs answers a request from the cache or by a search. Concurrent requests with the same
// content share one search. It goes on if one of them is cancelled, and is cancelled if
// all are. Errors are returned to all that wait and are not cached; neither are results
// of a search that ran out of time, since the next one may have more.
func (m *Menus) Outs(ctx context.Context, palates []weigh.Palate, r outs.Request, search Search) (*outs.Result, error) {
	key := menuKey(palates, &r)
	if a, ok := m.kept.Get(key); ok {
		return a.adoptedBy(&r), nil
	}
	shared, leave := m.join(ctx, key)
	defer leave()
	found := m.running.DoChan(key, func() (any, error) {
		if a, ok := m.kept.Get(key); ok { // a search that ended since the look above
			return a, nil
		}
		result, err := withoutPanic(shared, r, search)
		if err != nil {
			return nil, err
		}
		a := &answer{r.Specs, result}
		if !result.CutShort {
			m.kept.Add(key, a)
		}
		return a, nil
	})
	select {
	case <-ctx.Done():
		return nil, ctx.Err()
	case f := <-found:
		if f.Err != nil {
			return nil, f.Err
		}
		return f.Val.(*answer).adoptedBy(&r), nil
	}
}

// withoutPanic runs a search and turns a panic into an error, since the search runs in a
// goroutine that no request recovers.
func withoutPanic(ctx context.Context, r outs.Request, search Search) (result *outs.Result, err error) {
	defer func() {
		if spilled := recover(); spilled != nil {
			result, err = nil, fmt.Errorf("shared: the search for covers of a menu panicked: %v", spilled)
		}
	}()
	return search(ctx, r)
}

// adoptedBy returns a copy of the answer that refers to the specs and profiles of an
// equal request, instead of those of the request that was searched for.
func (a *answer) adoptedBy(r *outs.Request) *outs.Result {
	own := func(p *flavor.Profile) *flavor.Profile {
		for _, list := range [][]*flavor.Profile{r.Out, r.Stock} {
			if at := slices.IndexFunc(list, func(q *flavor.Profile) bool { return q.ID == p.ID }); at >= 0 {
				return list[at]
			}
		}
		return p
	}
	out := *a.result
	out.Touched, out.Fetch, out.Opened = slices.Clone(out.Touched), slices.Clone(out.Fetch), slices.Clone(out.Opened)
	for i := range out.Touched {
		t := &out.Touched[i]
		if at := slices.Index(a.specs, t.Spec); at >= 0 {
			t.Spec = r.Specs[at]
		}
		t.Missing = slices.Clone(t.Missing)
		for k, p := range t.Missing {
			t.Missing[k] = own(p)
		}
	}
	for i := range out.Fetch {
		out.Fetch[i].Profile = own(out.Fetch[i].Profile)
	}
	for i := range out.Opened {
		out.Opened[i].Profile = own(out.Opened[i].Profile)
	}
	return &out
}

// menuKey is a hash of everything that a search depends on, by content. Bottles that are
// read from the store again give the same key if they are equal, and another if one was
// measured anew.
func menuKey(palates []weigh.Palate, r *outs.Request) string {
	h := sha256.New()
	write := func(format string, args ...any) { _, _ = fmt.Fprintf(h, format, args...) } // a hash never fails to write
	write("%d %+v %d %+v\n", r.Parts, r.Guest, len(r.Tastings), r.Tastings)
	write("%d %+v\n", len(palates), palates)
	for _, list := range [][]*flavor.Profile{r.Out, r.Stock} {
		write("%d\n", len(list))
		for _, p := range list {
			writeProfile(h, p)
		}
	}
	for _, s := range r.Specs {
		bare := *s
		bare.Pours, bare.Dressings = nil, nil
		write("%+v %d %d\n", bare, len(s.Pours), len(s.Dressings))
		for i := range s.Pours {
			pour := s.Pours[i]
			writeProfile(h, pour.Profile)
			pour.Profile = nil
			write("%+v\n", pour)
		}
		for _, laid := range s.Dressings {
			write("%d\n", len(laid.Records))
			for _, p := range append([]*flavor.Profile{laid.Profile}, laid.Records...) {
				writeProfile(h, p)
			}
			laid.Profile, laid.Records = nil, nil
			write("%+v\n", laid)
		}
	}
	return hex.EncodeToString(h.Sum(nil))
}

// writeProfile writes all fields of a profile, which contains no pointers.
func writeProfile(w io.Writer, p *flavor.Profile) { _, _ = fmt.Fprintf(w, "%+v\n", *p) }
