package forgotten

import (
	"gonum.org/v1/gonum/floats"

	"counterpour/flavor"
	"counterpour/flavor/makeup"
)

// Of drinks of spirit and sweet vermouth alone, stirred, the share with bitters from where
// to go without them tells, and where it is a fault, if a small one. Chosen by the trial.
const (
	seasonedFree, seasonedMost = 0.45, 0.60
	flatEdges                  = 1.15
)

func isBitters(p *makeup.Part) bool { return p.Profile.Class == flavor.ClassCocktailBitters }

// nearUnseasoned is Weights without bitters.
func (d *Draft) nearUnseasoned() []float64 {
	return d.Weights(&d.book.unseasoned, isBitters)
}

// unseasoned returns how far a stirred drink of spirit and sweet vermouth, and of nothing
// else that gives it an edge, is out for want of bitters.
func (d *Draft) unseasoned(ml []float64) float64 {
	if d.spec.Method != flavor.Stir && d.spec.Method != flavor.Throw {
		return 0
	}
	all, base, vermouth, other := floats.Sum(ml), 0.0, 0.0, 0.0
	for i := range d.parts {
		p, amount := &d.parts[i], d.parts[i].Amount(ml)
		switch {
		case p.Role == flavor.PartBase:
			base += amount
		case p.Profile.Class == flavor.ClassVermouth:
			sweet := 1 - makeup.Dryness(p.Profile)
			vermouth += amount * sweet
			other += amount * (1 - sweet)
		case p.Profile.Class != flavor.ClassWater:
			other += amount
		}
	}
	x := makeup.Certainty(base, all, makeup.HalfLength) * makeup.Certainty(vermouth, all, makeup.HalfLength) * (1 - makeup.Presence(other, all, seasoningShare))
	if x*flatEdges <= tellingSober {
		return 0
	}
	share, ok := d.having.seasoned.shareOf(d.nearUnseasoned, d.book.seasoned)
	if !ok {
		return 0
	}
	return flatEdges * x * makeup.Ramp(share, seasonedFree, seasonedMost)
}

// seasoningShare is the share of a drink at which what is neither spirit nor sweet vermouth
// counts half as its edge.
const seasoningShare = 0.0005
