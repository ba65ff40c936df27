package mix

import (
	"fmt"

	"counterpour/flavor"
)

// Ledger is the mass balance of a mixture. Masses are grams; BitterMG is
// milligrams of quinine that taste as bitter; Aroma is intensity times
// millilitres. Every field adds up, so ledgers mix by addition; only volume
// does not.
type Ledger struct {
	Ethanol float64
	Water   float64
	Sugar   float64 // all sugars, as weighed
	Sweet   float64 // sucrose that tastes as sweet
	Acid    float64 // all acids, as weighed
	Sour    float64 // citric acid with as much acid hydrogen
	Salt    float64
	Fat     float64
	Texture float64 // fat, protein, gum and pulp
	Bitter  float64 // mg of quinine
	Aroma   flavor.Aroma
}

// Plus returns l with times × o added to it.
func (l Ledger) Plus(o *Ledger, times float64) Ledger {
	l.addMacros(o, times)
	for i := range l.Aroma {
		l.Aroma[i] += times * o.Aroma[i]
	}
	return l
}

// addMacros adds all but the aromas.
func (l *Ledger) addMacros(o *Ledger, times float64) {
	l.Ethanol += times * o.Ethanol
	l.Water += times * o.Water
	l.Sugar += times * o.Sugar
	l.Sweet += times * o.Sweet
	l.Acid += times * o.Acid
	l.Sour += times * o.Sour
	l.Salt += times * o.Salt
	l.Fat += times * o.Fat
	l.Texture += times * o.Texture
	l.Bitter += times * o.Bitter
}

// VolumeML returns the volume in mL at 20 °C: the ethanol and water by OIML
// R 22, then the apparent volume of each solute. It is zero for an empty ledger.
func (l *Ledger) VolumeML() float64 {
	p := l.parts()
	return p.volumeML()
}

// MassG returns the mass in grams.
func (l *Ledger) MassG() float64 {
	return l.Ethanol + l.Water + l.Sugar + l.Acid + l.Salt + l.Texture
}

// ABV returns the strength in % vol at 20 °C, zero for an empty ledger.
func (l *Ledger) ABV() float64 {
	v := l.VolumeML()
	if v <= 0 {
		return 0
	}
	return 100 * l.Ethanol / EthanolDensity / v
}

// Relative sweetness by mass, sucrose 1: Belitz, Grosch and Schieberle, Food
// Chemistry, 10 % solutions (attribution from memory), but for fructose, which
// is sweeter cold: 1.14 there, up to 1.5 at 5 °C (Shallenberger, Taste
// Chemistry, 1993, from memory). At 1.30 invert sugar and honey come out at
// 1.0, as in Public Health Nutrition 26:952, 2023, Table 2. Dextrin as
// maltodextrin of 10 dextrose equivalents, from memory.
var sweetness = flavor.SugarBlend{Sucrose: 1, Glucose: 0.69, Fructose: 1.30, Maltose: 0.46, Lactose: 0.39, Dextrin: 0.1}

// SweetnessOf returns the sweetness of a blend of sugars, per gram, as grams
// of sucrose.
func SweetnessOf(b flavor.SugarBlend) float64 {
	return b.Sucrose*sweetness.Sucrose + b.Glucose*sweetness.Glucose + b.Fructose*sweetness.Fructose +
		b.Maltose*sweetness.Maltose + b.Lactose*sweetness.Lactose + b.Dextrin*sweetness.Dextrin
}

// SweetOf returns the sucrose in g/L that tastes as sweet as a profile does, by
// its sugars and its sweeteners.
func SweetOf(p *flavor.Profile) float64 {
	return p.Sugar.Value*SweetnessOf(p.Sugars) + p.Sweeteners.Value
}

// citricWeight is the equivalent weight of citric acid: grams per mole of acid
// hydrogen, from IUPAC atomic weights.
const citricWeight = 64.04

// asCitric is the citric acid with as much acid hydrogen as a gram of each
// acid, by equivalent weights; phosphoric acid to pH 8.2, as titrations of food
// do.
var asCitric = flavor.AcidBlend{
	Citric:     1,
	Malic:      citricWeight / 67.04,
	Tartaric:   citricWeight / 75.04,
	Lactic:     citricWeight / 90.08,
	Acetic:     citricWeight / 60.05,
	Phosphoric: citricWeight / 49.00,
	Ascorbic:   citricWeight / 176.12,
	Quinic:     citricWeight / 192.17,
}

// CitricOf returns the titratable acidity of a blend of acids, per gram, as
// grams of citric acid.
func CitricOf(b flavor.AcidBlend) float64 {
	w := &asCitric
	return b.Citric*w.Citric + b.Malic*w.Malic + b.Tartaric*w.Tartaric + b.Lactic*w.Lactic +
		b.Acetic*w.Acetic + b.Phosphoric*w.Phosphoric + b.Ascorbic*w.Ascorbic + b.Quinic*w.Quinic
}

// dryGPerL is the sugar or salt in g/L from which a record is a crystal and
// holds no water.
const dryGPerL = 1400

// Complete works out the water and the density of a profile, per millilitre,
// from its strength and solids, and stores them in it: water is what fills the
// millilitre. It fails if the solids and the alcohol leave no room in the litre.
func Complete(p *flavor.Profile) error {
	l := solidsPerML(p)
	if (p.Class.Solid() && p.Sugar.Value > dryGPerL) || p.Salt.Value > dryGPerL {
		p.WaterGPerML = 0
		p.DensityGPerML = l.MassG()
		return nil
	}
	l.Water = tiny // dissolved, solids take a little more room than as crystals
	if v := l.VolumeML(); v > 1+1e-9 {
		return fmt.Errorf("alcohol and solids fill %.0f mL of the litre, which leaves no room for water; lower abv, sugar, acid or texture", v*1000)
	}
	parts := l.parts()
	l.Water = Bisect(0, 1.01, func(water float64) bool {
		parts.water = water
		return parts.volumeML() < 1
	})
	p.WaterGPerML = l.Water
	p.DensityGPerML = l.MassG()
	return nil
}

// solidsPerML is the ledger of a millilitre of p but for its water.
func solidsPerML(p *flavor.Profile) Ledger {
	const perML = 1.0 / 1000
	return Ledger{
		Ethanol: p.ABV.Value / 100 * EthanolDensity,
		Sugar:   p.Sugar.Value * perML,
		Sweet:   SweetOf(p) * perML,
		Acid:    p.Acid.Value * perML,
		Sour:    p.Acid.Value * perML * CitricOf(p.Acids),
		Salt:    p.Salt.Value * perML,
		Fat:     p.Fat.Value * perML,
		Texture: p.Texture.Value * perML,
		Bitter:  p.Bitter.Value * perML,
	}
}

// bulkPerML is PerML without the aromas.
func bulkPerML(p *flavor.Profile) Ledger {
	l := solidsPerML(p)
	l.Water = p.WaterGPerML
	return l
}

// PerML returns the ledger of one millilitre of a completed profile.
func PerML(p *flavor.Profile) Ledger {
	l := bulkPerML(p)
	l.Aroma = p.Aroma
	return l
}
