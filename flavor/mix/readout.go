package mix

import "math"

// Readout is a figure of a finished drink. Every interface shows the figures in
// [Readouts], or is tested against them.
type Readout struct {
	Key    string // name in the API, with its unit
	Label  string // label for people, at the start of a line
	Unit   string // shown after the number
	Digits int    // decimals shown to people: no finer than the spread
	// To is the step to which the value is rounded for people, if that is coarser than
	// Digits; otherwise 0.
	To    float64
	Means string // explanation in a sentence
	Value func(*Drink) float64
	// Spread returns one standard deviation; nil if it is unknown.
	Spread func(*PlusMinus) float64
}

// Shown rounds a value to the step that is shown to people.
func (r *Readout) Shown(value float64) float64 {
	if r.To > 0 {
		return r.To * math.Round(value/r.To)
	}
	return value
}

// Readouts lists the figures of a finished drink, the most wanted first.
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

// ReadoutOf returns the readout with a key. ok is false if there is none.
func ReadoutOf(key string) (Readout, bool) {
	for _, r := range Readouts() {
		if r.Key == key {
			return r, true
		}
	}
	return Readout{}, false
}
