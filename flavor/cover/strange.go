package cover

import (
	"math"

	"counterpour/flavor"
	"counterpour/flavor/sense"
)

// strange is what p must earn for being strange in place of removed m: of another
// class, smelling of something else, of another colour where the trade goes by
// colour. The trade's customs let it off up to a step. What smells of next to
// nothing stands for no aroma, but for the sugar of a syrup: a plain syrup keeps
// the drink in balance when the flavoured one is out.
func (t *task) strange(b *bottle, m int, place int) float64 {
	p, w, was, gone := b.profile, &t.finder.weights, t.removed[m], &t.gone[m]
	cost := w.Class*t.classDistance(p.Class, was.Class) + w.Look*unlikeInLook(b, gone.bottle)
	if byPiece(p) != byPiece(was) {
		cost += w.Solid
	}
	base := was.Class.Part() == flavor.PartBase && was.Class.Kin() == flavor.KinSpirit
	spirits := base && p.Class.Kin() == flavor.KinSpirit
	switch {
	case base && t.gapML >= baseML && (p.Class.Solid() || !spirits && !t.wantsDry() && t.req.Guest.MaxABV == 0):
		return math.Inf(1)
	case base && !spirits && !t.standsDry(p.Class, was.Class),
		was.Class.Kin() == flavor.KinJuice && p.ABV.Value > flavor.NoAlcoholABV && place < 0:
		cost += w.Role
	}
	if gone.smells {
		passes := spirits && unlikeInLook(b, gone.bottle) <= clearForClear
		if place < 0 && b.smell.plain() && p.Class != was.Class && !sweetens(p.Class, was.Class) && !passes {
			return math.Inf(1)
		}
		least, most := 0.0, math.Inf(1)
		if p.Class.Kin() == flavor.KinSpirit && was.Class.Kin() == flavor.KinSpirit {
			least, most = 1.0/likeForLike, likeForLike // poured as much as went
		}
		cost += w.Aroma * unlike(apart(&b.smell, &gone.smell, least, most))
	}
	cost *= gone.weight
	if sweetFlavour(p.Class) && b.dyed() != gone.dyed() {
		cost += 2 * w.Look // in however little
	}
	if place >= 0 {
		cost = max(0, cost-w.Custom) + min(w.Custom/2, w.Place*float64(place))
	}
	return cost
}

// byPiece reports whether something is counted out, as leaves are and cubes of sugar.
func byPiece(p *flavor.Profile) bool {
	return p.Class.Measured() == flavor.ByPiece || len(p.Yields) > 0 && p.Yields[0].Unit == flavor.Cube
}

// baseML is the mL from which a spirit is the base of a drink, which nothing but a spirit
// stands for where the guest has no limit.
const baseML = 30.0

// clearForClear is the difference in look, see [unlikeInLook], up to which a spirit of
// next to no smell is poured for one that smells: a vodka for a gin, where there is
// nothing better, and never for a whisky.
const clearForClear = 0.2

// sweetens reports whether both classes are poured to sweeten.
func sweetens(a, b flavor.Class) bool {
	return a.Kin() == flavor.KinSweetener && b.Kin() == flavor.KinSweetener
}

// classDistance is how far two classes are apart. For a guest who must have less
// alcohol, what is made without stands for what it is made after.
func (t *task) classDistance(p, was flavor.Class) float64 {
	if t.standsDry(p, was) {
		return 0
	}
	return classDistance(p, was)
}

func (t *task) standsDry(p, was flavor.Class) bool {
	return t.dry && p == flavor.ClassAlcoholFree && (was.Part() == flavor.PartBase || was.Part() == flavor.PartModifier)
}

// classDistance is how far two classes are apart: 0 for one class, 1 for other
// parts of a drink.
func classDistance(a, b flavor.Class) float64 {
	switch {
	case a == b:
		return 0
	case a.Kin() == b.Kin():
		return 1.0 / 3
	case a.Part() == b.Part():
		return 2.0 / 3
	}
	return 1
}

// otherLook is the distance on a screen, of 441 from black to white, from which one
// liquid does not pass for another: clear from amber, gold from black, white wine
// from red.
const otherLook = 200.0

// unlikeInLook is 0 for two bottles of one colour and 1 for those of quite another,
// among bottles that the trade tells apart by colour.
func unlikeInLook(b, was *bottle) float64 {
	if !b.profile.Class.Hued() || !was.profile.Class.Hued() {
		return 0
	}
	x, y := b.look, was.look
	between := []float64{float64(x.R) - float64(y.R), float64(x.G) - float64(y.G), float64(x.B) - float64(y.B)}
	return min(1, length(between)/otherLook)
}

// dyed reports whether a liquid is blue or green, which shows in little of it.
func (b *bottle) dyed() bool {
	const shows = 40 // on a screen, of 255
	return max(int(b.look.G), int(b.look.B)) >= int(b.look.R)+shows
}

// smell is what an ingredient smells of: the odorants of its materials, and beside
// them the families that people sort smells into. Two smells are alike as far as
// both are: violet and raspberry share an odorant, and nobody takes the one for the
// other; orange and lemon are one family, and not one smell.
type smell struct {
	of       [sense.AromaDims + flavor.NumFamilies]float64
	length   float64
	odorants float64 // length of these alone
}

func smellOf(p *flavor.Profile, holds *sense.Vector) smell {
	var s smell
	copy(s.of[:], holds[firstAroma:lastAroma])
	copy(s.of[sense.AromaDims:], p.Aroma[:])
	s.length, s.odorants = length(s.of[:]), length(s.of[:sense.AromaDims])
	return s
}

// plainBelow is the intensity of aroma below which something smells of next to
// nothing: syrups of sugar, water, neutral spirits and vodkas do.
const plainBelow = 2.0

func (s *smell) plain() bool { return s.odorants < plainBelow }

// likeForLike is how many times as much of one spirit may be poured for another,
// or as little.
const likeForLike = 2.0

// How far apart two smells may be to be taken for one another, and from where on
// they are nothing like it: gins are apart by 0.4, gold and white rum by 0.6, vodka
// and white rum by 1.
const (
	alikeTo    = 0.5
	unlikeFrom = 1.2
)

// unlike is 0 for smells that are taken for one another and 1 for those that are
// nothing like it.
func unlike(apart float64) float64 {
	return min(1, max(0, (apart-alikeTo)/(unlikeFrom-alikeTo)))
}

// apart returns how far apart two smells are, as against the stronger one, when
// so many times as much of the first is poured as brings them nearest, within
// bounds: 0 for smells that are the same, 1 if one is nothing like it.
func apart(a, b *smell, least, most float64) float64 {
	x, y := a.length, b.length
	if x == 0 || y == 0 {
		return 1
	}
	times := min(most, max(least, y/x))
	square := times*times*x*x + y*y - 2*times*product(a.of[:], b.of[:])
	return math.Sqrt(max(0, square)) / max(times*x, y)
}

// cosine is how alike two smells are, whatever their strength.
func cosine(a, b *smell) float64 {
	if x, y := a.length, b.length; x > 0 && y > 0 {
		return product(a.of[:], b.of[:]) / (x * y)
	}
	return 0
}

func product(a, b []float64) float64 {
	var s float64
	for i, x := range a {
		s += x * b[i]
	}
	return s
}

func length(v []float64) float64 { return math.Sqrt(product(v, v)) }
