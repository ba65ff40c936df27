package tasting

import (
	"fmt"
	"math"
	"math/rand/v2"

	"counterpour/flavor"
	"counterpour/flavor/drill/wording"
	"counterpour/flavor/mix"
	"counterpour/flavor/ratio"
)

// FlightRequest asks for a tasting flight.
type FlightRequest struct {
	Spec    *flavor.Spec
	Axis    ratio.Axis
	Builds  int     // 3 or 5
	Step    float64 // just-noticeable differences between neighbours, 0.5 to 4
	BuildML float64 // finished, for each taster; 0 means 60, or less where that were too much alcohol
	Tasters int     // 1 to 60
	// MaxDrinks is the most a taster may take in, in United States standard
	// drinks; 0 means MaxTasterDrinks, which is also the most that may be set.
	MaxDrinks float64
	Seed      uint64
}

// Limits of a flight.
const (
	DefaultBuildML = 60.0
	leastBuildML   = 10.0
	mostBuildML    = 120.0
	buildGrain     = 5.0 // mL, of a build whose size nobody asked for
	leastStep      = 0.5 // below, hardly anybody tells neighbours apart
	mostStep       = 4.0
	mostTasters    = 60
	// MaxTasterDrinks is the most that one taster takes in over a flight, in
	// standard drinks of 14 g, counted as if nothing were spat out. It is a
	// house rule (common practice, no source), not medical advice.
	MaxTasterDrinks = 2.0
	USDrinkG        = 14.0 // g of ethanol in one US standard drink: NIAAA, What is a standard drink
	leastABV        = 0.5  // % vol, for a drink to be stretched
)

// bench is where builds are mixed.
type bench struct{ mixer *mix.Mixer }

// Glass is one glass of a flight.
type Glass struct {
	Step    int     // places from the middle: −2 … 2
	JND     float64 // from the middle, along the axis
	Code    int     // three digits, what the taster sees
	Spec    flavor.Spec
	Drink   *mix.Drink // as the usual ice makes it
	Value   float64    // of the axis in the glass, in Unit
	Drift   float64    // what else moved, in just-noticeable differences of the axis that moved most
	DriftOf ratio.Axis // which one that is
	Sheet   BatchSheet
}

// BatchSheet is how to make one build for every taster.
type BatchSheet struct {
	Servings float64 // with one to spare
	Pours    []flavor.Pour
	WaterML  float64 // in place of ice
	TotalML  float64
	PourML   float64       // for one taster
	Tops     []flavor.Pour // into each glass at the end
}

// Flight is a tasting, ready to be set up.
type Flight struct {
	Axis     ratio.Axis
	Unit     string
	Builds   []Glass // the least first
	Orders   [][]int // for each taster, the codes in the order to serve them
	EthanolG float64 // that one taster takes in if nothing is spat out
	Drinks   float64 // the same in United States standard drinks
	Cautions []string
	Marks    []flavor.AllergenMark // of every glass; an ingredient that nobody has stated may bring any
	// Lesson is what the flight teaches about its axis, to be said once it is tasted.
	Lesson string
	// Stray is what else moves further from the middle than the axis does from one build to
	// the next, in just-noticeable differences; nil if nothing does.
	Stray   *Stray
	Foams   bool // the drink lives by its foam, which no batch keeps
	Watered bool // nothing differs but the water that the ice gives
	Hot     bool // it is served hot, and so is the batch
}

// Stray is another axis that moves with that of a flight.
type Stray struct {
	Axis  ratio.Axis
	Steps float64 // at most, from the middle
}

// PlanFlight plans small builds of one drink, stepped along one axis of the finished
// drink by a number of just-noticeable differences, the spec as it is in the
// middle. The pour that carries the axis is moved until the glass has exactly
// the step wanted; what that moves besides is said. The length of a drink that nothing
// lengthens but its ice is moved by that water: stirred too short, rightly, too long. It
// fails with a fault if the request is out of range, if no pour carries the axis, its amount
// cannot reach a step or it moves another axis much further, or if a taster would take in
// more alcohol than the limit.
func PlanFlight(mixer *mix.Mixer, r FlightRequest) (*Flight, error) {
	free := r.BuildML == 0
	if err := r.check(); err != nil {
		return nil, err
	}
	levers := leversOf(r.Spec, r.Axis)
	if len(levers) == 0 {
		return nil, flavor.Invalid("axis", r.Axis.String(), "no pour of this drink changes its %s and little else; choose another axis", r.Axis.Noun())
	}
	middle, err := mixer.Mix(r.Spec)
	if err != nil {
		return nil, err
	}
	if r.Axis == ratio.Long && middle.ABV < leastABV {
		return nil, flavor.Invalid("axis", r.Axis.String(), "a drink of %.1f %% vol has no alcohol to vary; choose another axis", middle.ABV)
	}
	f := &Flight{Axis: r.Axis, Unit: wording.Unit(r.Axis)}
	rng := rand.New(rand.NewPCG(r.Seed, flightStream))
	blind := codes(r.Builds, rng)
	builder := bench{mixer}
	for _, by := range levers {
		if f.Builds, err = builder.glasses(&r, by, blind, middle); err == nil {
			f.Watered = by == iceWater
			break
		}
	}
	if err != nil {
		return nil, err
	}
	for i := range f.Builds {
		f.EthanolG += f.Builds[i].Drink.After.Ethanol
	}
	f.Drinks = f.EthanolG / USDrinkG
	if f.Drinks > r.MaxDrinks {
		if fits := buildGrain * math.Floor(r.BuildML*r.MaxDrinks/f.Drinks/buildGrain); free && fits >= leastBuildML {
			r.BuildML = fits
			return PlanFlight(mixer, r)
		}
		return nil, tooMuch(f, &r)
	}
	if f.Orders, err = serve(blind, r.Tasters, rng); err != nil {
		return nil, err
	}
	f.Cautions, f.Marks, f.Lesson, f.Stray = wording.Cautions(f.EthanolG, f.Drinks), r.Spec.Allergens(), wording.Lesson(r.Axis), f.stray(r.Step)
	f.Foams, f.Hot = r.Spec.HasKin(flavor.KinFoam), r.Spec.Service == flavor.Hot
	return f, nil
}

