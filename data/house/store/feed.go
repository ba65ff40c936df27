package store

import (
	"context"
	"errors"
	"sync"
	"time"

	"counterpour/data/house"
)

// feed wakes subscribers after a change. It does not carry the changes: subscribers read
// them from the log, so that none is lost and no writer waits.
type feed struct {
	mu        sync.Mutex
	listeners map[chan struct{}]struct{}
	running   sync.WaitGroup
	closed    bool
}

func newFeed() *feed { return &feed{listeners: map[chan struct{}]struct{}{}} }

func (f *feed) wake() {
	f.mu.Lock()
	defer f.mu.Unlock()
	for c := range f.listeners {
		select {
		case c <- struct{}{}:
		default: // it has a wake-up pending
		}
	}
}

// join adds a subscriber; it returns nil if the feed is closed.
func (f *feed) join() chan struct{} {
	c := make(chan struct{}, 1)
	f.mu.Lock()
	defer f.mu.Unlock()
	if f.closed {
		return nil
	}
	f.listeners[c] = struct{}{}
	f.running.Add(1)
	return c
}

func (f *feed) leave(c chan struct{}) {
	f.mu.Lock()
	delete(f.listeners, c)
	f.mu.Unlock()
	f.running.Done()
}

// close refuses new subscribers and waits until the present ones have ended.
func (f *feed) close() {
	f.mu.Lock()
	f.closed = true
	f.mu.Unlock()
	f.running.Wait()
}

// How many changes a subscriber reads at a time, the timeout of a read, and the pause
// after a failed read.
const (
	feedBatch   = 256
	feedTimeout = 5 * time.Second
	feedRetry   = time.Second
)

func (k *keeper) Subscribe(ctx context.Context) (<-chan house.Change, error) {
	awake := k.feed.join() // before the head is read, so that no change is missed in between
	if awake == nil {
		return nil, fail(house.ErrClosed, "subscribe to", k.key, "%s", messages[house.ErrClosed])
	}
	after, err := k.head(ctx)
	if err != nil {
		k.feed.leave(awake)
		return nil, err
	}
	out := make(chan house.Change)
	ctx, stop := context.WithCancel(ctx)
	unhook := context.AfterFunc(k.ending, stop)
	go func() {
		defer k.feed.leave(awake)
		defer stop()
		defer unhook()
		defer close(out)
		defer func() { _ = recover() }() // a panic closes the channel and does not end the program
		k.follow(ctx, after, awake, out)
	}()
	return out, nil
}

// newer reads changes after a sequence number. A timeout limits the wait for a server
// that does not answer.
func (k *keeper) newer(ctx context.Context, after int64) ([]house.Change, error) {
	ctx, stop := context.WithTimeout(ctx, feedTimeout)
	defer stop()
	return k.Changes(ctx, after, feedBatch)
}

// follow sends changes to out until ctx ends.
func (k *keeper) follow(ctx context.Context, after int64, awake <-chan struct{}, out chan<- house.Change) {
	for {
		list, err := k.newer(ctx, after)
		for _, c := range list {
			select {
			case out <- c:
				after = c.Seq
			case <-ctx.Done():
				return
			}
		}
		var retry <-chan time.Time
		switch {
		case errors.Is(err, house.ErrDamaged), errors.Is(err, house.ErrClosed):
			return
		case err != nil:
			retry = time.After(feedRetry)
		case len(list) == feedBatch:
			continue
		}
		select {
		case <-awake:
		case <-retry:
		case <-ctx.Done():
			return
		}
	}
}
