package mix

import "math"

// leftOnIce is the share of the way to 0 °C that cubes in a glass leave when the
// drink is served: common practice has a drink on a glass full of ice at 0 to 3 °C.
const leftOnIce = 0.1

// thawC is over how many degrees about 0 °C standing ice stops to cool.
const thawC = 1.0

// stand returns the water in grams that the ice in the glass adds to p, of which
// metML was mixed, and the temperature that follows; times multiplies the water. P
// comes at c, and would at bare from a vessel without heat.
//
// Ice that nobody stirs cools a drink to near 0 °C and hardly further: what melts
// stays about it as nearly fresh water, which melts at 0 °C, and below that ice
// only dissolves, as fast as that water drifts off. So of the way to 0 °C a share
// is left, as after any cooling by Newton's law, and a drink that comes colder
// from the shaker stays so. How much melts follows from heat alone: what the
// drink gives up, and what it warms by taking up water, over what ice takes. What
// a vessel left in it stays in it, so that twice the drink melts twice the ice.
func (s *setting) stand(p *parts, c, bare, metML, times float64) (waterG, finalC float64) {
	if s.standing >= 1 {
		return 0, c
	}
	var clinging, vesselJ float64
	if s.equation == noEquation { // else the ice was drained, and another vessel cooled
		clinging, vesselJ = s.wet*s.perML*metML, s.vesselJ
	}
	above := (bare + math.Hypot(bare, thawC)) / 2
	end := bare - (1-s.standing)*above
	given := p.heatCapacity()*(bare-end) + vesselJ*(s.barC-end) - clinging*waterHeat*end +
		s.perML*metML*iceHeat*s.cools*s.iceC
	// The ice that warms counts whole above, so of what melts only the rest does here.
	perGram := LatentHeat + waterHeat*end - iceHeat*s.iceC*(1-s.cools)
	melt := 0.0
	for range 4 { // each turn leaves a thirtieth of the error
		melt = max(0, (given+p.dilutionHeat(melt+clinging))/perGram)
	}
	waterG = times * (melt + clinging)
	less := (times - 1) * melt * perGram / (p.heatCapacity() + vesselJ + waterG*waterHeat)
	return waterG, end + c - bare - less
}
