package cover

import (
	"context"
	"slices"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/cover/search"
)

// customs are what the trade pours for each thing that went.
type customs [][]flavor.Custom

// Customary lists what the trade pours in place of an ingredient, the first choice first.
func (f *Finder) Customary(p *flavor.Profile) []flavor.Custom { return f.customs.For(p.ID) }

func (t *task) customsByPart() customs {
	out := make(customs, len(t.removed))
	for m, p := range t.removed {
		out[m] = t.customsFor(p)
	}
	return out
}

// customsFor returns what the trade pours for something, less what the drink pours anyway:
// where it holds whiskey already, a cream liqueur is made up by cream. What sparkles is made
// up whole, since the little soda of a drink makes no wine sparkle. Where a guest wants less
// alcohol, what is lighter comes first; what is kept apart from the rest of the drink is no
// custom.
func (t *task) customsFor(p *flavor.Profile) []flavor.Custom {
	out := slices.DeleteFunc(t.finder.customs.For(p.ID), func(x flavor.Custom) bool { return t.apartIn(x.Parts, p) })
	if lighter := t.lighterThan(p); len(lighter) > 0 {
		first := make([]flavor.Custom, len(lighter), len(lighter)+len(out))
		for i, id := range lighter {
			first[i] = flavor.Custom{Parts: []string{id}, Place: i}
		}
		out = append(first, out...)
	}
	if p.Class.Sparkles() {
		return out
	}
	for i := range out {
		parts := slices.DeleteFunc(slices.Clone(out[i].Parts), t.stays)
		if len(parts) > 0 {
			out[i].Parts = t.atHand(parts)
		}
	}
	return out
}

// lighterThan returns what is poured in place of a spirit for a guest who wants less
// alcohol, and drinks some.
func (t *task) lighterThan(p *flavor.Profile) []string {
	if g := &t.req.Guest; !t.dry || g.NoAlcohol || g.NoTrace {
		return nil
	}
	return t.finder.customs.Lighter(p.Class)
}

// keptApart reports whether nobody pours a spirit beside something that the drink keeps, in
// place of one of another class.
func (t *task) keptApart(p, was *flavor.Profile) bool {
	return p.Class != was.Class && slices.ContainsFunc(t.keep, func(i int) bool {
		return t.finder.customs.Apart(p.Class, t.req.Spec.Pours[i].Profile.ID)
	})
}

// apartIn reports whether one of the candidates with some ids is kept apart from the drink.
func (t *task) apartIn(ids []string, was *flavor.Profile) bool {
	return slices.ContainsFunc(t.req.Candidates, func(p *flavor.Profile) bool {
		return slices.Contains(ids, p.ID) && t.keptApart(p, was)
	})
}

// atHand puts kin that is at hand in the place of those of several parts that are not: a
// rich syrup is poured with the cucumber where there is no other.
func (t *task) atHand(parts []string) []string {
	if len(parts) < 2 {
		return parts
	}
	out := slices.Clone(parts)
	for i, id := range out {
		if t.offered(id) {
			continue
		}
		kin := t.finder.customs.Kin(id)
		if at := slices.IndexFunc(kin, func(k string) bool { return t.offered(k) && !slices.Contains(out, k) }); at >= 0 {
			out[i] = kin[at]
		}
	}
	slices.Sort(out)
	return out
}

// offered reports whether an ingredient is among those that may be poured.
func (t *task) offered(id string) bool {
	return slices.ContainsFunc(t.req.Candidates, func(p *flavor.Profile) bool { return p.ID == id && t.accepts(p) && !t.inDrink(p) })
}

// stays reports whether the drink keeps a pour of an ingredient.
func (t *task) stays(id string) bool {
	return slices.ContainsFunc(t.keep, func(i int) bool { return t.req.Spec.Pours[i].Profile.ID == id })
}

// names reports whether some custom pours an ingredient.
func (c customs) names(id string) bool {
	return slices.ContainsFunc(c, func(of []flavor.Custom) bool {
		return slices.ContainsFunc(of, func(x flavor.Custom) bool { return slices.Contains(x.Parts, id) })
	})
}

// place returns the place of an ingredient poured alone in place of removed m,
// or −1 if that is no custom.
func (c customs) place(m int, id string) int {
	for _, x := range c[m] {
		if len(x.Parts) == 1 && x.Parts[0] == id {
			return x.Place
		}
	}
	return -1
}

