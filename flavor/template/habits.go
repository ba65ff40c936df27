package template

import (
	"math"

	"counterpour/flavor"
	"counterpour/flavor/habit"
)

// Beyond is a pour, or a sense, that a drink carries more of than it usually
// would. From Edges of 1 on no good drink does, and the drink is not balanced.
type Beyond struct {
	Profile *flavor.Profile // the ingredient that does it
	Sense   bool            // it brings too much of a sense; else it is too much in itself
	Level   habit.Level     // the sense
	Own     bool            // some proven drink pours the ingredient
	Amount  float64         // share of the drink before ice, or the level
	Usual   float64         // in the middle of good drinks
	Most    float64         // at the edge of them
	Edges   float64         // squared distance from what is free, over that of the most
}

// reach is where an amount stops being a matter of taste: up to start it costs
// nothing, at most it brings the score to the edge of balance. All are
// logarithms.
type reach struct {
	usual, start, most float64
	free               float64 // e^start
	own                bool
}

// leastRoom is the least distance between start and most, as a logarithm: a fifth
// more or less of a pour is no cliff.
const leastRoom = 0.36

func reachOf(usual, most float64) reach {
	r := reach{usual: math.Log(usual), most: math.Log(most)}
	r.start = math.Min((r.usual+r.most)/2, r.most-leastRoom)
	r.free = math.Exp(r.start)
	return r
}

// edges returns the squared distance of an amount from start, over that of the
// most.
func (r *reach) edges(amount float64) float64 {
	if amount <= r.free {
		return 0
	}
	x := (math.Log(amount) - r.start) / (r.most - r.start)
	return x * x
}

// unusual returns how far an amount is from what is wont, 1 where it is unusual:
// a third of the way from where it costs something to the most.
func (r *reach) unusual(amount float64) float64 {
	x := (math.Log(math.Max(amount, leastShare))-r.start-(r.most-r.start)/3)/leastRoom + 1
	return max(0, x) * max(0, x)
}

// leastShare keeps the logarithm of nothing finite.
const leastShare = 1e-9

// habits is what good drinks carry, for the ingredients of one spec.
type habits struct {
	near   []float64 // how near each proven drink is in make-up
	parts  []reach
	per    [][habit.NumLevels]float64 // of each part, in a millilitre
	levels [habit.NumLevels]*reach    // of the level and its floor; nil until asked for
}

// habit returns the habits, which a spec's Build works out once.
func (b *Build) habit() *habits {
	if b.habits != nil {
		return b.habits
	}
	h := &habits{near: b.set.near(b.parts, b.ml)}
	parts := b.shares(b.ml)
	for _, l := range b.set.book.Limits(parts, h.near) {
		r := reachOf(l.Usual, l.Most)
		r.own = l.Own
		h.parts = append(h.parts, r)
	}
	h.per = make([][habit.NumLevels]float64, len(parts))
	for i := range parts {
		for l := range h.per[i] {
			h.per[i][l] = habit.Level(l).PerML(parts[i].Profile)
		}
	}
	b.habits = h
	return h
}

// shares returns the parts as the book of habits wants them.
func (b *Build) shares(ml []float64) []habit.Part {
	total := sum(ml)
	out := make([]habit.Part, len(b.parts))
	for i := range b.parts {
		out[i] = habit.Part{Profile: b.parts[i].profile, Share: b.parts[i].amount(ml) / total}
	}
	return out
}

// near returns how near each proven drink is in make-up.
func (s *Set) near(parts []part, ml []float64) []float64 {
	kin := kinshipOf(parts, ml)
	out := make([]float64, len(s.kin))
	for i := range s.kin {
		out[i] = kin.likeness(&s.kin[i], s.tuning.HabitWidth)
	}
	return out
}

