package precedent

import (
	"math"
	"slices"
	"sync"

	"counterpour/flavor"
	"counterpour/flavor/sense"
	"counterpour/flavor/template"
)

// Companions is what proven drinks pour together.
//
// Two things are asked of a pair of ingredients: how many proven drinks pour the two,
// or what is like them, and how many would if drinks were put together by chance.
// Their ratio, the lift, is 1 for what goes together as often as chance has it. Few
// drinks pour any one pair, so the lift of the two themselves is pooled with that of
// all that is of their kin, and that with 1, as a gamma-Poisson shrinkage does
// (DuMouchel, The American Statistician 1999, from memory).
type Companions struct {
	space  *sense.Space
	drinks [][]int // of each proven drink, its ingredients
	all    []*flavor.Profile
	split  []int         // drinks of two bases or more
	hot    []int         // drinks that are served hot
	faces  func() []face // of all, worked out once
}

// face is what of an ingredient is compared with others: its kin as company goes, how it smells,
// if it does, and how it looks where the trade goes by that.
type face struct {
	kin    flavor.Kin
	smell  sense.Smell
	swatch sense.Swatch
}

// Kept is how far each proven drink pours an ingredient or what is like it, 0 to 1,
// in the narrow sense and in the wide.
type Kept struct {
	alike [senses][]float64 // of each ingredient of the proven drinks
	in    [senses][]float64 // of each drink, the most
	total [senses]float64
}

// The senses in which one ingredient is like another.
const (
	narrow = iota // of its class, and smells the same
	wide          // of its kin, and smells alike
	senses
)

// likeRules are how far the likeness of smells, in 1 − likeness, may fall, and what
// another class of the same kin counts for. Judged on pairs of the trade.
var likeRules = [senses]struct{ width, otherClass float64 }{narrow: {0.15, 0}, wide: {0.4, 0.5}}

const (
	richer    = 5.0   // times the fat from which one is no stand-in for the other: cream for milk
	pooled    = 0.5   // proven drinks that the wider sense counts for
	otherLook = 200.0 // of 441 from black to white on a screen, from which one liquid does not pass for another
)

// NewCompanions returns what proven drinks pour together; space may be nil: then
// likeness goes by aroma families alone.
func NewCompanions(proven []template.Labelled, space *sense.Space) *Companions {
	c := &Companions{space: space}
	places := map[string]int{}
	for i := range proven {
		var drink []int
		bases := 0
		for _, x := range proven[i].Spec.Pours {
			at, ok := places[x.Profile.ID]
			if !ok {
				at = len(c.all)
				places[x.Profile.ID] = at
				c.all = append(c.all, x.Profile)
			}
			if slices.Contains(drink, at) {
				continue
			}
			drink = append(drink, at)
			if x.Profile.Base() {
				bases++
			}
		}
		c.drinks = append(c.drinks, drink)
		if proven[i].Spec.Service == flavor.Hot {
			c.hot = append(c.hot, i)
		}
		if bases > 1 {
			c.split = append(c.split, i)
		}
	}
	c.faces = sync.OnceValue(func() []face {
		out := make([]face, len(c.all))
		for i, p := range c.all {
			out[i] = c.faceOf(p)
		}
		return out
	})
	return c
}

// otherBody reports whether one of two of a class is far richer than the other.
func otherBody(p, q *flavor.Profile) bool {
	return max(p.Fat.Value, q.Fat.Value) > richer*min(p.Fat.Value, q.Fat.Value)
}

// faceOf returns what of an ingredient is compared: without a space, its kin alone.
func (c *Companions) faceOf(p *flavor.Profile) face {
	f := face{kin: kinOf(p)}
	if c.space == nil {
		return f
	}
	if p.Aroma.Total() > 0 {
		f.smell = c.space.SmellOf(p)
	}
	if p.Class.Hued() {
		v := c.space.PerML(p)
		f.swatch = v.Swatch()
	}
	return f
}

// keeping works out how far each proven drink pours p or what is like it.
func (c *Companions) Keeping(p *flavor.Profile) *Kept {
	k := &Kept{}
	for s := range senses {
		k.alike[s], k.in[s] = make([]float64, len(c.all)), make([]float64, len(c.drinks))
	}
	own, faces := c.faceOf(p), c.faces()
	for i, x := range c.all {
		if faces[i].kin != own.kin {
			continue
		}
		like := c.likeness(p, x, &own, &faces[i])
		for s, r := range likeRules {
			weight := 1.0
			if x.Class != p.Class || s == narrow && otherBody(p, x) {
				weight = r.otherClass
			}
			k.alike[s][i] = weight * math.Exp((like-1)/r.width)
		}
	}
	for i, drink := range c.drinks {
		for _, x := range drink {
			for s := range senses {
				k.in[s][i] = max(k.in[s][i], k.alike[s][x])
			}
		}
		for s := range senses {
			k.total[s] += k.in[s][i]
		}
	}
	return k
}

// kinOf is the kin of an ingredient as company goes: what curdles beside milk curdles
// beside a liqueur of cream, and not beside coconut; and a bitter without alcohol keeps the
// company of bitters, not that of spirits.
func kinOf(p *flavor.Profile) flavor.Kin {
	switch k := p.Class.Kin(); {
	case p.Class.Curdles():
		return flavor.KinMilk
	case k == flavor.KinMilk:
		return kinPlantMilk
	case p.Class.StandsForSpirit() && p.Bitter.Value >= leastBitter:
		return flavor.KinBitter
	default:
		return k
	}
}

