package service

import (
	"context"
	"slices"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/cover"
	"counterpour/flavor/lookup"
)

// DrinkQuery asks for drinks of the menu. Everything that is given must hold.
type DrinkQuery struct {
	Text   string      // in the name of the drink or of an ingredient; empty for any
	Family string      // id of the family it is meant for; empty for any
	Guest  cover.Guest // who may have every pour, as far as is known, and the whole
}

// mostMeant is how many ingredients one word may mean.
const mostMeant = 100

// FindDrinks returns the drinks of the menu that a query lets through, in order.
// It asks the index what every word may mean: slips, aliases and the words of a
// class or an aroma find a drink by its ingredients too.
func (s *Snapshot) FindDrinks(ctx context.Context, q DrinkQuery) ([]Drink, error) {
	words := strings.Fields(flavor.NormaliseName(q.Text))
	meant := make([]map[*flavor.Profile]bool, len(words))
	for i, w := range words {
		found, err := s.Index.Search(ctx, lookup.Query{Text: w, Limit: mostMeant})
		if err != nil {
			return nil, err
		}
		meant[i] = map[*flavor.Profile]bool{}
		for _, h := range found.Hits {
			meant[i][h.Profile] = true
		}
	}
	return slices.DeleteFunc(slices.Clone(s.Menu), func(d Drink) bool { return !q.holds(&d, words, meant) || !s.weakEnough(&d, &q.Guest) }), nil
}

// weakEnough reports whether a drink keeps to a guest's limit on strength. One whose
// strength cannot be worked out does not.
func (s *Snapshot) weakEnough(d *Drink, guest *cover.Guest) bool {
	if guest.MaxABV == 0 {
		return true
	}
	r, err := s.Judge.Score(&d.Spec)
	return err == nil && r.Drink.ABV <= guest.MaxABV
}

// holds reports whether a query lets a drink through: every word is in its name
// or means one of its ingredients.
func (q *DrinkQuery) holds(d *Drink, words []string, meant []map[*flavor.Profile]bool) bool {
	if q.Family != "" && q.Family != d.Family {
		return false
	}
	for _, p := range d.Spec.Pours {
		if !q.Guest.Accepts(p.Profile) {
			return false
		}
	}
	name := flavor.NormaliseName(d.Spec.Name)
	for i, w := range words {
		poured := slices.ContainsFunc(d.Spec.Pours, func(p flavor.Pour) bool { return meant[i][p.Profile] })
		if !poured && !strings.Contains(name, w) {
			return false
		}
	}
	return true
}
