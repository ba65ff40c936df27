package mix

import (
	"math"

	"counterpour/flavor"
)

// PlusMinus is one standard deviation of each number, from the spread of the
// profiles, the tolerance of the pours and the spread of the dilution, to first
// order. The temperature is that of the energy balance before the freezing
// point stops it, with a bar that is known to within 2 °C; the energy leaves out
// the spread of fat and protein.
type PlusMinus struct {
	VolumeML, ABV, SugarPer100, AcidPer100, DilutionPct float64
	EnergyKcal, TemperatureC                            float64
}

// barSpreadC is how well a bar knows its own temperature; common practice.
const barSpreadC = 2.0

// PourSpread returns the standard deviation in mL of one pour as a hand makes
// it: common practice, no source. A jigger errs by half a millilitre and 2 %;
// dashes, drops, leaves and the like by a quarter.
func PourSpread(u flavor.Unit, ml float64) float64 {
	if share, ok := u.HandSpread(); ok {
		return share * ml
	}
	return math.Min(math.Hypot(0.5, 0.02*ml), 0.25*ml)
}

// spreadOf returns the standard deviation in mL of a pour: that of the yield of
// its profile if it states one, else that of a hand.
func spreadOf(p *flavor.Pour) float64 {
	if len(p.Profile.Yields) > 0 {
		if y, ok := p.Profile.Yield(p.Unit); ok && y.Amount.Spread > 0 && y.Amount.Value > 0 {
			return p.ML * y.Amount.Spread / y.Amount.Value
		}
	}
	return PourSpread(p.Unit, p.ML)
}

// reading is the numbers that carry a plus-or-minus, in the order of the
// fields of [PlusMinus].
type reading [7]float64

func (s *setting) read(p *pot, times float64) reading {
	f := p.finish(s, times, nil)
	return reading{
		f.volumeML,
		100 * f.after.ethanol / EthanolDensity / f.volumeML,
		100 * f.after.sugar / f.volumeML,
		100 * f.after.sour / f.volumeML,
		100 * f.share,
		f.after.kcal(),
		f.celsius,
	}
}

// tiny is the step of the differences, as a share of the drink: short enough that they are derivatives, long enough that
// rounding does not show.
const tiny = 1e-6

// gradient is what a gram more of each part changes. Every reading follows from
// the parts in the pot alone, so the derivatives are taken once and each
// spread costs a product.
type gradient [numParts]reading

// gradientOf differentiates with respect to still or top, whichever half of p
// is given. Parts that no profile spreads and the drink lacks are left out.
func gradientOf(p *pot, half *parts, set *setting, centre *reading) gradient {
	var g gradient
	was, have := *half, half.values()
	step := tiny * (1 + p.still.water + p.top.water)
	for i := range g {
		if have[i] == 0 && i >= firstUnspread {
			continue
		}
		unit := unitPart(i)
		half.add(&unit, step)
		r := set.read(p, 1)
		*half = was
		for k := range r {
			g[i][k] = (r[k] - centre[k]) / step
		}
	}
	return g
}

// firstUnspread is salt: it, fat and texture come after what spreads.
const firstUnspread = 5

// spreader adds up the squares of what each independent spread changes.
type spreader struct {
	still, top gradient
	variance   reading
}

func (v *spreader) square(r *reading) {
	for k := range r {
		v.variance[k] += r[k] * r[k]
	}
}

// halves is how many millilitres go into either half of the pot.
type halves struct{ still, top float64 }

// of returns so many millilitres of a dose in the half that it goes into.
func (d *dose) of(ml float64) halves {
	if d.top {
		return halves{top: ml}
	}
	return halves{still: ml}
}

// shift moves each millilitre of what goes into the pot by the same parts.
func (v *spreader) shift(by *parts, ml halves) {
	var r reading
	for i, x := range by.values() {
		if x == 0 {
			continue
		}
		for k := range r {
			r[k] += x * (ml.still*v.still[i][k] + ml.top*v.top[i][k])
		}
	}
	v.square(&r)
}

// between takes in readings made a standard deviation above and below the centre.
// The temperature bends at 0 °C, so the two tell more than a slope.
func (v *spreader) between(above, below reading) {
	for k := range above {
		above[k] = (above[k] - below[k]) / 2
	}
	v.square(&above)
}

// plusMinus propagates every independent spread to first order: each input
// moves the numbers by its derivative times its standard deviation, and the
// squares add up. Two pours of one profile share its bottle and so its spread.
func plusMinus(doses []dose, p *pot, set *setting) PlusMinus {
	centre := set.read(p, 1)
	work := *p
	v := spreader{still: gradientOf(&work, &work.still, set, &centre)}
	if p.top != (parts{}) {
		v.top = gradientOf(&work, &work.top, set, &centre)
	}
	for i := range doses {
		d := &doses[i]
		v.shift(&d.per, d.of(spreadOf(d.pour)))
		if ml, first := shared(doses, i); first {
			v.profile(d, ml)
		}
	}
	if set.equation != noEquation || set.standing < 1 {
		v.between(set.read(p, 1+set.relative), set.read(p, 1-set.relative))
	}
	warmer, colder := *set, *set
	warmer.barC, warmer.startC = set.barC+barSpreadC, set.startC+barSpreadC
	colder.barC, colder.startC = set.barC-barSpreadC, set.startC-barSpreadC
	v.between(warmer.read(p, 1), colder.read(p, 1))
	r := v.variance
	for k := range r {
		r[k] = math.Sqrt(r[k])
	}
	return PlusMinus{VolumeML: r[0], ABV: r[1], SugarPer100: r[2], AcidPer100: r[3], DilutionPct: r[4],
		EnergyKcal: r[5], TemperatureC: r[6]}
}

// shared returns what a drink takes from the bottle of dose i, and whether dose i is
// the first of it.
func shared(doses []dose, i int) (ml halves, first bool) {
	for j := range doses {
		d := &doses[j]
		if d.pour.Profile != doses[i].pour.Profile {
			continue
		}
		if j < i {
			return halves{}, false
		}
		own := d.of(d.pour.ML)
		ml.still += own.still
		ml.top += own.top
	}
	return ml, true
}

// profile shifts the strength, the sugar and the acid of the bottle of a dose in turn,
// water making room so that the millilitre stays one.
func (v *spreader) profile(d *dose, ml halves) {
	p := d.pour.Profile
	abv, sugar, acid := p.ABV.Spread/100, p.Sugar.Spread/1000, p.Acid.Spread/1000
	if abv <= 0 && sugar <= 0 && acid <= 0 {
		return
	}
	room := roomIn(&d.per)
	if abv > 0 {
		v.shift(&parts{ethanol: abv * EthanolDensity, water: -abv * EthanolDensity * room.ethanol}, ml)
	}
	if sugar > 0 {
		v.shift(&parts{sugar: sugar, water: -sugar * room.solids}, ml)
	}
	if acid > 0 {
		v.shift(&parts{acid: acid, sour: acid * CitricOf(p.Acids), water: -acid * room.solids}, ml)
	}
}

// room is the grams of water that give way to a gram of something else at the
// same volume.
type room struct {
	ethanol, solids float64
}

// roomIn differentiates the volume of a millilitre. None gives way in a dry one.
func roomIn(per *parts) room {
	if per.water <= tiny {
		return room{}
	}
	was := per.volumeML()
	grown := func(by parts) float64 {
		p := *per
		p.add(&by, tiny)
		return p.volumeML() - was
	}
	water := grown(parts{water: 1})
	return room{ethanol: grown(parts{ethanol: 1}) / water, solids: grown(parts{sugar: 1}) / water}
}