// leastBitter is the bitterness, in mg/L of quinine, that tells a bitter without alcohol
// from a spirit without it: common practice, no source.
const leastBitter = 20.0

// kinPlantMilk is what is poured as milk and keeps company of its own.
const kinPlantMilk flavor.Kin = "plant milk"

// Likeness is how alike two ingredients smell and, where the trade goes by colour,
// look, 0 to 1.
func (c *Companions) Likeness(p, q *flavor.Profile) float64 {
	a, b := c.faceOf(p), c.faceOf(q)
	return c.likeness(p, q, &a, &b)
}

// likeness is Likeness, given the faces of both.
func (c *Companions) likeness(p, q *flavor.Profile, a, b *face) float64 {
	if p.ID == q.ID {
		return 1
	}
	like := Cosine(p.Aroma[:], q.Aroma[:])
	if c.space == nil {
		return like
	}
	if p.Aroma.Total() > 0 && q.Aroma.Total() > 0 {
		like = (like + a.smell.Likeness(&b.smell)) / 2
	}
	if p.Class.Hued() && q.Class.Hued() {
		x, y := a.swatch, b.swatch
		apart := norm([]float64{float64(x.R) - float64(y.R), float64(x.G) - float64(y.G), float64(x.B) - float64(y.B)})
		like -= min(1, apart/otherLook) / 2
	}
	return max(0, like)
}

// together returns how many proven drinks pour two ingredients, or what is like them,
// in a sense, and how many would by chance.
func (c *Companions) together(a, b *flavor.Profile, x, y *Kept, s int) (seen, chance float64) {
	switch {
	case a.Base() && b.Base(): // few drinks have two bases: among those that do
		var m, n float64
		for _, i := range c.split {
			seen += c.both(i, x, y, s)
			m += x.in[s][i]
			n += y.in[s][i]
		}
		return seen, m * n / max(1, float64(len(c.split)))
	case kinOf(a) == kinOf(b):
		for i := range c.drinks {
			seen += c.both(i, x, y, s)
		}
	default:
		for i, v := range x.in[s] {
			seen += v * y.in[s][i]
		}
	}
	return seen, x.total[s] * y.total[s] / max(1, float64(len(c.drinks)))
}

// both is how far one drink pours two things that may be alike: no pour counts for
// both.
func (c *Companions) both(drink int, x, y *Kept, s int) (most float64) {
	for _, i := range c.drinks[drink] {
		for _, k := range c.drinks[drink] {
			if i != k {
				most = max(most, x.alike[s][i]*y.alike[s][k])
			}
		}
	}
	return most
}

// Pair is what proven drinks say of two ingredients.
type Pair struct {
	lift  float64 // see Companions
	same  float64 // drinks that pour the two, or what is of their classes and smells the same
	alike float64 // drinks that pour what is of their kin and smells alike
}

// PairOf is what proven drinks say of two ingredients, each with how far they pour it.
func (c *Companions) PairOf(a, b *flavor.Profile, x, y *Kept) Pair {
	alike, chance := c.together(a, b, x, y, wide)
	same, both := c.together(a, b, x, y, narrow)
	lift := (alike + pooled) / (chance + pooled)
	return Pair{lift: (same + pooled*lift) / (both + pooled), same: same, alike: alike}
}

// InHot is what proven drinks say of an ingredient in a hot drink.
func (c *Companions) InHot(x *Kept) Pair {
	share := float64(len(c.hot)) / max(1, float64(len(c.drinks)))
	count := func(s int) (seen float64) {
		for _, i := range c.hot {
			seen += x.in[s][i]
		}
		return seen
	}
	alike, same := count(wide), count(narrow)
	lift := (alike + pooled) / (share*x.total[wide] + pooled)
	return Pair{lift: (same + pooled*lift) / (share*x.total[narrow] + pooled), same: same, alike: alike}
}

// What makes a pair odd, and so odd that nobody should be served it unasked: that
// proven drinks pour it seldomer than chance would, and hardly any does. Chosen so
// that of the proven drinks nearly all pass, each judged by the others.
const (
	shunnedBelow = 0.20 // lift
	hardlyAny    = 0.5  // proven drinks
	some         = 1.0
	muchSeldomer = 0.10 // lift below which one such drink is the exception
	oddBelow     = 0.75
	noneAlike    = 0.3  // proven drinks that pour anything like the two
	unheardOf    = 0.7  // strangeness of such a pair
	noneSame     = 0.1  // proven drinks that pour the two or what smells the same
	untried      = 0.25 // strangeness of such a pair
	mostGain     = 0.8  // that a pair which goes together takes off
)

// Shunned reports whether proven drinks shun a pair.
func (p *Pair) Shunned() bool {
	return p.lift < shunnedBelow && p.same < hardlyAny || p.lift < muchSeldomer && p.same < some
}

// Odd is how strange a pair is, below zero if it goes together well.
func (p *Pair) Odd() float64 {
	odd := 0.0
	if p.same < some {
		odd = max(0, math.Log(oddBelow/p.lift))
	}
	switch {
	case p.alike < noneAlike:
		odd += unheardOf
	case p.same < noneSame:
		odd += untried
	}
	if gain := min(mostGain, math.Log(p.lift)); odd == 0 && gain > 0 {
		return -gain
	}
	return odd
}
