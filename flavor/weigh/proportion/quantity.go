package proportion

import (
	"math"

	"counterpour/flavor"
	"counterpour/flavor/makeup"
	"counterpour/flavor/ratio"
)

// quantity is something of a drink that is held against something else of it.
type quantity int

const (
	ofBase     quantity = iota // in mL of 40 % spirit
	ofSweet                    // in mL of 1:1 syrup
	ofSour                     // in mL of lemon juice
	ofMilk                     // in mL, as are those below
	ofLength                   // what lengthens
	ofLiqueur                  // the largest liqueur; two small ones are not one large
	ofBitter                   // the largest amaro or bitter aperitif
	ofVermouth                 // the largest aromatised wine; others lead a drink as often as not
	ofSugar                    // all that is sweet, in mL of 1:1 syrup
	ofCut                      // all that cuts sugar, see cuts
	besideBase                 // all but that
	besideSweet
	besideSour
	besideLiqueur
	besideBitter
	besideVermouth

	numPoured     = int(besideBase) // of them, those that are poured
	numQuantities = int(besideVermouth) + 1
)

// beside returns what of a drink is left beside a quantity, and false if that is not held
// against it.
func (q quantity) beside() (quantity, bool) {
	switch q {
	case ofBase, ofSweet, ofSour:
		return q - ofBase + besideBase, true
	case ofLiqueur, ofBitter, ofVermouth:
		return q - ofLiqueur + besideLiqueur, true
	}
	return 0, false
}

// halfOf is as for tasks.
func (q quantity) halfOf() float64 {
	switch {
	case q >= ofLiqueur && q <= ofVermouth:
		return taskLiqueur.halfOf()
	case q == ofLength:
		return taskLength.halfOf()
	}
	return taskBase.halfOf()
}

// quantityOf returns which quantity a part belongs to, false if to none, and how much of it
// a millilitre is.
func quantityOf(p *makeup.Part) (q quantity, per float64, ok bool) {
	t, ok := taskOf(p)
	if !ok {
		return 0, 0, false
	}
	switch t {
	case taskBase:
		return ofBase, p.Per[ratio.Strong], true
	case taskSweeten:
		return ofSweet, p.Per[ratio.Sweet], true
	case taskSour:
		return ofSour, p.Per[ratio.Sour], true
	case taskMilk:
		return ofMilk, 1, true
	case taskLength:
		return ofLength, 1, true
	case taskLiqueur: // one of cream or egg is as much its milk
		return ofLiqueur, 1, p.Profile.Class != flavor.ClassCreamLiqueur
	case taskBitter:
		return ofBitter, 1, true
	case taskWine:
		c := p.Profile.Class
		return ofVermouth, 1, c == flavor.ClassVermouth || c == flavor.ClassAromatisedWine
	}
	return 0, 0, false
}

// Quantities is how much a drink has of what is held against precedents. The zero value
// has nothing.
type Quantities struct {
	logs [numQuantities]float64     // logarithms; 0 for nothing
	sure [numQuantities]float64     // how surely it is there, 0 to 1
	by   [numPoured]*flavor.Profile // the largest pour of each
	// carried is how surely a wine or a beer lengthens the drink, and carries it as a base
	// does, 0 to 1.
	carried float64
	lone    float64 // how surely nothing else sweetens but what is there for it
	mostly  float64 // of all that is sweet, the share that the largest part of it brings
}

// QuantitiesOf returns the quantities of a drink, given its parts and the mL of each of its
// pours.
func QuantitiesOf(parts []makeup.Part, ml []float64) (out Quantities) {
	var counted, poured, largest [numPoured]float64
	all, sweet, added, carries, cut := 0.0, 0.0, 0.0, 0.0, 0.0
	for i := range parts {
		p := &parts[i]
		x := p.Amount(ml)
		sweet += x * p.Per[ratio.Sweet]
		for a, share := range cuts {
			cut += share * x * p.Per[a]
		}
		if brings := x * p.Per[ratio.Sweet]; p.Role == flavor.PartSweetener || p.Profile.Class == flavor.ClassLiqueur {
			added += brings
			if brings > largest[ofSugar] || brings > 0 && brings == largest[ofSugar] && p.Profile.ID < out.by[ofSugar].ID {
				largest[ofSugar], out.by[ofSugar] = brings, p.Profile
			}
		}
		if p.Profile.Class.Free() {
			continue // water thins all alike
		}
		all += x
		if p.Role == flavor.PartLength && p.Profile.ABV.Value > flavor.NoAlcoholABV {
			carries += x
		}
		q, per, ok := quantityOf(p)
		if !ok || x <= 0 {
			continue
		}
		first := x > largest[q] || x == largest[q] && p.Profile.ID < out.by[q].ID
		if first {
			largest[q], out.by[q] = x, p.Profile
		}
		if q < ofLiqueur {
			counted[q], poured[q] = counted[q]+x*per, poured[q]+x
		} else if first {
			counted[q], poured[q] = x*per, x
		}
	}
	if sweet > 0 {
		out.lone = makeup.Ramp(counted[ofSweet]/sweet, loneFrom, loneTo)
		out.mostly = largest[ofSugar] / sweet
	}
	out.carried = makeup.Certainty(carries, all, taskLength.halfOf())
	for i, x := range counted {
		q := quantity(i)
		if x <= 0 {
			continue
		}
		out.logs[q], out.sure[q] = math.Log(x), makeup.Certainty(poured[q], all, q.halfOf())
		if rest, ok := q.beside(); ok && poured[q] < all {
			out.logs[rest], out.sure[rest] = math.Log(max(all-poured[q], leastRest*all)), 1
		}
	}
	out.sure[ofBase] *= 1 - makeup.BackingOf(parts, ml)
	if sweet > 0 && cut > 0 {
		out.logs[ofSugar], out.sure[ofSugar] = math.Log(sweet), makeup.Ramp(added/sweet, addedFrom, addedTo)*makeup.Certainty(sweet, all, ofSugar.halfOf())
		out.logs[ofCut], out.sure[ofCut] = math.Log(cut+leastRest*all), 1
	}
	return out
}

// Of all that is sweet, the share that syrups, sugar and liqueurs bring from where to where a drink
// may be sweetened too much: fruit is as sweet as it is.
const addedFrom, addedTo = 0.35, 0.6

// cuts is how much sugar a millilitre of each other equivalent meets on the tongue, against lemon
// juice. Judged.
var cuts = ratio.Equivalents{ratio.Strong: 0.5, ratio.Sour: 1, ratio.Bitter: 0.5, ratio.Long: 0.05}

// Of all that is sweet, the share of syrups and sugar from where to where nothing else
// sweetens.
const loneFrom, loneTo = 0.6, 0.85

// leastRest is the least share of a drink that the rest of it is taken as.
const leastRest = 0.03
