package mix

import (
	"counterpour/flavor"
)

// Thermal properties: CRC Handbook of Chemistry and Physics and Sugar
// Technologists Manual (from memory).
const (
	LatentHeat     = 333.55 // J/g, ice at 0 °C
	waterHeat      = 4.19   // J/(g K)
	ethanolHeat    = 2.44   // J/(g K)
	solidsHeat     = 1.24   // J/(g K), crystalline sucrose
	steelHeat      = 0.50   // J/(g K), stainless steel
	ambientC       = 20.0
	shakerTinMassG = 300.0 // two-piece steel shaker, common practice
)

// Stirred returns the water that stirring with ice adds, as a fraction of the
// volume before ice, for a strength before ice given as a fraction by volume:
// −1.21 a² + 1.246 a + 0.145 (Arnold, Liquid Intelligence, 2014; from memory).
func Stirred(a float64) float64 { return -1.21*a*a + 1.246*a + 0.145 }

// Shaken is the same for shaking: −1.567 a² + 1.742 a + 0.203 (ibid.).
func Shaken(a float64) float64 { return -1.567*a*a + 1.742*a + 0.203 }

// dilutionRule says how much ice melts into a drink for one method.
type dilutionRule struct {
	share    func(a float64) float64 // of the volume before ice
	relative float64                 // spread, one standard deviation, relative
	vessel   float64                 // J/K of the vessel that cools with the drink
}

// Strengths beyond this are taken as this: the published equations turn over
// near 50 % vol and mean nothing there.
const maxEquationABV = 0.50

func capped(f func(float64) float64, times float64) func(float64) float64 {
	return func(a float64) float64 { return times * f(min(a, maxEquationABV)) }
}

// builtOverStirred is the dilution of a drink built on ice against the stirred
// equation: the same book's old fashioned, 0.24 at 36 % vol, where stirring
// would give 0.44.
const builtOverStirred = 0.55

// ruleFor returns the rule for a method and a service. The equations for
// shaking and stirring are published; the others scale them by common
// practice, but for blending, 0.90 of the volume at 30 % vol (ibid., its least
// certain row).
func ruleFor(m flavor.Method, s flavor.Service) dilutionRule {
	switch m {
	case flavor.Shake, flavor.DryShake:
		return dilutionRule{capped(Shaken, 1), 0.08, shakerTinMassG * steelHeat}
	case flavor.Stir:
		return dilutionRule{capped(Stirred, 1), 0.08, mixingGlassHeat}
	case flavor.Throw:
		return dilutionRule{capped(Stirred, 0.9), 0.12, shakerTinMassG * steelHeat}
	case flavor.Swizzle:
		return dilutionRule{capped(Shaken, 1.1), 0.15, mixingGlassHeat}
	case flavor.Blend:
		return dilutionRule{capped(Shaken, 0.90/Shaken(0.30)), 0.15, shakerTinMassG * steelHeat}
	}
	switch s { // built in the glass
	case flavor.Up:
		return dilutionRule{func(float64) float64 { return 0 }, 0, 0}
	case flavor.Crushed:
		return dilutionRule{capped(Stirred, 1), 0.15, glassHeat}
	}
	return dilutionRule{capped(Stirred, builtOverStirred), 0.15, glassHeat}
}

// Heat capacities in J/K of a mixing glass and a serving glass, of 500 g and
// 250 g at 0.84 J/(g K), of which about half follows the drink (from memory).
const (
	mixingGlassHeat = 210.0
	glassHeat       = 105.0
)

// wetIceShare is the share of added water that was on the ice already and so
// cools less than melting ice would; common practice for drained ice.
const wetIceShare = 0.15

// heatCapacity returns the heat capacity of l in J/K, as the sum of its parts.
func heatCapacity(l *Ledger) float64 {
	return l.Water*waterHeat + l.Ethanol*ethanolHeat + (l.Sugar+l.Acid+l.Texture+l.Salt)*solidsHeat
}

// chilled returns the temperature in °C to which meltG grams of water from ice
// at 0 °C bring warm, a mixture at room temperature in a vessel of the given
// heat capacity in J/K: an energy balance, no colder than the freezing point
// of the finished mixture.
func chilled(warm, cold *Ledger, meltG, vessel float64, f *freezing) float64 {
	if meltG <= 0 {
		return ambientC
	}
	capacity := heatCapacity(warm) + vessel
	melted := meltG * (1 - wetIceShare)
	t := (capacity*ambientC - melted*LatentHeat) / (capacity + meltG*waterHeat)
	return max(t, f.point(cold))
}

// EquilibriumMelt returns the grams of ice at 0 °C that melt while l, at
// startC, cools in a vessel of the given heat capacity to the freezing point
// of what results: the most dilution that chilling alone can cause. It is the
// cross-check on the published equations.
func (m *Mixer) EquilibriumMelt(l Ledger, startC, vesselJPerK float64) (meltG, finalC float64) {
	capacity := heatCapacity(&l) + vesselJPerK
	lo, hi := 0.0, capacity*(startC+50)/LatentHeat
	for range 60 {
		meltG = (lo + hi) / 2
		cold := l
		cold.Water += meltG
		finalC = m.freezing.point(&cold)
		// Heat the drink gives up in cooling against heat that melting takes.
		if capacity*(startC-finalC) > meltG*(LatentHeat+waterHeat*finalC) {
			lo = meltG
		} else {
			hi = meltG
		}
	}
	return meltG, finalC
}
