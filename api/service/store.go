package service

import (
	"context"

	"counterpour/data/house"
)

// Store returns the house's store. What it has acknowledged, the venue knows:
// a write returns once the next snapshot is made.
func (v *Venue) Store() house.Store { return &writer{v.inner, v} }

// writer is a store whose writes the venue takes up before they return.
type writer struct {
	house.Store
	venue *Venue
}

func (w *writer) Write(ctx context.Context, by house.By, edits ...house.Edit) ([]house.Change, error) {
	changes, err := w.Store.Write(ctx, by, edits...)
	if err == nil && len(changes) > 0 {
		w.venue.takeUp(ctx, changes[len(changes)-1])
	}
	return changes, err
}

func (w *writer) Undo(ctx context.Context, by house.By, ref house.Ref, version int64) (house.Change, error) {
	change, err := w.Store.Undo(ctx, by, ref, version)
	if err == nil {
		w.venue.takeUp(ctx, change)
	}
	return change, err
}

// takeUp takes up a change. It is durable by now, so that a failure is no failure
// of the write: the venue stays as it was and says so in the log.
func (v *Venue) takeUp(ctx context.Context, last house.Change) {
	if last.Ref.Kind == house.KindTraining || last.Ref.Kind == house.KindTriangle {
		return // no kitchen depends on it
	}
	if err := v.refresh(context.WithoutCancel(ctx), last.Seq); err != nil {
		v.log.ErrorContext(ctx, "a change was written but could not be taken up", "change", last.Seq, "error", err)
	}
}
