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

// Progress is told how many ingredients are done, of how many; nil is told nothing.
type Progress = func(done, total int)

// batchSize is how many documents are written at once, and leastBatch the fewest that
// are worth a batch of their own.
const (
	batchSize  = 1000
	leastBatch = 200
)

// line is what an index and those that follow it have in common.
type line struct {
	*documents
	profiles []*flavor.Profile // of the latest index; what is written once a search needs it
	writes   int               // by those that followed; see [Index.Follow]
}

// documents are what bleve holds, once a search needed it. They are closed once, by
// whoever closes an index of the line, or when no index of it can be reached any more.
type documents struct {
	mu     sync.Mutex // held while documents are made, written or closed
	bleve  bleve.Index
	open   atomic.Bool
	closed atomic.Bool
}

func newLine(profiles []*flavor.Profile) *line {
	l := &line{documents: &documents{}, profiles: profiles}
	runtime.AddCleanup(l, func(d *documents) { _ = d.close() }, l.documents) // nobody is there to be told
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

// Open makes what searches by words need, in memory, if nobody has yet; who comes
// while it is made waits for it. After every batch it tells progress, and it stops if
// ctx is done; the next search then begins anew.
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
	// The in-memory default of bleve is ten times slower to fill than scorch.
	b, err := bleve.NewUsing("", m, scorch.Name, scorch.Name, nil)
	if err != nil {
		return fmt.Errorf("index: open: %w", err)
	}
	if err := fill(ctx, b, x.line.profiles, progress); err != nil {
		_ = b.Close() // the error at hand says more
		return err
	}
	x.line.bleve, x.line.profiles = b, nil
	x.line.open.Store(true)
	return nil
}

// Opened reports whether a search finds everything made that it needs.
func (x *Index) Opened() bool { return x.line.open.Load() }

// fill writes profiles as documents, several batches at once: bleve makes each of
// them on one core.
func fill(ctx context.Context, to bleve.Index, profiles []*flavor.Profile, progress Progress) error {
	cores := runtime.GOMAXPROCS(0)
	size := min(batchSize, max(leastBatch, (len(profiles)+cores-1)/cores))
	var told sync.Mutex
	done := 0
	writers, ctx := errgroup.WithContext(ctx)
	writers.SetLimit(cores)
	for batch := range slices.Chunk(profiles, size) {
		writers.Go(func() (err error) {
			defer func() { // nobody else would catch a panic
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

// Close frees the index and every other of its line; see [Index.Follow]. It may
// be called twice; searches answer [lookup.ErrClosed] afterwards.
func (x *Index) Close() error { return x.line.close() }
