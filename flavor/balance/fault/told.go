package fault

import (
	"math"

	"counterpour/flavor"
	"counterpour/flavor/balance/change"
	"counterpour/flavor/balance/wording"
)

// poured is how a fault tells that an ingredient is poured wrong.
type poured struct {
	spec   *flavor.Spec    // in the measures of which amounts are told
	pour   *flavor.Pour    // in the unit of which they are; nil if the fault tells no such thing
	far    bool            // far too little of it, or too much, and not by how much
	beside *flavor.Profile // what it is too much or too little for; may be nil
	haveML float64         // mL that drinks like it have; 0 if that is not told
}

// amount says so many mL of the ingredient.
func (x *poured) amount(ml float64) string { return change.AmountNear(x.spec, ml, x.pour) }

// Tell makes the sentences of faults from what was found out of them, once that is settled.
func Tell(faults []Fault) {
	for i := range faults {
		f := &faults[i]
		x := f.poured
		if x.pour == nil {
			continue
		}
		if x.far {
			f.Text = wording.Far(f.High, f.Profile.Name)
		} else {
			f.Text = wording.About(x.amount(f.MoveML), f.High, f.Profile.Name)
		}
		if x.beside != nil {
			f.Text += wording.ForThisMuch(x.beside.Name)
		}
		if x.haveML > 0 {
			f.Text += wording.HaveAbout(x.amount(x.haveML))
		}
		f.poured = poured{}
	}
}

// Agree gives faults the amount of changes that do nothing but pour less, or more, of what they
// name. A fault is worked out from what is usual, a fix from what balances, and whoever reads
// both wants one number. The fault then does not tell what drinks like it have, which is another
// number.
func Agree(faults []Fault, changes []change.Change) {
	if len(changes) != 1 {
		return
	}
	c := &changes[0]
	if c.FromML <= 0 || c.ToML <= 0 {
		return
	}
	less, moved := c.ToML < c.FromML, math.Abs(c.ToML-c.FromML)
	for i := range faults {
		f := &faults[i]
		if f.Profile != c.Profile || f.High != less || f.MoveML <= 0 {
			continue
		}
		if x := &f.poured; x.pour != nil && !x.far && x.amount(moved) != x.amount(f.MoveML) {
			x.haveML = 0
		}
		f.MoveML = moved
	}
}
