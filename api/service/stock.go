package service

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"counterpour/data/house"
	"counterpour/flavor"
	"counterpour/flavor/cover"
)

// MostScore is the best score that a taster gives.
const MostScore = 10

// stock returns all that the house keeps, by id, and what of it has run out:
// marked so, or with nothing left in any bottle.
func (r *records) stock(shelf *house.Shelf) (kept, out []*flavor.Profile) {
	left := map[string]float64{}
	for _, b := range r.bottles {
		left[b.Item.Ingredient] += b.Item.Stock
	}
	for _, m := range r.made {
		left[m.Item.ID] = 1 // what is made here is there unless it is marked
	}
	for _, o := range r.outs {
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

// tastings turns the covers that a house noted into what a search learns from:
// which bottle was out, what stood in for it, and how it was liked.
func (r *records) tastings() []cover.Tasting {
	usual := map[string][]string{}
	for _, c := range r.covers {
		usual[c.Spec] = nil
	}
	for _, s := range r.specs {
		if _, covered := usual[s.Item.ID]; !covered {
			continue
		}
		for _, p := range s.Item.Pours {
			usual[s.Item.ID] = append(usual[s.Item.ID], p.Ingredient)
		}
	}
	var out []cover.Tasting
	for _, c := range r.covers {
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

// sortByName puts drinks in the order of their names.
func sortByName(menu []Drink) {
	names := make(map[string]string, len(menu)) // by slug; made once, since a sort asks often
	for i := range menu {
		names[menu[i].Slug] = flavor.NormaliseName(menu[i].Spec.Name)
	}
	slices.SortFunc(menu, func(a, b Drink) int {
		return cmp.Or(cmp.Compare(names[a.Slug], names[b.Slug]), cmp.Compare(a.Slug, b.Slug))
	})
}

// StockList reads a list of what is in stock: an ingredient a line, by any name it
// has, with # before a comment. It returns the ids; its faults name the line.
func (s *Snapshot) StockList(text string) ([]string, error) {
	ids := []string{}
	var faults flavor.Faults
	for i, line := range strings.Split(text, "\n") {
		line, _, _ = strings.Cut(line, "#")
		if line = strings.TrimSpace(line); line == "" {
			continue
		}
		p, err := s.Named(line)
		if err == nil {
			ids = append(ids, p.ID)
			continue
		}
		err = placed(err, func(string) string { return fmt.Sprintf("line %d", i+1) })
		if err := collect(&faults, err); err != nil {
			return nil, err
		}
	}
	if len(faults) > 0 {
		return nil, faults
	}
	return ids, nil
}
