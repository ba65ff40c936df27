package index

import (
	"cmp"
	"context"
	"fmt"
	"runtime"
	"slices"
	"strings"

	"github.com/blevesearch/bleve/v2"
	"github.com/blevesearch/bleve/v2/search/query"

	"counterpour/flavor"
	"counterpour/flavor/lookup"
)

// Search answers a query. Finding nothing is no error. The text is matched in three ways,
// each only if the one before found nothing: first all words or prefixes in names, class,
// families, materials and preparation; then all words with misspellings, or what
// [Index.Resolve] returns; then at least half of the words. An ingredient with exactly
// this name comes first, then one with exactly this alias, then names that begin with the
// text.
func (x *Index) Search(ctx context.Context, q lookup.Query) (lookup.Result, error) {
	return x.search(ctx, q, true)
}

// search is Search, with facets only if counted is true: they need a look at every
// matching ingredient.
func (x *Index) search(ctx context.Context, q lookup.Query, counted bool) (lookup.Result, error) {
	if x.line.closed.Load() {
		return lookup.Result{}, lookup.ErrClosed
	}
	if err := x.check(q); err != nil {
		return lookup.Result{}, err
	}
	filters := filtersOf(q)
	if strings.TrimSpace(q.Text) == "" {
		return x.answer(ctx, q, all(append(filters, bleve.NewMatchAllQuery())...), false, counted)
	}
	key := fold(capText(q.Text))
	words := strings.Fields(key)
	if len(words) == 0 {
		return lookup.Result{}, nil // only punctuation
	}
	words = words[:min(len(words), lookup.MaxWords)]
	for _, read := range []func() query.Query{ // misspellings only if needed
		func() query.Query { return asTyped(key, words) },
		func() query.Query { return x.withSlips(q.Text, words) },
		func() query.Query { return x.halfOf(words) },
	} {
		r, err := x.answer(ctx, q, all(append(filters, read())...), true, counted)
		if err != nil || r.Total > 0 {
			return r, err
		}
	}
	return lookup.Result{}, nil
}

// answer runs a query, or sorts all matches by distance if q asks for that.
func (x *Index) answer(ctx context.Context, q lookup.Query, b query.Query, scored, counted bool) (lookup.Result, error) {
	if q.Like != "" {
		positions, err := x.matches(ctx, b)
		if err != nil {
			return lookup.Result{}, err
		}
		return x.like(x.position[q.Like], positions, &q), nil
	}
	res, err := x.run(ctx, requestFor(b, q.Most(), scored, counted))
	if err != nil {
		return lookup.Result{}, err
	}
	out := lookup.Result{Total: int(res.Total), Hits: x.hits(res, scored), Classes: facetsOf(res)}
	return out, nil
}

// requestFor builds the bleve request for the first hits in a total order and, if they
// are to be counted, the facets.
func requestFor(b query.Query, limit int, scored, counted bool) *bleve.SearchRequest {
	req := bleve.NewSearchRequestOptions(b, limit, 0, false)
	req.SortBy([]string{"-_score", "_id"})
	if !scored {
		req.Score = "none"
		req.SortBy([]string{"_id"})
	}
	if counted {
		req.AddFacet(fieldClass, bleve.NewFacetRequest(fieldClass, len(flavor.Classes())))
	}
	return req
}

func (x *Index) hits(res *bleve.SearchResult, scored bool) []lookup.Hit {
	out := make([]lookup.Hit, 0, len(res.Hits))
	for _, h := range res.Hits {
		i, ours := x.position[h.ID]
		if !ours { // a later index of the line has it
			continue
		}
		score := 1.0
		if scored && res.MaxScore > 0 {
			score = h.Score / res.MaxScore
		}
		out = append(out, lookup.Hit{Profile: x.profiles[i], Score: score})
	}
	return out
}

func facetsOf(res *bleve.SearchResult) []lookup.Facet {
	f, ok := res.Facets[fieldClass]
	if !ok || f.Terms == nil {
		return nil
	}
	out := make([]lookup.Facet, 0, f.Terms.Len())
	for _, t := range f.Terms.Terms() {
		out = append(out, lookup.Facet{Name: t.Term, Count: t.Count})
	}
	sortFacets(out)
	return out
}

// lateRoom is room for documents that a later index of the same line added, so that they
// do not displace this index's own.
const lateRoom = 10000

// matches returns the positions of all profiles that match a query, sorted by id.
func (x *Index) matches(ctx context.Context, b query.Query) ([]int, error) {
	req := bleve.NewSearchRequestOptions(b, x.Len()+lateRoom, 0, false)
	req.Score = "none"
	res, err := x.run(ctx, req)
	if err != nil {
		return nil, err
	}
	out := make([]int, 0, len(res.Hits))
	for _, h := range res.Hits {
		if i, ours := x.position[h.ID]; ours {
			out = append(out, i)
		}
	}
	slices.Sort(out)
	return out, nil
}

func (x *Index) run(ctx context.Context, req *bleve.SearchRequest) (*bleve.SearchResult, error) {
	if err := x.Open(ctx, nil); err != nil {
		return nil, err
	}
	res, err := x.line.bleve.SearchInContext(ctx, req)
	runtime.KeepAlive(x) // keeps the line from being closed during the search
	switch {
	case err != nil && x.line.closed.Load():
		return nil, lookup.ErrClosed
	case err != nil:
		return nil, fmt.Errorf("index: search: %w", err)
	}
	return res, nil
}

// byScore sorts by score, the higher first, then by id.
func byScore(a float64, p *flavor.Profile, b float64, q *flavor.Profile) int {
	return cmp.Or(cmp.Compare(b, a), cmp.Compare(p.ID, q.ID))
}

func sortFacets(f []lookup.Facet) {
	slices.SortFunc(f, func(a, b lookup.Facet) int {
		return cmp.Or(cmp.Compare(b.Count, a.Count), cmp.Compare(a.Name, b.Name))
	})
}
