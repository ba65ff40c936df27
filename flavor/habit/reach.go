package habit

import (
	"math"

	"counterpour/flavor"
)

// Reach is where an amount stops being a matter of taste: up to Start it costs nothing, at
// Most it brings the score to the edge of balance. All are logarithms.
type Reach struct {
	Usual, Start, Most float64
	Free               float64 // e^Start
	Own                bool
	Support            float64 // see Limit
}

// Room is how near to the most, as a logarithm, an amount costs at the latest. Start lies a
// third of the way from most to usual, and no nearer to most than that: a fifth more or less
// of a pour is no cliff.
const Room = 0.36

// RatioRoom is the same of a level that the ratio tells of too: the two together
// should not make a slip of the jigger a wreck.
const RatioRoom = 0.3

// ReachWith returns the reach between two amounts.
func ReachWith(usual, most, room float64) Reach {
	r := Reach{Usual: math.Log(usual), Most: math.Log(most)}
	r.Start = r.Most - math.Max(room, (r.Most-r.Usual)/3)
	r.Free = math.Exp(r.Start)
	return r
}

// dashRoom is Room for what is counted in dashes, and dashMore how much more than the most, as a
// logarithm, brings it to the edge: from three dashes to four is a third more, and no wreck. Judged.
const dashRoom, dashMore = 0.6, 0.15

// ReachOf returns the reach of an ingredient of which good drinks pour so much.
func ReachOf(p *flavor.Profile, l *Limit) Reach {
	if p.Class == flavor.ClassCocktailBitters {
		return ReachWith(l.Usual, l.Most*math.Exp(dashMore), dashRoom)
	}
	return ReachWith(l.Usual, l.Most, Room)
}

// Raised returns the reach whose amounts up to free cost nothing whatever others carry; from
// there on what is too much rises from nothing.
func (r Reach) Raised(free float64) Reach {
	start := math.Log(free)
	if start <= r.Start {
		return r
	}
	r.Most = math.Max(r.Most, start+Room)
	r.Start, r.Free = start, free
	return r
}

// MostFor returns the least most, as a logarithm, from which an amount costs nothing
// given the middle of good drinks: the inverse of ReachWith.
func MostFor(start, middle, room float64) float64 {
	return math.Max(start+room, (3*start-middle)/2)
}

// Edges returns the squared distance of an amount from Start, over that of Most.
func (r *Reach) Edges(amount float64) float64 {
	if amount <= r.Free {
		return 0
	}
	x := (math.Log(amount) - r.Start) / (r.Most - r.Start)
	return x * x
}

// Unusual returns how far an amount is from what is wont, 1 where it begins to be
// unusual.
func (r *Reach) Unusual(amount float64) float64 {
	x := (math.Log(math.Max(amount, leastAmount))-r.Start)/Room + 1
	return max(0, x) * max(0, x)
}

// leastAmount keeps the logarithm of nothing finite.
const leastAmount = 1e-9

// Between returns the reach of what is between two kinds of pour.
func Between(x, y *Reach, share float64) Reach {
	at := func(x, y float64) float64 { return x + share*(y-x) }
	r := Reach{Usual: at(x.Usual, y.Usual), Start: at(x.Start, y.Start), Most: at(x.Most, y.Most), Support: at(x.Support, y.Support), Own: x.Own || y.Own}
	r.Free = math.Exp(r.Start)
	return r
}