// addKnown works out the standing of the combinations that are known for what
// they are: several ingredients that the trade pours together, and what the house
// has tasted.
func (t *task) addKnown(c customs) {
	t.known, t.customAt, t.habits = map[search.Combination]float64{}, map[search.Combination]int{}, nil
	if len(t.removed) == 1 {
		for _, x := range c[0] {
			parts, ok := t.placesOf(x.Parts)
			if !ok {
				continue
			}
			key := search.Combine(parts...)
			if _, twice := t.customAt[key]; twice {
				continue
			}
			t.customAt[key], t.habits = x.Place, append(t.habits, parts)
			if len(parts) > 1 {
				t.known[key] = t.standingOfCustom(parts, x.Place)
			}
		}
	}
	t.addTastings()
}

// standingOfCustom is what ingredients that the trade pours together must earn:
// they count as one pour, which nobody has to think of.
func (t *task) standingOfCustom(parts []int, place int) float64 {
	w := &t.finder.weights
	s := min(w.Custom/2, w.Place*float64(place))
	for _, i := range parts {
		s += t.entries[i].Price
	}
	return s
}

// habitPlaces is how many of the first choices of the trade rank nearer for it.
const habitPlaces = 4.0

// habit is what a filling ranks nearer by for being what every hand reaches for: all of
// [Weights.Habit] for a first choice of the trade, and its share of a later one. What came
// back in this house is none.
func (t *task) habit(x *search.Filling) float64 {
	key := search.Combine(x.Parts...)
	place, custom := t.customAt[key]
	if !custom || t.cameBack[key] {
		return 0
	}
	return t.finder.weights.Habit * max(0, 1-float64(place)/habitPlaces)
}

// besides returns what the trade pours for the only thing that went and a search left out
// of its list, as too far behind the best: each is looked for by itself, since a bartender
// wants to hear of it beside what comes nearer.
func (t *task) besides(ctx context.Context, listed []search.Filling) ([]search.Filling, error) {
	have := make(map[search.Combination]bool, len(listed))
	for i := range listed {
		have[search.Combine(listed[i].Parts...)] = true
	}
	var out []search.Filling
	for _, parts := range t.habits {
		if have[search.Combine(parts...)] {
			continue
		}
		x, found, err := t.byItself(ctx, parts, true)
		if err == nil && !found && len(t.moves) > 0 {
			x, found, err = t.byItself(ctx, parts, false) // more amounts are tried where nothing else moves
		}
		if err != nil {
			return nil, err
		}
		if found {
			out = append(out, x)
		}
	}
	return out, nil
}

// byItself returns the best filling of exactly some parts, if there is one that may be
// served; with moves, other pours may move.
func (t *task) byItself(ctx context.Context, parts []int, moves bool) (x search.Filling, found bool, err error) {
	p := t.problem(1<<len(parts), 0)
	if !moves {
		p.Moves = nil
	}
	p.Tail, p.Most = 0, len(parts) // however far behind a part of them alone
	p.Parts = make([]search.Part, len(parts))
	own := make([]int, len(parts))
	for k, i := range parts {
		p.Parts[k], own[k] = t.entries[i], k
	}
	if standing, known := t.known[search.Combine(parts...)]; known {
		p.Known = map[search.Combination]float64{search.Combine(own...): standing}
	} else {
		p.Known = nil
	}
	named := func(y *search.Filling) search.Filling {
		z := *y
		z.Parts = make([]int, len(y.Parts))
		for k, i := range y.Parts {
			z.Parts[k] = parts[i]
		}
		return z
	}
	p.Allows = func(y *search.Filling) bool {
		z := named(y)
		return len(y.Parts) == len(parts) && t.allows(&z)
	}
	p.Choose = func(roundings []search.Filling) (int, error) {
		all := make([]search.Filling, len(roundings))
		for i := range roundings {
			all[i] = named(&roundings[i])
		}
		return t.choose(all)
	}
	result, err := search.Find(ctx, p)
	if err != nil || len(result.Fillings) == 0 {
		return x, false, err
	}
	return named(&result.Fillings[0]), true, nil
}

// placesOf returns the places of ingredients among the candidates, ascending,
// and whether all are there.
func (t *task) placesOf(ids []string) ([]int, bool) {
	parts := make([]int, 0, len(ids))
	for _, id := range ids {
		at, found := slices.BinarySearchFunc(t.cands, id, func(c candidate, id string) int { return strings.Compare(c.Profile.ID, id) })
		if !found {
			return nil, false
		}
		parts = append(parts, at)
	}
	slices.Sort(parts)
	return parts, len(parts) <= t.parts
}
