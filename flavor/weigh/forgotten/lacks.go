package forgotten

import (
	"gonum.org/v1/gonum/floats"

	"counterpour/flavor/makeup"
	"counterpour/flavor/ratio"
)

// Lack is what a drink has too little of, as somebody forgot it.
type Lack struct {
	Axis  ratio.Axis
	ML    float64 // of Long, what there is of it
	Least float64 // that counts as some: of Strong % vol, of Sour and Sweet g in 100 mL, of Long mL, of Bitter mL in 100
	Edges float64 // how far out the drink is by it, 1 at the edge
}

// What counts as some of it.
const (
	leastABV     = 0.5  // % vol
	leastAcid    = 0.1  // g in 100 mL
	leastSugar   = 0.1  // the same
	leastBitters = 0.05 // mL in 100
)

// From where a lack tells, as shares of the proven drinks with the same rest, and where it is
// as bad as the edge.
const (
	soberFree, soberMost = 0.5, 0.92
	tellingSober         = 0.01
)

// Lacks tells all that the drink lacks with other amounts, whose equivalents are e.
func (d *Draft) Lacks(ml []float64, e *ratio.Equivalents, tell func(Lack)) {
	if x := d.baseless(ml, e); x > tellingSober {
		tell(Lack{Axis: ratio.Strong, Least: leastABV, Edges: x})
	}
	if x := d.sourless(ml, e); x > tellingSober {
		tell(Lack{Axis: ratio.Sour, Least: leastAcid, Edges: x})
	}
	if x := max(d.sugarless(ml, e), d.unsyruped(ml, e)); x > tellingSober {
		tell(Lack{Axis: ratio.Sweet, Least: leastSugar, Edges: x})
	}
	if x, length := d.lengthless(ml); x > tellingSober {
		tell(Lack{Axis: ratio.Long, ML: length, Least: surelyLong * floats.Sum(ml), Edges: x})
	}
	if x := d.unseasoned(ml); x > tellingSober {
		tell(Lack{Axis: ratio.Bitter, Least: leastBitters, Edges: x})
	}
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
func (d *Draft) baseless(ml []float64, e *ratio.Equivalents) float64 {
	dry, without, all := 1-makeup.Presence(e[ratio.Strong], e.Total(), makeup.HalfWine), 1.0, floats.Sum(ml)
	for i := range d.parts {
		if makeup.IsBase(&d.parts[i]) {
			without *= 1 - makeup.Presence(d.parts[i].Amount(ml), all, makeup.HalfLiquid)
		}
	}
	if untold(without) {
		return 0
	}
	strong, ok := d.having.strong.shareOf(d.nearUnbased, d.book.strong)
	if !ok {
		return 0
	}
	based, _ := d.having.based.shareOf(d.nearUnbased, d.book.based)
	x := max(missed(without*dry, strong), missed(without, based))
	return x * x
}
