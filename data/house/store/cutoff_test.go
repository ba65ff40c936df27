package store

import (
	"context"
	"path/filepath"
	"sync"
	"testing"
	"time"

	"github.com/stretchr/testify/require"
)

// A house is closed in order though reads were under way, or were cut off just before: none
// of their connections outlives it.
func TestCloseWaitsForReads(t *testing.T) {
	path := filepath.Join(t.TempDir(), "bar.house")
	s := openAt(t, path, Options{})
	write(t, s, putAll(every())...)
	require.NoError(t, s.Close())
	for round := range 150 {
		s, err := Open(t.Context(), path, Options{})
		require.NoError(t, err, "round %d", round)
		ctx, stop := context.WithTimeout(t.Context(), time.Duration(round%50)*20*time.Microsecond)
		var reading sync.WaitGroup
		for range readers {
			reading.Go(func() { _, _ = s.List(ctx) })
		}
		time.Sleep(time.Duration(round%50) * 20 * time.Microsecond)
		require.NoError(t, s.Close())
		reading.Wait()
		stop()
	}
}
