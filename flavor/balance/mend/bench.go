package mend

import (
	"slices"

	"counterpour/flavor"
	"counterpour/flavor/balance/change"
	"counterpour/flavor/balance/fault"
	"counterpour/flavor/weigh"
)

// Bench is where drafts are mended. It is safe for concurrent use.
type Bench struct {
	Set    *weigh.Set
	Pantry Pantry
	// Faults says what is wrong with a draft, and makes it ready to be weighed with other
	// amounts; the caller says when it is done with that.
	Faults func(*flavor.Spec) ([]fault.Fault, *weigh.Build, error)
}

// Draft is a draft that was weighed, and what is wrong with it.
type Draft struct {
	Spec   *flavor.Spec
	Score  float64
	Faults []fault.Fault
	Build  *weigh.Build
}

func (b *Bench) fixing(d *Draft) *fixing {
	return &fixing{bench: b, spec: d.Spec, base: d.Score, faults: d.Faults, build: d.Build, ml: d.Build.Amounts(), free: d.Spec.AlcoholFree()}
}

// Amends reports whether another way to make the drink balances a draft with everything left in it,
// or another amount of one pour that the faults name brings it to a score of least.
func (b *Bench) Amends(d *Draft, least float64) bool {
	f := b.fixing(d)
	f.byMethod()
	f.byFaults()
	return slices.ContainsFunc(f.found, func(c candidate) bool {
		return c.balanced() && (len(c.changes) == 0 || c.score >= least) && !slices.ContainsFunc(c.changes, func(x change.Change) bool { return x.ToML == 0 })
	})
}
