package mix

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/interp"
)

// Freezing points of ethanol in water by mass per cent: CRC Handbook of
// Chemistry and Physics, concentrative properties of aqueous solutions (from
// memory; Lange's Handbook, 15th ed., differs by up to 2 °C near 30 %).
var (
	ethanolPercent = []float64{0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 12, 14, 16, 18, 20, 22, 24, 26, 28, 30,
		32, 34, 36, 38, 40, 44, 48, 50, 60}
	ethanolFreezes = []float64{0, -0.40, -0.81, -1.23, -1.65, -2.09, -2.54, -2.99, -3.47, -3.96, -4.47, -5.56,
		-6.73, -8.01, -9.40, -10.92, -12.60, -14.47, -16.41, -18.43, -20.47, -22.44, -24.27, -25.98, -27.62,
		-29.26, -32.68, -36.04, -37.67, -44.93}
)

// Freezing points of sucrose in water by mass per cent, from the same table
// (from memory; 12 % confirmed by Clarke, The Science of Ice Cream, 2004).
var (
	sucrosePercent = []float64{0, 5, 10, 12, 15, 20, 26, 30, 36, 40}
	sucroseFreezes = []float64{0, -0.29, -0.63, -0.77, -1.01, -1.47, -2.12, -2.64, -3.63, -4.45}
)

// FreezingUncertaintyC is how far two handbooks differ on ethanol and water.
const FreezingUncertaintyC = 2.0

// freezing interpolates the two tables.
type freezing struct {
	ethanol, sucrose interp.PiecewiseLinear
}

func newFreezing() (*freezing, error) {
	var f freezing
	if err := f.ethanol.Fit(ethanolPercent, ethanolFreezes); err != nil {
		return nil, fmt.Errorf("mix: freezing points of ethanol: %w", err)
	}
	if err := f.sucrose.Fit(sucrosePercent, sucroseFreezes); err != nil {
		return nil, fmt.Errorf("mix: freezing points of sucrose: %w", err)
	}
	return &f, nil
}

// point returns the temperature in °C at which ice begins to form in l: the
// depression by ethanol and that by dissolved solids, each in the water
// present, added up. Beyond the tables it stays at their last value.
func (f *freezing) point(l *Ledger) float64 {
	if l.Water <= 0 {
		return ethanolFreezes[len(ethanolFreezes)-1]
	}
	// Fructose, glucose and acids are about half the molar mass of sucrose
	// and so depress twice as much by weight; a drink's sugars are mostly
	// sucrose, and the difference is below 0.5 °C.
	solids := l.Sugar + l.Acid
	e := 100 * l.Ethanol / (l.Ethanol + l.Water)
	s := 100 * solids / (solids + l.Water)
	return f.ethanol.Predict(math.Min(e, ethanolPercent[len(ethanolPercent)-1])) +
		f.sucrose.Predict(math.Min(s, sucrosePercent[len(sucrosePercent)-1]))
}
