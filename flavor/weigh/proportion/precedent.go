package proportion

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/floats"

	"counterpour/flavor"
	"counterpour/flavor/habit"
	"counterpour/flavor/makeup"
)

// comparison is one quantity held against another: of the first there may be too much or,
// if less is true, too little.
type comparison struct {
	of, to quantity
	less   bool
	custom habit.Custom
	tells  bool // beyond precedent is a fault; else precedent only excuses
	only   bool // and excuses nothing
}

// How closely precedents are followed: what modifies a drink is most of what makes it
// another; of sugar to acid tastes differ. Chosen by the trial.
var (
	closely = habit.Custom{Rare: 0.02, Reach: 0.05}
	loosely = habit.Custom{Rare: 0.01, Reach: 0.08}
	sweetly = habit.Custom{Rare: 0.06, Reach: 0.13}
)

var comparisons = func() [numComparisons]comparison {
	var out []comparison
	for _, q := range []quantity{ofLiqueur, ofBitter, ofVermouth} {
		rest, _ := q.beside()
		for _, to := range []quantity{ofBase, rest, ofSour, ofMilk} {
			out = append(out, comparison{of: q, to: to, custom: closely, tells: true})
		}
	}
	for _, less := range []bool{false, true} {
		out = append(out, comparison{of: ofSweet, to: ofSour, less: less, custom: loosely, tells: true},
			comparison{of: ofSweet, to: ofBase, less: less, custom: closely}, comparison{of: ofSour, to: ofBase, less: less, custom: closely},
			comparison{of: ofLength, to: ofBase, less: less, custom: closely})
	}
	for _, q := range []quantity{ofBase, ofSweet, ofSour} {
		rest, _ := q.beside()
		out = append(out, comparison{of: q, to: rest, custom: closely})
	}
	out = append(out, comparison{of: ofSugar, to: ofCut, custom: sweetly, tells: true, only: true})
	return [numComparisons]comparison(out)
}()

// numComparisons is of each of three modifiers to four, of sugar to acid and of both and of
// length to the base either way, of sugar, acid and base to the rest, and of all sweetness to what
// cuts it.
const numComparisons = 3*4 + 4*2 + 3 + 1

// sure returns how surely a drink has both of what is compared, 0 to 1, and there its
// logarithm. What modifies a drink is compared only beside a base, which it else stands for; to
// all the rest also beside a wine or a beer, which carries it as a base does.
func (c *comparison) sure(q *Quantities) (sure, x float64) {
	sure = q.sure[c.of] * q.sure[c.to]
	if c.of >= ofLiqueur && c.of <= ofVermouth {
		carried := q.sure[ofBase]
		if c.to >= besideBase {
			carried = max(carried, q.carried)
		}
		sure *= carried
	}
	x = q.logs[c.of] - q.logs[c.to]
	if !c.less {
		return sure * q.sure[c.to], x // what there is a splash of may be no more than that
	}
	sure *= q.sure[c.of]
	if c.of == ofSweet {
		sure *= q.lone // nor is a syrup too little that sweetens beside something else
	}
	return sure, -x
}

// Book is what proven drinks have of each quantity to another. It is read-only once built
// and safe for concurrent use.
type Book struct {
	ranges []*habit.Range // of each comparison
	by     [numPoured][]*flavor.Profile
	// Of all sweetness to what cuts it, as a logarithm, from where to where a drink may be too
	// sweet: there most proven drinks are less so, whatever they are made of.
	sweetFrom, sweetTo float64
}

// sweetFree and sweetSurely are the shares of proven drinks that are less sweet than that.
// Chosen by the trial.
const sweetFree, sweetSurely = 0.7, 0.87

// NewBook reads the quantities of proven drinks.
func NewBook(drinks []Quantities) *Book {
	b := &Book{}
	for i := range comparisons {
		c := &comparisons[i]
		var has []habit.Amount
		for at := range drinks {
			if sure, x := c.sure(&drinks[at]); sure > 0 {
				has = append(has, habit.Amount{Drink: at, Has: math.Exp(x), Sure: sure})
			}
		}
		b.ranges = append(b.ranges, habit.NewRange(c.custom, has))
	}
	var sweet []float64
	for i := range drinks {
		for q, p := range drinks[i].by {
			b.by[q] = append(b.by[q], p)
		}
		if d := &drinks[i]; d.sure[ofSugar] > 0 {
			sweet = append(sweet, d.logs[ofSugar]-d.logs[ofCut])
		}
	}
	if n := float64(len(sweet)); n > 0 {
		slices.Sort(sweet)
		b.sweetFrom, b.sweetTo = sweet[int(sweetFree*n)], sweet[int(sweetSurely*n)]
	}
	return b
}

// What a proven drink says counts for so much more if its largest pour of the kind is the
// draft's own, whatever else either is made of; and whatever both are. Chosen by the trial.
const (
	fewPrecedents  = 0.3 // as many drinks, by how much they count, excuse by half
	ownPrecedent   = 0.1
	otherPrecedent = 0.0005
	otherSweetness = 0.00003 // of sweetness, which depends on all that is in a drink
	fewSweetness   = 0.05
)

// Precedents is what proven drinks have of each quantity of a draft to another. It is for
// one goroutine at a time.
type Precedents struct {
	book   *Book
	own    Quantities
	says   []float64
	frozen bool // what it is asked of is
	// support is how surely there are precedents at all, 0 to 1: only then they excuse.
	support   float64
	sweetness float64 // the same of sweetness, once that is asked for
	room      func(int) []float64
	of        [numPoured][]float64      // what each drink says of a quantity; nil until asked for
	known     [numComparisons]precedent // of each comparison
}

