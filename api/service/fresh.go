package service

import (
	"context"
	"errors"
	"time"

	"counterpour/api/service/records"
)

// ErrLost: a house whose changes are no longer taken up.
var ErrLost = errors.New("this program no longer sees changes of the house; start it again")

// ErrStale: a house whose store has not answered for longer than [MaxAge].
var ErrStale = errors.New("the store of the house does not answer; what is shown may be old")

// MaxAge is how long a house may go without a word of its store before it counts
// as old. Common practice, no source: a mark that is later than this is made
// twice, or poured.
const MaxAge = 10 * time.Second

// pace is how often the store is asked for what was not heard of, how long it may
// take to answer, and how old the house may become.
type pace struct{ every, answer, age time.Duration }

var usualPace = pace{3 * time.Second, 3 * time.Second, MaxAge}

// Ready returns [ErrLost] once the store is no longer followed, though nobody
// closed the venue, and [ErrStale] for as long as the store does not answer.
func (v *Venue) Ready() error {
	switch {
	case v.lost.Load():
		return ErrLost
	case v.Age() > v.pace.age:
		return ErrStale
	}
	return nil
}

// Age is how long ago the house was last known to be as the store has it.
func (v *Venue) Age() time.Duration { return time.Since(*v.current.Load()) }

// Listeners is how many are told of changes.
func (v *Venue) Listeners() int {
	v.mu.Lock()
	defer v.mu.Unlock()
	return len(v.listeners)
}

// Fresh returns why what the visit sees may be old, as [Venue.Ready] does; nil if
// it is as the store has it.
func (v *Visit) Fresh() error { return v.venue.Ready() }

// watch asks the store again and again whether the house is as the store has it.
// The feed tells sooner; but of a feed that says nothing, nobody can tell whether
// nothing happened.
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

// catchUp takes up what the store has and the house lacks, by number, so that
// nothing is left out whatever the feed missed.
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
