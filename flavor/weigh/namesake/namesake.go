// Package namesake holds a drink against the proven ones that it is called after: how much they pour of each
// of its parts to all the rest.
//
// A family is wide, and what is usual in it leaves room for much that nobody would pour into this
// one: an ounce of tequila is enough beside as much of two others in a drink of equal parts, but
// not in a Margarita.
package namesake

import (
	"math"
	"slices"

	"counterpour/flavor"
	"counterpour/flavor/makeup"
	"counterpour/flavor/ratio"
)

// Lesson is what a proven drink pours.
type Lesson struct {
	groups []group
}

// group is one ingredient, or all that do the same in a drink: its bases, sweeteners or sours.
type group struct {
	part   flavor.Part
	class  flavor.Class
	of     *flavor.Profile // the ingredient that the group is, nil for all that do the same
	amount float64         // mL, of a base, a sweetener or a sour in equivalents
}

// LessonOf reads a proven drink, given its parts and the mL of each of its pours.
func LessonOf(parts []makeup.Part, ml []float64) Lesson { return Lesson{groupsOf(parts, ml)} }

// groupsOf returns what a drink pours, without what seasons, binds or waters it: all drinks have
// water of the ice as well, and proven ones rarely say how much.
func groupsOf(parts []makeup.Part, ml []float64) []group {
	var out []group
	for i := range parts {
		p := &parts[i]
		g, ok := groupOf(p, ml)
		if !ok {
			continue
		}
		if at := slices.IndexFunc(out, func(o group) bool { return o.part == g.part && o.of == g.of }); at >= 0 {
			out[at].amount += g.amount
		} else {
			out = append(out, g)
		}
	}
	return out
}

func groupOf(p *makeup.Part, ml []float64) (group, bool) {
	g := group{part: p.Role, amount: p.Amount(ml)}
	switch p.Role {
	case flavor.PartBase:
		g.amount *= p.Per[ratio.Strong]
	case flavor.PartSweetener:
		g.amount *= p.Per[ratio.Sweet]
	case flavor.PartSour:
		g.amount *= p.Per[ratio.Sour]
	case flavor.PartSeasoning:
		return group{}, false
	default:
		if p.Profile.Class.Kin() == flavor.KinFoam || p.Profile.Class == flavor.ClassWater {
			return group{}, false
		}
		g.class, g.of = p.Profile.Class, p.Profile
	}
	return g, true
}

// Book is the proven drinks in their order. It is read-only once built and safe for concurrent use.
type Book struct{ drinks []*Lesson }

// Add takes in what the next proven drink teaches.
func (b *Book) Add(l *Lesson) { b.drinks = append(b.drinks, l) }

// Own are the proven drinks that a draft has the name of, and all the parts.
type Own struct {
	parts []makeup.Part
	pairs [][]pairing // of each proven drink
}

// pairing is a group of a draft and what a proven drink has in its place.
type pairing struct {
	own    int // place among the groups of the draft
	theirs *group
	rest   float64 // what the proven drink has beside that
}

// OwnOf returns, of the proven drinks that a draft is called after, given their places, those that have
// all parts of it and none that it has not, but for what little it has beside those. A drink of one part
// has no proportions.
func (b *Book) OwnOf(called []int, parts []makeup.Part, ml []float64) Own {
	out := Own{parts: parts}
	if len(called) == 0 {
		return out
	}
	groups := groupsOf(parts, ml)
	for _, i := range called {
		l := b.drinks[i]
		if len(l.groups) < 2 {
			continue
		}
		if pairs := pair(groups, l.groups); pairs != nil {
			out.pairs = append(out.pairs, pairs)
		}
	}
	return out
}

// pair finds for each group of a proven drink the one of a draft that does the same: of the same
// ingredient, or the only one left of its class on either side. It returns nil if one has none.
func pair(own, theirs []group) []pairing {
	all := 0.0
	for i := range theirs {
		all += theirs[i].amount
	}
	taken := make([]bool, len(own))
	out := make([]pairing, 0, len(theirs))
	match := func(g *group, alike func(o *group) bool) bool {
		for i := range own {
			if !taken[i] && alike(&own[i]) {
				taken[i] = true
				out = append(out, pairing{own: i, theirs: g, rest: all - g.amount})
				return true
			}
		}
		return false
	}
	var left []*group
	for i := range theirs {
		g := &theirs[i]
		if !match(g, func(o *group) bool { return o.part == g.part && o.of == g.of }) {
			left = append(left, g)
		}
	}
	for _, g := range left {
		if !match(g, func(o *group) bool { return o.of != nil && o.class == g.class }) {
			return nil
		}
	}
	return out
}

