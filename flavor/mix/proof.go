package mix

import "counterpour/flavor"

// Dilution is a spirit brought to a lower strength with water, at 20 °C.
type Dilution struct {
	SpiritML, SpiritG float64
	WaterML, WaterG   float64
	FinalML, FinalG   float64
	ABV               float64 // % vol
	MassPercent       float64 // ethanol, per cent by mass
	ContractionML     float64 // spirit and water measured apart, less the mixture; weak spirits swell a little
}

// Dilute returns the water that brings spiritML of a spirit from one strength
// to a lower one, both in % vol at 20 °C, and the volume that results, by OIML
// R 22: the ethanol stays, so the mass grows as the mass fraction falls. Sugar
// in the spirit is left out. It fails for a strength outside 0 to 100, a target
// that is 0 or above the source, and an amount that is not above zero.
func Dilute(spiritML, fromABV, toABV float64) (Dilution, error) {
	if err := amount("spirit", spiritML, maxML, "mL"); err != nil {
		return Dilution{}, err
	}
	if err := strengths(fromABV, toABV); err != nil {
		return Dilution{}, err
	}
	from := MassFraction(fromABV / 100)
	return diluted(spiritML*ethanolWater20(from), from, MassFraction(toABV/100)), nil
}

// DiluteTo returns how much spirit and water make finalML at toABV % vol. It
// fails as [Dilute] does.
func DiluteTo(finalML, fromABV, toABV float64) (Dilution, error) {
	if err := amount("final volume", finalML, maxML, "mL"); err != nil {
		return Dilution{}, err
	}
	if err := strengths(fromABV, toABV); err != nil {
		return Dilution{}, err
	}
	spiritML := finalML * toABV / fromABV // the same ethanol in both
	from := MassFraction(fromABV / 100)
	return diluted(spiritML*ethanolWater20(from), from, MassFraction(toABV/100)), nil
}

// strengths fails unless water brings a spirit from one strength to the other, both in
// % vol.
func strengths(from, to float64) error {
	if err := within("spirit strength", from, 0, 100, " % vol"); err != nil {
		return err
	}
	if err := within("target strength", to, 0, 100, " % vol"); err != nil {
		return err
	}
	if to == 0 || to > from {
		return flavor.Invalid("target strength", to, "%v %% vol cannot be reached from %v %% vol with water; choose a target above 0 and no higher than the spirit, or a stronger spirit", to, from)
	}
	return nil
}

// diluted brings spiritG grams from one mass fraction of ethanol to another.
func diluted(spiritG, from, to float64) Dilution {
	finalG := spiritG * from / to
	d := Dilution{SpiritG: spiritG, SpiritML: spiritG / ethanolWater20(from),
		FinalG: finalG, FinalML: finalG / ethanolWater20(to),
		ABV: 100 * volumeFraction(to), MassPercent: 100 * to}
	d.WaterG = finalG - spiritG
	d.WaterML = d.WaterG / WaterDensity
	d.ContractionML = d.SpiritML + d.WaterML - d.FinalML
	return d
}
