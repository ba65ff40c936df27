package coaching

import (
	"fmt"

	"counterpour/data/house"
	"counterpour/flavor"
	"counterpour/flavor/drill"
	"counterpour/flavor/mix"
)

// Limits of a glass of a triangle test, in mL: common practice, no source.
const (
	LeastTriangleML = 5.0
	MostTriangleML  = 120.0
)

// triangleGlasses is how many glasses a taster of a triangle test has.
const triangleGlasses = 3

// SpiritABV is what a drink of unknown strength is taken to have, in % vol: a
// neat spirit (common practice, no source), so that the limit errs on the safe side.
const SpiritABV = 40.0

// USDrinkG is a standard drink of the United States, in g of ethanol (NIAAA).
const USDrinkG = 14.0

// TriangleRequest asks for a triangle test: whether tasters can tell a drink from
// one that covers it.
type TriangleRequest struct {
	drill.TriangleRequest
	Drink   string  // by name; what the house does not have is taken to be a spirit
	GlassML float64 // what a glass holds
}

// TriangleAnswer is a triangle test as it is laid out.
type TriangleAnswer struct {
	drill.Triangle
	Wanted   float64 // the power that was asked for
	Enough   int     // tasters who would have it; 0 if no number that is planned here has
	EthanolG float64 // that one taster takes in
	Assumed  bool    // the strength is not known and was taken to be that of a spirit
}

// AlcoholError is a tasting of which one taster would take in more alcohol than
// [drill.MaxTasterDrinks].
type AlcoholError struct {
	Glasses  int
	GlassML  float64
	ABVPct   float64
	EthanolG float64 // that the glasses hold
	LimitG   float64 // the most that one taster takes in
	FitML    float64 // a glass that stays below the limit
}

// Error says how much it is, and how much may be poured.
func (e *AlcoholError) Error() string {
	return fmt.Sprintf("%d glasses of %v mL at %.0f %% vol hold %.1f g of alcohol; the limit is %.1f g: pour %.0f mL each",
		e.Glasses, e.GlassML, e.ABVPct, e.EthanolG, e.LimitG, e.FitML)
}

// Unwrap returns the kind.
func (e *AlcoholError) Unwrap() error { return flavor.ErrInvalid }

// LayOut lays a triangle test out for a drink of a strength in % vol. It fails with
// an [*AlcoholError] if a taster would take in more alcohol than in a flight, and
// with a fault of "each" or "share" if a glass is none or the test takes more
// tasters than are recorded.
func LayOut(r TriangleRequest, abv float64) (*TriangleAnswer, error) {
	if !(r.GlassML >= LeastTriangleML && r.GlassML <= MostTriangleML) {
		fault := flavor.Invalid("each", r.GlassML, "%v mL is no glass for a triangle test; pour %v to %v mL", r.GlassML, LeastTriangleML, MostTriangleML)
		fault.Bounds = &flavor.Bounds{Least: LeastTriangleML, Most: MostTriangleML}
		return nil, fault
	}
	plan, err := drill.PlanTriangle(r.TriangleRequest)
	if err != nil {
		return nil, err
	}
	if plan.Tasters > house.MaxList {
		return nil, flavor.Invalid("share", r.Share, "that takes %d tasters, and %d are the most that are recorded here; ask for less power or a larger share", plan.Tasters, house.MaxList)
	}
	a := &TriangleAnswer{Triangle: *plan, Wanted: r.Power, EthanolG: mix.EthanolG(abv, triangleGlasses*r.GlassML)}
	if limit := drill.MaxTasterDrinks * USDrinkG; a.EthanolG > limit {
		return nil, &AlcoholError{Glasses: triangleGlasses, GlassML: r.GlassML, ABVPct: abv, EthanolG: a.EthanolG, LimitG: limit,
			FitML: max(r.GlassML*limit/a.EthanolG-0.5, 0)}
	}
	unbound := r.TriangleRequest
	unbound.Tasters = 0
	if enough, err := drill.PlanTriangle(unbound); err == nil {
		a.Enough = enough.Tasters
	}
	return a, nil
}
