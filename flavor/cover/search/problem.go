package search

import (
	"errors"
	"math"

	"counterpour/flavor/sense"
)

// MaxParts is the most parts of a filling.
const MaxParts = 3

// Row is what a part or a move brings, in steps near one glass.
type Row = sense.Row

// Part is something that may be poured.
type Part struct {
	Per     Row       // of a millilitre; a part that brings nothing is never poured
	Amounts []float64 // mL that can be poured, ascending, above zero
	Price   float64   // steps that it must earn wherever it is poured, 0 and up
	// Alike is the amount, in mL, that is poured of it alone like for like; 0 if there
	// is none. Each doubling or halving of it costs [Costs.Unlike], and any other
	// amount Firm steps more, 0 and up.
	Alike float64
	Firm  float64
	// Strange is how strange it is in place of each thing that is out, in steps,
	// 0 and up. Infinite: it never stands for that thing, though it may help.
	Strange []float64
	// Odd parts are put up with once in a filling.
	Odd bool
}

// Move is one step of one of the other pours.
type Move struct {
	Pour int
	By   Row
}

// Costs are what fillings must earn, in steps.
type Costs struct {
	Part   float64 // a part more than there are things out
	Move   float64 // a pour that moves
	Earn   float64 // what a part must bring the glass nearer by
	Unlike float64 // another amount of one part alone than like for like, by doublings
}

// Combination names a set of parts, ascending; unused places are −1.
type Combination [MaxParts]int

// Combine returns the combination of some parts, ascending.
func Combine(parts ...int) Combination {
	c := Combination{-1, -1, -1}
	copy(c[:], parts)
	return c
}

// Parts returns the parts of the combination, ascending.
func (c Combination) Parts() []int {
	out := make([]int, 0, MaxParts)
	for _, i := range c {
		if i >= 0 {
			out = append(out, i)
		}
	}
	return out
}

// Problem is a gap and what may fill it.
type Problem struct {
	Gap   Row
	Parts []Part
	Moves []Move
	// Rising are directions in which no part takes away: their product with the
	// row of every part is not negative. They make the search quicker; none is
	// needed.
	Rising []Row
	Costs  Costs
	// Known holds the standing of combinations that are known for what they are,
	// in place of the one worked out. It may be below zero. Their parts need not earn
	// their place.
	Known map[Combination]float64

	Most  int // most parts of a filling, 1 to MaxParts
	Limit int // most fillings listed
	// PerKind is the most of them with as many parts and the same one leading, the
	// one poured most.
	PerKind int
	// Tail is by how much a filling may rank below the best one to be listed; 0
	// stands for any.
	Tail float64

	// Effort is how much work the search may take, in combinations of two or three
	// looked at; rounding one costs as much as looking at [effortOfRounding]. Zero
	// means as much as it takes. It is counted in work and not in time, so that the
	// same problem has the same answer however busy the machine is.
	Effort int

	// Allows reports whether a filling may do, if that can be told cheaply; nil
	// if any may.
	Allows func(*Filling) bool
	// Choose returns which of the roundings of one combination is served, the
	// first that will do, or −1 for none; nil stands for the first.
	Choose func([]Filling) (int, error)
}

// Filling is one combination with its amounts.
type Filling struct {
	Parts   []int         // ascending
	Amounts [MaxParts]int // places in the amounts of each
	Moves   []int         // ascending
	Square  float64       // of the distance
	Rank    float64
}

// Key names a filling, whatever it ranks.
type Key struct {
	parts   Combination
	amounts [MaxParts]int
	moves   [mostMoves]int // places, from 1
}

// mostMoves is how many of the other pours move at once.
const mostMoves = 2

// Key returns the key of the filling.
func (x *Filling) Key() Key {
	k := Key{parts: Combine(x.Parts...)}
	copy(k.amounts[:], x.Amounts[:len(x.Parts)])
	for i, m := range x.Moves {
		k.moves[i] = m + 1
	}
	return k
}

// Distance returns how far from the gap the filling stays, in steps.
func (x *Filling) Distance() float64 { return math.Sqrt(x.Square) }

// Result is the fillings found, the best first.
type Result struct {
	Fillings []Filling
	// Proven is false if time or effort ran out, so that a better filling may be
	// missing.
	Proven bool
	Effort int // that it took
}

// check reports what would make the search panic.
func (p *Problem) check() error {
	switch {
	case p.Most < 1 || p.Most > MaxParts:
		return errors.New("search: the most parts must be from 1 to 3")
	case p.Limit < 1 || p.PerKind < 1:
		return errors.New("search: a list needs room for one filling at least")
	case p.Costs.Part < 0 || p.Costs.Move < 0 || p.Costs.Earn < 0 || p.Costs.Unlike < 0:
		return errors.New("search: costs must not be below zero")
	}
	for i := range p.Parts {
		if q := &p.Parts[i]; len(q.Amounts) == 0 || q.Price < 0 || q.Firm < 0 || len(q.Strange) != len(p.Parts[0].Strange) {
			return errors.New("search: every part needs an amount, a price and a firmness from zero up and its strangeness for each thing out")
		}
	}
	return nil
}

// standing is what a combination must earn beside its distance and moves.
func (p *Problem) standing(parts []int) float64 {
	if len(p.Known) > 0 {
		if s, known := p.Known[Combine(parts...)]; known {
			return s
		}
	}
	return p.Standing(parts)
}

// Standing returns what a combination must earn by what its parts are: for being
// more than the things out, for their prices, and for how strange the least strange of them is in
// place of each thing out.
func (p *Problem) Standing(parts []int) float64 {
	s := p.several(len(parts))
	for _, i := range parts {
		s += p.Parts[i].Price
	}
	for m := range p.Parts[parts[0]].Strange {
		least := math.Inf(1)
		for _, i := range parts {
			least = min(least, p.Parts[i].Strange[m])
		}
		s += least
	}
	return s
}

// several is what a number of parts costs for being more than the things that they
// stand for.
func (p *Problem) several(parts int) float64 {
	out := 1
	if len(p.Parts) > 0 {
		out = max(1, len(p.Parts[0].Strange))
	}
	return p.Costs.Part * float64(max(0, parts-out))
}

// unlike is what an amount of the part, poured alone, costs for not being like for
// like.
func (p *Part) unlike(ml, each float64) float64 {
	if p.Alike <= 0 || ml == p.Alike {
		return 0
	}
	return p.Firm + each*math.Abs(math.Log2(ml/p.Alike))
}

// plain reports whether a combination has at most one odd part.
func (p *Problem) plain(parts []int) bool {
	n := 0
	for _, i := range parts {
		if p.Parts[i].Odd {
			n++
		}
	}
	return n <= 1
}

func add(v, o *Row, times float64) {
	for i := range v {
		v[i] += times * o[i]
	}
}

func dot(a, b *Row) float64 {
	var s float64
	for i := range a {
		s += a[i] * b[i]
	}
	return s
}
