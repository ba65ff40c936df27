package index

import (
	"context"
	"fmt"
	"slices"

	"github.com/blevesearch/bleve/v2"
	"github.com/blevesearch/bleve/v2/search/query"

	"counterpour/flavor"
	"counterpour/flavor/lookup"
)

// maxAlcoholFree is the strength up to which an ingredient counts as free of
// alcohol, in % vol. Juices and ferments hold traces, and half a per cent is
// where the trade and most labelling draw the line.
const maxAlcoholFree = 0.5

// animalWords are words for what comes from animals that may be asked for even
// if no ingredient carries them.
var animalWords = []string{"milk", "egg", "honey", "fish", "insect"}

// Candidates returns the ingredients that meet a need, by id, and how many were
// refused. An allergen, animal word or id that is not known is a
// [*flavor.Fault].
func (x *Index) Candidates(ctx context.Context, n lookup.Need) ([]*flavor.Profile, lookup.Refused, error) {
	if x.line.closed.Load() {
		return nil, lookup.Refused{}, lookup.ErrClosed
	}
	if err := x.checkNeed(n); err != nil {
		return nil, lookup.Refused{}, err
	}
	wanted := wantedBy(n)
	stocked := append(slices.Clip(wanted), inStock(n.Stock)...)
	safe := append(slices.Clip(stocked), without(fieldAllergen, n.Avoid)...)
	nWanted, err := x.count(ctx, all(wanted...))
	if err != nil {
		return nil, lookup.Refused{}, err
	}
	nStocked, err := x.count(ctx, all(stocked...))
	if err != nil {
		return nil, lookup.Refused{}, err
	}
	positions, err := x.matches(ctx, all(safe...))
	if err != nil {
		return nil, lookup.Refused{}, err
	}
	out := make([]*flavor.Profile, 0, len(positions))
	for _, i := range positions {
		// The index has said so already; a guest's safety is worth asking twice.
		if p := x.profiles[i]; p.Avoids(n.Avoid) {
			out = append(out, p)
		}
	}
	return out, lookup.Refused{ByAllergen: nStocked - len(out), NotInStock: nWanted - nStocked}, nil
}

// wantedBy asks for everything that neither Exclude nor NoAlcohol nor NoAnimal
// rules out.
func wantedBy(n lookup.Need) []query.Query {
	out := []query.Query{bleve.NewMatchAllQuery()}
	if n.NoAlcohol {
		limit := maxAlcoholFree
		out = append(out, between(fieldABV, nil, &limit))
	}
	out = append(out, without(fieldAnimal, foldAll(n.NoAnimal))...)
	if len(n.Exclude) > 0 {
		q := bleve.NewBooleanQuery()
		q.AddMust(bleve.NewMatchAllQuery())
		q.AddMustNot(bleve.NewDocIDQuery(n.Exclude))
		out = append(out, q)
	}
	return out
}

// inStock asks for the documents with the ids; nil asks nothing.
func inStock(ids []string) []query.Query {
	switch {
	case ids == nil:
		return nil
	case len(ids) == 0:
		return []query.Query{bleve.NewMatchNoneQuery()}
	}
	return []query.Query{bleve.NewDocIDQuery(ids)}
}

func (x *Index) checkNeed(n lookup.Need) error {
	if err := checkAvoid(n.Avoid); err != nil {
		return err
	}
	for i, w := range n.NoAnimal {
		if k := fold(w); !x.animals[k] && !slices.Contains(animalWords, k) {
			return invalid(fmt.Sprintf("no_animal[%d]", i), w,
				fmt.Sprintf("%q is not known to come from animals; use one of: %s", capText(w), list(animalWords)))
		}
	}
	for i, id := range n.Stock {
		if err := x.checkID(fmt.Sprintf("stock[%d]", i), id); err != nil {
			return err
		}
	}
	for i, id := range n.Exclude {
		if err := x.checkID(fmt.Sprintf("exclude[%d]", i), id); err != nil {
			return err
		}
	}
	return nil
}
