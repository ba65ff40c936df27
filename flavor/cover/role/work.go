package role

import (
	"slices"

	"counterpour/flavor"
)

// Sweetens reports whether both classes are poured to sweeten.
func Sweetens(a, b flavor.Class) bool {
	return a.Kin() == flavor.KinSweetener && b.Kin() == flavor.KinSweetener
}

// Leafy reports whether a class is herbs and spices by the piece: they season, and stand
// for no measure of anything unless the trade says so.
func Leafy(c flavor.Class) bool { return c.Kin() == flavor.KinHerb || c.Kin() == flavor.KinSpice }

// OnlySweetens reports whether a bottle brings the sugar of a class that is poured for a
// flavour with sugar, and no flavour.
func OnlySweetens(b *Bottle, was flavor.Class) bool {
	return b.Profile.Class.Kin() == flavor.KinSweetener && SweetFlavour(was) && b.Smell.Plain()
}

// SweetFlavour reports whether a class is poured for a flavour with sugar: a liqueur,
// a syrup or a cordial of one fruit does the work of another.
func SweetFlavour(c flavor.Class) bool {
	return c.Kin() == flavor.KinLiqueur || c.Kin() == flavor.KinSweetener
}

// ClassDistance is how far two classes are apart: 0 for one class, 1 for other
// parts of a drink. Guests order by the base, so a rum is nearer to another rum than to
// any whisky.
func ClassDistance(a, b flavor.Class) float64 {
	switch {
	case a == b:
		return 0
	case a.Kin() == b.Kin() && a.Part() != flavor.PartBase:
		return 1.0 / 3
	case a.Part() == b.Part():
		return 2.0 / 3
	}
	return 1
}

// ByPiece reports whether something is counted out, as leaves are and cubes of sugar.
func ByPiece(p *flavor.Profile) bool {
	return p.Class.Measured() == flavor.ByPiece || len(p.Yields) > 0 && p.Yields[0].Unit == flavor.Cube
}

// Fills reports whether one class fills a glass as the other does: milk for milk, juice
// for juice, soda for soda.
func Fills(is, was flavor.Class) bool {
	return is.Kin() == was.Kin() && (was.Part() == flavor.PartLength || was.Part() == flavor.PartTexture)
}

// How bottles are told apart by bitterness, in mg/L of quinine. What is poured to be
// bitter has at least stillBitter. A liqueur, syrup or soda that is not bitter has less
// than notBitter. What has more than tooBitter cannot stand for one of those.
const (
	stillBitter = 30.0
	notBitter   = 12.0
	tooBitter   = 50.0
)

// OtherWork reports whether a bottle does other work than the one that went, however it
// smells: nothing still stands for what sparkles, and nothing that holds alcohol for a
// juice, tea or soda; nothing sweet for what is bitter, and the other way; no white wine
// for a red one or a red port, and no black beer for a pale one.
func OtherWork(b, gone *Bottle) bool {
	p, q := b.Profile, gone.Profile
	is, was := p.Class, q.Class
	length := was.Part() == flavor.PartLength
	switch {
	case was.Sparkles() && !is.Sparkles(), length && is.Part() == flavor.PartLength && is.Sparkles() && !was.Sparkles(),
		length && p.ABV.Value > flavor.NoAlcoholABV && q.ABV.Value <= flavor.NoAlcoholABV:
		return true
	case was.Brewed() && !was.Vinous() && is == was:
		return b.Look.G < gone.Look.G && UnlikeInLook(b, gone) >= otherWine
	case was.Kin() == flavor.KinBitter:
		return p.Bitter.Value < stillBitter
	case was.Kin() == flavor.KinLiqueur, was.Kin() == flavor.KinSweetener, was.Soft():
		return q.Bitter.Value < notBitter && p.Bitter.Value > tooBitter
	}
	return was.Kin() == flavor.KinWine && is.Kin() == flavor.KinWine && (is != was || !was.Laced() || b.Look.G < gone.Look.G) && UnlikeInLook(b, gone) >= otherWine
}

// otherWine is the difference in look, see [UnlikeInLook], from which another wine or beer is
// no cover: white wine for red, or for red port, a red vermouth for a white one, and a black
// beer for a pale one.
const otherWine = 0.6

// MostlyFat is the g/L of fat from which something is no liquid behind the bar, and
// WakingMGPerL the mg/L of caffeine from which a guest must know of it: coffee and
// energy drinks hold more, colas and teas less.
const (
	MostlyFat    = 500
	WakingMGPerL = 250
)

// What a sip of something tells of salt and savour, in g/L, from where on it is food
// more than drink: tomato juice is, mineral waters are not.
const (
	savourySalt  = 2.5
	savouryUmami = 1.0
)

// HoldsCaffeine reports whether something is known to hold caffeine.
func HoldsCaffeine(p *flavor.Profile) bool { return slices.Contains(p.Cautions, "caffeine") }

// Wakes reports whether something holds so much caffeine that a guest must know, or
// caffeine of which nobody has stated how much.
func Wakes(p *flavor.Profile) bool {
	return HoldsCaffeine(p) && (p.Caffeine.Origin == "" || p.Caffeine.Value >= WakingMGPerL)
}

// Savoury reports whether something tastes of the kitchen. A saline only seasons.
func Savoury(p *flavor.Profile) bool {
	return p.Class.Kin() != flavor.KinSaline && (p.Salt.Value >= savourySalt || p.Senses.UmamiGPerL >= savouryUmami)
}

// Odd reports whether a class is something that a bartender puts up with once in a
// cover.
func Odd(c flavor.Class) bool { return c.Kin() == flavor.KinBitters || c.Niche() != flavor.NicheAny }
