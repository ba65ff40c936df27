package weigh

import (
	"math"

	"gonum.org/v1/gonum/floats"

	"counterpour/flavor"
	"counterpour/flavor/habit"
	"counterpour/flavor/makeup"
)

// Beyond is a pour, or a sense, that a drink carries more of than it usually
// would. From Edges of 1 on no good drink does, and the drink is not balanced.
type Beyond struct {
	Profile *flavor.Profile // the ingredient that does it
	Strange bool            // it is in a kind of drink that has none: a syrup or sugar, or what is foreign
	Foreign bool            // and that by its character, whatever is sweet or sour
	Sense   bool            // it brings too much of a sense; else it is too much in itself
	Level   habit.Level     // the sense
	ByDose  bool            // its dose alone tells, which the ratio may tell better
	Own     bool            // some proven drink pours the ingredient
	Amount  float64         // share of the drink before ice, or the level
	Usual   float64         // in the middle of good drinks
	Most    float64         // at the edge of them
	Edges   float64         // squared distance from what is free, over that of the most
}

// habits is what good drinks carry, for the ingredients of one spec.
type habits struct {
	near                 []float64                  // how near each proven drink is in make-up
	kind                 []float64                  // the same, times how surely the drink is of its family; nil until asked for
	nearTotal, kindTotal float64                    // their sums
	parts                [][2]habit.Reach           // of each part, beside what leads and leading; empty until asked for
	doses                [][2]habit.Reach           // the same, in doses
	per                  [][habit.NumLevels]float64 // of each part, in a millilitre
	asked                []habit.Asked              // of each part
	accents              []float64                  // the same, see accent
	levels               [habit.NumLevels]levelReach
}

// habit returns the habits, which a spec's Build works out once.
func (b *Build) habit() *habits {
	if b.habits != nil {
		return b.habits
	}
	h, parts := &b.desk.habits, b.parts
	*h = habits{near: b.near(), parts: sized(&h.parts, len(parts)), doses: sized(&h.doses, len(parts)), per: sized(&h.per, len(parts)),
		asked: sized(&h.asked, len(parts)), accents: sized(&h.accents, len(parts))}
	h.nearTotal = floats.Sum(h.near)
	for i := range parts {
		h.asked[i] = b.set.book.Ask(parts[i].Profile, b.room)
		if leads(&parts[i]) {
			h.accents[i] = h.asked[i].Accent()
		}
		for l := range h.per[i] {
			h.per[i][l] = habit.Level(l).PerML(parts[i].Profile)
		}
	}
	b.habits = h
	return h
}

// reachOf returns where part i stops being a matter of taste, as a share.
func (b *Build) reachOf(i int, lead float64) habit.Reach {
	return b.reachBy((*habit.Asked).Limit, &b.habits.parts[i], i, lead)
}

// doseReachOf is reachOf as a dose.
func (b *Build) doseReachOf(i int, lead float64) habit.Reach {
	return b.reachBy((*habit.Asked).LimitOfDose, &b.habits.doses[i], i, lead)
}

// reachBy returns where part i stops being a matter of taste by what limits it; known
// keeps what was worked out.
func (b *Build) reachBy(limit func(*habit.Asked, bool, []float64) habit.Limit, known *[2]habit.Reach, i int, lead float64) habit.Reach {
	of := func(first int) *habit.Reach {
		r := &known[first]
		if *r == (habit.Reach{}) {
			l := limit(&b.habits.asked[i], first == 1, b.habits.near)
			*r = habit.ReachOf(b.parts[i].Profile, &l)
			r.Own, r.Support = l.Own, l.Support
		}
		return r
	}
	switch lead {
	case 0:
		return *of(0)
	case 1:
		return *of(1)
	}
	return habit.Between(of(0), of(1), lead)
}

// edgesOf returns how far out an amount of part i is; of says where it stops being a matter of
// taste. A pour that may lead or stand beside others leaves the mean of the two scores, weighted
// by how surely it is which, as a drink does that may be of two families. The two limits may lie
// so far apart that a barspoon between them would be a cliff.
func (b *Build) edgesOf(of func(i int, lead float64) habit.Reach, i int, lead, amount float64) float64 {
	most := 1 - b.accent(i) // how surely it leads however large it is poured
	if lead == 0 || lead == most {
		r := of(i, lead)
		return r.Edges(amount)
	}
	beside, first := of(i, 0), of(i, most)
	if amount <= min(beside.Free, first.Free) {
		return 0
	}
	score := scoreOf(beside.Edges(amount))
	score += lead / most * (scoreOf(first.Edges(amount)) - score)
	return min(noScore, max(0, edgesAt(score)))
}

