package weigh

import (
	"math"

	"gonum.org/v1/gonum/floats"

	"counterpour/flavor"
	"counterpour/flavor/makeup"
	"counterpour/flavor/ratio"
	"counterpour/flavor/technique"
)

// What nearly every drink with the same rest has, and a draft has not: its base, or
// what is sour. Somebody forgot it. The draft is held against the rests of proven
// drinks, so that what is missing takes no part in saying which are like it.
const (
	soberFree, soberMost = 0.5, 0.92 // shares of those drinks: from where it tells, and where it is as bad as the edge
	tellingSober         = 0.01
)

// rests is what is left of each proven drink without its base, or without what is sour.
type rests struct {
	kin  makeup.Kinships
	size []float64 // logarithms of mL
}

func (r *rests) add(parts []makeup.Part, ml []float64, out func(*makeup.Part) bool) {
	kin, size := restOf(parts, ml, out)
	r.kin.Add(kin)
	r.size = append(r.size, size)
}

// restOf returns what a drink is made of without the parts that are left out, and the
// logarithm of the mL of that: without any other part it is of no size.
func restOf(parts []makeup.Part, ml []float64, out func(*makeup.Part) bool) (makeup.Kinship, float64) {
	var few [8]makeup.Part // no drink of usual length needs more room
	kept := few[:0]
	var size float64
	for i := range parts {
		if !out(&parts[i]) {
			kept = append(kept, parts[i])
			size += parts[i].Amount(ml)
		}
	}
	return makeup.KinshipOf(kept, ml), math.Log(max(size, makeup.LeastML))
}

// How the rests are weighed: by make-up, by how nearly they are as large, as a
// logarithm, and by whether they are made and served in the same way. A drink that is
// many times as large may be a batch. Chosen by the trial.
const (
	restSpread    = 0.25
	otherSize     = 0.1
	otherServing  = 0.4
	clearlyOther  = 0.03 // of a stirred drink, where a shaken draft is asked for its juice: to shake is to mean it cloudy
	nearestToTell = 1e-12
)

// restWeights returns how near the draft's rest is to each proven drink's; other is what is
// left of that for a drink that is mixed thoroughly if the draft is not, or is not if it is.
func (b *Build) restWeights(of *rests, out func(*makeup.Part) bool, other float64) []float64 {
	own, ownSize := restOf(b.parts, b.ml, out)
	b.desk.rest = own
	mixed := mixes(b.spec.Method)
	w := of.kin.Cosines(&b.desk.rest, b.room(of.kin.Drinks()))
	for i, cosine := range w {
		x := makeup.Likeness(cosine, b.set.tuning.HabitWidth)
		size := (ownSize - of.size[i]) / restSpread
		w[i] = x * x * (otherSize + (1-otherSize)*makeup.Falloff(size*size/2))
		if b.set.served.of[i] != b.served {
			w[i] *= otherServing
		}
		if b.set.mixed[i] != mixed {
			w[i] *= other
		}
	}
	return w
}

// nearUnbased is restWeights without bases, nearUnsoured without what is sour; both
// are worked out once.
func (b *Build) nearUnbased() []float64 {
	if b.unbased == nil {
		b.unbased = b.restWeights(&b.set.unbased, makeup.IsBase, otherServing)
	}
	return b.unbased
}

func (b *Build) nearUnsoured() []float64 {
	if b.unsoured == nil {
		other := otherServing
		if mixes(b.spec.Method) {
			other = clearlyOther
		}
		b.unsoured = b.restWeights(&b.set.unsoured, makeup.IsSharp, other)
	}
	return b.unsoured
}

// nearUnlengthened is restWeights without what lengthens, of drinks that are served as the
// draft is: what lacks its mixer has all else of a short drink.
func (b *Build) nearUnlengthened() []float64 {
	w := b.restWeights(&b.set.unlengthed, lengthens, otherServing)
	for i := range w {
		if b.set.served.of[i] != b.served {
			w[i] *= servedOtherwise
		}
	}
	return w
}

func lengthens(p *makeup.Part) bool { return p.Role == flavor.PartLength }

// Of what is served long, the share that lengthens, tomato and the like with it: from where a
// drink has none to speak of up to where it surely has some. Proven drinks have 0.28 and more.
const hardlyLong, surelyLong = 0.03, 0.18

