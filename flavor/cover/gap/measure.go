package gap

import (
	"math"
	"slices"

	"counterpour/flavor"
	"counterpour/flavor/cover/portion"
	"counterpour/flavor/cover/role"
	"counterpour/flavor/measure"
)

// Grid returns the amounts that a hand pours in place of what went.
func (g *Gap) Grid() *portion.Grid {
	return portion.NewGrid(g.ML, g.pieces(), g.jigger(), g.pourGone().Unit == flavor.Drop)
}

// pourGone returns the first pour that went.
func (g *Gap) pourGone() *flavor.Pour {
	pours := g.Asked.Spec.Pours
	at := slices.IndexFunc(pours, func(p flavor.Pour) bool { return p.Profile == g.Gone[0].Profile })
	return &pours[at]
}

// jigger returns the unit that covers are poured in: that of what went, if a jigger
// is marked with it, else that of the drink.
func (g *Gap) jigger() flavor.Unit {
	switch u := g.pourGone().Unit; u {
	case flavor.Ounce, flavor.Millilitre, flavor.Centilitre, flavor.PartUnit:
		return u
	}
	return measure.SystemOf(g.Asked.Spec).Unit()
}

// pieces returns how many pieces, leaves or slices went of one thing at most, 0 if all was poured
// otherwise.
func (g *Gap) pieces() (most int) {
	for i := range g.Asked.Spec.Pours {
		if p := &g.Asked.Spec.Pours[i]; g.Took(p.Profile) && p.Unit.Counted() {
			most = max(most, int(p.Amount))
		}
	}
	return most
}

// baseGone returns the spirits of a base that went with other things: none if the guest is
// to have less alcohol.
func (g *Gap) baseGone() (was portion.Spirits) {
	if len(g.Gone) < 2 || g.WantsDry() || g.Asked.Guest.MaxABV > 0 {
		return was
	}
	for i := range g.Asked.Spec.Pours {
		if p := &g.Asked.Spec.Pours[i]; g.Took(p.Profile) {
			was.Add(p.Profile, p.ML)
		}
	}
	if was.ML < BaseML {
		return portion.Spirits{}
	}
	return was
}

// FullMeasure reports whether, with several things out, a base is covered by its full measure
// of spirit.
func (g *Gap) FullMeasure(is *portion.Spirits) bool {
	return g.base.Bottles == 0 || is.MeasureOf(&g.base)
}

// InMeasure leaves of the amounts of a bottle those of a full measure, where it is a spirit
// and one went with other things, or brewed and what went was: a search that looks at others
// too may find none of those. Where all are, it returns the list that it was given.
func (g *Gap) InMeasure(p *flavor.Profile, amounts []portion.Amount) []portion.Amount {
	var full func(portion.Amount) bool
	switch {
	case g.base.Bottles == 1 && p.Class.Kin() == flavor.KinSpirit:
		full = func(a portion.Amount) bool {
			var is portion.Spirits
			is.Add(p, a.ML)
			return is.MeasureOf(&g.base)
		}
	case p.Class.Kin() == flavor.KinHerb && len(g.Gone) > 1:
		full = g.asManyLeaves()
	case p.Class.Brewed() && g.Brewed > 0:
		full = func(a portion.Amount) bool { return portion.SameMeasure(a.ML, g.Brewed) }
	default:
		least, most := g.kinMeasure(p)
		if most == 0 {
			least, most = g.sisterMeasure(p)
		}
		if most > 0 {
			full = func(a portion.Amount) bool { return a.ML >= least && a.ML <= most }
		}
	}
	less := func(a portion.Amount) bool { return !full(a) }
	if full == nil || !slices.ContainsFunc(amounts, less) {
		return amounts
	}
	return slices.DeleteFunc(slices.Clone(amounts), less)
}

// What is muddled by the leaf is covered by about as many leaves, however strong they smell: a
// guest sees how green the glass is. Common practice, no source.
const leastLeaves, mostLeaves = 0.75, 1.5

// asManyLeaves reports, for a herb that went by the piece with other things, whether an amount is
// about as many; it is nil if none went so.
func (g *Gap) asManyLeaves() func(portion.Amount) bool {
	for i := range g.Asked.Spec.Pours {
		was := &g.Asked.Spec.Pours[i]
		if g.Took(was.Profile) && was.Unit.Counted() && was.Profile.Class.Kin() == flavor.KinHerb {
			return func(a portion.Amount) bool {
				return a.Unit != was.Unit || a.Value >= leastLeaves*was.Amount && a.Value <= mostLeaves*was.Amount
			}
		}
	}
	return nil
}

// AtMost leaves of the amounts of a liqueur those that a bartender pours of it in one drink: one that
// leads where an ounce of it is much stands for no two ounces of a mild one. What the trade takes
// for the very thing that went is poured as that was. Where all are left, it returns the list that it was given.
func (g *Gap) AtMost(b *role.Bottle, amounts []portion.Amount) []portion.Amount {
	p := b.Profile
	kin := func(q *flavor.Profile) bool { return slices.Contains(g.trade.Customs.Kin(q.ID), p.ID) }
	tooMuch := func(a portion.Amount) bool { return a.ML > max(b.MostML, neverMuchML) }
	if p.Class.Kin() != flavor.KinLiqueur || !slices.ContainsFunc(amounts, tooMuch) || g.Any(kin) {
		return amounts
	}
	return slices.DeleteFunc(slices.Clone(amounts), tooMuch)
}

