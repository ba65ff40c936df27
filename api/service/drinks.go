package service

import (
	"context"
	"slices"
	"strings"

	"counterpour/api/service/evening"
	"counterpour/flavor"
	"counterpour/flavor/guest"
	"counterpour/flavor/lookup"
)

// DrinkQuery asks for drinks of the menu. A drink must meet every condition.
type DrinkQuery struct {
	Text   string      // words in the name of the drink or of an ingredient; empty for any
	Family string      // id of a family; empty for any
	Guest  guest.Guest // may have every pour, as far as is known, and the finished drink
}

// mostMeant is how many ingredients are considered for one word.
const mostMeant = 100

// FindDrinks returns the drinks of the menu that match a query, in the order of the menu.
// It looks each word up in the index, so that misspellings, aliases, and words for a
// class or an aroma find a drink by its ingredients. What only has a word as a part of a longer
// one is not meant beside what has it whole: no ginger by gin.
func (s *Snapshot) FindDrinks(ctx context.Context, q DrinkQuery) ([]Drink, error) {
	words := strings.Fields(flavor.NormaliseName(q.Text))
	meant := make([]map[*flavor.Profile]bool, len(words))
	for i, w := range words {
		found, err := s.Index.Search(ctx, lookup.Query{Text: w, Limit: mostMeant})
		if err != nil {
			return nil, err
		}
		meant[i] = map[*flavor.Profile]bool{}
		whole := slices.ContainsFunc(found.Hits, func(h lookup.Hit) bool { return evening.HasWhole(foundUnder(h.Profile), w) })
		for _, h := range found.Hits {
			if in := foundUnder(h.Profile); !whole || evening.HasWhole(in, w) || !evening.HasWords(in, w) {
				meant[i][h.Profile] = true
			}
		}
	}
	return slices.DeleteFunc(slices.Clone(s.Menu), func(d Drink) bool { return !q.holds(&d, words, meant) || !s.weakEnough(&d, &q.Guest) }), nil
}

// foundUnder is what an ingredient is found under: its names and its class.
func foundUnder(p *flavor.Profile) string {
	return flavor.NormaliseName(strings.Join(append([]string{p.Name, string(p.Class)}, p.Aliases...), " "))
}

// Names reports whether each word of a text is part of the name of the drink, or of a name
// or the class of one of its ingredients, as it is written. [Snapshot.FindDrinks] also
// finds what is only near to a word, or meant by it.
func (d *Drink) Names(text string) bool {
	said := []string{flavor.NormaliseName(d.Spec.Name)}
	for i := range d.Spec.Pours {
		said = append(said, foundUnder(d.Spec.Pours[i].Profile))
	}
	return evening.HasWords(strings.Join(said, " "), text)
}

// weakEnough reports whether a drink is within a guest's limit on strength. A drink whose
// strength cannot be worked out is not.
func (s *Snapshot) weakEnough(d *Drink, g *guest.Guest) bool {
	if g.MaxABV == 0 {
		return true
	}
	r, err := s.Judge.Score(&d.Spec)
	return err == nil && r.Drink.ABV <= g.MaxABV
}

// holds reports whether a drink matches: each word is part of its name or means one of
// its ingredients.
func (q *DrinkQuery) holds(d *Drink, words []string, meant []map[*flavor.Profile]bool) bool {
	if q.Family != "" && q.Family != d.Family {
		return false
	}
	for _, p := range d.Spec.Pours {
		if !q.Guest.Accepts(p.Profile) {
			return false
		}
	}
	if !q.Guest.MayHaveLaid(&d.Spec) {
		return false
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
