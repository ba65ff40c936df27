package technique

import (
	"counterpour/flavor"
	"counterpour/flavor/makeup"
)

// The share of what is silky, of a drink of clear pours alone, from where to where it wants
// stirring.
const someSilk, muchSilk = 0.12, 0.20

// Of a drink of clear pours alone: the share of dry vermouth up to which it may be shaken, as some
// like their martini, and from which it is stirred; and that of the base from where to where the
// rest is the sugar of an old-fashioned, and not what is left of a sour. Common practice, no source.
const (
	shakenDry, stirredDry      = 0.25, 0.40
	sweetenedBase, roundedBase = 0.80, 0.88
	someSugar, plentyOfSugar   = 0.01, 0.03
)

// The share, of drinks made of the same, that are stirred: from where to where it tells. Chosen on
// proven drinks and on such as lack their citrus.
const seldomStirred, oftenStirred = 0.55, 0.70

// clear is what is silky in a drink of clear pours alone, in mL.
type clear struct {
	wine, dry, cordial, sugar, base float64
	by                              *flavor.Profile // that most tells, the wine before the rest
	most                            float64         // of it
}

// add takes in a pour of so many mL.
func (c *clear) add(p *flavor.Profile, ml float64) {
	tells := ml
	switch silk := p.Class; {
	case p.Base():
		c.base += ml
		return
	case silk == flavor.ClassFortifiedWine:
		c.wine += ml
	case silk.Laced():
		c.dry += ml * makeup.Dryness(p)
		c.wine += ml * (1 - makeup.Dryness(p))
	case silk.Kin() == flavor.KinLiqueur || silk.Kin() == flavor.KinBitter:
		c.cordial, tells = c.cordial+ml, besideWine*ml
	case silk.Part() == flavor.PartSweetener && !silk.Tart():
		c.sugar, tells = c.sugar+ml, besideWine*ml
	default:
		return
	}
	if tells > c.most {
		c.most, c.by = tells, p
	}
}

// besideWine is what a millilitre of what is sweet tells beside one of wine. Judged.
const besideWine = 0.5

// share returns how much of a drink of total mL is silky: what of it counts for that. What is sweet
// by a liqueur or an amaro is stirred as far as drinks made of the same are: others of it lack their
// citrus.
func (c *clear) share(total float64, shaken bool, stirred func() float64) float64 {
	dry, wine := c.dry/total, c.wine/total
	if shaken {
		dry *= makeup.Ramp(dry+wine, shakenDry, stirredDry)
	}
	cordial := c.cordial / total
	if cordial > 0 {
		cordial = min(cordial, muchSilk) * makeup.Ramp(stirred(), seldomStirred, oftenStirred)
	}
	sugar := muchSilk * makeup.Ramp(c.base/total, sweetenedBase, roundedBase) * makeup.Ramp(c.sugar/total, someSugar, plentyOfSugar)
	return wine + dry + cordial + sugar
}

// clouded tells whether a drink of nothing but what is clear is shaken, which makes it cloudy and
// thin. A blender is no better.
func (w *workshop) clouded() {
	blended := w.spec.Method == flavor.Blend && w.spec.Service == flavor.Up
	shaken := w.spec.Method == flavor.Shake && (w.spec.Service == flavor.Up || w.spec.Service == flavor.Rocks)
	if !blended && !shaken {
		return
	}
	var c clear
	for i := range w.spec.Pours {
		p := w.spec.Pours[i].Profile
		if WantsShaking(p) {
			return
		}
		c.add(p, w.ml[i])
	}
	w.say(Clouded, c.by, c.share(w.total, shaken, w.stirred), someSilk, muchSilk, slightMisstep)
}
