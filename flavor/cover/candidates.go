package cover

import (
	"math"
	"slices"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/cover/portion"
	"counterpour/flavor/cover/role"
	"counterpour/flavor/cover/search"
	"counterpour/flavor/measure"
)

// candidate is one ingredient that may be a part.
type candidate struct {
	*role.Bottle
	amounts []portion.Amount
}

// addCandidates lists what may be poured, in the order of the ids, and what each
// must earn.
func (t *task) addCandidates() {
	grid := portion.NewGrid(t.gapML, t.piecesGone(), t.jigger())
	customs := t.customsByPart()
	t.cands = make([]candidate, 0, len(t.req.Candidates))
	t.entries = make([]search.Part, 0, len(t.req.Candidates))
	t.customFor = make([][]bool, len(t.removed))
	for _, p := range byID(t.req.Candidates) {
		if t.inDrink(p) || !t.accepts(p) {
			continue
		}
		amounts := t.inMeasure(p, grid.Of(p))
		b := t.finder.cellar.Of(p)
		if len(amounts) == 0 || t.goesFlat(p) || t.clouds(p) || !customs.names(p.ID) && !t.mayHelp(b) {
			continue
		}
		part := search.Part{Per: t.rowOf(&b.Holds), Odd: role.Odd(p.Class)}
		if t.req.Common != nil {
			part.Price = t.finder.weights.Rare * t.req.Common.Rarity(p.ID) * t.otherwise(b)
		}
		if t.stretches(b) {
			part.Price += t.finder.weights.Part
		}
		part.Amounts, part.Strange = make([]float64, len(amounts)), make([]float64, 0, len(t.removed))
		for i, a := range amounts {
			part.Amounts[i] = a.ML
		}
		part.Alike, part.Firm = t.alike(p, amounts)
		for m := range t.removed {
			place := customs.place(m, p.ID)
			part.Strange = append(part.Strange, t.strange(b, m, place))
			t.customFor[m] = append(t.customFor[m], place >= 0)
		}
		t.cands = append(t.cands, candidate{b, amounts})
		custom := len(t.removed) == 1 && customs.place(0, p.ID) >= 0
		t.custom = append(t.custom, custom)
		t.obvious = append(t.obvious, custom || len(t.removed) == 1 && p.Class == t.removed[0].Class)
		t.entries = append(t.entries, part)
	}
	t.addKnown(customs)
}

// sameBottle is the share of what rarity costs that is left for what is nearly the
// same bottle.
const sameBottle = 0.25

// otherwise returns how much of its rarity a bottle must earn: all of it for something
// else than what went, and little for what is of its class, or made after it without
// alcohol, and smells like it. Whoever stocks the one may well stock the other, and wants
// to hear of it.
func (t *task) otherwise(b *role.Bottle) float64 {
	p, least := b.Profile, 1.0
	for m, q := range t.removed {
		if q.Class == p.Class || t.standsDry(p.Class, q.Class) {
			least = min(least, role.Unlike(role.Apart(&b.Smell, &t.gone[m].Smell, 0, math.Inf(1))))
		}
	}
	return sameBottle + (1-sameBottle)*least
}

// stretches reports whether p would only stretch another bottle: a spirit of next to
// no smell beside one that is to smell like the spirit that went. Nobody lengthens an
// aged rum with vodka to come to a white one.
func (t *task) stretches(b *role.Bottle) bool {
	p := b.Profile
	if p.Class.Kin() != flavor.KinSpirit {
		return false
	}
	return b.Smell.Plain() && !slices.ContainsFunc(t.removed, func(q *flavor.Profile) bool {
		return q.Class == p.Class || q.Class.Kin() != flavor.KinSpirit
	})
}

// seasoningML is the gap, in mL, up to which something only seasons: how much of
// another thing does the same is then a matter of strength.
const seasoningML = 10.0

// asStrong is the difference in % vol up to which two spirits count as equally strong.
const asStrong = 8.0

// alike returns the amount of p that is poured like for like, in mL, and what it
// costs to pour another, in steps: something of one class or one spirit for another,
// and most where the spirits are as strong, so that nothing asks for another measure, and
// where what sparkles fills the glass.
// The amount is 0 if there is none: where several things went, for a guest who wants less
// alcohol, of what sweetens by
// its sugar, and of what is not poured by the jigger, unless it comes by the same
// piece.
func (t *task) alike(p *flavor.Profile, amounts []portion.Amount) (ml, firm float64) {
	if len(t.removed) > 1 || len(t.lighterThan(t.removed[0])) > 0 {
		return 0, 0
	}
	w, was, gone := &t.finder.weights, t.removed[0].Class, t.pourGone()
	const same = 1e-6
	at := slices.IndexFunc(amounts, func(a portion.Amount) bool {
		if gone.Unit.Counted() {
			return a.Unit == gone.Unit && a.Value == gone.Amount
		}
		return math.Abs(a.ML-t.gapML) < same
	})
	spirits := p.Class.Kin() == flavor.KinSpirit && was.Kin() == flavor.KinSpirit
	switch {
	case role.Sweetens(p.Class, was):
		return 0, 0
	case at >= 0 && (t.standsDry(p.Class, was) || was.Sparkles() && role.Fills(p.Class, was) || spirits && math.Abs(p.ABV.Value-t.removed[0].ABV.Value) <= asStrong):
		return amounts[at].ML, w.Measure
	case at >= 0 && (p.Class == was || spirits || role.Fills(p.Class, was)):
		return amounts[at].ML, w.Firm
	}
	little := t.gapML < seasoningML && p.Class.Measured() == flavor.ByDash
	if little || p.Class.Solid() || was.Solid() {
		return 0, 0
	}
	return t.gapML, 0
}