// lengthless returns how far a drink that is served long is out for want of what lengthens it.
func (b *Build) lengthless(ml []float64) (edges, length float64) {
	if b.spec.Service != flavor.Long {
		return 0, 0
	}
	for i := range b.parts {
		if lengthens(&b.parts[i]) || b.parts[i].Profile.Class == flavor.ClassSavoury {
			length += b.parts[i].Amount(ml)
		}
	}
	return lengthlessEdges * (1 - makeup.Ramp(length/floats.Sum(ml), hardlyLong, surelyLong)), length
}

// lengthlessEdges is how far out a drink is that is served long and has no length.
const lengthlessEdges = 1.8

// nearUnsweetened is restWeights without syrups and sugar.
func (b *Build) nearUnsweetened() []float64 {
	if b.unsweetened == nil {
		b.unsweetened = b.restWeights(&b.set.unsweetened, makeup.IsSweetener, otherServing)
	}
	return b.unsweetened
}

// shareThat returns the weighted share of proven drinks that have something, and
// false if none is near enough to tell.
func shareThat(weights []float64, has []bool) (float64, bool) {
	var with, total float64
	for i, w := range weights {
		total += w
		if has[i] {
			with += w
		}
	}
	if total <= nearestToTell {
		return 0, false
	}
	return with / total, true
}

// known is a share of proven drinks, once it was asked for: it depends on what is in the draft
// and not on how much of it is tried.
type known struct {
	share       float64
	told, asked bool
}

// shareOf is shareThat, worked out once.
func (k *known) shareOf(weights func() []float64, has []bool) (float64, bool) {
	if !k.asked {
		k.share, k.told = shareThat(weights(), has)
		k.asked = true
	}
	return k.share, k.told
}

// missed returns how far a drink is from those with the same rest, a share of which
// has what it is without: 1 and more from where nearly all have it.
func missed(without, share float64) float64 {
	return max(0, without*(share-soberFree)/(soberMost-soberFree))
}

// untold reports whether what a drink is without so surely is not told whatever others
// have: most drinks are not held against others at all.
func untold(without float64) bool {
	x := missed(without, 1)
	return x*x <= tellingSober
}

// baseless returns how far a drink without a base is from the proven drinks with the
// same rest, if nearly all of those have one. What is strong in itself needs none as
// long as others like it have none.
func (b *Build) baseless(ml []float64, e *ratio.Equivalents) float64 {
	dry, without, all := 1-makeup.Presence(e[ratio.Strong], e.Total(), makeup.HalfWine), 1.0, floats.Sum(ml)
	for i := range b.parts {
		if makeup.IsBase(&b.parts[i]) {
			without *= 1 - makeup.Presence(b.parts[i].Amount(ml), all, makeup.HalfLiquid)
		}
	}
	if untold(without) {
		return 0
	}
	strong, ok := b.having.strong.shareOf(b.nearUnbased, b.set.strong)
	if !ok {
		return 0
	}
	based, _ := b.having.based.shareOf(b.nearUnbased, b.set.based)
	x := max(missed(without*dry, strong), missed(without, based))
	return x * x
}

// What is not sweet needs nothing sour: from where to where a drink is, as a share of 1:1
// syrup in all.
const sweetFrom, sweetTo = 0.02, 0.06

// sourless returns how far a sweet drink without anything sour is from the proven drinks
// with the same rest, if nearly all of those have something; or one whose fruit has hardly more
// acid than its own sugar meets, if nearly all of those have citrus.
func (b *Build) sourless(ml []float64, e *ratio.Equivalents) float64 {
	sweet, all := makeup.Ramp(e[ratio.Sweet]/e.Total(), sweetFrom, sweetTo), floats.Sum(ml)
	for i := range b.parts {
		if wantsNoJuice(b.parts[i].Profile) {
			sweet *= 1 - makeup.Presence(b.parts[i].Amount(ml), all, makeup.HalfLiquid)
		}
	}
	without := sweet * (1 - makeup.Certainty(souring(b.parts, ml, tastedAcid), e.Total(), halfSharp))
	mild := sweet * (1 - makeup.Certainty(souring(b.parts, ml, spareAcid), e.Total(), halfSharp))
	if untold(without) && untold(mild) {
		return 0
	}
	sharp, ok := b.having.sharp.shareOf(b.nearUnsoured, b.set.sharp)
	if !ok {
		return 0
	}
	soured, _ := b.having.soured.shareOf(b.nearUnsoured, b.set.soured)
	most := soberMost - b.clear(ml)*(soberMost-clearMost)
	x := max(without*(sharp-soberFree)/(most-soberFree), missed(mild, soured))
	return max(0, x) * max(0, x)
}

