package mix

import "counterpour/flavor"

// HoneySugarPercent is the sugars in honey by mass: USDA National Nutrient Database
// for Standard Reference, Release 26, NDB 19296. A refractometer reads what is not
// water, 82.90 %.
const HoneySugarPercent = 82.12

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

// BrixToGPerL returns the grams of sugar in a litre at 20 °C of a syrup of brix
// per cent by mass, by the ICUMSA sucrose equation. It fails outside 0 to 85.
func BrixToGPerL(brix float64) (float64, error) {
	if err := within("brix", brix, 0, maxBrix, " °Bx"); err != nil {
		return 0, err
	}
	return syrupOf(brix, 0).SugarGPerL, nil
}

// GPerLToBrix is the inverse of [BrixToGPerL]. It fails below 0 and above what
// 85 °Bx holds, 1227 g/L.
func GPerLToBrix(gPerL float64) (float64, error) {
	most := syrupOf(maxBrix, 0).SugarGPerL
	if !(gPerL >= 0 && gPerL <= most) {
		return 0, flavor.Invalid("sugar", gPerL, "%v g/L is not a syrup; use 0 to %.0f g/L", gPerL, most)
	}
	return Bisect(0, maxBrix, func(b float64) bool { return syrupOf(b, 0).SugarGPerL < gPerL }), nil
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

// Blend is two syrups mixed to a third. A syrup of 0 °Bx is water.
type Blend struct {
	First, Second, Mixed Syrup
}

// BlendSyrups returns how much of two syrups, given by brix, makes yieldML of a
// target between them: the masses stand as the distances of the other from the
// target. Volumes do not quite add up to the yield. It fails for values out of
// range, and for a target that does not lie between the two.
func BlendSyrups(firstBrix, secondBrix, targetBrix, yieldML float64) (Blend, error) {
	for _, b := range []struct {
		where string
		brix  float64
	}{{"first brix", firstBrix}, {"second brix", secondBrix}, {"target brix", targetBrix}} {
		if err := within(b.where, b.brix, 0, maxBrix, " °Bx"); err != nil {
			return Blend{}, err
		}
	}
	if err := amount("yield", yieldML, maxML, "mL"); err != nil {
		return Blend{}, err
	}
	low, high := min(firstBrix, secondBrix), max(firstBrix, secondBrix)
	if targetBrix < low || targetBrix > high || low == high {
		return Blend{}, flavor.Invalid("target brix", targetBrix,
			"%v °Bx cannot be blended from %v and %v °Bx; choose a target between two that differ, or add sugar or water", targetBrix, firstBrix, secondBrix)
	}
	mixed := syrupOf(targetBrix, yieldML)
	first := mixed.MassG * (targetBrix - secondBrix) / (firstBrix - secondBrix)
	return Blend{First: weighed(firstBrix, first), Second: weighed(secondBrix, mixed.MassG-first), Mixed: mixed}, nil
}

// weighed is a syrup of a mass in grams.
func weighed(brix, massG float64) Syrup {
	return syrupOf(brix, massG/SyrupDensity(brix/100))
}

// HoneySyrup returns how much honey, whose sugars are honeyPercent by mass, and
// how much water make yieldML of a syrup of targetPercent sugars: the water in
// the honey counts. First is the honey, Second the water. Densities are those
// of sucrose, which for honey are within 0.5 %. [HoneySugarPercent] is usual.
// It fails as [BlendSyrups] does, and for a target of nothing.
func HoneySyrup(honeyPercent, targetPercent, yieldML float64) (Blend, error) {
	if targetPercent == 0 {
		return Blend{}, flavor.Invalid("target brix", targetPercent, "0 °Bx is water; choose a target above 0")
	}
	return BlendSyrups(honeyPercent, 0, targetPercent, yieldML)
}
