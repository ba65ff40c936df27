package mix

import "counterpour/flavor"

// Stirred returns the water that stirring with ice adds, as a fraction of the
// volume before ice, for a strength before ice given as a fraction by volume:
// −1.21 a² + 1.246 a + 0.145 (Arnold, Liquid Intelligence, 2014; from memory).
// Its drinks run from 0.29 to 0.43; nothing checks a against that.
func Stirred(a float64) float64 { return -1.21*a*a + 1.246*a + 0.145 }

// Shaken is the same for shaking: −1.567 a² + 1.742 a + 0.203 (ibid.); its
// drinks run from 0.18 to 0.32.
func Shaken(a float64) float64 { return -1.567*a*a + 1.742*a + 0.203 }

// The equations are trusted between these strengths. Above, they turn over and mean
// nothing, so the strength is taken as the upper one. Below, they were fitted
// to no drink, and fall far short of the ice that cooling even water takes.
const (
	lowestEquationABV  = 0.15
	highestEquationABV = 0.50
)

// What the energy balance gives for a drink without alcohol, 8 g of sugar and
// 1 g of acid in 100 mL, stirred and shaken as is usual: the far end of the
// line that stands in for the equations below lowestEquationABV.
const (
	stirredWithoutAlcohol = 0.22
	shakenWithoutAlcohol  = 0.36
)

// equation is one of the published dilutions.
type equation int

const (
	noEquation equation = iota // no ice
	stirredEquation
	shakenEquation
)

// share returns the water added over the volume before ice, for a strength
// before ice as a fraction by volume.
func (e equation) share(a float64) float64 {
	var dry float64
	var published func(float64) float64
	switch e {
	case stirredEquation:
		dry, published = stirredWithoutAlcohol, Stirred
	case shakenEquation:
		dry, published = shakenWithoutAlcohol, Shaken
	default:
		return 0
	}
	if a < lowestEquationABV {
		return dry + (published(lowestEquationABV)-dry)*a/lowestEquationABV
	}
	return published(min(a, highestEquationABV))
}

// IceML estimates the water in mL that the usual ice adds to a drink. stillML is mixed
// by the method and has the strength, a fraction by volume; topML goes in afterwards.
// Where nothing is poured hot, the estimate is that of [Mixer.Mix] to within a twentieth
// of the volume; it leaves out what is dissolved in the drink.
func IceML(m flavor.Method, s flavor.Service, stillML, topML, strength float64) float64 {
	r := ruleFor(m, s)
	water := r.equation.share(strength) * r.times * stillML
	if standingIce(s) == NoIce {
		return water
	}
	least := mixedShare
	switch {
	case r.equation == noEquation:
		least = builtShare
	case r.ice == CrushedIce:
		least = crushedShare
	}
	return max(water, least*stillML) + topShare*topML
}

// The water that ice in a glass gives, as shares of what is poured over it, from the heat
// balance: to what is built on cubes (built); to what was mixed and is too weak to be chilled by
// its equation, on cubes (mixed) and on crushed ice (crushed); and to what goes on top (top).
// Each drink ends at a degree or so.
const (
	builtShare   = 0.26
	mixedShare   = 0.30
	crushedShare = 0.38
	topShare     = 0.035
)

// blendedOverShaken is that of a blended drink against the shaken equation:
// 0.90 of the volume at 30 % vol, where shaking would give 0.585 (ibid., its
// least certain row).
const blendedOverShaken = 1.54

// blenderWork is the heat that a blender stirs in, in J per mL before ice:
// about 400 W for 15 s on 100 mL, from memory. Shaking by hand adds less than a
// tenth of it, which is left out.
const blenderWork = 60

// dilutionRule says how one method mixes a drink with ice.
type dilutionRule struct {
	equation equation
	times    float64 // of what the equation gives
	relative float64 // spread of the dilution, one standard deviation, relative
	ice      IceKind // the usual one
	vessel   Vessel  // the usual one

	// What only the energy balance needs.
	left   float64 // share of the way from bar to freezing point left at the end
	broken bool    // the ice is thrown about, so the size of the pieces matters little
	work   float64 // J per mL before ice, stirred in
}

// ruleFor returns the rule for a method and a service; a method that is not
// known is taken as built. The equations for shaking and stirring are
// published, the factors on them common practice where no source is named.
// What is left of the way to the freezing point is judged from the
// temperatures that drinks are served at by common practice: shaken −4 to
// −7 °C, stirred −3 to 0 °C. A drink built on cubes has no equation: see
// [setting.stand].
//
// A hot drink meets no ice whatever the method, nor does a neat one that is
// built or stirred: to shake, throw or swizzle takes ice.
func ruleFor(m flavor.Method, s flavor.Service) dilutionRule {
	if s == flavor.Hot || s == flavor.Neat && m == flavor.Stir {
		return withoutIce
	}
	switch m {
	case flavor.Shake, flavor.DryShake: // the dry shake adds nothing: the shake on ice after it dilutes
		return dilutionRule{equation: shakenEquation, times: 1, relative: 0.08, ice: Cubes, vessel: SteelShaker, left: 0.05, broken: true}
	case flavor.Stir:
		return dilutionRule{equation: stirredEquation, times: 1, relative: 0.08, ice: Cubes, vessel: MixingGlass, left: 0.35}
	case flavor.Throw:
		return dilutionRule{equation: stirredEquation, times: 0.9, relative: 0.12, ice: Cubes, vessel: SteelShaker, left: 0.40}
	case flavor.Swizzle:
		return dilutionRule{equation: shakenEquation, times: 1.1, relative: 0.15, ice: CrushedIce, vessel: ServingGlass, left: 0.05, broken: true}
	case flavor.Blend:
		return dilutionRule{equation: shakenEquation, times: blendedOverShaken, relative: 0.15, ice: CrushedIce, vessel: BlenderJar, broken: true, work: blenderWork}
	}
	return builtRule(s)
}

// withoutIce is the rule of a drink that meets no ice.
var withoutIce = dilutionRule{ice: NoIce, vessel: NoVessel}

// builtRule is the rule of a drink built in its glass. The ice is in it first
// and has cooled the glass; what melted then is tipped out (common practice).
func builtRule(s flavor.Service) dilutionRule {
	switch s {
	case flavor.Up, flavor.Neat:
		return withoutIce
	case flavor.Crushed: // stirred until the cup frosts
		return dilutionRule{equation: stirredEquation, times: 1, relative: 0.15, ice: CrushedIce, vessel: NoVessel, left: 0.30}
	}
	return dilutionRule{relative: 0.15, ice: Cubes, vessel: NoVessel}
}