// souring returns how much lemon juice, in mL, is as sour as what sours a drink with such
// amounts, by what each ingredient has of it in a millilitre.
func souring(parts []makeup.Part, ml []float64, acid func(*makeup.Part) float64) (sum float64) {
	for i := range parts {
		sum += acid(&parts[i]) * parts[i].Amount(ml)
	}
	return sum
}

// tastedAcid is how much lemon juice a millilitre is as sour as: the little acid of a syrup is
// lost in its sugar.
func tastedAcid(p *makeup.Part) float64 {
	sour, sweet := p.Per[ratio.Sour], p.Per[ratio.Sweet]
	if makeup.IsSharp(p) || sour <= 0 {
		return sour
	}
	return sour * makeup.Ramp(sour, lostFrom*sweet, tastedFrom*sweet)
}

// spareAcid is how much lemon juice a millilitre is as sour as beside what its own sugar
// meets: that of pineapples has hardly any to spare.
func spareAcid(p *makeup.Part) float64 {
	if makeup.IsSharp(p) {
		return p.Per[ratio.Sour]
	}
	return max(0, p.Per[ratio.Sour]-metBySugar*p.Per[ratio.Sweet])
}

// How much lemon juice to one of 1:1 syrup an ingredient has, up to where its sugar hides its
// acid, from where both are tasted, and what its sugar meets of it: raspberry syrup has 0.19,
// ginger beer 0.33, the juice of cranberries 0.54 and that of pineapples 0.66.
const lostFrom, tastedFrom, metBySugar = 0.20, 0.35, 0.45

// What is shaken though nothing in it wants shaking lacks its juice sooner than other
// drinks: from this share, of those with the same rest, that have some. Proven drinks made
// so stop at 0.82.
const clearMost = 0.83

// clear returns how surely a drink is shaken with nothing in it that wants shaking, 0 to 1.
func (b *Build) clear(ml []float64) float64 {
	if b.spec.Method != flavor.Shake {
		return 0
	}
	x, all := 1.0, floats.Sum(ml)
	for i := range b.parts {
		if p := b.parts[i].Profile; technique.WantsShaking(p) && !p.Whitens() {
			x *= 1 - makeup.Presence(b.parts[i].Amount(ml), all, makeup.HalfLiquid)
		}
	}
	return x
}

// wantsNoJuice reports whether a drink is shaken for an ingredient, with no need of juice: milk,
// cream, an egg with its yolk, coffee.
func wantsNoJuice(p *flavor.Profile) bool {
	return p.Class.Smooth() || p.Yolky()
}

// mixes reports whether a method mixes thoroughly, as juice wants.
func mixes(m flavor.Method) bool { return m.Aerates() || m == flavor.Swizzle }

// halfSharp is the share of lemon juice at which a drink is half a sour one.
const halfSharp = 0.03

// How much citrus, less what sugar meets of it, to a millilitre of 40 % spirit: a rickey
// has 0.3, a collins whose sugar was forgotten 0.5. Beer hides more, by its bitterness; with
// some sugar to the citrus nothing was forgotten, whatever the ratio says of it.
const (
	bareFrom, bareTo   = 0.32, 0.41
	sugarMeets         = 2.0        // mL of lemon juice to one of 1:1 syrup
	sugarNone, sugared = 0.05, 0.12 // mL of 1:1 syrup to one of 40 % spirit
	leastSugar         = 0.1        // g in 100 mL
)

// sugarless returns how far a strong drink is out by citrus that nothing sweet meets.
func (b *Build) sugarless(ml []float64, e *ratio.Equivalents) float64 {
	bare, beer, all := -sugarMeets*e[ratio.Sweet], 0.0, floats.Sum(ml)
	for i := range b.parts {
		switch p, amount := &b.parts[i], b.parts[i].Amount(ml); {
		case makeup.IsSharp(p):
			bare += p.Per[ratio.Sour] * amount
		case p.Profile.Class.Brewed():
			beer += amount
		}
	}
	if bare <= 0 {
		return 0
	}
	forgotten := 1 - makeup.Ramp(e[ratio.Sweet]/e[ratio.Strong], sugarNone, sugared)
	x := forgotten * makeup.Presence(e[ratio.Strong], e.Total(), makeup.HalfWine) * (1 - makeup.Certainty(beer, all, makeup.HalfLength)) *
		(bare/e[ratio.Strong] - bareFrom) / (bareTo - bareFrom)
	return max(0, x) * max(0, x)
}

