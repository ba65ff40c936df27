package mix

import (
	"math"
	"slices"

	"counterpour/flavor"
)

// IceKind is the shape of the ice.
type IceKind string

// The kinds of ice.
const (
	IceOfMethod IceKind = ""           // what the method and the service call for
	Cubes       IceKind = "cubes"      // of about 3 cm
	LargeCube   IceKind = "large cube" // one of about 5 cm
	CrushedIce  IceKind = "crushed"    // pieces of about 7 mm
	NoIce       IceKind = "none"       // a batch, or a drink served as it was poured
)

// IceKinds lists the kinds of ice.
func IceKinds() []IceKind { return []IceKind{Cubes, LargeCube, CrushedIce, NoIce} }

// Vessel is what a drink is mixed in.
type Vessel string

// The vessels.
const (
	VesselOfMethod Vessel = ""             // what the method calls for
	SteelShaker    Vessel = "steel shaker" // two tins
	GlassAndTin    Vessel = "glass and tin"
	MixingGlass    Vessel = "mixing glass"
	BlenderJar     Vessel = "blender jar"
	ServingGlass   Vessel = "serving glass"
	NoVessel       Vessel = "none" // chilled beforehand
)

// Vessels lists the vessels.
func Vessels() []Vessel {
	return []Vessel{SteelShaker, GlassAndTin, MixingGlass, BlenderJar, ServingGlass, NoVessel}
}

// Heat that vessels take, from memory. Thin steel follows the drink throughout,
// at 0.50 J/(g K). Heat goes into a thick wall no deeper than it can travel in
// the time: a wall of effusivity e in W√s/(m² K), held at another temperature for
// t seconds, takes 2e√(t/π) J/(m² K) (Carslaw and Jaeger, Conduction of Heat in
// Solids, 1959: the semi-infinite solid). Soda-lime glass has e = 1450 (1.0 W/(m K),
// 2500 kg/m³, 840 J/(kg K)), polycarbonate 540 (0.2, 1200, 1200).
const (
	steelHeat          = 0.50
	glassEffusivity    = 1450.0
	plasticEffusivity  = 540.0
	wallOfOneDrinkM2   = 0.014 // base and wall that a drink and its ice touch; common practice
	wallOfShakenM2     = 0.030 // all of a glass that is shaken
	wallOfBlenderJarM2 = 0.020
)

// intoWall returns the heat in J/K that a wall takes in so many seconds.
func intoWall(effusivity, areaM2, seconds float64) float64 {
	return 2 * effusivity * areaM2 * math.Sqrt(seconds/math.Pi)
}

// heatJPerK returns the heat capacity in J/K of the part of a vessel that cools
// with one drink. Weights, areas and times are common practice: 300 g of steel in
// two tins and 200 g in one; 12 s of shaking, 20 s of stirring, swizzling and
// building, 15 s in the blender. It is 0 for a vessel that is not known.
func (v Vessel) heatJPerK() float64 {
	switch v {
	case SteelShaker:
		return 300 * steelHeat
	case GlassAndTin:
		return 200*steelHeat + intoWall(glassEffusivity, wallOfShakenM2, 12)
	case MixingGlass, ServingGlass:
		return intoWall(glassEffusivity, wallOfOneDrinkM2, 20)
	case BlenderJar:
		return intoWall(plasticEffusivity, wallOfBlenderJarM2, 15)
	}
	return 0
}

// Ice is the ice of a bar and what else decides how cold a drink gets and how
// much water that takes. The zero value is the ice that the published
// equations were measured with: melting, drained, in a bar at 20 °C.
type Ice struct {
	// Kind is the shape; empty means that which the method calls for. A drink
	// poured straight meets no ice whatever the kind.
	Kind IceKind
	// TemperatureC is that of the ice, −40 to 0 °C; zero means ice that melts.
	TemperatureC float64
	// Wetness is the water on the ice in g per g of ice, up to 0.5. Zero means
	// the usual of the kind for melting ice, and none for colder ice, on which
	// water would freeze. Usual is a film of 0.1 mm: 0.022 on cubes, 0.013 on a
	// large cube, 0.09 on crushed ice (computed from their size).
	Wetness float64
	// GramsPerML is the ice per mL that meets it, 0.3 to 5; zero means 1.5
	// (common practice).
	GramsPerML float64
	// BarC is the temperature of bottles and vessel, 1 to 45 °C; zero means 20.
	BarC float64
	// Vessel is what the drink is mixed in; empty means that of the method.
	Vessel Vessel
}

// Defaults of [Ice], and the temperature of what is added after the ice.
const (
	usualIcePerML = 1.5
	usualBarC     = 20.0
	fridgeC       = 4.0
	usualHotC     = 65.0 // of a hot drink as it is served; common practice
)

