package weigh

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/floats"

	"counterpour/flavor"
	"counterpour/flavor/makeup"
	"counterpour/flavor/ratio"
	"counterpour/flavor/weigh/forgotten"
)

// A pour can be foreign to its kind of drink though no ratio shows it: tomato in a sour,
// coffee in a dry stirred drink, juice in what is stirred. Nobody wrote down what goes
// with what, so it is learnt: how many of the proven drinks with the same rest have
// anything of that character. Most novelties are harmless, as one fruit or flower for
// another; only the characters below stay what they are, whatever is poured beside them.

// character is what some ingredients bring to a drink that nothing covers.
type character struct {
	is     func(*flavor.Profile) bool
	method flavor.Method // of the drinks in which it may be foreign; empty for all
	// Beside what it is at home: where a drink has any, it is not foreign. Nil if beside
	// nothing. Common practice, no source.
	home func(*flavor.Profile) bool
	// Up to a share least of the drink it is a touch, from plain on it is what one tastes.
	least, plain float64
	// Of the drinks with the same rest, the share that has it: from rare on it is a custom,
	// down to hardly it is foreign.
	rare, hardly float64
}

// The characters: which they are is judged; the shares were chosen by leaving out each
// proven drink that has one, against all others with half an ounce of it.
var characters = [...]character{
	{is: isSavoury, home: isChilli, least: 0.04, plain: 0.07, rare: 0.018, hardly: 0.0135},
	{is: isCoffee, home: isCaskAged, least: 0.04, plain: 0.08, rare: 0.018, hardly: 0.0135},
	{is: isMint, least: 0.04, plain: 0.07, rare: 0.0145, hardly: 0.0100},
	{is: isMilk, least: 0.05, plain: 0.10, rare: 0.018, hardly: 0.0135},
	{is: isMilk, method: flavor.Stir, least: 0.05, plain: 0.12, rare: 0.065, hardly: 0.050},
	{is: isJuice, method: flavor.Stir, least: 0.07, plain: 0.12, rare: 0.065, hardly: 0.050},
}

// leadingNote is the share of a smell from which one family is all that is noticed.
const (
	leadingNote   = 0.4
	roastedNote   = 0.65 // coffee; cacao, which goes with citrus and wine, has less
	caskNote      = 0.05 // oak in a spirit that lay in casks
	savourySaltGL = 2.0  // g/L of salt from which a juice is savoury
	chilliMGL     = 20.0 // mg/L, as capsaicin, from which a seasoning bites by the dash
)

func smellsOf(p *flavor.Profile, f flavor.AromaFamily, share float64) bool {
	return p.Aroma[f] > share*p.Aroma.Total()
}

func isSavoury(p *flavor.Profile) bool {
	return (p.Class == flavor.ClassSavoury || p.Class == flavor.ClassJuice) && p.Salt.Value > savourySaltGL
}

func isCoffee(p *flavor.Profile) bool {
	return p.Class == flavor.ClassCoffee || p.Class.Part() == flavor.PartModifier && smellsOf(p, flavor.Roast, roastedNote)
}

// isCaskAged reports whether a base lay in casks, whose roast and vanilla coffee takes up.
func isCaskAged(p *flavor.Profile) bool {
	return p.Base() && smellsOf(p, flavor.Oak, caskNote)
}

// isChilli reports whether an ingredient makes a drink hot by the dash, as savoury drinks
// are made.
func isChilli(p *flavor.Profile) bool { return p.Senses.PungentMGPerL > chilliMGL }

// isMint reports whether an ingredient is a spirit of mint; the leaf is another matter.
func isMint(p *flavor.Profile) bool {
	return p.Class.Part() == flavor.PartModifier && smellsOf(p, flavor.Mint, leadingNote)
}

func isMilk(p *flavor.Profile) bool { return p.Class.Milky() }

func isJuice(p *flavor.Profile) bool {
	return p.Class.Pressed() || p.Class == flavor.ClassPuree
}

// custom is which proven drinks have a character, and what each of them is without it.
type custom struct {
	without forgotten.Rests
	has     []bool
}

func (c *character) bears(p *makeup.Part) bool { return c.is(p.Profile) }

// customs learns from the proven drinks which have which character.
type customs [len(characters)]custom

// customary is whether a drink has a character, and what it is without that.
type customary struct {
	without forgotten.Rest
	has     bool
}

