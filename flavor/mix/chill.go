package mix

import "counterpour/flavor"

// Chill is what the energy balance makes of the ice, beside the equations.
type Chill struct {
	IceWaterG    float64 // melted, and clinging to the ice
	DilutionPct  float64 // the same as per cent of the volume that met the ice
	TemperatureC float64 // of what met the ice, before a top goes in
	FreezingC    float64 // of what met the ice, once diluted
}

// Balance works out the dilution of a spec from heat alone, without the
// published equations. What the drink and the vessel give up in cooling, and
// ethanol and water in mixing, melts ice, warms melt-water and warms or cools
// what ice is left. The drink stops where the rule of its method says: a share
// of the way from where it starts to its freezing point, 5 % for shaking and 35 %
// for stirring, is left.
//
// Those two shares were judged knowing the equations, so only the slope over
// strength, and what ice, bar and vessel change, is independent of them. Over the
// drinks of the tests the balance adds from 1 % less to 12 % more water than the
// equations where drinks are shaken, and from 10 % less to 7 % more elsewhere. Ice
// that stands in the glass is left out, but of what is built on it. It fails as
// [Mixer.Mix] does.
func (m *Mixer) Balance(s *flavor.Spec) (Chill, error) {
	if err := check(s); err != nil {
		return Chill{}, err
	}
	p := potOf(pourAll(nil, &Ledger{}, s))
	set := settingFor(s.Method, s.Service, m.ice)
	set.pour(s)
	met := p.still.volumeML()
	if set.equation == noEquation || met <= 0 {
		f := p.finish(&set, 1, m.freezing) // by heat as it is
		return Chill{IceWaterG: f.waterG, DilutionPct: 100 * f.share, TemperatureC: f.celsius, FreezingC: m.freezing.point(&f.after)}, nil
	}
	water, c := m.balance(&p.still, &set)
	cold := p.still
	cold.water += water
	return Chill{IceWaterG: water, DilutionPct: 100 * water / WaterDensity / met,
		TemperatureC: c, FreezingC: m.freezing.point(&cold)}, nil
}

// balance returns the water in grams that the ice adds, melted and clinging,
// and the temperature at which the drink stops.
func (m *Mixer) balance(warm *parts, set *setting) (waterG, finalC float64) {
	volumeML := warm.volumeML()
	iceG := set.perML * volumeML
	clinging := set.wet * iceG
	end := func(melt float64) float64 {
		cold := *warm
		cold.water += melt + clinging
		freezes := m.freezing.point(&cold)
		return freezes + set.left*(set.startC-freezes)
	}
	melt := Bisect(0, iceG, func(melt float64) bool {
		return set.surplus(warm, melt, clinging, volumeML, end(melt)) > 0
	})
	return melt + clinging, end(melt)
}

// surplus returns the heat in J that is left over when melt and clinging grams
// of ice and water have gone into warm, volumeML of it, and all is at c: more
// ice melts while it is positive.
func (s *setting) surplus(warm *parts, melt, clinging, volumeML, c float64) float64 {
	given := warm.heatCapacity()*(s.startC-c) + s.vesselJ*(s.barC-c) + warm.dilutionHeat(melt+clinging) + s.work*volumeML
	taken := melt*(LatentHeat+waterHeat*c-iceHeat*s.iceC) + clinging*waterHeat*c +
		s.unmelted(melt, volumeML)*(min(c, 0)-s.iceC)
	return given - taken
}

// unmelted returns the heat capacity in J/K of the ice that is left and follows
// the drink; it cannot follow it above 0 °C.
func (s *setting) unmelted(melt, volumeML float64) float64 {
	return max(0, s.perML*volumeML-melt) * iceHeat * s.cools
}

// settles returns the temperature in °C at which warm, volumeML of it, a vessel of
// vesselJ J/K and the water that the ice added share their heat evenly: the root
// of surplus in c, which is linear on either side of 0 °C. It may lie below the
// freezing point.
func (s *setting) settles(warm *parts, volumeML, waterG, vesselJ float64) float64 {
	drinkJ := warm.heatCapacity()
	capacity := drinkJ + vesselJ + waterG*waterHeat
	if capacity <= 0 { // nothing to chill
		return s.startC
	}
	melt := waterG - min(s.wet*s.perML*volumeML, waterG)
	left := s.unmelted(melt, volumeML)
	heat := drinkJ*s.startC + vesselJ*s.barC + warm.dilutionHeat(waterG) + s.work*volumeML -
		melt*(LatentHeat-iceHeat*s.iceC) + left*s.iceC
	if heat > 0 { // the ice that is left stays at 0 °C
		return heat / capacity
	}
	return heat / (capacity + left)
}

// iceFactor returns how much more water the energy balance gives with the mixer's own
// ice and pours as warm as they are than with the usual ice and pours as warm as the
// bar; 1 for as much.
func (m *Mixer) iceFactor(warm *parts, own *setting, s *flavor.Spec) float64 {
	if m.ice == (Ice{}) && own.startC <= own.barC || own.equation == noEquation {
		return 1
	}
	usual := settingFor(s.Method, s.Service, Ice{})
	was, _ := m.balance(warm, &usual)
	if was <= 0 {
		return 1
	}
	now, _ := m.balance(warm, own)
	return now / was
}