// Check reports which field of i is out of range, as a fault of kind
// [flavor.ErrInvalid], or nil.
func (i Ice) Check() error {
	if i.Kind != IceOfMethod && !slices.Contains(IceKinds(), i.Kind) {
		return flavor.Invalid("ice kind", i.Kind, "%q is not a kind of ice; use one of %v", i.Kind, IceKinds())
	}
	if i.Vessel != VesselOfMethod && !slices.Contains(Vessels(), i.Vessel) {
		return flavor.Invalid("vessel", i.Vessel, "%q is not a vessel; use one of %v", i.Vessel, Vessels())
	}
	for _, f := range []struct {
		where     string
		value     float64
		low, high float64
		unit      string
	}{
		{"ice temperature", i.TemperatureC, -40, 0, " °C"},
		{"ice wetness", i.Wetness, 0, 0.5, " g/g"},
		{"ice per mL", orElse(i.GramsPerML, usualIcePerML), 0.3, 5, " g"},
		{"bar temperature", orElse(i.BarC, usualBarC), 1, 45, " °C"},
	} {
		if err := within(f.where, f.value, f.low, f.high, f.unit); err != nil {
			return err
		}
	}
	return nil
}

// orElse returns v, or usual if v is zero.
func orElse(v, usual float64) float64 {
	if v == 0 {
		return usual
	}
	return v
}

// iceInfo is what sets the kinds of ice apart.
type iceInfo struct {
	film  float64 // g of water per g of ice, drained
	cools float64 // share of the unmelted ice that follows the drink below 0 °C
	speed float64 // how fast it cools a drink that is not thrown about, cubes 1
}

// info follows from the size of the pieces: a film of 0.1 mm; conduction into ice of
// 1.2 mm²/s, which in 20 s brings a cube of 3 cm three quarters of the way to the
// temperature at its surface, and one of 5 cm half of it (Carslaw and Jaeger, as
// above: a cube follows as the product of three slabs); and speed judged from the
// surface.
func (k IceKind) info() iceInfo {
	switch k {
	case LargeCube:
		return iceInfo{film: 0.013, cools: 0.5, speed: 0.6}
	case CrushedIce:
		return iceInfo{film: 0.093, cools: 1, speed: 1.5}
	}
	return iceInfo{film: 0.022, cools: 0.8, speed: 1}
}

// standingIce is the usual ice in the glass of a service.
func standingIce(s flavor.Service) IceKind {
	switch s {
	case flavor.Rocks, flavor.Long:
		return Cubes
	case flavor.Crushed:
		return CrushedIce
	}
	return NoIce
}

// setting is a rule with the ice that it is carried out with.
type setting struct {
	dilutionRule
	iceC, wet, perML, barC, vesselJ float64
	startC                          float64 // of what is mixed, before it meets ice
	topC                            float64 // of what goes in after it
	cools                           float64
	scale                           float64 // of the published dilution
	standing                        float64 // share of the way to 0 °C left by the ice in the glass; 1 without
}

// settingFor resolves the defaults of i for a method and a service. Scale is 1, and
// what is mixed is as warm as the bar, what goes in after it as cold as the refrigerator.
func settingFor(m flavor.Method, s flavor.Service, i Ice) setting {
	set := setting{dilutionRule: ruleFor(m, s), scale: 1, iceC: i.TemperatureC, wet: i.Wetness,
		perML: orElse(i.GramsPerML, usualIcePerML), barC: orElse(i.BarC, usualBarC)}
	set.startC, set.topC = set.barC, fridgeC
	usual := set.ice
	if i.Kind != IceOfMethod && usual != NoIce { // a drink poured straight stays so
		set.ice = i.Kind
	}
	inGlass := standingIce(s)
	if i.Kind != IceOfMethod && inGlass != NoIce {
		inGlass = i.Kind
	}
	set.standing = 1
	if inGlass != NoIce {
		set.standing = math.Pow(leftOnIce, inGlass.info().speed)
	}
	if set.ice == NoIce {
		set.equation, set.work = noEquation, 0
	}
	if i.Vessel != VesselOfMethod {
		set.vessel = i.Vessel
	}
	set.vesselJ = set.vessel.heatJPerK()
	info := set.ice.info()
	set.cools = info.cools
	if i.Wetness == 0 && i.TemperatureC == 0 {
		set.wet = info.film
	}
	if !set.broken {
		set.left = math.Pow(set.left, info.speed/usual.info().speed)
	}
	return set
}

// pour tells how warm the pours of a spec come: a hot drink with its mug, and a hot
// pour among others where they even out. What is cold makes no difference: the
// equations were measured with juice from the refrigerator.
func (s *setting) pour(spec *flavor.Spec) {
	switch {
	case spec.Service == flavor.Hot:
		s.barC = HotC(spec, nil)
		s.startC = s.barC
	case hotPoured(spec):
		s.startC = evenedHot(spec, s.startC, func(p *flavor.Pour) bool { return !afterIce(p) })
		s.topC = evenedHot(spec, s.topC, afterIce)
	}
}

// hotPoured reports whether a pour of a spec is said to be hot.
func hotPoured(s *flavor.Spec) bool {
	return slices.ContainsFunc(s.Pours, func(p flavor.Pour) bool { return p.Heat == flavor.HeatHot })
}

// WithIce returns a mixer that mixes with the ice given. Dilution is then what
// the published equations give, times what the energy balance says the ice
// changes: its water over that of the zero value of [Ice]. It fails if a field
// is out of range.
func (m *Mixer) WithIce(i Ice) (*Mixer, error) {
	if err := i.Check(); err != nil {
		return nil, err
	}
	return &Mixer{freezing: m.freezing, ice: i}, nil
}
