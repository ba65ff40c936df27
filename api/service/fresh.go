package service

import (
	"context"
	"errors"
	"time"

	"counterpour/api/service/records"
)

// ErrLost means that the program no longer receives changes of the house.
var ErrLost = errors.New("this program no longer sees changes of the house; start it again")

// ErrStale means that the store has not answered for longer than [MaxAge].
var ErrStale = errors.New("the store of the house does not answer; what is shown may be old")

// MaxAge is how long the store may be silent before the house counts as stale. Common
// practice, no source: a mark that arrives later has been made twice, or the bottle
// poured.
const MaxAge = 10 * time.Second

// pace is how often the store is polled, the timeout of each poll, and the age at which
// the house counts as stale.
type pace struct{ every, answer, age time.Duration }

var usualPace = pace{3 * time.Second, 3 * time.Second, MaxAge}

// Ready returns nil if the house is up to date, [ErrLost] if the venue no longer follows
// its store although it was not closed, and [ErrStale] while the store does not answer.
func (v *Venue) Ready() error {
	switch {
	case v.lost.Load():
		return ErrLost
	case v.Age() > v.pace.age:
		return ErrStale
	}
	return nil
}

// Age is the time since the house was last known to be up to date with the store.
func (v *Venue) Age() time.Duration { return time.Since(*v.current.Load()) }

// Listeners returns how many listeners are subscribed to changes.
func (v *Venue) Listeners() int {
	v.mu.Lock()
	defer v.mu.Unlock()
	return len(v.listeners)
}

// watch polls the store for changes. The feed reports them sooner, but a feed that is
// silent cannot be told from one that is broken.
func (v *Venue) watch(ctx context.Context) {
	defer close(v.watched)
	defer func() {
		if cause := recover(); cause != nil {
			v.lose(cause)
		}
	}()
	beat := time.NewTicker(v.pace.every)
	defer beat.Stop()
	failing := false
	for {
		select {
		case <-ctx.Done():
			return
		case <-beat.C:
		}
		err := v.catchUp(ctx)
		switch {
		case ctx.Err() != nil:
			return
		case err != nil && !failing:
			v.log.Error("the store of the house does not answer; pages say that they may be old until it does", "error", err)
		case err == nil && failing:
			v.log.Info("the store of the house answers again")
		}
		failing = err != nil
	}
}

// catchUp reads every change after the last one known, by sequence number, so that none
// is lost that the feed missed.
func (v *Venue) catchUp(ctx context.Context) error {
	ctx, stop := context.WithTimeout(ctx, v.pace.answer)
	defer stop()
	for {
		begun := time.Now()
		after := max(v.seen.Load(), v.Now().upTo)
		list, err := v.inner.Changes(ctx, after, records.ChangesAtOnce)
		if err != nil {
			return err
		}
		if len(list) == 0 {
			v.current.Store(&begun)
			return nil
		}
		if err := v.refresh(ctx, list[len(list)-1].Seq); err != nil {
			return err
		}
	}
}
