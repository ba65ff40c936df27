package service

import (
	"context"
	"fmt"
	"log/slog"
	"sync"
	"sync/atomic"
	"time"

	"golang.org/x/sync/semaphore"

	"counterpour/api/service/kitchen"
	"counterpour/api/service/shared"
	"counterpour/data/house"
)

// Venue is a house at work. It is safe for concurrent use.
type Venue struct {
	base  *kitchen.Kitchen
	bare  *house.Shelf // the catalogue
	about About
	inner house.Store
	log   *slog.Logger

	now   atomic.Pointer[Snapshot]
	turn  sync.Mutex   // one snapshot is made at a time
	begun atomic.Int64 // how many were begun

	marking *semaphore.Weighted // the places of marks; one that others forestalled takes all

	renewed int64 // which of them is now; under turn

	menus *shared.Menus // what became of the menu in states that were asked about
	seen  atomic.Int64  // the last change of our own that the snapshot knows of

	mu        sync.Mutex
	listeners map[chan struct{}]bool
	hungUp    bool

	stop     context.CancelFunc
	followed chan struct{} // closed when nobody follows the store any more
	lost     atomic.Bool   // the store is no longer followed, and nobody asked for that
	watched  chan struct{} // closed when nobody asks the store any more
	pace     pace
	current  atomic.Pointer[time.Time] // when the house was last known to be as the store has it
}

// Open makes the first snapshot of a house over a kitchen of the catalogue, and
// follows the store from then on. The store and the kitchen stay the caller's;
// close the venue before them. A nil log is slog.Default.
func Open(ctx context.Context, base *kitchen.Kitchen, store house.Store, about About, log *slog.Logger) (*Venue, error) {
	return openAt(ctx, usualPace, base, store, about, log)
}

func openAt(ctx context.Context, p pace, base *kitchen.Kitchen, store house.Store, about About, log *slog.Logger) (*Venue, error) {
	if log == nil {
		log = slog.Default()
	}
	menus, err := shared.New()
	if err != nil {
		return nil, fmt.Errorf("the house cannot be laid over the catalogue: %w", err)
	}
	following, stop := context.WithCancel(context.WithoutCancel(ctx))
	v := &Venue{base: base, bare: house.NewShelf(base.Catalogue.Profiles()), about: about, inner: store, log: log, menus: menus, marking: semaphore.NewWeighted(marksAtOnce),
		listeners: map[chan struct{}]bool{}, stop: stop, followed: make(chan struct{}), watched: make(chan struct{}), pace: p}
	begun := time.Now()
	v.current.Store(&begun)
	changes, err := store.Subscribe(following) // before the first look, so that nothing falls between
	if err == nil {
		err = v.renew(ctx)
	}
	if err != nil {
		stop()
		return nil, fmt.Errorf("the house cannot be laid over the catalogue: %w", err)
	}
	go v.follow(following, changes)
	go v.watch(following)
	return v, nil
}

// Now returns the house as it stands. What it returns is read only.
func (v *Venue) Now() *Snapshot { return v.now.Load() }

// Catalogue returns what is known without the house.
func (v *Venue) Catalogue() *house.Shelf { return v.bare }

// Close stops following the store, and returns once nobody uses it here.
func (v *Venue) Close() {
	v.stop()
	<-v.followed
	<-v.watched
}

// lose notes that the house is no longer kept up with.
func (v *Venue) lose(cause any) {
	v.lost.Store(true)
	v.log.Error("the house is no longer followed; start the program again", "cause", fmt.Sprint(cause))
}

// follow makes the next snapshot whenever the store changed. Changes that wait
// together are taken together.
func (v *Venue) follow(ctx context.Context, changes <-chan house.Change) {
	defer close(v.followed)
	defer func() {
		cause := recover()
		if cause == nil && ctx.Err() != nil {
			return
		}
		if cause == nil {
			cause = "the store tells of no more changes"
		}
		v.lose(cause)
	}()
	for c := range changes {
		last := c.Seq
		for more := true; more; {
			select {
			case c, open := <-changes:
				if more = open; open {
					last = c.Seq
				}
			default:
				more = false
			}
		}
		if last <= v.seen.Load() {
			continue // written here, and seen when it was
		}
		if err := v.refresh(ctx, last); err != nil && ctx.Err() == nil {
			v.log.Error("a change of the house could not be taken up yet", "change", last, "error", err)
		}
	}
}

// refresh takes up everything that the store has, which is at least all up to
// a change, and tells who listens.
func (v *Venue) refresh(ctx context.Context, upTo int64) error {
	if err := v.renew(ctx); err != nil {
		return err
	}
	for old := v.seen.Load(); old < upTo && !v.seen.CompareAndSwap(old, upTo); old = v.seen.Load() {
	}
	v.wake()
	return nil
}

// renew makes the next snapshot, unless one was made meanwhile that was begun after
// the call and so has all that the call is about: however many writes wait, one
// snapshot does for them all.
func (v *Venue) renew(ctx context.Context) error {
	before := v.begun.Load()
	v.turn.Lock()
	defer v.turn.Unlock()
	if v.renewed > before {
		return nil
	}
	number := v.begun.Add(1)
	from := v.Now()
	if from == nil {
		from = &Snapshot{Kitchen: v.base, Shelf: v.bare}
	}
	next, err := from.next(ctx, v.base, v.inner, v.about, v.log)
	if err == nil {
		v.now.Store(next)
		v.renewed = number
	}
	return err
}

// Changes tells when the house stands otherwise, from now on. Several changes
// may come as one. The channel closes once ctx ends or the venue hangs up.
func (v *Venue) Changes(ctx context.Context) <-chan struct{} {
	c := make(chan struct{}, 1)
	v.mu.Lock()
	defer v.mu.Unlock()
	if v.hungUp {
		close(c)
		return c
	}
	v.listeners[c] = true
	context.AfterFunc(ctx, func() {
		// wake sends under the same lock, so never into a closed channel.
		v.mu.Lock()
		defer v.mu.Unlock()
		if v.listeners[c] {
			delete(v.listeners, c)
			close(c)
		}
	})
	return c
}

// HangUp closes the channels of all who listen, now and later, so that a server
// that waits for its requests does not wait for them.
func (v *Venue) HangUp() {
	v.mu.Lock()
	defer v.mu.Unlock()
	v.hungUp = true
	for c := range v.listeners {
		close(c)
	}
	clear(v.listeners)
}

func (v *Venue) wake() {
	v.mu.Lock()
	defer v.mu.Unlock()
	for c := range v.listeners {
		select {
		case c <- struct{}{}:
		default: // it has not yet looked at the change before, and will see this one too
		}
	}
}