// neverMuchML is three quarters of an ounce as a jigger rounds it: of no liqueur is that too much
// (common practice, no source).
const neverMuchML = 22.5

// What stands in for something as its kin in the trade is poured in some two thirds of its
// measure at the least, and half as much again at most, however strong it smells (common
// practice, no source).
const kinLeast, kinMost = 0.7, 1.5

// kinMeasure returns the least and the most mL that is poured of p in place of what it is kin
// to, a liqueur, amaro or wine; most is 0 if it is kin to nothing that went.
func (g *Gap) kinMeasure(p *flavor.Profile) (least, most float64) {
	for m := range g.Gone {
		was, ml := g.Gone[m].Profile, g.Gone[m].ML
		modifies := was.Class.Part() == flavor.PartModifier && p.Class == was.Class && ml >= SeasoningML
		if modifies && slices.Contains(g.trade.Customs.Kin(was.ID), p.ID) {
			return kinLeast * ml, kinMost * ml
		}
	}
	return 0, 0
}

// How much is poured of what is lighter in place of a spirit, as against its measure: a wine
// in the same or a quarter more, and what sparkles, which is weaker still and lengthens the
// drink, half as much again up to twice. A spirit that a limit cuts short is not poured in
// less than half of it (common practice, no source).
const (
	wineMost, bubblesLeast, bubblesMost = 1.25, 1.5, 2.0
	spiritLeast                         = 0.5
)

// LightMeasure returns the least and the most mL of p that a bartender pours in place of a
// spirit for a guest who wants less alcohol, and drinks some; most is 0 if p stands for none.
func (g *Gap) LightMeasure(p *flavor.Profile) (least, most float64) {
	for m := range g.Gone {
		was, ml := g.Gone[m].Profile, g.Gone[m].ML
		light := g.lighter(was)
		switch {
		case slices.Contains(light, p.ID) && p.Class.Sparkles():
			return bubblesLeast * ml, bubblesMost * ml
		case slices.Contains(light, p.ID):
			return ml, wineMost * ml
		case len(light) > 0 && p.Class.Kin() == flavor.KinSpirit && p.ABV.Value > flavor.NoAlcoholABV:
			return spiritLeast * ml, ml
		}
	}
	return 0, 0
}

// asStrong is the difference in % vol up to which two spirits count as equally strong.
const asStrong = 8.0

// Alike returns the amount of p that is poured like for like, in mL, and what it costs
// to pour another, in steps. There is such an amount between things of one class and
// between spirits. Another amount costs most where the spirits are as strong, so that
// nothing asks for another measure, and where what sparkles fills the glass. The amount
// is 0 where several things went, for what is lighter than a spirit if the guest wants
// less alcohol, for what sweetens by its sugar or sours by far more or less acid, and for
// what is not poured by the jigger, unless it comes by the same piece.
func (g *Gap) Alike(p *flavor.Profile, amounts []portion.Amount) (ml, firm float64) {
	gone := g.Gone[0].Profile
	was, w := gone.Class, &g.trade.Weights
	switch light := len(g.lighter(gone)) > 0; {
	case len(g.Gone) > 1, role.Sweetens(p.Class, was), unevenlySour(p, gone):
		return 0, 0
	case light && p.Class.Kin() == flavor.KinSpirit:
		return g.ML, w.Firm // less than a measure of it is a thin drink
	case light && !g.StandsDry(p.Class, was):
		return 0, 0
	}
	if at := slices.IndexFunc(amounts, g.sameAmount); at >= 0 {
		if firm, alike := g.firmness(p, gone); alike {
			return amounts[at].ML, firm
		}
	}
	little := g.ML < SeasoningML && p.Class.Measured() == flavor.ByDash
	if little || p.Class.Solid() || was.Solid() {
		return 0, 0
	}
	return g.ML, 0
}

// firmness returns what it costs, in steps, to pour another amount of p than there was of what
// went; alike is false if the two are not poured like for like.
func (g *Gap) firmness(p, gone *flavor.Profile) (steps float64, alike bool) {
	was, w := gone.Class, &g.trade.Weights
	spirits := p.Class.Kin() == flavor.KinSpirit && was.Kin() == flavor.KinSpirit
	fills := role.Fills(p.Class, was)
	switch {
	case g.StandsDry(p.Class, was), was.Sparkles() && fills, spirits && math.Abs(p.ABV.Value-gone.ABV.Value) <= asStrong:
		return w.Measure, true
	case p.Class == was, spirits, fills, p.Class.Kin() == flavor.KinWine && was.Kin() == flavor.KinBitter:
		return w.Firm, true
	}
	return 0, false
}

// evenlySour is how many times as much acid one sour juice has as another, up to which it is
// poured measure for measure: lemon for lime, and not for verjus (common practice, no source).
const evenlySour = 1.5

// unevenlySour reports whether one of two sour juices has far more acid than the other.
func unevenlySour(p, was *flavor.Profile) bool {
	if p.Class.Part() != flavor.PartSour || was.Class.Part() != flavor.PartSour {
		return false
	}
	more, less := max(p.Acid.Value, was.Acid.Value), min(p.Acid.Value, was.Acid.Value)
	return more > evenlySour*less
}

// sameAmount reports whether an amount is that of what went: as many pieces, or as many mL.
func (g *Gap) sameAmount(a portion.Amount) bool {
	const same = 1e-6
	if gone := g.pourGone(); gone.Unit.Counted() {
		return a.Unit == gone.Unit && a.Value == gone.Amount
	}
	return math.Abs(a.ML-g.ML) < same
}
