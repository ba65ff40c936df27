package service

import (
	"context"
	"fmt"
	"log/slog"
	"sync"
	"sync/atomic"
	"time"

	"counterpour/api/service/kitchen"
	"counterpour/api/service/marking"
	"counterpour/api/service/shared"
	"counterpour/data/house"
)

// Venue is a running house: its store, and the snapshot that is derived from it. It is
// safe for concurrent use.
type Venue struct {
	base  *kitchen.Kitchen
	bare  *house.Shelf // the catalogue alone
	about About
	inner house.Store
	log   *slog.Logger

	now   atomic.Pointer[Snapshot]
	turn  sync.Mutex   // held while a snapshot is made
	begun atomic.Int64 // how many snapshots were begun

	pen *marking.Pen

	renewed int64 // the number, of those begun, of the current snapshot; guarded by turn

	menus *shared.Menus // cached covers for the menu
	ahead atomic.Pointer[lookedAhead]
	seen  atomic.Int64 // sequence number of the last change that the snapshot includes

	mu        sync.Mutex
	listeners map[chan struct{}]bool
	hungUp    bool

	stop     context.CancelFunc
	followed chan struct{} // closed when follow returns
	lost     atomic.Bool   // follow or watch ended although nobody called Close
	watched  chan struct{} // closed when watch returns
	pace     pace
	current  atomic.Pointer[time.Time] // when the snapshot was last known to be up to date
}

// Open derives the first snapshot of a house from its store and follows the store from
// then on. base is a kitchen over the catalogue. The caller keeps the store and the
// kitchen, and closes them after the venue. A nil log is slog.Default.
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
	v := &Venue{base: base, bare: house.NewShelf(base.Catalogue.Profiles()), about: about, inner: store, log: log, menus: menus,
		listeners: map[chan struct{}]bool{}, stop: stop, followed: make(chan struct{}), watched: make(chan struct{}), pace: p}
	v.pen = marking.NewPen(store, func() marking.House { return shelved{v.Now()} })
	begun := time.Now()
	v.current.Store(&begun)
	changes, err := store.Subscribe(following) // before the first read, so that no change is missed in between
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

// Now returns the current snapshot, which must not be changed.
func (v *Venue) Now() *Snapshot { return v.now.Load() }

// Catalogue returns the shelf without the house's bottles and makings.
func (v *Venue) Catalogue() *house.Shelf { return v.bare }

// Close stops following the store, and returns when no goroutine uses it any more.
func (v *Venue) Close() {
	v.stop()
	<-v.followed
	<-v.watched
}

// lose notes that the venue no longer follows its store.
func (v *Venue) lose(cause any) {
	v.lost.Store(true)
	v.log.Error("the house is no longer followed; start the program again", "cause", fmt.Sprint(cause))
}

// follow derives a new snapshot whenever the feed reports a change. All changes that are
// waiting are taken up together.
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
			continue // our own write, already taken up
		}
		if err := v.refresh(ctx, last); err != nil && ctx.Err() == nil {
			v.log.Error("a change of the house could not be taken up yet", "change", last, "error", err)
		}
	}
}

// refresh derives a snapshot that includes the change with sequence number upTo, and
// wakes the listeners.
func (v *Venue) refresh(ctx context.Context, upTo int64) error {
	if err := v.renew(ctx); err != nil {
		return err
	}
	for old := v.seen.Load(); old < upTo && !v.seen.CompareAndSwap(old, upTo); old = v.seen.Load() {
	}
	v.wake()
	return nil
}

// renew derives the next snapshot, unless another call began and finished one after this
// call began: that snapshot includes everything this call is about. So one snapshot
// serves any number of waiting writes.
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

// Changes returns a channel that receives a value after the house changes. Several
// changes may be combined into one value. The channel closes when ctx ends or the venue
// hangs up.
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
		// wake sends while it holds the same lock, so it never sends on a closed channel.
		v.mu.Lock()
		defer v.mu.Unlock()
		if v.listeners[c] {
			delete(v.listeners, c)
			close(c)
		}
	})
	return c
}

// HangUp closes the channels of all listeners, present and future, so that they do not
// delay the shutdown of a server.
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
		default: // its buffer is full: it will see this change together with the one before
		}
	}
}