// shares returns the parts as the book of habits wants them.
func (b *Build) shares(ml []float64) []habit.Part {
	size, first, smells := b.sizeOf(ml), b.largest(ml), b.most(ml, maySmell)
	out := make([]habit.Part, len(b.parts))
	for i := range b.parts {
		out[i] = habit.Part{Profile: b.parts[i].Profile, Share: size.share(&b.parts[i], ml),
			Lead: b.leading(i, ml, first, &size), Smells: b.smells(i, ml, smells, &size)}
	}
	return out
}

// near returns how near each proven drink is in make-up.
func (b *Build) near() []float64 {
	out := b.room(b.set.kin.Drinks())
	makeup.Likenesses(b.cosines(), b.set.tuning.HabitWidth, out)
	return out
}

// ofKind returns how near each proven drink is in make-up and family.
func (b *Build) ofKind() []float64 {
	h := b.habits
	if h.kind == nil {
		signals := makeup.SignalsOf(b.spec, b.parts, b.ml)
		h.kind = b.room(len(h.near))
		chances := make([]float64, len(b.set.models))
		for i, c := range b.chances(&signals) {
			chances[b.active[i]] = c
		}
		for i, near := range h.near {
			if f := b.set.family[i]; f >= 0 {
				h.kind[i] = near * near * chances[f]
			}
		}
		h.kindTotal = floats.Sum(h.kind)
	}
	return h.kind
}

// habitEdges returns how far out the drink with other amounts is by what it carries: 0
// if nothing is beyond habit.
func (b *Build) habitEdges(ml []float64) float64 {
	worst := 0.0
	b.beyond(ml, func(x *Beyond) { worst = max(worst, x.Edges) })
	return worst
}

// beyond tells every pour and sense that counts against the drink.
func (b *Build) beyond(ml []float64, tell func(*Beyond)) {
	h, size := b.habit(), b.sizeOf(ml)
	first, smells := b.largest(ml), b.most(ml, maySmell)
	var levels [habit.NumLevels]float64
	for i := range b.parts {
		share, accent := size.share(&b.parts[i], ml), 1-b.smells(i, ml, smells, &size)
		for l, per := range h.per[i] {
			if habit.Level(l).Smell() {
				per *= accent
			}
			levels[l] += share * per
		}
		x := b.poured(i, share, b.leading(i, ml, first, &size), ml)
		if x.Edges *= 1 - b.sipping(i, ml); x.Edges > 0 {
			told := x // few are told, and only those need a place of their own
			tell(&told)
		}
	}
	b.strayed(ml, &size, tell)
	b.strangers(ml, tell)
	for l, level := range levels {
		if level > b.set.book.NeverHigh(habit.Level(l)) {
			b.beyondLevel(habit.Level(l), level, ml, &size, tell)
		}
	}
}

// levelReach is where a level stops being a matter of taste, as far as that is known.
type levelReach struct {
	free  float64     // amount with its floor that is known to cost nothing
	exact habit.Reach // of the level and its floor, once it is needed
	known bool        // it was
}

// levelSlack is how near two parts bring as much of a level, so that rounding does not
// pick one.
const levelSlack = 1e-9

// boundSlack is more than what rounding does to the logarithm of an amount.
const boundSlack = 1e-9

// costsNothing reports whether a level, floor and all, is a matter of taste. Most are,
// which is quickly shown: only for the others the most is worked out.
func (b *Build) costsNothing(l habit.Level, amount float64) bool {
	level := &b.habits.levels[l]
	if level.known {
		return amount <= level.exact.Free
	}
	if amount <= level.free {
		return true
	}
	near, total, room := b.habits.near, b.habits.nearTotal, habit.Room
	if l.OfRatio() {
		near, room = b.ofKind(), habit.RatioRoom
		total = b.habits.kindTotal
	}
	most := habit.MostFor(math.Log(amount), b.set.book.Middle(l, near, total), room)
	if b.set.book.MostReaches(l, near, total, most+boundSlack) {
		level.free = amount
		return true
	}
	x, floor := b.set.book.Bound(l, near), l.Floor()
	level.exact, level.known = habit.ReachWith(x.Usual+floor, x.Most+floor, room).Raised(b.set.book.NeverHigh(l)+floor), true
	return amount <= level.exact.Free
}

