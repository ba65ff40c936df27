package mix

import (
	"fmt"

	"gonum.org/v1/gonum/interp"
)

// Freezing points of ethanol in water by mass per cent: CRC Handbook of
// Chemistry and Physics, concentrative properties of aqueous solutions, and at
// 71.9 % Lange's Handbook of Chemistry, 15th ed., Table 5.13 (all from memory;
// Lange differs by up to 2 °C near 30 %).
var (
	ethanolPercent = []float64{0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 12, 14, 16, 18, 20, 22, 24, 26, 28, 30,
		32, 34, 36, 38, 40, 44, 48, 50, 60, 71.9}
	ethanolFreezes = []float64{0, -0.40, -0.81, -1.23, -1.65, -2.09, -2.54, -2.99, -3.47, -3.96, -4.47, -5.56,
		-6.73, -8.01, -9.40, -10.92, -12.60, -14.47, -16.41, -18.43, -20.47, -22.44, -24.27, -25.98, -27.62,
		-29.26, -32.68, -36.04, -37.67, -44.93, -51.3}
)

// Freezing points of sucrose in water by mass per cent, from the same CRC table
// (from memory; 12 % confirmed by Clarke, The Science of Ice Cream, 2004).
var (
	sucrosePercent = []float64{0, 5, 10, 12, 15, 20, 26, 30, 36, 40}
	sucroseFreezes = []float64{0, -0.29, -0.63, -0.77, -1.01, -1.47, -2.12, -2.64, -3.63, -4.45}
)

// FreezingUncertaintyC is how far two handbooks differ on ethanol and water.
const FreezingUncertaintyC = 2.0

// Grams of sucrose that hold as many particles as a gram of acid, taken as
// citric, and of salt, which falls into two ions. Molar masses from IUPAC
// atomic weights: sucrose 342.30, citric acid 192.12, sodium chloride 58.44.
const (
	acidAsSucrose = 342.30 / 192.12
	saltAsSucrose = 2 * 342.30 / 58.44
)

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

// point returns the temperature in °C at which ice begins to form: the
// depression by ethanol and that by dissolved solids, each in the water
// present, added up. That is an approximation: they share the water, so a
// strong and sweet drink freezes somewhat lower still. Beyond the tables, 71.9
// and 40 % by mass, it stays at their last value; without water it is their sum.
func (f *freezing) point(p *parts) float64 {
	// Glucose and fructose have twice the particles of sucrose by weight; the
	// ledger does not tell them apart, which at 9 g in 100 mL is 0.6 °C.
	solids := p.sugar + p.acid*acidAsSucrose + p.salt*saltAsSucrose
	return f.ethanol.Predict(percentOf(p.ethanol, p.water)) + f.sucrose.Predict(percentOf(solids, p.water))
}

// percentOf returns the share of solute in solute and water, per cent by mass.
func percentOf(solute, water float64) float64 {
	if solute <= 0 {
		return 0
	}
	return 100 * solute / (solute + water)
}

// FreezingC returns the temperature in °C at which ice begins to form in a
// mixture, within about [FreezingUncertaintyC] below 70 % by mass of ethanol
// and 40 % of sugar; beyond them it returns what holds there. It is 0 for an
// empty ledger.
func (m *Mixer) FreezingC(l *Ledger) float64 {
	p := l.parts()
	return m.freezing.point(&p)
}
