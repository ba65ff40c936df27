package index

import (
	"cmp"
	"context"
	"errors"
	"fmt"
	"runtime"
	"slices"
	"strings"
	"sync"
	"sync/atomic"

	"github.com/blevesearch/bleve/v2"
	"github.com/blevesearch/bleve/v2/index/scorch"

	"counterpour/flavor"
)

// batchSize is how many documents are written at once.
const batchSize = 1000

// carriedFrom is the intensity from which a family counts as carried, on the
// scale of [flavor.Families].
const carriedFrom = 1.0

// Index finds ingredients. Make one with [Build].
type Index struct {
	profiles []*flavor.Profile // by id
	position map[string]int    // id to position in profiles
	animals  map[string]bool   // animal words that are in use
	names    *names
	favours  func(id string) float64 // nil: none before another; see [Index.Favouring]
	line     *line
}

// line is what an index and those that follow it have in common.
type line struct {
	*documents
	writes int // by those that followed; see [Index.Follow]
}

// documents are what bleve holds. They are closed once, by whoever closes an
// index of the line, or when no index of it can be reached any more.
type documents struct {
	bleve  bleve.Index
	closed atomic.Bool
	once   sync.Once
	err    error
}

func (d *documents) close() error {
	d.once.Do(func() {
		d.closed.Store(true)
		if err := d.bleve.Close(); err != nil {
			d.err = fmt.Errorf("index: close: %w", err)
		}
	})
	return d.err
}

// newLine opens an empty store in memory.
func newLine() (*line, error) {
	m, err := newMapping()
	if err != nil {
		return nil, err
	}
	// The in-memory default of bleve is ten times slower to fill than scorch.
	b, err := bleve.NewUsing("", m, scorch.Name, scorch.Name, nil)
	if err != nil {
		return nil, fmt.Errorf("index: open: %w", err)
	}
	l := &line{documents: &documents{bleve: b}}
	runtime.AddCleanup(l, func(d *documents) { _ = d.close() }, l.documents) // nobody is there to be told
	return l, nil
}

// Build indexes the profiles, in memory. Their order does not matter; an id
// that is empty or comes twice is an error. After every batch it calls
// progress, if that is not nil, and stops if ctx is done. The slice is not
// kept, the profiles are.
func Build(ctx context.Context, profiles []*flavor.Profile, progress func(done, total int)) (*Index, error) {
	x, err := newIndex(profiles)
	if err != nil {
		return nil, err
	}
	if x.line, err = newLine(); err != nil {
		return nil, err
	}
	if err := x.fill(ctx, x.profiles, progress); err != nil {
		return nil, errors.Join(err, x.Close())
	}
	return x, nil
}

// newIndex prepares everything but bleve.
func newIndex(profiles []*flavor.Profile) (*Index, error) {
	x := &Index{profiles: slices.Clone(profiles), position: make(map[string]int, len(profiles)),
		animals: map[string]bool{}}
	if i := slices.Index(x.profiles, nil); i >= 0 {
		return nil, fmt.Errorf("index: profile %d is nil", i)
	}
	slices.SortFunc(x.profiles, func(a, b *flavor.Profile) int { return cmp.Compare(a.ID, b.ID) })
	for i, p := range x.profiles {
		if _, twice := x.position[p.ID]; twice || p.ID == "" {
			return nil, fmt.Errorf("index: id %q is empty or comes twice; every profile needs its own", p.ID)
		}
		x.position[p.ID] = i
		for _, a := range p.Animal {
			x.animals[fold(a)] = true
		}
	}
	x.names = newNames(x.profiles)
	return x, nil
}

func (x *Index) fill(ctx context.Context, profiles []*flavor.Profile, progress func(done, total int)) error {
	total := len(profiles)
	for from := 0; from < total; from += batchSize {
		if err := ctx.Err(); err != nil {
			return fmt.Errorf("index: build: %w", err)
		}
		to := min(from+batchSize, total)
		batch := x.line.bleve.NewBatch()
		for _, p := range profiles[from:to] {
			if err := batch.Index(p.ID, document(p)); err != nil {
				return fmt.Errorf("index: build: %q: %w", p.ID, err)
			}
		}
		if err := x.line.bleve.Batch(batch); err != nil {
			return fmt.Errorf("index: build: batch from %d: %w", from, err)
		}
		if progress != nil {
			progress(to, total)
		}
	}
	return nil
}

// document is what bleve is told of a profile.
func document(p *flavor.Profile) map[string]any {
	aliases := make([]string, len(p.Aliases))
	for i, a := range p.Aliases {
		aliases[i] = fold(a)
	}
	name, id := fold(p.Name), fold(p.ID)
	families := familiesOf(p.Aroma)
	doc := map[string]any{
		fieldKey:        []string{name, id},
		fieldAliasKey:   aliases,
		fieldName:       name,
		fieldAlias:      strings.Join(aliases, " "),
		fieldTyping:     strings.Join(append([]string{name, id}, aliases...), " "),
		fieldWords:      wordsOf(p, families),
		fieldClass:      string(p.Class),
		fieldPart:       string(p.Class.Part()),
		fieldFamily:     families,
		fieldAllergen:   allergensOf(p),
		fieldAnimal:     foldAll(p.Animal),
		fieldABV:        p.ABV.Value,
		fieldSugar:      p.Sugar.Value,
		fieldAcid:       p.Acid.Value,
		fieldBitter:     p.Bitter.Value,
		fieldCarbonated: p.Carbonated,
	}
	for f, v := range p.Aroma {
		if v != 0 {
			doc[aromaField(flavor.Family(f))] = v
		}
	}
	return doc
}

// familiesOf returns the families that an aroma carries: those of intensity
// carriedFrom or more, and the leading one, or ones, however faint.
func familiesOf(a flavor.Aroma) []string {
	var out []string
	lead := slices.Max(a[:])
	for f, v := range a {
		if v >= carriedFrom || v > 0 && v == lead {
			out = append(out, flavor.Family(f).String())
		}
	}
	return out
}

// allergensOf returns the allergens that may be in p: all of them if nobody
// has said.
func allergensOf(p *flavor.Profile) []string {
	var out []string
	for _, a := range flavor.Allergens() {
		if _, has := p.Allergen(a); has {
			out = append(out, string(a))
		}
	}
	return out
}

// wordsOf returns what else may be said of p, beside its names.
func wordsOf(p *flavor.Profile, families []string) string {
	words := append([]string{string(p.Class), string(p.Class.Part()), p.Legal, p.Making}, families...)
	for _, m := range p.Materials {
		words = append(words, m.Material)
	}
	if p.Carbonated {
		words = append(words, "carbonated sparkling")
	}
	return strings.Join(foldAll(words), " ")
}

// Len returns how many ingredients are indexed.
func (x *Index) Len() int { return len(x.profiles) }

// Profile returns the profile with an id.
func (x *Index) Profile(id string) (*flavor.Profile, bool) {
	i, ok := x.position[id]
	if !ok {
		return nil, false
	}
	return x.profiles[i], true
}

// Close frees the index and every other of its line; see [Index.Follow]. It may
// be called twice; searches answer [lookup.ErrClosed] afterwards.
func (x *Index) Close() error { return x.line.close() }
