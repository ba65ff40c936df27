package service

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"counterpour/api/service/fault"
	"counterpour/flavor"
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

// StockList reads a list of ingredients in stock: one name, alias or id per line, with
// comments after #. It returns ids, and a fault that names the line for each name that means
// no bottle: what that is cannot be poured, and the rest can. It fails if every name is so.
func (s *Snapshot) StockList(text string) (ids []string, unread flavor.DataFaults, err error) {
	ids = []string{}
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
		err = fault.Placed(err, func(string) string { return fmt.Sprintf("line %d", i+1) })
		if err := fault.Collect(&unread, err); err != nil {
			return nil, nil, err
		}
	}
	if len(ids) == 0 && len(unread) > 0 {
		return nil, nil, unread
	}
	return ids, unread, nil
}
