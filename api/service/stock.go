package service

import (
	"cmp"
	"errors"
	"fmt"
	"slices"
	"strings"

	"counterpour/api/service/fault"
	"counterpour/flavor"
	"counterpour/flavor/measure/draft/names/naming"
)

// sortByName sorts drinks by name.
func sortByName(menu []Drink) {
	names := make(map[string]string, len(menu)) // by slug; computed once per drink, not once per comparison
	for i := range menu {
		names[menu[i].Slug] = flavor.NormaliseName(menu[i].Spec.Name)
	}
	slices.SortFunc(menu, func(a, b Drink) int {
		return cmp.Or(cmp.Compare(names[a.Slug], names[b.Slug]), cmp.Compare(a.Slug, b.Slug))
	})
}

// Listed is what a list of bottles means: their ids, what was read as bars write it, in sentences, and a fault that
// names the line for each name that means no bottle.
type Listed struct {
	IDs    []string
	Told   []string
	Unread flavor.DataFaults
}

// StockList reads a list of ingredients in stock: one name, alias or id per line, with
// comments after #. What a name without a meaning is cannot be poured, and the rest can. It fails if every name is so.
func (s *Snapshot) StockList(text string) (Listed, error) {
	out := Listed{IDs: []string{}}
	for i, line := range strings.Split(text, "\n") {
		line, _, _ = strings.Cut(line, "#")
		if line = strings.TrimSpace(line); line == "" {
			continue
		}
		place := fmt.Sprintf("line %d", i+1)
		p, told, err := s.meant(line)
		if err == nil {
			out.IDs = append(out.IDs, p.ID)
			if told != "" {
				out.Told = append(out.Told, place+": "+told)
			}
			continue
		}
		if err := fault.Collect(&out.Unread, fault.Placed(err, func(string) string { return place })); err != nil {
			return Listed{}, err
		}
	}
	if len(out.IDs) == 0 && len(out.Unread) > 0 {
		return Listed{}, out.Unread
	}
	return out, nil
}

// meant returns the ingredient that a name on a list of bottles means as bars write it: that of [kitchen.Ingredients.Named],
// or else of what is left without words that tell no bottle apart, which is then told. What may be tasted besides, or
// may harm a guest, is none of them, and no misspelling is guessed at.
func (s *Snapshot) meant(name string) (p *flavor.Profile, told string, err error) {
	p, err = s.Named(name)
	if err == nil || !errors.Is(err, flavor.ErrUnknown) {
		return p, "", err
	}
	names := naming.NewResolver(s.Index)
	f := names.Find(name, naming.Place{Unit: flavor.Ounce, Amount: 1})
	if failed := names.Err(); failed != nil {
		return nil, "", failed
	}
	if !f.Firm() || f.Infusion != "" || naming.Loses(name, f.Profile) != "" {
		return nil, "", err
	}
	return f.Profile, fmt.Sprintf("%q is read as %s", fault.Quotable(name), f.Profile.Name), nil
}
