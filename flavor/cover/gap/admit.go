package gap

import (
	"slices"

	"counterpour/flavor"
	"counterpour/flavor/cover/role"
)

// kindred is the likeness of aroma, as a cosine, from which something is of a kind
// with what went, whatever its class.
const kindred = 0.5

// Admits reports whether a bartender would look at a bottle at all: it suits how the drink is
// made and, unless it is poured by custom, may help.
func (g *Gap) Admits(b *role.Bottle, custom bool) bool {
	return !g.goesFlat(b.Profile) && !g.clouds(b.Profile) && (custom || g.mayHelp(b))
}

// mayHelp reports whether a bottle may do some of the work of what went. Some kin only take
// the place of their own: the numbers of a brine, a foam or a coffee may fit a
// gap, and the guest would not thank us. What is mostly fat is not poured, what is
// savoury only into a drink that is, and what keeps awake only for what does.
func (g *Gap) mayHelp(b *role.Bottle) bool {
	p := b.Profile
	wakes := func(q *flavor.Profile) bool { return q.Caffeine.Value >= role.WakingMGPerL }
	switch {
	case p.Fat.Value >= role.MostlyFat, p.Class.StandsForSpirit() && !g.WantsDry(),
		role.Savoury(p) && !g.Asked.Spec.Has(role.Savoury),
		role.Wakes(p) && !g.Any(role.HoldsCaffeine),
		role.Wakes(p) && p.Class.Soft() && !g.Any(wakes):
		return false
	}
	own := p.Class.Niche()
	return own == flavor.NicheAny || slices.ContainsFunc(g.Gone, func(q Gone) bool {
		return q.Profile.Class.Niche() == own || own == flavor.NichePlant && role.Cosine(&b.Smell, &q.Smell) >= kindred
	})
}

// WantsDry reports whether a spirit without alcohol has a place in the drink: for a
// guest who must have less, or where one went. Nobody stretches a liqueur with it for a
// guest who drinks.
func (g *Gap) WantsDry() bool {
	return g.Less || g.NoAlcohol() || g.Any(func(q *flavor.Profile) bool { return q.Class.StandsForSpirit() })
}

// goesFlat reports whether p would lose its fizz in the making of the drink, and
// burst a shaker: nothing that sparkles is shaken, stirred, blended or served hot, unless
// it goes in as what went did.
func (g *Gap) goesFlat(p *flavor.Profile) bool {
	s := g.Asked.Spec
	sparkles := func(q *flavor.Profile) bool { return q.Carbonated || q.Class.Sparkles() }
	if !sparkles(p) || s.Service != flavor.Hot && (s.Method == flavor.Build || s.Method == flavor.Swizzle) || g.Tops(p) {
		return false
	}
	return !g.Any(sparkles)
}

// SourJuice is the acid, in g/L, from which a juice sours a drink, as grapefruit does
// where lemon and lime are out.
const SourJuice = 8.0

// clouds reports whether p would cloud a drink that is stirred to be clear: no juice, milk
// or egg goes into one unless it holds such a thing, or one went, or what soured it.
func (g *Gap) clouds(p *flavor.Profile) bool {
	s := g.Asked.Spec
	return s.Method == flavor.Stir && s.Service != flavor.Hot && p.Class.Shaken() &&
		!s.Has(func(q *flavor.Profile) bool { return q.Class.Shaken() || g.Took(q) && q.Acid.Value >= SourJuice })
}

// Tops reports whether p goes on top of the rest once that is mixed, on the ice, or in the
// stem glass of what is shaken: what sparkles in place of a spirit, for a guest who wants less
// alcohol, or where that makes a proven drink.
func (g *Gap) Tops(p *flavor.Profile) bool {
	s := g.Asked.Spec
	onIce := s.Service == flavor.Rocks || s.Service == flavor.Long || s.Service == flavor.Crushed
	return p.Class.Sparkles() && (onIce || s.Service == flavor.Up && s.Method.Shaken()) &&
		(g.Sister(p.ID) != "" || g.Any(func(q *flavor.Profile) bool { return slices.Contains(g.lighter(q), p.ID) }))
}

// AddedAfter reports whether p, in place of what went, is added after the rest is mixed: on top
// of it, or as all that went was; what sparkles also if only some of that was.
func (g *Gap) AddedAfter(p *flavor.Profile) bool {
	return g.allAfter || p.Class.Sparkles() && (g.someAfter || g.Tops(p))
}