// customaryOf reads of a drink what there is of every character.
func customaryOf(parts []makeup.Part, ml []float64) (out [len(characters)]customary) {
	total := floats.Sum(ml)
	for i := range characters {
		c := &characters[i]
		amount, _ := c.of(parts, ml)
		out[i] = customary{forgotten.RestOf(parts, ml, c.bears), amount >= c.least*total}
	}
	return out
}

// add takes in the next proven drink.
func (cs *customs) add(of *[len(characters)]customary) {
	for i := range of {
		cs[i].without.Add(&of[i].without)
		cs[i].has = append(cs[i].has, of[i].has)
	}
}

// of returns how many mL of a drink have the character, and the part that most of it is;
// nil if none has.
func (c *character) of(parts []makeup.Part, ml []float64) (amount float64, by *makeup.Part) {
	most := 0.0
	for i := range parts {
		if x := parts[i].Amount(ml); x > 0 && c.bears(&parts[i]) {
			amount += x
			if x > most {
				most, by = x, &parts[i]
			}
		}
	}
	return amount, by
}

// foreignDrinks is how many drinks that have a character are taken for granted, so that
// where few drinks are like the draft nothing in it is foreign.
const foreignDrinks = 0.01

// foreignness returns how surely a character has no place in drinks with the same rest,
// 0 to 1.
func (b *Build) foreignness(i int) float64 {
	if known := b.foreign[i]; known != nil {
		return *known
	}
	c, custom := &characters[i], &b.set.customs[i]
	with, total := foreignDrinks, 0.0
	for k, w := range b.Forgotten().Weights(&custom.without, c.bears) {
		total += w
		if custom.has[k] {
			with += w
		}
	}
	x := 0.0
	if total > forgotten.NearestToTell && !b.atHome(c) {
		x = makeup.Ramp(math.Log(c.rare/(with/total)), 0, math.Log(c.rare/c.hardly))
	}
	b.foreign[i] = &x
	return x
}

// atHome reports whether the drink has anything beside which a character is at home.
func (b *Build) atHome(c *character) bool {
	return c.home != nil && slices.ContainsFunc(b.parts, func(p makeup.Part) bool { return c.home(p.Profile) })
}

// strangers tells of pours whose character is foreign to the drink.
func (b *Build) strangers(ml []float64, tell func(*Beyond)) {
	total := floats.Sum(ml)
	for i := range characters {
		c := &characters[i]
		if c.method != "" && c.method != b.spec.Method {
			continue
		}
		amount, by := c.of(b.parts, ml)
		if amount <= c.least*total {
			continue
		}
		x := makeup.Ramp(amount/total, c.least, c.plain) * b.foreignness(i)
		if x > 0 {
			tell(&Beyond{Profile: by.Profile, Strange: true, Foreign: true, Amount: amount / total, Usual: c.least / 2, Most: c.least, Edges: foreignEdges * x * x * x * (1 + ruinTimes*x*x*x*makeup.Ramp(amount/total, c.plain, ruinShare))})
		}
	}
}

// foreignEdges is how far out a drink is by what surely has no place in it: nobody drinks that, so
// it is not near balance. Judged.
const foreignEdges = 2.3

// Up to a share ruinShare of the drink the more there is of that the worse it is, and there
// ruinTimes as far out again if it surely has no place: milk by the jigger is worse than a syrup poured twice. Judged.
const ruinShare, ruinTimes = 0.35, 2.0

// Of a drink whose kind has no syrup or sugar, the share of one up to where it is a touch, and
// from where it is a mistake, as 1:1 syrup. Chosen by the trial.
const (
	strangeFrom, strangeTo = 0.05, 0.10
	strangeEdges           = 1.6 // as of a fault of method
)

// strayed tells of a syrup in a kind of drink that has none.
func (b *Build) strayed(ml []float64, size *size, tell func(*Beyond)) {
	for i := range b.parts {
		p := &b.parts[i]
		share := size.share(p, ml) * p.Per[ratio.Sweet]
		if !makeup.IsSweetener(p) || share <= strangeFrom {
			continue
		}
		if x := makeup.Ramp(share, strangeFrom, strangeTo) * b.Forgotten().Unsweet(); x > 0 {
			tell(&Beyond{Profile: p.Profile, Strange: true, Amount: share, Usual: strangeFrom / 2, Most: strangeFrom, Edges: strangeEdges * x * x})
		}
	}
}