// precedent is what good drinks have in the middle and at most, as logarithms, once it was asked.
type precedent struct {
	middle, most float64
	asked        bool
}

// Known reports whether there are precedents at all.
func (b *Book) Known() bool {
	return slices.ContainsFunc(b.ranges, func(r *habit.Range) bool { return r.Known() })
}

// PrecedentsFor returns the precedents for a draft with such quantities; says is how much
// each proven drink counts, 0 to 1, and room lends lists of as many zeroes. The cold of a frozen
// drink dulls its sweetness, so that no precedent tells how much of it is too much.
func (b *Book) PrecedentsFor(draft *Quantities, says []float64, frozen bool, room func(int) []float64) Precedents {
	p := Precedents{book: b, own: *draft, says: says, frozen: frozen, room: room}
	if all := floats.Sum(says); all > 0 {
		p.support = all / (all + fewPrecedents)
	}
	return p
}

// weights returns what each drink says of a quantity.
func (p *Precedents) weights(q quantity) []float64 {
	if p.of[q] == nil {
		out := p.room(len(p.says))
		if q == ofSugar {
			total := 0.0
			for i, x := range p.says { // how sweet a drink is depends on all that is in it
				x = x * x * x
				out[i] = x + otherSweetness
				total += x
			}
			p.of[q], p.sweetness = out, total/(total+fewSweetness)
			return out
		}
		for i, x := range p.says {
			out[i] = x + otherPrecedent
			if p.own.by[q] != nil && p.book.by[q][i] == p.own.by[q] {
				out[i] += ownPrecedent
			}
		}
		p.of[q] = out
	}
	return p.of[q]
}

// From where below the most a comparison costs, and from where to where it excuses less
// and less, as logarithms. Chosen by the trial.
const (
	precedentRoom            = 0.36
	farther                  = 0.7 // of what lies beyond the most, that counts: precedents are few
	excuseRoom, excusedBelow = 0.8, 0.4
)

// near returns what is known of comparison i, and false if x lies so far below the most
// that it costs nothing and excuses all.
func (p *Precedents) near(i int, x float64) (*precedent, bool) {
	known := &p.known[i]
	if !known.asked {
		middle, most := p.book.ranges[i].Bound(p.weights(comparisons[i].of))
		known.middle, known.most, known.asked = math.Log(middle), math.Log(most), true
	}
	return known, x > known.most-excuseRoom
}

// madeAlike is the part of what precedents excuse that they do by being there: where drinks are made
// of the same, their proportions tell what the ratio of a whole family tells less well. Chosen by the trial.
const madeAlike = 0.2

// Beyond returns how far out a drink is by its precedents, 1 at the edge of good drinks;
// and how surely there are precedents and nothing in it is near that edge, 0 to 1.
func (p *Precedents) Beyond(q *Quantities) (edges, excused float64) {
	compared, nearest := 0.0, 0.0
	for i := range comparisons {
		if sure, _ := comparisons[i].sure(q); sure > 0 && p.book.ranges[i].Known() {
			if !comparisons[i].only {
				compared = max(compared, sure)
			}
			e, near, _ := p.compare(i, q)
			edges, nearest = max(edges, e), max(nearest, near)
		}
	}
	return edges, p.support * (madeAlike + (1-madeAlike)*compared*(1-nearest))
}

// compare returns how far out a drink is by one comparison, and how surely it is near that.
func (p *Precedents) compare(i int, q *Quantities) (edges, near, change float64) {
	c := &comparisons[i]
	sure, x := c.sure(q)
	if c.only {
		sure *= makeup.Ramp(x, p.book.sweetFrom, p.book.sweetTo)
	}
	if sure <= 0 || c.only && p.frozen {
		return 0, 0, 0
	}
	known, ok := p.near(i, x)
	if !ok {
		return 0, 0, 0
	}
	if c.only {
		sure *= p.sweetness
	} else {
		near = sure * makeup.Ramp(x, known.most-excuseRoom, known.most-excusedBelow)
	}
	if over := (x-known.most)/precedentRoom + 1; over > 0 && c.tells {
		edges = sure * min(over*over, 1+farther*(over-1))
	}
	return edges, near, known.middle - x
}

// Worst finds the modifier by which a drink is farthest out. It returns the largest pour of it, of
// which there is too much, or of what it is held against, if rather that is too little; the
// logarithm of the factor that would bring this pour to what is usual; and how far out the drink
// is. The ingredient is nil if nothing is out.
func (p *Precedents) Worst(q *Quantities, usual *Usual, d *Tasks) (by *flavor.Profile, change, edges float64) {
	for i := range comparisons {
		c := &comparisons[i]
		if c.of < ofLiqueur {
			continue
		}
		e, _, back := p.compare(i, q)
		if e <= edges {
			continue
		}
		by, change, edges = q.by[c.of], back, e
		if c.of == ofSugar { // all of it is to go from what brings most
			change = math.Log(max(leastOfSugar, 1+math.Expm1(back)/q.mostly))
			continue
		}
		if to := c.to.poured(); usual.far(d, to.task()) < -usual.far(d, c.of.task()) {
			by, change = q.by[to], -back
		}
	}
	return by, change, edges
}

// leastOfSugar is the least share of a pour that is told to be left of it.
const leastOfSugar = 0.1

// poured returns the quantity that is poured too little if there is too much to this one:
// of all that stands beside something, the base.
func (q quantity) poured() quantity {
	if q >= besideBase {
		return ofBase
	}
	return q
}

// task returns the task that a quantity that is poured does.
func (q quantity) task() task {
	return [numPoured]task{taskBase, taskSweeten, taskSour, taskMilk, taskLength, taskLiqueur, taskBitter, taskWine, taskSweeten, taskWhole}[q]
}
