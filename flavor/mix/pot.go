package mix

import (
	"strconv"

	"counterpour/flavor"
)

// pot is a drink during preparation: what meets the ice, and what is added after it.
type pot struct {
	still, top parts
}

// dose is a pour in the form used by the calculation.
type dose struct {
	pour *flavor.Pour
	per  parts // one millilitre
	top  bool
}

// pourAt returns the place of a pour in a fault.
func pourAt(i int) string { return "pours[" + strconv.Itoa(i) + "]" }

// AfterIce reports whether a pour is added after chilling.
func AfterIce(p *flavor.Pour) bool { return afterIce(p) }

// afterIce reports whether a pour is added after chilling: sparkling ingredients, which
// would go flat on the ice, and late ones.
func afterIce(p *flavor.Pour) bool { return p.Profile.Carbonated || late(p) }

// late reports whether a pour is added after mixing: it says so, or its unit is one such
// as a top.
func late(p *flavor.Pour) bool { return p.After || p.Unit.After() }

// pourAll adds the pours of a spec to before and appends their doses to dst.
func pourAll(dst []dose, before *Ledger, s *flavor.Spec) []dose {
	for i := range s.Pours {
		p := &s.Pours[i]
		per := bulkPerML(p.Profile)
		before.addMacros(&per, p.ML)
		for f := range before.Aroma {
			before.Aroma[f] += p.ML * p.Profile.Aroma[f]
		}
		dst = append(dst, dose{pour: p, per: per.parts(), top: afterIce(p) && s.Service != flavor.Hot})
	}
	return dst
}

func potOf(doses []dose) pot {
	var p pot
	for i := range doses {
		into := &p.still
		if doses[i].top {
			into = &p.top
		}
		into.add(&doses[i].per, doses[i].pour.ML)
	}
	return p
}

// finished is a pot after the ice has melted into it.
type finished struct {
	after    parts
	volumeML float64
	met      float64 // mL that met the ice
	waterG   float64 // from the ice
	share    float64 // the same by volume, over the volume that met the ice
	celsius  float64 // as it is served
	frozen   bool    // the mixture reached its freezing point
}

// finish adds the water of the ice; times multiplies the dilution. What is mixed
// gets no colder than f has it freeze, or as cold as its heat says if f is nil.
func (p *pot) finish(set *setting, times float64, f *freezing) finished {
	out := finished{after: p.still, met: p.still.volumeML()}
	mixed, c := 0.0, set.startC
	bare := c
	if out.met > 0 && set.equation != noEquation {
		strength := p.still.ethanol / EthanolDensity / out.met
		mixed = set.equation.share(strength) * set.times * set.scale * times * out.met * WaterDensity
		out.after.water += mixed
		c = set.settles(&p.still, out.met, mixed, set.vesselJ)
		bare = set.settles(&p.still, out.met, mixed, 0)
		if f != nil {
			if stop := f.point(&out.after); c < stop {
				c, out.frozen = stop, true
			}
		}
	}
	c, bare = p.topped(&out.after, c, set.topC), p.topped(&out.after, bare, set.topC)
	out.after.add(&p.top, 1)
	standing, c := set.stand(&out.after, c, bare, out.met, times)
	if set.standing < 1 {
		out.met += p.top.volumeML()
	}
	out.waterG, out.celsius = mixed+standing, c
	out.after.water += standing
	if out.met > 0 {
		out.share = out.waterG / WaterDensity / out.met
	}
	out.volumeML = out.after.volumeML()
	return out
}

// topped returns the temperature once the top, at topC, is mixed with what was
// chilled to c.
func (p *pot) topped(cold *parts, c, topC float64) float64 {
	a, b := cold.heatCapacity(), p.top.heatCapacity()
	if a+b <= 0 {
		return c
	}
	return (a*c + b*topC) / (a + b)
}
