package index

import (
	"context"
	"fmt"
	"slices"

	"counterpour/flavor"
	"counterpour/flavor/lookup"
)

// maxAlcoholFree is the strength up to which an ingredient counts as alcohol-free, in %
// vol. Juices and ferments contain traces; the trade and most labelling rules draw the
// line at half a per cent.
const maxAlcoholFree = 0.5

// Candidates returns the ingredients that meet a need, sorted by id, and how many were
// refused. An unknown allergen, animal source or id is a [*flavor.DataFault]. It scans all
// profiles, which is faster than a bleve query and needs no documents.
func (x *Index) Candidates(ctx context.Context, n lookup.Need) ([]*flavor.Profile, lookup.Refused, error) {
	var refused lookup.Refused
	if x.line.closed.Load() {
		return nil, refused, lookup.ErrClosed
	}
	if err := ctx.Err(); err != nil {
		return nil, refused, err
	}
	if err := x.checkNeed(n); err != nil {
		return nil, refused, err
	}
	stock, excluded, animal := setOf(n.Stock), setOf(n.Exclude), setOf(foldAll(n.NoAnimal))
	out := make([]*flavor.Profile, 0, len(x.profiles))
	for _, p := range x.profiles {
		switch {
		case excluded[p.ID], n.NoAlcohol && p.ABV.Value > maxAlcoholFree,
			len(animal) > 0 && slices.ContainsFunc(p.Animal, func(w string) bool { return animal[fold(w)] }):
		case n.Stock != nil && !stock[p.ID]:
			refused.NotInStock++
		case !p.Avoids(n.Avoid):
			refused.ByAllergen++
		default:
			out = append(out, p)
		}
	}
	return out, refused, nil
}

func setOf(words []string) map[string]bool {
	set := make(map[string]bool, len(words))
	for _, w := range words {
		set[w] = true
	}
	return set
}

func (x *Index) checkNeed(n lookup.Need) error {
	if err := checkAvoid(n.Avoid); err != nil {
		return err
	}
	for i, w := range n.NoAnimal {
		if k := fold(w); !x.animals[k] && !slices.Contains(flavor.Animals(), k) {
			return invalid(fmt.Sprintf("no_animal[%d]", i), w,
				fmt.Sprintf("%q is not known to come from animals; use one of: %s", capText(w), list(flavor.Animals())))
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
