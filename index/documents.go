package index

import (
	"context"
	"fmt"
	"runtime"
	"slices"
	"sync"
	"sync/atomic"

	"github.com/blevesearch/bleve/v2"
	"github.com/blevesearch/bleve/v2/index/scorch"
	"golang.org/x/sync/errgroup"

	"counterpour/flavor"
	"counterpour/flavor/lookup"
)

// Progress is called with the number of ingredients indexed and their total. A nil
// Progress is not called.
type Progress = func(done, total int)

// batchSize is the number of documents in a batch, and leastBatch the fewest that make a
// batch of their own.
const (
	batchSize  = 1000
	leastBatch = 200
)

// line is the state that an index shares with the indexes derived from it by
// [Index.Follow].
type line struct {
	*documents
	profiles []*flavor.Profile // of the latest index; written when a search needs them
	writes   int               // number of writes by Follow
}

// documents is the bleve index, built when a search first needs it. It is closed once:
// when an index of the line is closed, or when no index of the line is reachable any
// more.
type documents struct {
	mu     sync.Mutex // held while documents are built, written or closed
	bleve  bleve.Index
	open   atomic.Bool
	closed atomic.Bool
}

func newLine(profiles []*flavor.Profile) *line {
	l := &line{documents: &documents{}, profiles: profiles}
	runtime.AddCleanup(l, func(d *documents) { _ = d.close() }, l.documents) // there is nobody to report an error to
	return l
}

func (d *documents) close() error {
	d.mu.Lock()
	defer d.mu.Unlock()
	if d.closed.Swap(true) || d.bleve == nil {
		return nil
	}
	if err := d.bleve.Close(); err != nil {
		return fmt.Errorf("index: close: %w", err)
	}
	return nil
}

// Open builds the bleve index in memory, if it is not built yet. Concurrent calls wait
// for one build. It reports progress after every batch and stops if ctx ends; the next
// search then starts again.
func (x *Index) Open(ctx context.Context, progress Progress) error {
	if x.line.open.Load() {
		return nil
	}
	x.line.mu.Lock()
	defer x.line.mu.Unlock()
	switch {
	case x.line.closed.Load():
		return lookup.ErrClosed
	case x.line.open.Load():
		return nil
	}
	m, err := newMapping()
	if err != nil {
		return err
	}
	// bleve's default in-memory store takes ten times as long to fill as scorch.
	b, err := bleve.NewUsing("", m, scorch.Name, scorch.Name, nil)
	if err != nil {
		return fmt.Errorf("index: open: %w", err)
	}
	if err := fill(ctx, b, x.line.profiles, progress); err != nil {
		_ = b.Close() // the first error matters more
		return err
	}
	x.line.bleve, x.line.profiles = b, nil
	x.line.open.Store(true)
	return nil
}

// Opened reports whether the bleve index is built.
func (x *Index) Opened() bool { return x.line.open.Load() }

// fill writes profiles as documents, several batches concurrently: bleve processes each
// batch on one core.
func fill(ctx context.Context, to bleve.Index, profiles []*flavor.Profile, progress Progress) error {
	cores := runtime.GOMAXPROCS(0)
	size := min(batchSize, max(leastBatch, (len(profiles)+cores-1)/cores))
	var told sync.Mutex
	done := 0
	writers, ctx := errgroup.WithContext(ctx)
	writers.SetLimit(cores)
	for batch := range slices.Chunk(profiles, size) {
		writers.Go(func() (err error) {
			defer func() { // a panic in this goroutine would end the program
				if spilled := recover(); spilled != nil {
					err = fmt.Errorf("index: build: it panicked: %v", spilled)
				}
			}()
			if err := write(ctx, to, batch); err != nil {
				return err
			}
			told.Lock()
			defer told.Unlock()
			done += len(batch)
			if progress != nil {
				progress(done, len(profiles))
			}
			return nil
		})
	}
	return writers.Wait()
}

// write writes one batch.
func write(ctx context.Context, to bleve.Index, profiles []*flavor.Profile) error {
	if err := ctx.Err(); err != nil {
		return fmt.Errorf("index: build: %w", err)
	}
	batch := to.NewBatch()
	for _, p := range profiles {
		if err := batch.Index(p.ID, document(p)); err != nil {
			return fmt.Errorf("index: build: %q: %w", p.ID, err)
		}
	}
	if err := to.Batch(batch); err != nil {
		return fmt.Errorf("index: build: %w", err)
	}
	return nil
}

// Close releases the index and all others of its line; see [Index.Follow]. It may be
// called twice. Searches return [lookup.ErrClosed] afterwards.
func (x *Index) Close() error { return x.line.close() }
