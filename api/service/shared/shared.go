// Package shared keeps what became of a menu, and lets all who ask the same wait for one
// search.
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
	"counterpour/flavor/cover"
	"counterpour/flavor/weigh"
)

// mostKept is how many answers are kept; a shift sees few states of the
// house, each perhaps for a few guests.
const mostKept = 64

// searchTime is the most that one search for all who wait for it may take: less
// than any of them has for a page, so that what it found is still shown.
const searchTime = 9 * time.Second

// Menus keeps what became of a menu, so that all screens that show one state
// of the house share one search. What it hands out is read only.
type Menus struct {
	kept    *lru.Cache[string, *answer]
	running singleflight.Group

	mu    sync.Mutex
	asked map[string]*crowd // those who wait for a search under way
}

// crowd is those who wait for one search, which ends when the last of them leaves.
type crowd struct {
	waiting int
	ctx     context.Context
	stop    context.CancelFunc
}

// answer is what became of a menu, and of which.
type answer struct {
	specs  []*flavor.Spec
	result *cover.MenuResult
}

// Search finds what becomes of a menu.
type Search func(context.Context, cover.MenuRequest) (*cover.MenuResult, error)

// New returns an empty memory.
func New() (*Menus, error) {
	kept, err := lru.New[string, *answer](mostKept)
	if err != nil {
		return nil, err
	}
	return &Menus{kept: kept, asked: map[string]*crowd{}}, nil
}

// join waits with all who wait for one search, until leave is called. The context
// is that of the search.
func (m *Menus) join(ctx context.Context, key string) (shared context.Context, leave func()) {
	m.mu.Lock()
	defer m.mu.Unlock()
	c := m.asked[key]
	if c == nil {
		c = &crowd{}
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
			m.running.Forget(key) // who asks next waits for no search that was called off
		}
	}
}

// Outs answers a request from memory or by a search. Requests for the same share
// one search, which goes on for the others if one of them is given up, and ends if
// all are. A failure is told to all who wait, and is not kept; nor is what was found
// by the time that a search must end, since there may be more time for the next.
func (m *Menus) Outs(ctx context.Context, palates []weigh.Palate, r cover.MenuRequest, search Search) (*cover.MenuResult, error) {
	key := menuKey(palates, &r)
	if a, ok := m.kept.Get(key); ok {
		return a.adoptedBy(&r), nil
	}
	shared, leave := m.join(ctx, key)
	defer leave()
	found := m.running.DoChan(key, func() (any, error) {
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

// withoutPanic searches, and turns a panic into an error: nobody else would catch
// one of a search that several wait for.
func withoutPanic(ctx context.Context, r cover.MenuRequest, search Search) (result *cover.MenuResult, err error) {
	defer func() {
		if spilled := recover(); spilled != nil {
			result, err = nil, fmt.Errorf("shared: the search for covers of a menu panicked: %v", spilled)
		}
	}()
	return search(ctx, r)
}

// adoptedBy returns the answer with the drinks and the bottles of an equal request
// in place of those of the request that was searched for, so that who asked finds
// its own again.
func (a *answer) adoptedBy(r *cover.MenuRequest) *cover.MenuResult {
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

// menuKey is made of all that a search depends on, by content: the same bottles
// read from the store once more give the same key, and one that was measured anew
// another.
func menuKey(palates []weigh.Palate, r *cover.MenuRequest) string {
	h := sha256.New()
	write := func(format string, args ...any) { _, _ = fmt.Fprintf(h, format, args...) } // a hash takes everything
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
		bare.Pours = nil
		write("%+v %d\n", bare, len(s.Pours))
		for i := range s.Pours {
			pour := s.Pours[i]
			writeProfile(h, pour.Profile)
			pour.Profile = nil
			write("%+v\n", pour)
		}
	}
	return hex.EncodeToString(h.Sum(nil))
}

// writeProfile writes all of a profile, which holds no pointers.
func writeProfile(w io.Writer, p *flavor.Profile) { _, _ = fmt.Fprintf(w, "%+v\n", *p) }