// pourGone returns the first pour that went.
func (t *task) pourGone() *flavor.Pour {
	at := slices.IndexFunc(t.req.Spec.Pours, func(p flavor.Pour) bool { return p.Profile == t.removed[0] })
	return &t.req.Spec.Pours[at]
}

// jigger returns the unit that covers are poured in: that of what went, if a jigger
// is marked with it, else that of the drink.
func (t *task) jigger() flavor.Unit {
	switch u := t.pourGone().Unit; u {
	case flavor.Ounce, flavor.Millilitre, flavor.Centilitre, flavor.PartUnit:
		return u
	}
	return measure.SystemOf(t.req.Spec).Unit()
}

// piecesGone returns how many pieces, leaves or slices went, 0 if it was poured
// otherwise.
func (t *task) piecesGone() int {
	if p := t.pourGone(); p.Unit.Counted() {
		return int(p.Amount)
	}
	return 0
}

// byID returns profiles in the order of their ids, which is that of the index.
func byID(profiles []*flavor.Profile) []*flavor.Profile {
	order := func(a, b *flavor.Profile) int { return strings.Compare(a.ID, b.ID) }
	if slices.IsSortedFunc(profiles, order) {
		return profiles
	}
	return slices.SortedFunc(slices.Values(profiles), order)
}

// inDrink reports whether p is a pour of the drink already, the missing ones
// among them.
func (t *task) inDrink(p *flavor.Profile) bool {
	return slices.ContainsFunc(t.req.Spec.Pours, func(q flavor.Pour) bool { return q.Profile.ID == p.ID })
}

// kindred is the likeness of aroma, as a cosine, from which something is of a kind
// with what went, whatever its class.
const kindred = 0.5

// mayHelp reports whether a bartender would look at p at all. Some kin only take
// the place of their own: the numbers of a brine, a foam or a coffee may fit a
// gap, and the guest would not thank us. What is mostly fat is not poured, what is
// savoury only into a drink that is, and what keeps awake only for what does.
func (t *task) mayHelp(b *role.Bottle) bool {
	p := b.Profile
	switch {
	case p.Fat.Value >= role.MostlyFat, p.Class == flavor.ClassAlcoholFree && !t.wantsDry(),
		role.Savoury(p) && !t.req.Spec.Has(role.Savoury),
		role.Wakes(p) && !slices.ContainsFunc(t.removed, role.HoldsCaffeine),
		role.Wakes(p) && p.Class == flavor.ClassSoda && !slices.ContainsFunc(t.removed, func(q *flavor.Profile) bool { return q.Caffeine.Value >= role.WakingMGPerL }):
		return false
	}
	own := p.Class.Niche()
	if own == flavor.NicheAny {
		return true
	}
	for m, x := range t.removed {
		if x.Class.Niche() == own || own == flavor.NichePlant && role.Cosine(&b.Smell, &t.gone[m].Smell) >= kindred {
			return true
		}
	}
	return false
}

// wantsDry reports whether a spirit without alcohol has a place in the drink: for a
// guest who must have less, or where one went. Nobody stretches a liqueur with it for a
// guest who drinks.
func (t *task) wantsDry() bool {
	g := &t.req.Guest
	return t.dry || g.NoAlcohol || g.NoTrace ||
		slices.ContainsFunc(t.removed, func(q *flavor.Profile) bool { return q.Class == flavor.ClassAlcoholFree })
}

// goesFlat reports whether p would lose its fizz in the making of the drink, and
// burst a shaker: nothing that sparkles is shaken, stirred, blended or served hot, unless
// it goes in as what went did.
func (t *task) goesFlat(p *flavor.Profile) bool {
	s := t.req.Spec
	if !p.Carbonated && !p.Class.Sparkles() || s.Service != flavor.Hot && (s.Method == flavor.Build || s.Method == flavor.Swizzle) || t.tops(p) {
		return false
	}
	return !slices.ContainsFunc(t.removed, func(q *flavor.Profile) bool { return q.Carbonated || q.Class.Sparkles() })
}

// clouds reports whether p would cloud a drink that is stirred to be clear: no juice, milk
// or egg goes into one unless it holds such a thing, or one went, or what soured it.
func (t *task) clouds(p *flavor.Profile) bool {
	s := t.req.Spec
	return s.Method == flavor.Stir && s.Service != flavor.Hot && p.Class.Shaken() &&
		!slices.ContainsFunc(s.Pours, func(q flavor.Pour) bool {
			return q.Profile.Class.Shaken() || slices.Contains(t.removed, q.Profile) && q.Profile.Acid.Value >= sourJuice
		})
}

// tops reports whether p goes on top of the rest once that is mixed, on the ice: what
// sparkles in place of a spirit, for a guest who wants less alcohol.
func (t *task) tops(p *flavor.Profile) bool {
	s := t.req.Spec.Service
	return p.Class.Sparkles() && (s == flavor.Rocks || s == flavor.Long || s == flavor.Crushed) &&
		slices.ContainsFunc(t.removed, func(q *flavor.Profile) bool { return slices.Contains(t.lighterThan(q), p.ID) })
}
