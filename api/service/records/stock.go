package records

import (
	"slices"

	"counterpour/data/house"
	"counterpour/flavor"
	"counterpour/flavor/cover"
)

// MostScore is the best score that a taster gives.
const MostScore = 10

// Stock returns all that the house keeps, by id, and what of it has run out:
// marked so, or with nothing left in any bottle.
func (r *Records) Stock(shelf *house.Shelf) (kept, out []*flavor.Profile) {
	left := map[string]float64{}
	for _, b := range r.Bottles {
		left[b.Item.Ingredient] += b.Item.Stock
	}
	for _, m := range r.Made {
		left[m.Item.ID] = 1 // what is made here is there unless it is marked
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

// Tastings turns the covers that a house noted into what a search learns from:
// which bottle was out, what stood in for it, and how it was liked.
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
		case c.Verdict == house.VerdictKept:
			t.Liked = 1
		case c.Verdict != house.VerdictSentBack:
			continue // nobody said
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
