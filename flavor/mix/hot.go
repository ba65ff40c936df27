package mix

import "counterpour/flavor"

// heatedC is the temperature in °C of a hot pour of what the trade hardly ever heats;
// common practice, no source.
const heatedC = 75.0

// leastHeater is the volume in mL from which an ingredient heats a drink, if the draft
// does not say that it is hot.
const leastHeater = 30.0

// Heats reports whether a pour of a spec makes a hot drink hot: it is said to be, or it
// is what the trade heats, the spec has leastHeater of it, and nothing is said. Cream and
// butter go in cold.
func Heats(s *flavor.Spec, p *flavor.Pour) bool {
	switch p.Warmth() {
	case flavor.HeatHot:
		return true
	case flavor.HeatCold:
		return false
	}
	return p.Profile.Class.Heated() && !p.Profile.Carbonated && !p.Profile.Cream() && poured(s, p.Profile) >= leastHeater
}

// poured returns how much of an ingredient a spec pours, in mL, however it is split.
func poured(s *flavor.Spec, of *flavor.Profile) (ml float64) {
	for i := range s.Pours {
		if s.Pours[i].Profile == of {
			ml += s.Pours[i].ML
		}
	}
	return ml
}

// HotC returns the temperature in °C at which a hot drink is served: as it is
// stated or, if it is not, where the heat of what is poured hot and of what comes
// from the shelf or the refrigerator evens out, in a mug that was warmed. The
// amounts in mL stand in for those of the spec; nil for its own. What is said to
// be hot is; if nothing is said, that is the water, the tea and the coffee, else
// all that the trade heats, else everything.
func HotC(s *flavor.Spec, ml []float64) float64 {
	if s.HotC != 0 {
		return s.HotC
	}
	hot := heatersOf(s)
	return evened(s, ml, func(p *flavor.Pour) float64 {
		switch {
		case hot == nil && !late(p):
			return usualHotC
		case hot != nil && hot(p):
			return pouredC(p)
		}
		return keptC(p)
	})
}

// MixedC returns the temperature in °C of what is mixed, before it meets ice: that of
// the bar, but for what is hot. What goes in afterwards is left out. The amounts in
// mL stand in for those of the spec; nil for its own.
func MixedC(s *flavor.Spec, ml []float64) float64 {
	hot := func(p *flavor.Pour) bool { return p.Warmth() == flavor.HeatHot }
	if heaters := heatersOf(s); s.Service == flavor.Hot && heaters != nil {
		hot = heaters
	}
	amounts := make([]float64, len(s.Pours))
	for i := range s.Pours {
		p := &s.Pours[i]
		amounts[i] = p.ML
		if ml != nil {
			amounts[i] = ml[i]
		}
		if late(p) {
			amounts[i] = 0
		}
	}
	return evened(s, amounts, func(p *flavor.Pour) float64 {
		switch {
		case hot(p):
			return pouredC(p)
		case p.Warmth() == flavor.HeatCold:
			return fridgeC
		}
		return usualBarC
	})
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

// heatersOf tells which pours of a hot drink are hot; nil if it is heated as a whole.
func heatersOf(s *flavor.Spec) func(*flavor.Pour) bool {
	said := func(p *flavor.Pour) bool { return p.Warmth() == flavor.HeatHot }
	heats := func(p *flavor.Pour) bool { return Heats(s, p) }
	brewed := func(p *flavor.Pour) bool {
		return heats(p) && (p.Profile.Class == flavor.ClassWater || p.Profile.Class.Kin() == flavor.KinTea)
	}
	cold := false
	for _, is := range []func(*flavor.Pour) bool{said, brewed, heats} {
		for i := range s.Pours {
			cold = cold || s.Pours[i].Warmth() == flavor.HeatCold
			if is(&s.Pours[i]) {
				return is
			}
		}
	}
	if cold {
		return said
	}
	return nil
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
	if p.Warmth() == flavor.HeatCold || late(p) || p.Profile.Class == flavor.ClassDairy {
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
		p := &s.Pours[i]
		v := p.ML
		if ml != nil {
			v = ml[i]
		}
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