// beyondLevel tells of a level that is high.
func (b *Build) beyondLevel(l habit.Level, level float64, ml []float64, size *size, tell func(*Beyond)) {
	floor := l.Floor()
	if b.costsNothing(l, level+floor) {
		return
	}
	h := b.habits
	first, smells := b.largest(ml), b.most(ml, maySmell)
	by, most := 0, 0.0 // the part that brings most of it
	far := h.levels[l].exact.Edges(level + floor)
	var all, e float64 // e is the mean of the parts, by what each brings, so that it is no cliff which brings most
	for i := range b.parts {
		x := b.parts[i].Amount(ml) * h.per[i][l]
		if l.Smell() {
			x *= 1 - b.smells(i, ml, smells, size)
		}
		if x <= 0 {
			continue
		}
		if x > most+levelSlack || x > most-levelSlack && b.parts[i].Profile.ID < b.parts[by].Profile.ID {
			by, most = i, x
		}
		r := b.reachOf(i, b.leading(i, ml, first, size))
		all += x
		e += x * b.unexcused(l, i, far, size.share(&b.parts[i], ml), &r)
	}
	if e == 0 {
		return
	}
	e /= all
	p := &b.parts[by]
	r := b.reachOf(by, b.leading(by, ml, first, size))
	if e *= 1 - b.sipping(by, ml); e > 0 {
		tell(&Beyond{Profile: p.Profile, Own: r.Own, Sense: true, Level: l, Amount: level,
			Usual: math.Exp(h.levels[l].exact.Usual) - floor, Most: math.Exp(h.levels[l].exact.Most) - floor, Edges: e})
	}
}

// unexcused returns what is left of how far out a level is where part i, such a share of the
// drink, brings it.
func (b *Build) unexcused(l habit.Level, i int, edges, share float64, r *habit.Reach) float64 {
	p := &b.parts[i]
	if !excused(l, p) || l == habit.Level(flavor.Smoke) && p.Role == flavor.PartBase && p.Profile.Aroma[flavor.Smoke] > smoky {
		return edges
	}
	if p.Profile.Class == flavor.ClassCocktailBitters { // dashes are counted: what they smell of is as far out as they are
		return min(edges, r.Edges(share))
	}
	s := r.Support / (r.Support + excuseDrinks)
	if p.Profile.Class == flavor.ClassFreshHerb {
		s = 1 // much of what herbs smell of goes with the strainer
	}
	return edges - s*max(0, edges-r.Unusual(share))
}

// overtakes reports whether an ingredient soon overtakes the base that it modifies: what
// is thick or bitter. A wine may be the larger of the two.
func overtakes(p *flavor.Profile) bool {
	return p.Class.Part() == flavor.PartModifier && p.Class.Kin() != flavor.KinWine
}

// poured returns how far a pour is beyond habit, nothing where it is not, by its share or,
// if it may overtake a base, by its dose too, whichever is worse.
func (b *Build) poured(i int, share, lead float64, ml []float64) Beyond {
	r := b.reachOf(i, lead)
	edges := b.edgesOf(b.reachOf, i, lead, share)
	if overtakes(b.parts[i].Profile) {
		if beside := b.besideBase(i, ml) * makeup.Ramp(share, smallShare, largeShare); beside > 0 {
			if e := beside * b.edgesOf(b.doseReachOf, i, lead, habit.Dose(share)); e > edges {
				d := b.doseReachOf(i, lead)
				return Beyond{Profile: b.parts[i].Profile, Own: r.Own, ByDose: edges < 1, Amount: share,
					Usual: habit.ShareOf(math.Exp(d.Usual)), Most: habit.ShareOf(math.Exp(d.Most)), Edges: e}
			}
		}
	}
	if edges <= 0 {
		return Beyond{}
	}
	return Beyond{Profile: b.parts[i].Profile, Own: r.Own, Amount: share, Usual: math.Exp(r.Usual), Most: math.Exp(r.Most), Edges: edges}
}

// Up to smallShare of a drink a dose tells no more than the share; from largeShare on it
// tells all.
const smallShare, largeShare = 0.15, 0.25

// excuseDrinks is how many proven drinks, by support, excuse a pour halfway.
const excuseDrinks = 0.3

// excused reports whether an ingredient may bring a level that other drinks lack
// as long as it is poured as it is wont to be: a drink may be about almonds or
// ginger beer. What seasons or thickens is never what a drink is about, but for
// its smell.
func excused(l habit.Level, p *makeup.Part) bool {
	switch {
	case l.Smell():
		return true
	case l == habit.Acid:
		return false
	case l == habit.Sugar: // a drink may be about its wine, hardly about sugar
		return p.Role != flavor.PartSweetener && p.Profile.Class.Kin() != flavor.KinLiqueur
	}
	return p.Role != flavor.PartSeasoning && p.Role != flavor.PartTexture
}
