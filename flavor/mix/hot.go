package mix

import (
	"math"
	"slices"

	"counterpour/flavor"
)

// heatedC is the temperature in °C of a hot pour of what the trade hardly ever heats;
// common practice, no source.
const heatedC = 75.0

// An ingredient that the draft does not call hot heats no drink up to hardlyHeats mL, and surely
// heats it from surelyHeats mL: half an ounce of coffee is a flavour, and a double shot makes the
// drink hot. Common practice, no source.
const hardlyHeats, surelyHeats = 15.0, 60.0

// Heats reports whether a pour of a spec may make a hot drink hot: it is said to be, or it
// is what the trade heats, the spec has more than a flavour of it, and nothing is said. Cream
// and butter go in cold.
func Heats(s *flavor.Spec, p *flavor.Pour) bool { return heats(s, nil, p) > 0 }

// heats returns how surely a pour of a spec makes a hot drink hot, 0 to 1. The amounts in
// mL stand in for those of the spec; nil for its own.
func heats(s *flavor.Spec, ml []float64, p *flavor.Pour) float64 {
	switch p.Warmth() {
	case flavor.HeatHot:
		return 1
	case flavor.HeatCold:
		return 0
	}
	if !p.Profile.Class.Heated() || p.Profile.Carbonated || p.Profile.Cream() {
		return 0
	}
	sure := math.Log(poured(s, ml, p.Profile)/hardlyHeats) / math.Log(surelyHeats/hardlyHeats)
	return min(1, max(0, sure))
}

// poured returns how much of an ingredient a spec pours, in mL, however it is split.
func poured(s *flavor.Spec, ml []float64, of *flavor.Profile) (sum float64) {
	for i := range s.Pours {
		if s.Pours[i].Profile == of {
			sum += amountOf(s, ml, i)
		}
	}
	return sum
}

// amountOf returns the mL of pour i: of the amounts given or, if there are none, the spec's.
func amountOf(s *flavor.Spec, ml []float64, i int) float64 {
	if ml != nil {
		return ml[i]
	}
	return s.Pours[i].ML
}

// HotC returns the temperature in °C at which a hot drink is served. If it is not
// stated, it is where the heat of the hot pours and of the cold ones evens out, in a mug
// that was warmed. The amounts in mL stand in for those of the spec; nil for its own.
// What is said to be hot is hot. If nothing is said, the water, the tea and the coffee
// are; without these, all that the trade heats; without that, everything. Where there is
// little of what would heat it, the answer lies between.
func HotC(s *flavor.Spec, ml []float64) float64 {
	if s.HotC != 0 {
		return s.HotC
	}
	said := slices.ContainsFunc(s.Pours, func(p flavor.Pour) bool { return p.Warmth() != "" })
	whole := evened(s, ml, func(p *flavor.Pour) float64 {
		if said || late(p) {
			return keptC(p)
		}
		return usualHotC
	})
	return heated(s, ml, heatersOf(s, ml), whole, keptC)
}

// MixedC returns the temperature in °C of what is mixed, before it meets ice: that of
// the bar, but for what is hot. What goes in afterwards is left out. The amounts in
// mL stand in for those of the spec; nil for its own.
func MixedC(s *flavor.Spec, ml []float64) float64 {
	amounts := make([]float64, len(s.Pours))
	for i := range s.Pours {
		if !late(&s.Pours[i]) {
			amounts[i] = amountOf(s, ml, i)
		}
	}
	cold := func(p *flavor.Pour) float64 {
		if p.Warmth() == flavor.HeatCold {
			return fridgeC
		}
		return usualBarC
	}
	return heated(s, amounts, heatersOf(s, ml), evened(s, amounts, cold), cold)
}

// evenedHot returns the temperature in °C where those pours even out that are in: the
// hot ones as they are poured, the others at otherC. It is otherC if none is in.
func evenedHot(s *flavor.Spec, otherC float64, in func(*flavor.Pour) bool) float64 {
	amounts := make([]float64, len(s.Pours))
	none := true
	for i := range s.Pours {
		if in(&s.Pours[i]) {
			amounts[i], none = s.Pours[i].ML, false
		}
	}
	if none {
		return otherC
	}
	return evened(s, amounts, func(p *flavor.Pour) float64 {
		if p.Heat == flavor.HeatHot {
			return pouredC(p)
		}
		return otherC
	})
}

// heated returns the temperature in °C of a drink that has wholeC if none of its pours makes
// it hot: it is drawn toward where the pours even out that do, as surely as they do. A pour
// that does not is at the temperature that cold says.
func heated(s *flavor.Spec, ml []float64, by []heater, wholeC float64, cold func(*flavor.Pour) float64) float64 {
	c := wholeC
	for _, hot := range by {
		sure := 0.0
		for i := range s.Pours {
			sure = max(sure, hot(&s.Pours[i]))
		}
		if sure == 0 {
			continue
		}
		here := evened(s, ml, func(p *flavor.Pour) float64 { return cold(p) + hot(p)/sure*(pouredC(p)-cold(p)) })
		c += sure * (here - c)
	}
	return c
}

// heater tells how surely a pour is what makes a drink hot, 0 to 1.
type heater func(*flavor.Pour) float64

// heatersOf returns the ways to tell what makes a drink hot; the later ones go before.
func heatersOf(s *flavor.Spec, ml []float64) []heater {
	said := func(p *flavor.Pour) float64 {
		if p.Warmth() == flavor.HeatHot {
			return 1
		}
		return 0
	}
	if s.Service != flavor.Hot {
		return []heater{said}
	}
	any := func(p *flavor.Pour) float64 { return heats(s, ml, p) }
	brewed := func(p *flavor.Pour) float64 {
		if p.Profile.Class.Kin() == flavor.KinTea {
			return any(p)
		}
		return 0
	}
	return []heater{any, brewed, said}
}

// pouredC is the temperature in °C of a pour that is hot.
func pouredC(p *flavor.Pour) float64 {
	if p.Profile.Class.Heated() {
		return p.Profile.Class.HotC()
	}
	return heatedC
}

// keptC is the temperature in °C of a pour that is not hot.
func keptC(p *flavor.Pour) float64 {
	if p.Warmth() == flavor.HeatCold || late(p) || p.Profile.Class.Kin() == flavor.KinMilk && p.Profile.Class.Curdles() {
		return fridgeC
	}
	return usualBarC
}

// evened returns the temperature in °C where the heat of the pours evens out, each
// at the temperature that of says. What ethanol and water give off on mixing is
// left out: it is under a degree.
func evened(s *flavor.Spec, ml []float64, of func(*flavor.Pour) float64) float64 {
	var heat, capacity float64
	for i := range s.Pours {
		p, v := &s.Pours[i], amountOf(s, ml, i)
		x := p.Profile
		solids := (x.Sugar.Value + x.Acid.Value + x.Salt.Value + x.Texture.Value) / 1000
		c := v * (x.WaterGPerML*waterHeat + x.ABV.Value/100*EthanolDensity*ethanolHeat + solids*solidsHeat)
		capacity += c
		heat += c * of(p)
	}
	if capacity <= 0 {
		return usualBarC
	}
	return heat / capacity
}
