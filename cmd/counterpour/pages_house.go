package main

import (
	"context"
	"errors"
	"fmt"
	"slices"
	"strings"

	"counterpour/api/service"
	"counterpour/data/house"
	"counterpour/data/house/prep"
	"counterpour/flavor"
	"counterpour/flavor/cover"
	"counterpour/index"
	"counterpour/webui"
)

// room is the house of a venue as the pages see it.
type room struct{ venue *service.Venue }

var _ webui.House = room{}

func (r room) About() string {
	h := r.venue.Kitchen().House
	return strings.TrimSpace(h.Name + ". " + h.Description)
}

func (r room) Store() house.Store { return r.venue.Store() }

func (r room) Catalogue() *house.Shelf { return r.venue.Catalogue() }

func (r room) Shelf() *house.Shelf { return r.venue.Now().Shelf }

func (r room) Menu(context.Context) ([]webui.HouseSpec, error) {
	var out []webui.HouseSpec
	for _, d := range r.venue.Now().Menu {
		out = append(out, webui.HouseSpec{Slug: d.ID, Family: d.Family, Spec: d.Spec})
	}
	return out, nil
}

func (r room) Stock(context.Context) ([]*flavor.Profile, error) {
	return slices.Clone(r.venue.Kitchen().House.Stock), nil
}

// Find asks the index what every word may mean: slips, aliases and the words of
// a class or an aroma find a drink by its ingredients too.
func (r room) Find(ctx context.Context, q webui.SpecQuery) ([]webui.HouseSpec, error) {
	menu, err := r.Menu(ctx)
	if err != nil {
		return nil, err
	}
	words := strings.Fields(flavor.NormaliseName(q.Text))
	meant := make([]map[*flavor.Profile]bool, len(words))
	for i, w := range words {
		found, err := r.venue.Kitchen().Index.Search(ctx, index.Query{Text: w, Limit: mostMeant})
		if err != nil {
			return nil, err
		}
		meant[i] = map[*flavor.Profile]bool{}
		for _, h := range found.Hits {
			meant[i][h.Profile] = true
		}
	}
	return slices.DeleteFunc(menu, func(s webui.HouseSpec) bool { return !holds(&s, &q, words, meant) }), nil
}

// mostMeant is how many ingredients one word may mean.
const mostMeant = 100

// holds reports whether a query lets a drink through: every word is in its name
// or means one of its ingredients.
func holds(s *webui.HouseSpec, q *webui.SpecQuery, words []string, meant []map[*flavor.Profile]bool) bool {
	if q.Family != "" && q.Family != s.Family {
		return false
	}
	for _, p := range s.Spec.Pours {
		if !p.Profile.Avoids(q.Avoid) {
			return false
		}
	}
	name := flavor.NormaliseName(s.Spec.Name)
	for i, w := range words {
		poured := slices.ContainsFunc(s.Spec.Pours, func(p flavor.Pour) bool { return meant[i][p.Profile] })
		if !poured && !strings.Contains(name, w) {
			return false
		}
	}
	return true
}

func (r room) Outs(context.Context) ([]string, error) {
	var out []string
	for _, p := range r.venue.Kitchen().House.Out {
		out = append(out, p.ID)
	}
	return out, nil
}

// markTries is how often a mark is tried when others mark the same thing at the
// same moment.
const markTries = 5

// Mark writes the out, or takes it off. What is back is there: if every bottle
// was counted as empty, the one that is poured counts as full.
func (r room) Mark(ctx context.Context, by house.By, id string, out bool) (err error) {
	if !slices.ContainsFunc(r.venue.Kitchen().House.Stock, func(p *flavor.Profile) bool { return p.ID == id }) {
		return &flavor.Fault{Kind: flavor.ErrUnknown, Location: "id", Value: id,
			Message: fmt.Sprintf("the house does not keep %q; mark something that it keeps", id)}
	}
	for range markTries {
		var edits []house.Edit
		if out {
			edits, err = r.gone(ctx, by, id)
		} else {
			edits, err = r.back(ctx, id)
		}
		if err != nil || len(edits) == 0 {
			return err
		}
		_, err = r.Store().Write(ctx, by, edits...)
		if !errors.Is(err, house.ErrConflict) && !errors.Is(err, house.ErrNotFound) {
			return err
		}
	}
	return err
}

// gone is what it takes for an ingredient to be out; nothing if it is.
func (r room) gone(ctx context.Context, by house.By, id string) ([]house.Edit, error) {
	_, err := house.Get[house.Out](ctx, r.Store(), id)
	if errors.Is(err, house.ErrNotFound) {
		return []house.Edit{house.Put(house.Out{Ingredient: id, Since: by.At}, 0)}, nil
	}
	return nil, err
}

// back is what it takes for an ingredient to be there again; nothing if it is.
func (r room) back(ctx context.Context, id string) (edits []house.Edit, err error) {
	marked, err := house.Get[house.Out](ctx, r.Store(), id)
	if err == nil {
		edits = append(edits, house.Remove(marked.Item.Ref(), marked.Version))
	} else if !errors.Is(err, house.ErrNotFound) {
		return nil, err
	}
	bottles, err := house.All[house.Bottle](ctx, r.Store())
	if err != nil {
		return nil, err
	}
	bottles = slices.DeleteFunc(bottles, func(b house.Kept[house.Bottle]) bool { return b.Item.Ingredient != id })
	if slices.ContainsFunc(bottles, func(b house.Kept[house.Bottle]) bool { return b.Item.Stock > 0 }) {
		return edits, nil
	}
	well := house.Wells(house.Items(bottles))[id]
	for _, b := range bottles {
		if b.Item.ID == well.ID {
			b.Item.Stock = 1
			edits = append(edits, house.Put(b.Item, b.Version))
		}
	}
	return edits, nil
}

func (r room) Prices(context.Context) (prep.Prices, error) {
	now := r.venue.Now()
	return now.Prices, now.PricesFault
}

func (r room) Tastings(context.Context) ([]cover.Tasting, error) {
	return slices.Clone(r.venue.Kitchen().Tastings), nil
}

// Changes never fails: the venue follows its store by itself.
func (r room) Changes(ctx context.Context) (<-chan struct{}, error) { return r.venue.Changes(ctx), nil }
