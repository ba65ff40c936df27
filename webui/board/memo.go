package board

import (
	"context"
	"fmt"
	"strings"
	"sync"

	"counterpour/flavor"
	"counterpour/flavor/cover"
	"counterpour/webui/frame"
)

// memoSize is how many boards are kept; a shift sees few states, each perhaps
// for a few guests.
const memoSize = 64

// memo keeps what became of the menu, so that all screens that show one state
// share one search. What it hands out is read only.
type memo struct {
	mu    sync.Mutex
	boxes map[string]*memoBox
}

// memoBox is one answer, there once ready is closed.
type memoBox struct {
	ready chan struct{}
	from  cover.MenuRequest // kept, so that no other profile can take an address in the key
	r     *cover.MenuResult
	err   error
}

// outs answers a request, from memory or by search. One request searches, and
// others for the same wait for it; if it fails or is given up, each searches
// for itself.
func (m *memo) outs(ctx context.Context, r cover.MenuRequest, search func(context.Context, cover.MenuRequest) (*cover.MenuResult, error)) (*cover.MenuResult, error) {
	key := memoKey(&r)
	m.mu.Lock()
	box, there := m.boxes[key]
	if !there {
		if m.boxes == nil || len(m.boxes) >= memoSize {
			m.boxes = map[string]*memoBox{}
		}
		box = &memoBox{ready: make(chan struct{}), from: r, err: frame.ErrInternal}
		m.boxes[key] = box
	}
	m.mu.Unlock()
	if !there {
		defer m.done(key, box) // even if the search panics
		box.r, box.err = search(ctx, r)
		return box.r, box.err
	}
	select {
	case <-ctx.Done():
		return nil, ctx.Err()
	case <-box.ready:
	}
	if box.err != nil {
		return search(ctx, r)
	}
	return box.r, nil
}

// done lets go of who waits, and forgets a failure.
func (m *memo) done(key string, box *memoBox) {
	close(box.ready)
	if box.err == nil {
		return
	}
	m.mu.Lock()
	defer m.mu.Unlock()
	if m.boxes[key] == box {
		delete(m.boxes, key)
	}
}

// memoKey says everything that a search depends on. Profiles go by their
// address: they never change.
func memoKey(r *cover.MenuRequest) string {
	var b strings.Builder
	for _, list := range [][]*flavor.Profile{r.Out, r.Stock} {
		for _, p := range list {
			fmt.Fprintf(&b, "%p ", p)
		}
		b.WriteByte('\n')
	}
	for _, s := range r.Specs {
		fmt.Fprintf(&b, "%s %s %s", s.Name, s.Method, s.Service)
		for i := range s.Pours {
			fmt.Fprintf(&b, " %p %v %s %v", s.Pours[i].Profile, s.Pours[i].Amount, s.Pours[i].Unit, s.Pours[i].ML)
		}
		b.WriteByte('\n')
	}
	fmt.Fprint(&b, r.Guest.Avoid, r.Parts, r.Tastings)
	return b.String()
}
