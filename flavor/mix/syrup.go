package mix

// SaturatedBrix is the sucrose that water holds at 20 °C, per cent by mass
// (Vavrinecz, as in the Sugar Technologists Manual; from memory). In a
// refrigerator it is near 64.7.
const SaturatedBrix = 66.6

// maxBrix is the thickest syrup that is worked out here; honey is below it.
const maxBrix = 85

// Syrup is sugar in water.
type Syrup struct {
	Brix          float64 // sugar, per cent by mass
	DensityGPerML float64 // at 20 °C
	SugarGPerL    float64
	YieldML       float64
	MassG         float64
	SugarG        float64
	WaterG        float64
	Crystals      bool // more sucrose than stays dissolved at 20 °C, if sucrose it is
}

// syrupOf fills in what follows from brix and a volume, both checked.
func syrupOf(brix, yieldML float64) Syrup {
	w := brix / 100
	s := Syrup{Brix: brix, DensityGPerML: SyrupDensity(w), YieldML: yieldML, Crystals: brix > SaturatedBrix}
	s.SugarGPerL = 1000 * w * s.DensityGPerML
	s.MassG = yieldML * s.DensityGPerML
	s.SugarG = w * s.MassG
	s.WaterG = s.MassG - s.SugarG
	return s
}

// MakeSyrup returns what to weigh for yieldML of syrup of brix per cent by
// mass: no water may boil away. It fails for a brix outside 0 to 85 or a yield
// that is not above zero and up to a cubic metre.
func MakeSyrup(brix, yieldML float64) (Syrup, error) {
	if err := within("brix", brix, 0, maxBrix, " °Bx"); err != nil {
		return Syrup{}, err
	}
	if err := amount("yield", yieldML, maxML, "mL"); err != nil {
		return Syrup{}, err
	}
	return syrupOf(brix, yieldML), nil
}
