package makeup

import "counterpour/flavor"

// Signal is one thing about the make-up of a drink that tells families apart:
// what sweetens it, what sours it, what lengthens it, how it is served. Each
// lies between 0 and 1 and hardly moves with the amounts, so that a drink out
// of balance still belongs to the family it set out for.
type Signal int

// The signals.
const (
	HasSour Signal = iota
	HasSyrup
	HasSpicedSyrup
	LiqueurSweetens // share of the sweetness that liqueurs bring
	SodaSweetens    // share of the sweetness that sodas bring
	ManySweeteners
	BitterSpirit // share of the alcohol that amari, bitter aperitifs and bitters bring
	WineSpirit   // share of the alcohol that aromatised and fortified wines bring
	PlainWine    // share of the alcohol that wine, beer and cider bring
	LiqueurSpirit
	HasBase
	TwoBases
	RumBase
	HasSoda
	HasSparkling
	HasJuice
	HasWeak // water, tea
	HasCoffee
	HasCream // or milk
	HasMilk  // as what lengthens
	HasYolk
	HasEggWhite
	HasHerb
	HasBitters
	HasAbsinthe
	HasWine    // aromatised or fortified, however little of the alcohol it brings
	HasDryWine // the same, and dry
	HasBeer    // beer or cider
	HasSavoury // brines and sauces, and juices that are salty
	HasAlcohol
	Even // how equal the pours are
	IsShaken
	IsStirred
	IsBuilt
	IsBlended
	IsCrushed // crushed ice, or swizzled
	IsUp
	IsRocks
	IsLong
	IsHot

	NumSignals = int(IsHot) + 1
)

var signalNames = [NumSignals]string{"sour", "syrup", "spiced syrup", "liqueur sweetens", "soda sweetens", "many sweeteners",
	"bitter spirit", "wine spirit", "plain wine", "liqueur spirit", "base", "two bases", "rum", "soda", "sparkling", "juice",
	"weak", "coffee", "cream", "milk", "yolk", "egg white", "herb", "bitters", "absinthe",
	"wine", "dry wine", "beer", "savoury", "alcohol", "even",
	"shaken", "stirred", "built", "blended", "crushed", "up", "rocks", "long", "hot"}

// String returns the signal's name as the families' file writes it.
func (s Signal) String() string { return signalNames[s] }

// ParseSignal returns the signal that a name names.
func ParseSignal(name string) (Signal, bool) {
	for i, n := range signalNames {
		if n == name {
			return Signal(i), true
		}
	}
	return 0, false
}

// Fixed reports whether the signal does not depend on the amounts at all.
func (s Signal) Fixed() bool { return s >= IsShaken }

// Signals is a value for each signal.
type Signals [NumSignals]float64

// SignalsOf reads the signals of a spec with other amounts, in mL of each pour, given its
// parts.
func SignalsOf(s *flavor.Spec, parts []Part, ml []float64) Signals {
	var t sums
	for i := range parts {
		t.add(&parts[i], parts[i].Amount(ml))
	}
	of := &t.of
	beside := share(t.baseEthanol, t.ethanol) // still wine beside a spirit does what vermouth does
	liqueur, wine := behindLiqueur(parts, ml), behindWine(parts, ml)
	backing := mostBacking * max(liqueur, wine) // what backs a liqueur or a wine up is a part of that
	out := Signals{
		HasSour:         Presence(t.sour, t.total, HalfLiquid),
		HasSyrup:        Presence(of[syrupSweet], t.total, HalfLiquid),
		HasSpicedSyrup:  Presence(of[spicedSweet], t.total, HalfLiquid),
		LiqueurSweetens: share(of[liqueurSweet], t.sweet),
		SodaSweetens:    share(of[sodaSweet], t.sweet),
		BitterSpirit:    share(of[bitterStrong], t.ethanol),
		WineSpirit:      share(of[wineStrong]+mostBacking*wine*t.baseEthanol, t.ethanol),
		PlainWine:       share(of[plainStrong], t.ethanol),
		LiqueurSpirit:   share(of[liqueurStrong]+mostBacking*liqueur*t.baseEthanol, t.ethanol),
		HasBase:         Presence((1-backing)*t.baseEthanol, t.total, HalfLiquid),
		RumBase:         share(t.rumEthanol, t.ethanol),
		HasSoda:         Certainty(of[sodaML], t.total, HalfLength),
		HasSparkling:    Certainty(of[sparklingML], t.total, HalfLength),
		HasJuice:        Certainty(of[juiceML], t.total, HalfLength),
		HasWeak:         Certainty(of[weakML], t.total, HalfWater),
		HasCoffee:       Certainty(of[coffeeML], t.total, HalfLength),
		HasCream:        Presence(of[creamML]+of[milkML], t.total, HalfLiquid),
		HasMilk:         Certainty(of[milkML], t.total, HalfLength),
		HasYolk:         Presence(of[yolkML], t.total, HalfLiquid),
		HasEggWhite:     Presence(of[whiteML], t.total, HalfLiquid),
		HasHerb:         Presence(of[herbML], t.total, halfSeasoning),
		HasBitters:      Presence(of[bittersML], t.total, halfSeasoning),
		HasAbsinthe:     Presence(of[aniseML], t.total, HalfLiquid),
		HasWine:         Presence(of[wineML]+beside*of[stillML], t.total, HalfWine),
		HasDryWine:      Presence(t.dry()+beside*t.dryStill, t.total, HalfWine),
		HasBeer:         Presence(of[beerML], t.total, HalfLength),
		HasSavoury:      Presence(of[savouryML], t.total, HalfLiquid),
		HasAlcohol:      Presence(t.ethanol, t.total, HalfWine),
		Even:            t.evenness(),
	}
	out[ManySweeteners] = (Presence(t.sweeteners[1], t.total, HalfLiquid) + Presence(t.sweeteners[2], t.total, HalfLiquid)) / 2
	out[TwoBases] = Presence((1-backing)*t.bases[1], t.total, HalfLiquid)
	out.setServing(s.Method, s.Service)
	return out
}

// share is a part of a whole; 0 of nothing.
func share(part, whole float64) float64 {
	if whole <= 0 {
		return 0
	}
	return part / whole
}

var signalOfMethod = map[flavor.Method]Signal{
	flavor.Shake: IsShaken, flavor.DryShake: IsShaken, flavor.Stir: IsStirred, flavor.Throw: IsStirred,
	flavor.Build: IsBuilt, flavor.Swizzle: IsCrushed, flavor.Blend: IsBlended,
}

var signalOfService = map[flavor.Service]Signal{
	flavor.Up: IsUp, flavor.Neat: IsUp, flavor.Rocks: IsRocks, flavor.Crushed: IsCrushed, flavor.Long: IsLong, flavor.Hot: IsHot,
}

func (s *Signals) setServing(m flavor.Method, v flavor.Service) {
	if is, ok := signalOfMethod[m]; ok {
		s[is] = 1
	}
	if is, ok := signalOfService[v]; ok {
		s[is] = 1
	}
}
