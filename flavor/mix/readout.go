package mix

import "math"

// Readout is one figure that is read off a finished drink. What every face shows
// of a drink is made from [Readouts] or held against it.
type Readout struct {
	Key    string // as the API calls it, with its unit
	Label  string // for people, as a line begins
	Unit   string // as it stands behind the number
	Digits int    // decimals that people are shown: no finer than its spread
	// To is the step that it is shown to, if that is coarser than Digits; else 0.
	To    float64
	Means string // what it is, in a sentence
	Value func(*Drink) float64
	// Spread is one standard deviation; nil where none is worked out.
	Spread func(*PlusMinus) float64
}

// Shown returns a value as people are shown it, before its decimals are cut.
func (r *Readout) Shown(value float64) float64 {
	if r.To > 0 {
		return r.To * math.Round(value/r.To)
	}
	return value
}

// Readouts lists what is read off a finished drink, what a bartender asks for
// first in front.
func Readouts() []Readout {
	return []Readout{
		{Key: "volume_ml", Label: "Volume", Unit: "mL",
			Means: "In the glass, once the ice has given its water; ice left in the glass is not counted.",
			Value: func(d *Drink) float64 { return d.VolumeML }, Spread: func(p *PlusMinus) float64 { return p.VolumeML }},
		{Key: "abv_pct", Label: "Strength", Unit: "% vol", Digits: 1,
			Means: "How much of the finished volume is alcohol, at 20 °C.",
			Value: func(d *Drink) float64 { return d.ABV }, Spread: func(p *PlusMinus) float64 { return p.ABV }},
		{Key: "sugar_g_per_100ml", Label: "Sugar", Unit: "g/100 mL", Digits: 1,
			Means: "All sugars by weight, in 100 mL of the finished drink.",
			Value: func(d *Drink) float64 { return d.SugarPer100 }, Spread: func(p *PlusMinus) float64 { return p.SugarPer100 }},
		{Key: "acid_g_per_100ml", Label: "Acid", Unit: "g/100 mL", Digits: 2,
			Means: "All acids, as so much citric acid, in 100 mL of the finished drink.",
			Value: func(d *Drink) float64 { return d.AcidPer100 }, Spread: func(p *PlusMinus) float64 { return p.AcidPer100 }},
		{Key: "bitter", Label: "Bitterness", Unit: "mg/L",
			Means: "The quinine that would taste as bitter in a litre of the finished drink; judged, not measured.",
			Value: func(d *Drink) float64 { return d.Bitter }},
		{Key: "dilution_pct", Label: "Dilution", Unit: "%",
			Means: "Water from the ice, as a share of what met the ice.",
			Value: func(d *Drink) float64 { return d.DilutionPct }, Spread: func(p *PlusMinus) float64 { return p.DilutionPct }},
		{Key: "temperature_c", Label: "Temperature", Unit: "°C",
			Means: "As it is served, worked out from the ice that melted.",
			Value: func(d *Drink) float64 { return d.TemperatureC }, Spread: func(p *PlusMinus) float64 { return p.TemperatureC }},
		{Key: "ethanol_g", Label: "Alcohol", Unit: "g",
			Means: "The weight of pure alcohol in the whole drink, which is what the guest's body has to deal with.",
			Value: func(d *Drink) float64 { return d.After.Ethanol }},
		{Key: "energy_kcal", Label: "Energy", Unit: "kcal", To: 5,
			Means: "Food energy of the whole drink, by the factors of European food law, to the nearest five.",
			Value: func(d *Drink) float64 { return d.EnergyKcal }, Spread: func(p *PlusMinus) float64 { return p.EnergyKcal }},
	}
}

// ReadoutOf returns the readout of a key; it is false for a key that is none.
func ReadoutOf(key string) (Readout, bool) {
	for _, r := range Readouts() {
		if r.Key == key {
			return r, true
		}
	}
	return Readout{}, false
}
