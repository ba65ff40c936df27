package service

import (
	"context"

	"counterpour/data/house"
)

// Store returns the house's store. A write through it returns after the next snapshot is
// derived, so that [Venue.Now] includes it.
func (v *Venue) Store() house.Store { return &writer{v.inner, v} }

// writer is a store whose writes return after the venue has taken them up.
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

// takeUp derives a snapshot that includes a change. The change is already durable, so an
// error is logged and not returned: the write succeeded, and the venue keeps its
// snapshot.
func (v *Venue) takeUp(ctx context.Context, last house.Change) {
	if last.Ref.Kind == house.KindTraining || last.Ref.Kind == house.KindTriangle || last.Ref.Kind == house.KindPrice {
		return // training and prices on the menu do not affect the snapshot
	}
	if err := v.refresh(context.WithoutCancel(ctx), last.Seq); err != nil {
		v.log.ErrorContext(ctx, "a change was written but could not be taken up", "change", last.Seq, "error", err)
	}
}