// stray returns what else moves further from the middle than a step of the axis.
func (f *Flight) stray(step float64) *Stray {
	var most *Stray
	for i := range f.Builds {
		if b := &f.Builds[i]; b.Drift > step && (most == nil || b.Drift > most.Steps) {
			most = &Stray{Axis: b.DriftOf, Steps: b.Drift}
		}
	}
	return most
}

func (r *FlightRequest) check() error {
	if r.BuildML == 0 {
		r.BuildML = DefaultBuildML
	}
	if r.MaxDrinks == 0 {
		r.MaxDrinks = MaxTasterDrinks
	}
	switch {
	case r.Spec == nil || len(r.Spec.Pours) == 0:
		return flavor.Invalid("spec", "", "a flight needs a drink; write at least one pour")
	case r.Axis < 0 || int(r.Axis) >= ratio.NumAxes:
		return flavor.Invalid("axis", int(r.Axis), "the axis is not known; use one of %v", ratio.Axes())
	case r.Builds != 3 && r.Builds != 5:
		return flavor.Invalid("builds", r.Builds, "%d builds have no middle build to taste against; use 3 or 5", r.Builds)
	case !(r.Step >= leastStep && r.Step <= mostStep):
		return flavor.Invalid("step", r.Step, "%v is no step to taste; use %v to %v noticeable steps", r.Step, leastStep, mostStep)
	case !(r.BuildML >= leastBuildML && r.BuildML <= mostBuildML):
		return flavor.Invalid("build_ml", r.BuildML, "%v ml is no small build; use %v to %v", r.BuildML, leastBuildML, mostBuildML)
	case r.Tasters < 1 || r.Tasters > mostTasters:
		return flavor.Invalid("tasters", r.Tasters, "%d tasters; use 1 to %d", r.Tasters, mostTasters)
	case !(r.MaxDrinks > 0 && r.MaxDrinks <= MaxTasterDrinks):
		return flavor.Invalid("max_drinks", r.MaxDrinks, "the limit may be lowered, not raised; use more than 0 and up to %v standard drinks", MaxTasterDrinks)
	}
	return nil
}

// serve gives each taster a row of the balanced square, as codes.
func serve(blind []int, tasters int, rng *rand.Rand) ([][]int, error) {
	rows, err := Williams(len(blind))
	if err != nil {
		return nil, err
	}
	first := rng.IntN(len(rows))
	out := make([][]int, tasters)
	for i := range out {
		for _, b := range rows[(first+i)%len(rows)] {
			out[i] = append(out[i], blind[b])
		}
	}
	return out, nil
}

// tooMuch is the fault of a flight that holds more than the limit, with what brings
// it below.
func tooMuch(f *Flight, r *FlightRequest) error {
	var remedies []string
	if fits := math.Floor(r.BuildML * r.MaxDrinks / f.Drinks); fits >= leastBuildML {
		remedies = append(remedies, fmt.Sprintf("pour %.0f ml each", fits))
	}
	if r.Builds == 5 && threeG(f)/USDrinkG <= r.MaxDrinks {
		remedies = append(remedies, "taste 3 builds")
	}
	if len(remedies) == 0 {
		remedies = append(remedies, "taste a weaker drink")
	}
	remedy := flavor.JoinOr(remedies)
	return flavor.Invalid("build_ml", r.BuildML, "%d builds of %.0f ml hold %.1f g of ethanol for each taster, %.2f standard drinks (United States); the limit is %.2f: %s",
		r.Builds, r.BuildML, f.EthanolG, f.Drinks, r.MaxDrinks, remedy)
}

// threeG is the ethanol in g of the three builds in the middle of five.
func threeG(f *Flight) (g float64) {
	for i := range f.Builds {
		if b := &f.Builds[i]; b.Step >= -1 && b.Step <= 1 {
			g += b.Drink.After.Ethanol
		}
	}
	return g
}

// Line says a build on one line, as it is written on the bench, never shown to
// a taster.
func (b *Glass) Line() string { return wording.Glass(b.Code, b.JND, b.Spec.Pours) }