// unsyruped returns how far a sour drink without syrup, sugar or anything that modifies it is
// from the proven drinks with the same rest, if nearly all of those have syrup or sugar. The
// little sugar of a fruit is none.
func (b *Build) unsyruped(ml []float64, e *ratio.Equivalents) float64 {
	sour, all := 0.0, floats.Sum(ml)
	for i := range b.parts {
		if p := &b.parts[i]; makeup.IsSharp(p) {
			sour += p.Per[ratio.Sour] * p.Amount(ml)
		}
	}
	if sour <= 0 {
		return 0
	}
	without := makeup.Certainty(sour, e.Total(), halfSharp) * (1 - makeup.Ramp(e[ratio.Sweet]/sour, fruitMeets, sugarMet))
	for i := range b.parts {
		if p := &b.parts[i]; makeup.IsSweetener(p) || p.Role == flavor.PartModifier {
			without *= 1 - makeup.Presence(p.Amount(ml), all, makeup.HalfLiquid)
		}
	}
	if untold(without) {
		return 0
	}
	share, ok := b.having.sweet.shareOf(b.nearUnsweetened, b.set.sweet)
	if !ok {
		return 0
	}
	x := max(0, without*(share-soberFree)/(syrupedMost-soberFree))
	return x * x
}

// From where to where what is sweet without a syrup meets what is sour, mL of 1:1 syrup to one
// of lemon juice: three parts of strawberries to two of lime do not, two of cane juice to one
// do. And of drinks with the same rest, the share with syrup or sugar from where to go without
// is a fault; proven drinks without stop at 0.78, and at 0.86 with cane juice.
const (
	fruitMeets, sugarMet = 0.5, 0.65
	syrupedMost          = 0.80
)

// leastAcid is what counts as nothing sour, g in 100 mL.
const leastAcid = 0.1

// unsweet returns how surely drinks with the same rest have no syrup or sugar, 0 to
// 1.
func (b *Build) unsweet() float64 {
	share, ok := b.having.sweet.shareOf(b.nearUnsweetened, b.set.sweet)
	if !ok {
		return 0
	}
	return makeup.Ramp(1-share, leastUnsweetened, mostUnsweetened)
}

// Of drinks with the same rest, the share without syrup or sugar from where one is
// strange, and where it is as strange as can be. Then up to strangeFrom of the drink, as
// 1:1 syrup, is a touch; from strangeTo on it is a mistake. Chosen by the trial.
const (
	leastUnsweetened, mostUnsweetened = 0.8, 0.94
	strangeFrom, strangeTo            = 0.05, 0.10
	strangeEdges                      = 1.6 // as of a fault of method
)

// strayed tells of a syrup in a kind of drink that has none.
func (b *Build) strayed(ml []float64, size *size, tell func(*Beyond)) {
	for i := range b.parts {
		p := &b.parts[i]
		share := size.share(p, ml) * p.Per[ratio.Sweet]
		if !makeup.IsSweetener(p) || share <= strangeFrom {
			continue
		}
		if x := makeup.Ramp(share, strangeFrom, strangeTo) * b.unsweet(); x > 0 {
			tell(&Beyond{Profile: p.Profile, Strange: true, Amount: share, Usual: strangeFrom / 2, Most: strangeFrom, Edges: strangeEdges * x * x})
		}
	}
}

// Milky reports whether a drink in which acid and milk meet is meant for the milk: more
// of the drinks with the same rest have milk or cream than have something sour.
func (b *Build) Milky() bool {
	near := b.restWeights(&b.set.unturned, isSharpOrTurns, otherServing)
	milk, _ := shareThat(near, b.set.milky)
	sour, _ := shareThat(near, b.set.sharp)
	return milk > sour
}

func isSharpOrTurns(p *makeup.Part) bool { return makeup.IsSharp(p) || technique.Turns(p.Profile) }
