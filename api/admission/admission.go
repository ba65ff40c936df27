// Package admission lets searches in: as many at once as there are cores, behind
// them a short queue, and nobody beyond that. What is quick, such as a score or a
// page, needs no leave and so never waits behind a search.
//
// A search that is let in gets a context that ends a little before the caller's, so
// that what it has found by then can still be answered.
package admission

import (
	"context"
	"errors"
	"fmt"
	"sync/atomic"
	"time"

	"golang.org/x/sync/semaphore"
)

// ErrFull: the queue is full, or did not move in time.
var ErrFull = errors.New("as many searches are under way as this machine can do, and more wait; ask again in a second")

// RetryAfter is how long who was refused should wait, in seconds.
const RetryAfter = 1

const (
	// perCore is how many searches may wait for each that runs: most take well under
	// a second, so that the last in the queue waits about as long as a guest notices.
	perCore = 4
	// patience is how long a place in the queue is waited for. Who asks again at
	// once after a refusal is thereby slowed down, and costs the searches nothing.
	patience = 50 * time.Millisecond
	// longestWait is the most that a search stands in the queue.
	longestWait = 3 * time.Second
	// reserve is what is kept of the caller's time to answer in, at most, and
	// reserveShare the share of it.
	reserve      = time.Second
	reserveShare = 5
)

// Pool is the searches under way and those that wait. Make one with [New]; nil is
// a pool that lets everybody in. It is safe for concurrent use.
type Pool struct {
	work    *semaphore.Weighted // who searches
	places  *semaphore.Weighted // who searches or waits
	running atomic.Int64
	waiting atomic.Int64
	refused atomic.Int64
}

// New returns a pool of so many searches at once, one or more.
func New(atOnce int) *Pool {
	n := int64(max(atOnce, 1))
	return &Pool{work: semaphore.NewWeighted(n), places: semaphore.NewWeighted(n * (1 + perCore))}
}

// reserved is the key of the pool in which a request has its place already.
type reserved struct{}

// Reserve takes a place for a request before anything is worked out for it, so that one
// that is refused costs little. [Pool.Enter] uses the place that the context it returns
// stands for; leave gives it up, once. It fails as Enter does.
func (p *Pool) Reserve(ctx context.Context) (inside context.Context, leave func(), err error) {
	if p == nil {
		return ctx, func() {}, nil
	}
	if err := p.acquire(ctx, p.places, patience); err != nil {
		return nil, nil, err
	}
	return context.WithValue(ctx, reserved{}, p), func() { p.places.Release(1) }, nil
}

// Enter lets a search in, at once or after its turn. The search ends by the context
// that is returned, and then calls leave, once. It fails with [ErrFull], or with the
// error of ctx if that ends first. Who is in must not enter again: it would wait for
// itself.
func (p *Pool) Enter(ctx context.Context) (inside context.Context, leave func(), err error) {
	if p == nil {
		inside, cancel := withReserve(ctx)
		return inside, cancel, nil
	}
	giveUp := func() {}
	if ctx.Value(reserved{}) != p {
		if err := p.acquire(ctx, p.places, patience); err != nil {
			return nil, nil, err
		}
		giveUp = func() { p.places.Release(1) }
	}
	p.waiting.Add(1)
	err = p.acquire(ctx, p.work, longestWait)
	p.waiting.Add(-1)
	if err != nil {
		giveUp()
		return nil, nil, err
	}
	p.running.Add(1)
	inside, cancel := withReserve(ctx)
	return inside, func() {
		cancel()
		p.running.Add(-1)
		p.work.Release(1)
		giveUp()
	}, nil
}

// Search runs a search that p lets in.
func Search[T any](ctx context.Context, p *Pool, search func(context.Context) (T, error)) (T, error) {
	inside, leave, err := p.Enter(ctx)
	if err != nil {
		var none T
		return none, err
	}
	defer leave()
	return search(inside)
}

// acquire takes one of a semaphore, or fails after a while.
func (p *Pool) acquire(ctx context.Context, from *semaphore.Weighted, within time.Duration) error {
	if from.TryAcquire(1) {
		return nil
	}
	short, cancel := context.WithTimeout(ctx, within)
	defer cancel()
	err := from.Acquire(short, 1)
	switch {
	case err == nil:
		return nil
	case errors.Is(ctx.Err(), context.Canceled):
		return fmt.Errorf("waiting for a search: %w", ctx.Err())
	}
	p.refused.Add(1)
	return ErrFull
}

// withReserve ends a context early enough for an answer.
func withReserve(ctx context.Context) (context.Context, context.CancelFunc) {
	end, limited := ctx.Deadline()
	if !limited {
		return context.WithCancel(ctx)
	}
	return context.WithDeadline(ctx, end.Add(-min(reserve, time.Until(end)/reserveShare)))
}

// Running is how many searches are under way.
func (p *Pool) Running() int64 {
	if p == nil {
		return 0
	}
	return p.running.Load()
}

// Waiting is how many wait for their turn.
func (p *Pool) Waiting() int64 {
	if p == nil {
		return 0
	}
	return p.waiting.Load()
}

// Refused is how many were refused since the pool was made.
func (p *Pool) Refused() int64 {
	if p == nil {
		return 0
	}
	return p.refused.Load()
}
