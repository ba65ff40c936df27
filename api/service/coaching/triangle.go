package coaching

import (
	"fmt"

	"counterpour/data/house"
	"counterpour/flavor"
	"counterpour/flavor/drill/tasting"
	"counterpour/flavor/drill/wording"
	"counterpour/flavor/mix"
)

// Limits of the volume of one glass of a triangle test, in mL: common practice, no
// source.
const (
	LeastTriangleML = 5.0
	MostTriangleML  = 120.0
)

// triangleGlasses is the number of glasses that each taster gets.
const triangleGlasses = 3

// SpiritABV is the strength in % vol that is assumed of an unknown drink: that of a neat
// spirit, so that the limit on alcohol errs on the safe side. Common practice, no source.
const SpiritABV = 40.0

// TriangleRequest asks for a triangle test: can tasters tell a drink from the same drink
// with a cover in it?
type TriangleRequest struct {
	tasting.TriangleRequest
	Drink   string  // name; a drink that the house does not have is assumed to be a neat spirit
	Cover   string  // name of what is poured in it instead, or of another drink of the house
	GlassML float64 // volume of one glass
}

// TriangleAnswer is the plan of a triangle test.
type TriangleAnswer struct {
	tasting.Triangle
	Wanted   float64 // the statistical power asked for
	Enough   int     // tasters needed for that power; 0 if even the largest planned number has less
	EthanolG float64 // for each taster, at the strength of the stronger side
	Assumed  bool    // the strength is unknown and assumed to be [SpiritABV]
	// A is the drink and B what it is tested against; nil if the house does not know both.
	A, B *TriangleSide
	// Instead is the pour of the drink that B pours the cover in place of; nil if B is
	// another drink.
	Instead *flavor.Profile
	// Tasted holds the pours of both sides that the house knows: every taster is handed
	// both. Unknown are the names of those that it does not know, of which any allergen may
	// be in the glass.
	Tasted   flavor.Spec
	Unknown  []string
	Cautions []string // to be read out before the first sip
	Looks    string   // how B looks against A, such as "clear turns amber"; empty if nobody sees it
}

// TriangleSide is one of the two drinks of a triangle test.
type TriangleSide struct {
	Spec    flavor.Spec
	Glasses int                // that all tasters are handed, and one to spare
	Sheet   tasting.BatchSheet // for that many glasses
	Foams   bool               // it lives by its foam, which no batch keeps
}

// AlcoholError refuses a tasting in which a taster would drink more alcohol than
// [tasting.MaxTasterDrinks].
type AlcoholError struct {
	Glasses  int
	GlassML  float64
	ABVPct   float64
	EthanolG float64 // in the glasses of one taster
	LimitG   float64 // limit for one taster
	FitML    float64 // the largest glass that stays within the limit
}

// Error states the amount and the glass that would be small enough.
func (e *AlcoholError) Error() string {
	return fmt.Sprintf("%d glasses of %v mL at %.0f %% vol hold %.1f g of alcohol; the limit is %.1f g: pour %.0f mL each",
		e.Glasses, e.GlassML, e.ABVPct, e.EthanolG, e.LimitG, e.FitML)
}

// Unwrap returns [flavor.ErrInvalid].
func (e *AlcoholError) Unwrap() error { return flavor.ErrInvalid }

// LayOut plans a triangle test of a drink; abv is its strength in % vol. The error is an
// [*AlcoholError] if a taster would drink more alcohol than in a tasting flight. It is a
// fault of "each" if the volume of a glass is out of range, of "tasters" if more of them
// are asked for than can be recorded, and of "share" if the test needs more.
func LayOut(r TriangleRequest, abv float64) (*TriangleAnswer, error) {
	if !(r.GlassML >= LeastTriangleML && r.GlassML <= MostTriangleML) {
		fault := flavor.Invalid("each", r.GlassML, "%v mL is no glass for a triangle test; pour %v to %v mL", r.GlassML, LeastTriangleML, MostTriangleML)
		fault.Bounds = &flavor.Bounds{Least: LeastTriangleML, Most: MostTriangleML}
		return nil, fault
	}
	plan, err := tasting.PlanTriangle(r.TriangleRequest)
	if err != nil {
		return nil, err
	}
	if r.Tasters > house.MaxList {
		return nil, flavor.Invalid("tasters", r.Tasters, "%d tasters, and %d are the most that are recorded here", r.Tasters, house.MaxList)
	}
	if plan.Tasters > house.MaxList {
		return nil, flavor.Invalid("share", r.Share, "that takes %d tasters, and %d are the most that are recorded here; ask for less power or a larger share", plan.Tasters, house.MaxList)
	}
	a := &TriangleAnswer{Triangle: *plan, Wanted: r.Power, EthanolG: mix.EthanolG(abv, triangleGlasses*r.GlassML)}
	a.Cautions = wording.Cautions(a.EthanolG, a.EthanolG/tasting.USDrinkG)
	if limit := tasting.MaxTasterDrinks * tasting.USDrinkG; a.EthanolG > limit {
		return nil, &AlcoholError{Glasses: triangleGlasses, GlassML: r.GlassML, ABVPct: abv, EthanolG: a.EthanolG, LimitG: limit,
			FitML: max(r.GlassML*limit/a.EthanolG-0.5, 0)}
	}
	unbound := r.TriangleRequest
	unbound.Tasters = 0
	if enough, err := tasting.PlanTriangle(unbound); err == nil {
		a.Enough = enough.Tasters
	}
	return a, nil
}
