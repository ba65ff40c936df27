// Package admission limits how many searches run at once: one per core, a short queue
// behind them, and an immediate refusal beyond that. Fast requests, such as scores and
// pages, do not go through it, so they never wait for a search.
//
// A search that is admitted gets a context whose deadline is a little before the
// caller's, so that there is time left to send what it found.
package admission

import (
	"context"
	"errors"
	"fmt"
	"sync/atomic"
	"time"

	"golang.org/x/sync/semaphore"
)

// ErrFull means that the queue is full, or that the search waited in it for too long.
var ErrFull = errors.New("as many searches are under way as this machine can do, and more wait; ask again in a second")

// RetryAfter is the number of seconds after which a refused caller should try again.
const RetryAfter = 1

const (
	// perCore is how many searches may wait in the queue for each one that runs. Most
	// searches take well under a second, so the last in the queue waits about as long as
	// a guest notices.
	perCore = 4
	// patience is how long a request waits for a place in a full queue before it is
	// refused. The wait slows down clients that retry at once, and costs the running
	// searches nothing.
	patience = 50 * time.Millisecond
	// longestWait is the longest time that a search waits in the queue.
	longestWait = 3 * time.Second
	// A search leaves its caller 1/reserveShare of the remaining time to answer in, and
	// no more than reserve.
	reserve      = time.Second
	reserveShare = 5
)

// Pool counts the searches that run and those that wait. Make one with [New]. A nil *Pool
// admits everybody. It is safe for concurrent use.
type Pool struct {
	work    *semaphore.Weighted // one unit per running search
	places  *semaphore.Weighted // one unit per running or waiting search
	running atomic.Int64
	waiting atomic.Int64
	refused atomic.Int64
}

// New returns a pool that runs up to atOnce searches at the same time; less than one
// counts as one.
func New(atOnce int) *Pool {
	n := int64(max(atOnce, 1))
	return &Pool{work: semaphore.NewWeighted(n), places: semaphore.NewWeighted(n * (1 + perCore))}
}

// reserved is the context key of the pool in which a request already has a place.
type reserved struct{}

// Reserve takes a place in the queue before the request is read, so that a refused
// request costs little. [Pool.Enter] uses that place if it is given the context that
// Reserve returns. Call leave exactly once to release the place. The errors are those of
// Enter.
func (p *Pool) Reserve(ctx context.Context) (inside context.Context, leave func(), err error) {
	if p == nil {
		return ctx, func() {}, nil
	}
	if err := p.acquire(ctx, p.places, patience); err != nil {
		return nil, nil, err
	}
	return context.WithValue(ctx, reserved{}, p), func() { p.places.Release(1) }, nil
}

// Enter waits until the search may run. Run the search with the context that Enter
// returns, and call leave exactly once when it ends. The error is [ErrFull], or that of
// ctx if ctx is cancelled first. A search that is running must not call Enter again: it
// would wait for itself.
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

// Search runs search once p admits it. Its errors are those of [Pool.Enter] and of
// search.
func Search[T any](ctx context.Context, p *Pool, search func(context.Context) (T, error)) (T, error) {
	inside, leave, err := p.Enter(ctx)
	if err != nil {
		var none T
		return none, err
	}
	defer leave()
	return search(inside)
}

// acquire takes one unit of a semaphore. It fails with ErrFull if that takes longer than
// within, and with the error of ctx if ctx is cancelled.
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

// withReserve returns a context with an earlier deadline, which leaves time to send the
// answer.
func withReserve(ctx context.Context) (context.Context, context.CancelFunc) {
	end, limited := ctx.Deadline()
	if !limited {
		return context.WithCancel(ctx)
	}
	return context.WithDeadline(ctx, end.Add(-min(reserve, time.Until(end)/reserveShare)))
}

// Running returns how many searches are running.
func (p *Pool) Running() int64 {
	if p == nil {
		return 0
	}
	return p.running.Load()
}

// Waiting returns how many searches wait in the queue.
func (p *Pool) Waiting() int64 {
	if p == nil {
		return 0
	}
	return p.waiting.Load()
}

// Refused returns how many searches were refused since the pool was made.
func (p *Pool) Refused() int64 {
	if p == nil {
		return 0
	}
	return p.refused.Load()
}
