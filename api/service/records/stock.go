package records

import (
	"slices"

	"counterpour/data/house"
	"counterpour/flavor"
	"counterpour/flavor/cover"
)

// MostScore is the highest score that a taster can give.
const MostScore = 10

// Stock returns everything that the house keeps, sorted by id, and what of it has run
// out: what is marked as out, and what has no bottle that is there.
func (r *Records) Stock(shelf *house.Shelf) (kept, out []*flavor.Profile) {
	left := map[string]float64{}
	for _, b := range r.Bottles {
		left[b.Item.Ingredient] += 0 // it is kept, out or not
		if b.Item.There() {
			left[b.Item.Ingredient] += b.Item.Stock
		}
	}
	for _, m := range r.Made {
		left[m.Item.ID] = 1 // makings count as available unless marked as out
	}
	for _, o := range r.Outs {
		if _, ours := left[o.Ingredient]; ours {
			left[o.Ingredient] = 0
		}
	}
	for _, p := range shelf.Profiles() {
		n, ours := left[p.ID]
		if !ours {
			continue
		}
		kept = append(kept, p)
		if n <= 0 {
			out = append(out, p)
		}
	}
	return kept, out
}

// Tastings returns the covers that the house tasted, in the form that the search for
// covers learns from: the missing ingredient, the substitutes and how they were liked.
func (r *Records) Tastings() []cover.Tasting {
	usual := map[string][]string{}
	for _, c := range r.Covers {
		usual[c.Spec] = nil
	}
	for _, s := range r.Specs {
		if _, covered := usual[s.Item.ID]; !covered {
			continue
		}
		for _, p := range s.Item.Pours {
			usual[s.Item.ID] = append(usual[s.Item.ID], p.Ingredient)
		}
	}
	var out []cover.Tasting
	for _, c := range r.Covers {
		t := cover.Tasting{Missing: c.Missing}
		switch {
		case c.Score != nil:
			t.Liked = *c.Score / MostScore
		case c.Reception == house.ReceptionKept:
			t.Liked = 1
		case c.Reception != house.ReceptionSentBack:
			continue // not rated
		}
		for _, p := range c.Served {
			if !slices.Contains(usual[c.Spec], p.Ingredient) {
				t.Parts = append(t.Parts, p.Ingredient)
			}
		}
		out = append(out, t)
	}
	return out
}
