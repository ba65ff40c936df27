package station

import (
	"math"
	"slices"

	"counterpour/flavor"
	"counterpour/flavor/sense"
	"counterpour/flavor/template"
)

// companions is what proven drinks pour together.
//
// Two things are asked of a pair of ingredients: how many proven drinks pour the two,
// or what is like them, and how many would if drinks were put together by chance.
// Their ratio, the lift, is 1 for what goes together as often as chance has it. Few
// drinks pour any one pair, so the lift of the two themselves is pooled with that of
// all that is of their kin, and that with 1, as a gamma-Poisson shrinkage does
// (DuMouchel, The American Statistician 1999, from memory).
type companions struct {
	space  *sense.Space
	drinks [][]int // of each proven drink, its ingredients
	all    []*flavor.Profile
	split  []int // drinks of two bases or more
	hot    []int // drinks that are served hot
}

// kept is how far each proven drink pours an ingredient or what is like it, 0 to 1,
// in the narrow sense and in the wide.
type kept struct {
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
	pooled    = 0.5   // proven drinks that the wider sense counts for
	otherLook = 200.0 // of 441 from black to white on a screen, from which one liquid does not pass for another
)

func newCompanions(proven []template.Labelled, space *sense.Space) *companions {
	c := &companions{space: space}
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
			if isBase(x.Profile) {
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
	return c
}

// keeping works out how far each proven drink pours p or what is like it.
func (c *companions) keeping(p *flavor.Profile) *kept {
	k := &kept{}
	for s := range senses {
		k.alike[s], k.in[s] = make([]float64, len(c.all)), make([]float64, len(c.drinks))
	}
	for i, x := range c.all {
		if kinOf(x) != kinOf(p) {
			continue
		}
		like := c.likeness(p, x)
		for s, r := range likeRules {
			weight := 1.0
			if x.Class != p.Class {
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
// beside a liqueur of cream, and not beside coconut.
func kinOf(p *flavor.Profile) flavor.Kin {
	switch k := p.Class.Kin(); {
	case p.Class.Curdles():
		return flavor.KinMilk
	case k == flavor.KinMilk:
		return kinPlantMilk
	default:
		return k
	}
}

// kinPlantMilk is what is poured as milk and keeps company of its own.
const kinPlantMilk flavor.Kin = "plant milk"

// likeness is how alike two ingredients smell and, where the trade goes by colour,
// look, 0 to 1.
func (c *companions) likeness(p, q *flavor.Profile) float64 {
	if p.ID == q.ID {
		return 1
	}
	like := cosine(p.Aroma[:], q.Aroma[:])
	if c.space == nil {
		return like
	}
	if p.Aroma.Total() > 0 && q.Aroma.Total() > 0 {
		like = (like + c.space.LikenessOf(p, q)) / 2
	}
	if p.Class.Hued() && q.Class.Hued() {
		a, b := c.space.PerML(p), c.space.PerML(q)
		x, y := a.Swatch(), b.Swatch()
		apart := length([]float64{float64(x.R) - float64(y.R), float64(x.G) - float64(y.G), float64(x.B) - float64(y.B)})
		like -= min(1, apart/otherLook) / 2
	}
	return max(0, like)
}

// together returns how many proven drinks pour two ingredients, or what is like them,
// in a sense, and how many would by chance.
func (c *companions) together(a, b *flavor.Profile, x, y *kept, s int) (seen, chance float64) {
	switch {
	case isBase(a) && isBase(b): // few drinks have two bases: among those that do
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
func (c *companions) both(drink int, x, y *kept, s int) (most float64) {
	for _, i := range c.drinks[drink] {
		for _, k := range c.drinks[drink] {
			if i != k {
				most = max(most, x.alike[s][i]*y.alike[s][k])
			}
		}
	}
	return most
}

// pair is what proven drinks say of two ingredients.
type pair struct {
	lift  float64 // see companions
	same  float64 // drinks that pour the two, or what is of their classes and smells the same
	alike float64 // drinks that pour what is of their kin and smells alike
}

func (c *companions) pairOf(a, b *flavor.Profile, x, y *kept) pair {
	alike, chance := c.together(a, b, x, y, wide)
	same, both := c.together(a, b, x, y, narrow)
	lift := (alike + pooled) / (chance + pooled)
	return pair{lift: (same + pooled*lift) / (both + pooled), same: same, alike: alike}
}

// inHot is what proven drinks say of an ingredient in a hot drink.
func (c *companions) inHot(x *kept) pair {
	share := float64(len(c.hot)) / max(1, float64(len(c.drinks)))
	count := func(s int) (seen float64) {
		for _, i := range c.hot {
			seen += x.in[s][i]
		}
		return seen
	}
	alike, same := count(wide), count(narrow)
	lift := (alike + pooled) / (share*x.total[wide] + pooled)
	return pair{lift: (same + pooled*lift) / (share*x.total[narrow] + pooled), same: same, alike: alike}
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
	unproven     = 0.8  // of an ingredient that no proven drink pours
	tooOdd       = 1.5  // of a whole drink
	tooOddMust   = 2.0  // of one that moves what has to go
	mostGain     = 0.8  // that a pair which goes together takes off
)

func (p *pair) shunned() bool {
	return p.lift < shunnedBelow && p.same < hardlyAny || p.lift < muchSeldomer && p.same < some
}

// odd is how strange a pair is, below zero if it goes together well.
func (p *pair) odd() float64 {
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

// company sums what is odd in the pairs that a drink keeps, those of given drinks
// and of the proven one that it stands on aside, and in what no proven drink pours, less what goes together well on the mean.
// It says whether proven drinks shun one of the pairs, or the whole is too odd.
func (j *Job) company(s, frame *flavor.Spec) (odd float64, shunned bool) {
	var well, pairs float64
	for i := range s.Pours {
		p := s.Pours[i].Profile
		if j.novel(p) {
			odd += unproven
		}
		if s.Service == flavor.Hot && !slices.ContainsFunc(j.Given, func(g *flavor.Spec) bool { return Pours(g, p) }) && (frame == nil || !Pours(frame, p)) {
			hot := j.Station.companions.inHot(j.keptOf(p))
			odd += max(0, hot.odd())
		}
		for k := range i {
			a, b := s.Pours[i].Profile, s.Pours[k].Profile
			if a.ID == b.ID || j.foams(a) || j.foams(b) || j.soft(a) && j.soft(b) || frame != nil && Pours(frame, a) && Pours(frame, b) || slices.ContainsFunc(j.Given, func(g *flavor.Spec) bool { return Pours(g, a) && Pours(g, b) }) {
				continue
			}
			p := j.pairOf(a, b)
			asked := j.asked(a) || j.asked(b) || j.comesTogether(a, b)
			shunned = shunned || clash(&s.Pours[i], &s.Pours[k]) || p.shunned() && (!asked || a.Class.Curdles() || b.Class.Curdles())
			switch v := p.odd(); {
			case v > 0 && asked:
				odd += oddAsked * v
			case v > 0:
				odd += v
			default:
				well -= v
			}
			pairs++
		}
	}
	most := tooOdd
	if len(j.Must) > 0 {
		most = tooOddMust
	}
	return odd - well/max(1, pairs), shunned || odd > most
}

// comesTogether reports whether two ingredients are each of a drink that was given, of two
// that are to meet.
func (j *Job) comesTogether(a, b *flavor.Profile) bool {
	given := func(p *flavor.Profile) bool {
		return slices.ContainsFunc(j.Given, func(g *flavor.Spec) bool { return Pours(g, p) })
	}
	return len(j.Given) > 1 && given(a) && given(b)
}

// What is savoury, in g/L of salt or of glutamate, and in mL; and what is sweet beside
// it, in g/L of sugar: common practice, no source.
const (
	savourySalt  = 2.5
	savouryUmami = 1.0
	savouryML    = 10.0
	sweetBeside  = 100.0
	sweetSoda    = 50.0
)

// clash reports whether one of two pours is savoury and the other a sweet liqueur,
// juice or soda: nobody pours tomato and orange liqueur together. A dash of hot sauce is no
// broth.
func clash(a, b *flavor.Pour) bool {
	savoury := func(p *flavor.Pour) bool {
		return p.ML >= savouryML && p.Profile.Class.Part() != flavor.PartTexture && (p.Profile.Salt.Value >= savourySalt || p.Profile.Senses.UmamiGPerL >= savouryUmami)
	}
	sweet := func(p *flavor.Pour) bool {
		switch p.Profile.Class.Kin() {
		case flavor.KinLiqueur, flavor.KinCream, flavor.KinJuice:
			return p.Profile.Sugar.Value >= sweetBeside
		case flavor.KinSparkling:
			return p.Profile.Sugar.Value >= sweetSoda
		}
		return false
	}
	return savoury(a) && sweet(b) || savoury(b) && sweet(a)
}

// oddAsked is how much of what is strange in a pair counts where a wish asks for one of
// the two: proven drinks say little of what they seldom pour, and somebody wants it.
const oddAsked = 0.35

// asked reports whether a wish asks for an ingredient, or is met with it before others.
func (j *Job) asked(p *flavor.Profile) bool {
	return j.Limits != nil && (j.Limits.Wants(p) || slices.ContainsFunc(j.Limits.Aims, func(a Aim) bool { return a.Up && a.row != nil && a.row.First[p.ID] }))
}

// Odd is how strange the company is that the pours of a drink keep, most of what any
// drink is if proven drinks shun it.
func (j *Job) Odd(s *flavor.Spec) float64 {
	odd, shunned := j.company(s, nil)
	if shunned {
		return max(odd, mostOdd)
	}
	return odd
}

// Shuns reports whether proven drinks shun the company of a draft, and counts it if
// they do: no amounts mend that, so there is no need to settle them.
func (j *Job) Shuns(d *Draft) bool {
	_, shunned := j.company(&d.Spec, d.Frame)
	if shunned {
		j.Left.Unfit++
	}
	return shunned
}

// soft reports whether an ingredient is for a guest who takes no alcohol and lengthens
// or sours: few proven drinks go without, so what those leave out says little of it.
func (j *Job) soft(p *flavor.Profile) bool {
	if j.Limits == nil || !j.Limits.Guest.NoAlcohol {
		return false
	}
	part := p.Class.Part()
	return part == flavor.PartLength && p.Class.Kin() != flavor.KinTea || part == flavor.PartSour || part == flavor.PartSweetener
}

// novel reports whether no proven drink pours an ingredient that nobody asked for.
func (j *Job) novel(p *flavor.Profile) bool {
	if j.Station.practice == nil || j.Station.practice.counts[p.ID] > 0 || j.Must[p.ID] {
		return false
	}
	return !j.stepsIn(p) && (j.Limits == nil || !j.Limits.Wants(p)) && !slices.ContainsFunc(j.Given, func(g *flavor.Spec) bool { return Pours(g, p) })
}

// pairOf is what proven drinks say of two ingredients, worked out once for a job.
func (j *Job) pairOf(a, b *flavor.Profile) *pair {
	key := [2]string{min(a.ID, b.ID), max(a.ID, b.ID)}
	if p, ok := j.pairs[key]; ok {
		return p
	}
	p := j.Station.companions.pairOf(a, b, j.keptOf(a), j.keptOf(b))
	j.pairs[key] = &p
	return &p
}

func (j *Job) keptOf(p *flavor.Profile) *kept {
	if k, ok := j.keeps[p.ID]; ok {
		return k
	}
	k := j.Station.companions.keeping(p)
	j.keeps[p.ID] = k
	return k
}

// foams reports whether an ingredient gives the texture of one that may not be poured:
// it goes with all that the other one went with.
func (j *Job) foams(p *flavor.Profile) bool {
	return p.Class.Part() == flavor.PartTexture && j.stepsIn(p)
}

// stepsIn reports whether an ingredient steps in for a pour of the drink asked about
// that may not be poured.
func (j *Job) stepsIn(p *flavor.Profile) bool {
	return j.From != nil && slices.ContainsFunc(j.From.Pours, func(x flavor.Pour) bool {
		_, ok := j.Has(x.Profile)
		return !ok && x.Profile.Class.Kin() == p.Class.Kin()
	})
}

// Alike is how much one ingredient is in kind, smell and look what another is, 0 to
// 1: zero for what is of another class.
func (j *Job) Alike(p, q *flavor.Profile) float64 {
	if p.Class != q.Class {
		return 0
	}
	return j.Station.companions.likeness(p, q)
}