// readHabits reads what the proven drinks pour.
func (s *Set) readHabits(proven []Labelled) {
	drinks := make([][]habit.Part, len(proven))
	for i := range proven {
		b := Build{parts: partsIn(&proven[i].Spec)}
		drinks[i] = b.shares(amountsOf(&proven[i].Spec))
		s.kin = append(s.kin, kinshipOf(b.parts, amountsOf(&proven[i].Spec)))
		s.bases = append(s.bases, baseOf(&proven[i].Spec))
		e := EquivalentsOf(&proven[i].Spec)
		s.strong = append(s.strong, s.bases[i] != nil || presence(e[Strong], e.Total(), halfWine) > 0.5)
	}
	s.book = habit.NewBook(drinks)
}

// habitScore returns what habits leave of the score of the drink with other
// amounts: 100 if nothing is beyond them.
func (b *Build) habitScore(ml []float64) float64 {
	worst := 0.0
	b.beyond(ml, func(x *Beyond) { worst = max(worst, x.Edges) })
	return scoreOf(worst)
}

// beyond tells every pour and sense that counts against the drink.
func (b *Build) beyond(ml []float64, tell func(*Beyond)) {
	h, total := b.habit(), sum(ml)
	var levels [habit.NumLevels]float64
	for i := range b.parts {
		share := b.parts[i].amount(ml) / total
		for l, per := range h.per[i] {
			levels[l] += share * per
		}
		if share <= h.parts[i].free {
			continue
		}
		tell(&Beyond{Profile: b.parts[i].profile, Own: h.parts[i].own, Amount: share, Usual: math.Exp(h.parts[i].usual),
			Most: math.Exp(h.parts[i].most), Edges: h.parts[i].edges(share)})
	}
	for l, level := range levels {
		if b.set.book.High(habit.Level(l), level) {
			b.beyondLevel(habit.Level(l), level, ml, total, tell)
		}
	}
}

// beyondLevel tells of a level that is high.
func (b *Build) beyondLevel(l habit.Level, level float64, ml []float64, total float64, tell func(*Beyond)) {
	h := b.habits
	by, most := 0, 0.0 // the part that brings most of it
	for i := range b.parts {
		if x := b.parts[i].amount(ml) * h.per[i][l]; x > most {
			by, most = i, x
		}
	}
	floor := l.Floor()
	if h.levels[l] == nil {
		x := b.set.book.Bound(l, h.near)
		r := reachOf(x.Usual+floor, x.Most+floor)
		h.levels[l] = &r
	}
	e := h.levels[l].edges(level + floor)
	p := &b.parts[by]
	if excused(l, p) {
		e = min(e, h.parts[by].unusual(p.amount(ml)/total))
	}
	if l.Smell() && leads(p) {
		e *= min(1, max(0, (leading-p.amount(ml)/b.lead(ml))/(leading-accent)))
	}
	if e > 0 {
		tell(&Beyond{Profile: b.parts[by].profile, Own: h.parts[by].own, Sense: true, Level: l, Amount: level,
			Usual: math.Exp(h.levels[l].usual) - floor, Most: math.Exp(h.levels[l].most) - floor, Edges: e})
	}
}

// What a drink is made of first may smell as it will: from leading of its largest
// pour on a pour does, below accent of it it is an accent.
const leading, accent = 1.0, 0.85

// leads reports whether an ingredient is one that a drink may be made of first.
func leads(p *part) bool {
	switch p.role {
	case flavor.PartBase, flavor.PartLength:
		return true
	case flavor.PartModifier:
		return p.profile.Class != flavor.ClassAniseSpirit
	}
	return false
}

// lead returns the mL of the largest of those.
func (b *Build) lead(ml []float64) float64 {
	var most float64
	for i := range b.parts {
		if leads(&b.parts[i]) {
			most = max(most, b.parts[i].amount(ml))
		}
	}
	return most
}

// excused reports whether an ingredient may bring a level that other drinks lack
// as long as it is poured as it is wont to be: a drink may be about almonds or
// ginger beer. What seasons or thickens is never what a drink is about, but for
// its smell.
func excused(l habit.Level, p *part) bool {
	if l.Smell() {
		return true
	}
	return p.role != flavor.PartSeasoning && p.role != flavor.PartTexture
}
