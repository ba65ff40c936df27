package main

import (
	"context"
	"errors"
	"time"

	"github.com/prometheus/client_golang/prometheus"

	"counterpour/data/house"
)

// stopwatch times the operations of a store, by operation and outcome.
type stopwatch struct{ seconds *prometheus.HistogramVec }

func newStopwatch() *stopwatch {
	return &stopwatch{prometheus.NewHistogramVec(prometheus.HistogramOpts{Name: "counterpour_store_seconds",
		Help:    "Time that the store of the house took, by what it did and how that ended.",
		Buckets: []float64{.0005, .001, .0025, .005, .01, .025, .05, .1, .25, .5, 1, 2.5, 5}}, []string{"does", "ended"})}
}

// over returns a store that times its operations.
func (w *stopwatch) over(s house.Store) house.Store { return &metered{s, w} }

type metered struct {
	house.Store
	watch *stopwatch
}

// timed calls f and records its time.
func timed[T any](m *metered, does string, f func() (T, error)) (T, error) {
	begun := time.Now()
	out, err := f()
	m.watch.seconds.WithLabelValues(does, endOf(err)).Observe(time.Since(begun).Seconds())
	return out, err
}

// endOf returns the outcome of an operation: "well", "cut off" or a kind of error.
func endOf(err error) string {
	switch {
	case err == nil:
		return "well"
	case errors.Is(err, context.Canceled), errors.Is(err, context.DeadlineExceeded):
		return "cut off"
	}
	for _, kind := range house.Kinds() {
		if errors.Is(err, kind) {
			return kind.Error()
		}
	}
	return house.ErrInternal.Error()
}

func (m *metered) Get(ctx context.Context, ref house.Ref) (house.Entry, error) {
	return timed(m, "read", func() (house.Entry, error) { return m.Store.Get(ctx, ref) })
}

func (m *metered) List(ctx context.Context, kinds ...house.Kind) ([]house.Entry, error) {
	return timed(m, "list", func() ([]house.Entry, error) { return m.Store.List(ctx, kinds...) })
}

func (m *metered) History(ctx context.Context, ref house.Ref) ([]house.Change, error) {
	return timed(m, "history", func() ([]house.Change, error) { return m.Store.History(ctx, ref) })
}

func (m *metered) Removed(ctx context.Context, kind house.Kind) ([]house.Change, error) {
	return timed(m, "removed", func() ([]house.Change, error) { return m.Store.Removed(ctx, kind) })
}

func (m *metered) Changes(ctx context.Context, after int64, limit int) ([]house.Change, error) {
	return timed(m, "changes", func() ([]house.Change, error) { return m.Store.Changes(ctx, after, limit) })
}

func (m *metered) Write(ctx context.Context, by house.By, edits ...house.Edit) ([]house.Change, error) {
	return timed(m, "write", func() ([]house.Change, error) { return m.Store.Write(ctx, by, edits...) })
}

func (m *metered) Undo(ctx context.Context, by house.By, ref house.Ref, version int64) (house.Change, error) {
	return timed(m, "undo", func() (house.Change, error) { return m.Store.Undo(ctx, by, ref, version) })
}

func (m *metered) Share(ctx context.Context, now time.Time, list ...house.Ephemeral) error {
	_, err := timed(m, "share", func() (struct{}, error) { return struct{}{}, m.Store.Share(ctx, now, list...) })
	return err
}
