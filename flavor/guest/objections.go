package guest

import (
	"slices"

	"counterpour/flavor"
)

// Objected is an ingredient that the guest may not have.
type Objected struct {
	Profile *flavor.Profile
	Why     string // as of [Guest.Objection]
}

// Objections lists what of some ingredients the guest may not have, a price aside, each once:
// what is certain first, then what may be there by the record, then what nobody has stated.
// What is equally certain stays in its order.
func (g *Guest) Objections(of []*flavor.Profile) (out []Objected) {
	for _, p := range of {
		told := slices.ContainsFunc(out, func(o Objected) bool { return o.Profile == p })
		if why := g.Objection(p); why != "" && !told {
			out = append(out, Objected{p, why})
		}
	}
	slices.SortStableFunc(out, func(a, b Objected) int { return g.doubt(a.Profile) - g.doubt(b.Profile) })
	return out
}

// doubt says how far from certain an objection is: 0 where no label can lift it, 1 where the
// record says that something may be there, 2 where nobody has stated it.
func (g *Guest) doubt(p *flavor.Profile) int {
	switch {
	case !g.unpriced().LabelDecides(p) && (!p.Unread || p.Clear(g.Avoid) == flavor.Present):
		return 0
	case len(g.carried(p, flavor.MayContain)) > 0:
		return 1
	}
	return 2
}

// unpriced is the guest without a limit on cost.
func (g *Guest) unpriced() *Guest {
	u := *g
	u.MaxCost = 0
	return &u
}