// How far a drink may be from all proven ones of its name, as the logarithm of a factor, if there is
// only one and if there are more; a length is poured up to the brim of what glass there is. Chosen by
// the trial: the least by which as many proven drinks are balanced as without.
const (
	fromOne     = 0.8
	fromSeveral = 0.6
	lengthMore  = 1.3
)

// traceShare is the share of a drink that is hardly a part of it: of that much and less, some pour a
// few times as much as others.
const traceShare = 0.08

// besideShare is the share of a drink from which what no proven drink of the name has makes another
// drink of it.
const besideShare = 0.15

// How far out a drink is at most by what is left out of it, in edges: what is left may be a good drink of
// another name; and the logarithm of a factor that takes it to the edge, more than fromOne, as what a book
// prints may be left out now and then. Judged.
const mostLeftOut, leftOutWidth = 1.5, 1.0

// LeftOut returns how far out a draft is that has nothing of what all proven drinks of its name have so much
// of beside all that it has, in mL of both.
func LeftOut(theirs, rest float64) (edges float64) {
	return min(mostLeftOut, (toRest(theirs, rest)-toRest(0, rest))/leftOutWidth)
}

// Edges returns how far out a draft with other amounts is, 1 at the edge of what is balanced, and
// what of it is: the largest ingredient that does it, nil if nothing is, and the logarithm of the factor
// that brings it to the middle of the proven drinks, negative if there is too much.
func (o *Own) Edges(ml []float64) (edges float64, by *flavor.Profile, change float64) {
	if len(o.pairs) == 0 {
		return 0, nil, 0
	}
	groups := groupsOf(o.parts, ml)
	width, worst := fromOne, -1
	if len(o.pairs) > 1 {
		width = fromSeveral
	}
	for i := range groups {
		away, middle, known := o.away(groups, i)
		if groups[i].part == flavor.PartLength {
			away /= lengthMore
		}
		if e := math.Abs(away) / width; known && e > edges {
			edges, worst, change = e, i, -middle
		}
	}
	if worst < 0 {
		return 0, nil, 0
	}
	return edges * o.sure(groups), o.largest(&groups[worst], ml), change
}

// away returns how much more a draft has of a group to the rest than any proven drink has, as a
// logarithm, negative if less; and than they have on average. It is known if they have it.
func (o *Own) away(groups []group, i int) (beyond, middle float64, known bool) {
	least, most, n := math.Inf(1), math.Inf(-1), 0.0
	for _, pairs := range o.pairs {
		rest := 0.0
		for _, p := range pairs {
			rest += groups[p.own].amount
		}
		rest -= groups[i].amount
		for _, p := range pairs {
			if p.own == i {
				x := toRest(groups[i].amount, rest) - toRest(p.theirs.amount, p.rest)
				least, most, middle, n = min(least, x), max(most, x), middle+x, n+1
			}
		}
	}
	if n == 0 {
		return 0, 0, false
	}
	return max(least, 0) + min(most, 0), middle / n, true
}

// toRest returns the logarithm of an amount to the rest of a drink; of a trace it tells little.
func toRest(amount, rest float64) float64 {
	trace := traceShare * (amount + rest)
	return math.Log((amount + trace) / (rest + trace))
}

// sure returns how surely the draft is the drink that its name says, 0 to 1: less, the more it has
// of what none of the proven drinks has.
func (o *Own) sure(groups []group) float64 {
	all, beside := 0.0, 0.0
	for i := range groups {
		all += groups[i].amount
		if !slices.ContainsFunc(o.pairs, func(pairs []pairing) bool {
			return slices.ContainsFunc(pairs, func(p pairing) bool { return p.own == i })
		}) {
			beside += groups[i].amount
		}
	}
	return max(0, 1-beside/(besideShare*all))
}

// largest returns the largest ingredient of a group, the first of equals by its id.
func (o *Own) largest(g *group, ml []float64) *flavor.Profile {
	if g.of != nil {
		return g.of
	}
	var out *flavor.Profile
	most := 0.0
	for i := range o.parts {
		p := &o.parts[i]
		if p.Role != g.part {
			continue
		}
		if x := p.Amount(ml); out == nil || x > most || x == most && p.Profile.ID < out.ID {
			out, most = p.Profile, x
		}
	}
	return out
}
