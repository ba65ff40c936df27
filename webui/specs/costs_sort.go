package specs

import (
	"cmp"
	"net/url"
	"slices"

	"counterpour/webui/form"
	"counterpour/webui/say"
)

// costKeys are what the costs may be sorted by, as numbers; 0 is not known and comes last
// either way. By name they stand as the menu does.
var costKeys = map[string]func(*costRow) float64{
	"name":  func(*costRow) float64 { return 1 },
	"cost":  func(r *costRow) float64 { return r.cost },
	"price": func(r *costRow) float64 { return r.price },
	"share": func(r *costRow) float64 { return r.share },
}

// sortCosts puts rows, which stand in the order of the menu, in the order asked for.
func sortCosts(rows []costRow, key string, down bool) {
	if key == "name" {
		if down {
			slices.Reverse(rows)
		}
		return
	}
	of := costKeys[key]
	slices.SortStableFunc(rows, func(a, b costRow) int {
		x, y := of(&a), of(&b)
		switch {
		case x == 0 || y == 0:
			return -cmp.Compare(x, y)
		case down:
			return cmp.Compare(y, x)
		}
		return cmp.Compare(x, y)
	})
}

// costHeads are the heads of the columns; the one that is sorted by turns the order. Money
// is sorted from the most first, and has its currency, if it is of one.
func costHeads(key string, down bool, costs, sells string) (out []costHead) {
	for _, h := range []struct{ key, title, class string }{
		{"name", say.It("specs.column-drink"), ""}, {"cost", say.It("specs.column-costs", "Currency", costs), "n"},
		{"price", say.It("specs.column-price", "Currency", sells), "n"}, {"share", say.It("specs.column-share"), "n"},
	} {
		turns := h.key != "name"
		head := costHead{Title: h.title, Class: h.class}
		if h.key == key {
			turns = !down
			head.Sorted = map[bool]string{true: "descending", false: "ascending"}[down]
		}
		head.Address = form.Link(costsPath, url.Values{"sort": {map[bool]string{true: "-"}[turns] + h.key}})
		out = append(out, head)
	}
	return out
}
