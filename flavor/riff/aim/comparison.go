package aim

import (
	"math"
	"slices"

	"counterpour/flavor"
	"counterpour/flavor/mix"
	"counterpour/flavor/riff/wish"
	"counterpour/flavor/riff/wording"
	"counterpour/flavor/sense"
)

// Mixed is a drink that was mixed, as it is compared with others.
type Mixed struct {
	Spec  *flavor.Spec
	Drink *mix.Drink
	Glass *sense.Percept
}

// Comparison holds a drink against the one that wishes for more or less are held against.
type Comparison struct {
	Space    *sense.Space
	From, To Mixed
}

// asStrong is how many just-noticeable differences weaker a drink tastes as strong.
const asStrong = 0.25

// moved is how many just-noticeable differences the drink is nearer to a wish.
// More alcohol in a weaker drink is a longer one, and no nearer to a wish for strength.
func (c *Comparison) moved(a *Aim) float64 {
	if a.total && a.steps(c.From.Drink.ABV, c.To.Drink.ABV) < -asStrong {
		return 0
	}
	return a.steps(a.in(&c.From), a.in(&c.To))
}

// wellMet is the number of steps from which more of the same counts no more.
const wellMet = 3.0

// Met is how well the drink meets wishes for more or less, 0 to 1; 1 if there are none.
func (c *Comparison) Met(aims []Aim) float64 {
	if len(aims) == 0 {
		return 1
	}
	worst := math.Inf(1)
	for i := range aims {
		best := math.Inf(-1)
		for _, way := range aims[i].ways() {
			best = max(best, c.moved(way))
		}
		worst = min(worst, best/wellMet)
	}
	return max(0, min(1, worst))
}

// Shortfall sums what the drink still lacks of wishes for more or less, in
// just-noticeable differences.
func (c *Comparison) Shortfall(aims []Aim) (lack float64) {
	for i := range aims {
		least := math.Inf(1)
		for _, way := range aims[i].ways() {
			least = min(least, max(0, way.Least-c.moved(way)))
		}
		lack += least
	}
	return lack
}

// AsMeant reports whether the drink leads toward wishes for more or less by what who says so
// means: more of something by what is known for it, and less of it by pouring less.
func (c *Comparison) AsMeant(aims []Aim) bool {
	for i := range aims {
		a := &aims[i]
		if !c.brought(a) || c.sparesSugar(a) || c.waters(a) || c.misjudges(a) || !a.Up && c.bringsBack(a) {
			return false
		}
	}
	return true
}

// tiny is what a share is divided by where nothing grew.
const tiny = 1e-12

// A wish for more of a smell is met by what is known for it, of which at least so
// much of the smell is that; and of length by what lengthens: the brandy in a drink
// makes it no fruitier, and a fourth half ounce of it no longer. So much of the
// growth comes from there. Common practice, no source.
const (
	knownShare       = 1.0 / 6
	knownShareOfMany = 1.0 / 3 // of a wish as wide as fruit of any kind
	fewFamilies      = 3
	mostGrowth       = 0.6
)

// knownFor reports whether an ingredient is one that a bartender reaches for when
// there should be more of what is wished.
func (a *Aim) knownFor(p *flavor.Profile) bool {
	switch {
	case a.row != nil:
		return a.row.Carries(p)
	case a.kind == wish.Aroma:
		var sum float64
		for _, f := range a.families {
			sum += p.Aroma[f]
		}
		share := knownShare
		if len(a.families) > fewFamilies {
			share = knownShareOfMany
		}
		return sum > 0 && sum >= share*p.Aroma.Total()
	case a.kind == wish.Sense && a.sense == sense.Volume:
		return p.Class.Part() == flavor.PartLength
	}
	return true
}

// brought reports whether what grew toward a wish for more comes from what is known
// for it, in one of the ways that meet it.
func (c *Comparison) brought(a *Aim) bool {
	if !a.Up {
		return true
	}
	for _, way := range a.ways() {
		known := c.grown(way, way.knownFor)
		if c.moved(way) >= way.Least && known > 0 && known >= mostGrowth*c.grown(way, anything) {
			return true
		}
	}
	return false
}

func anything(*flavor.Profile) bool { return true }

// grown is how much more of what is wished a drink holds by ingredients that count, a
// millilitre of it.
func (c *Comparison) grown(a *Aim, counts func(*flavor.Profile) bool) float64 {
	sum := func(s *flavor.Spec, ml float64) (v float64) {
		for i := range s.Pours {
			if p := &s.Pours[i]; counts(p.Profile) {
				v += p.ML * a.PerML(c.Space, p.Profile)
			}
		}
		if a.total || a.sense == sense.Volume && a.kind == wish.Sense {
			return v
		}
		return v / ml
	}
	return sum(c.To.Spec, c.To.Drink.VolumeML) - sum(c.From.Spec, c.From.Drink.VolumeML)
}

// Carried is the share of what grew toward the wishes that comes from what a bartender
// reaches for first, 0 to 1; 1 where no table says what that is.
func (c *Comparison) Carried(aims []Aim) float64 {
	worst := 1.0
	for i := range aims {
		a := &aims[i]
		if a.row == nil {
			continue
		}
		best := 0.0
		for _, way := range a.ways() {
			if c.moved(way) >= way.Least {
				first := c.grown(way, func(p *flavor.Profile) bool { return a.row.First[p.ID] })
				best = max(best, min(1, first/max(tiny, c.grown(way, anything))))
			}
		}
		worst = min(worst, best)
	}
	return worst
}

// mostBroughtBack is how much of what there should be less of may come in anew, as a
// share of what there was.
const mostBroughtBack = 0.15

// bringsBack reports whether something new brings what there should be less of: who
// wants less sugar wants the syrup gone, and no liqueur for it.
func (c *Comparison) bringsBack(a *Aim) bool {
	came := c.grown(a, func(p *flavor.Profile) bool { return !c.From.Spec.HasProfile(p) && !p.Base() })
	was := a.in(&c.From)
	return came > mostBroughtBack*was
}

// A long drink has at least so much of what lengthens it, in mL. One that is shortened loses at
// least such a share of that, an ounce and a half of five, and by it so much of all that it loses: half a
// measure of its spirit less is a short measure. One that is made longer gains such a share, an
// ounce of six. Common practice, no source.
const (
	muchLength     = 58.0
	leastCut       = 0.3
	leastGain      = 0.15
	leastShortened = 0.6
)

// misjudges reports whether a wish for another length is met otherwise than by what a long drink
// is long by: a shorter one pours less of that, enough to be seen, and as much of the rest; a
// longer one has more that is soft on top of what it has. In both another soda is another drink.
func (c *Comparison) misjudges(a *Aim) bool {
	if a.kind != wish.Sense || a.sense != sense.Volume {
		return false
	}
	long := func(p *flavor.Profile) bool { return p.Class.Part() == flavor.PartLength }
	had := c.From.Spec.MLOf(long)
	if had < muchLength {
		return false
	}
	moved := c.grown(a, long)
	came := func(p *flavor.Profile) bool { return long(p) && !c.From.Spec.HasProfile(p) }
	if a.Up {
		harder := func(p *flavor.Profile) bool { return came(p) && p.ABV.Value > flavor.NoAlcoholABV }
		return moved < leastGain*had || c.lacksLength() || c.To.Spec.Has(harder)
	}
	return -moved < leastCut*had || -moved < -leastShortened*c.grown(a, anything) || c.To.Spec.Has(came)
}

// lacksLength reports whether a drink pours less than before of something that lengthens it.
func (c *Comparison) lacksLength() bool {
	return slices.ContainsFunc(c.From.Spec.Pours, func(p flavor.Pour) bool {
		return p.Profile.Class.Part() == flavor.PartLength && c.To.Spec.MLOf(p.Profile.Is) < p.ML-wording.SameML
	})
}

// leastLess is how much less of what there should be less of a drink pours, as a share.
const leastLess = 0.08

// leastLessAlcohol is the same of alcohol, as a share of its grams in the glass: a quarter ounce of
// two of spirit is hardly less to drink (common practice, no source).
const leastLessAlcohol = 0.15

// waters reports whether a wish for less strength, or less of a taste or a smell, is met by length
// alone, or by more of the rest: a sour that is topped with soda is as sweet, and who drinks it up
// has drunk as much alcohol.
func (c *Comparison) waters(a *Aim) bool {
	if a.Up || a.kind == wish.Poured || a.sense == sense.Volume {
		return false
	}
	sum := func(s *flavor.Spec) (v float64) {
		for i := range s.Pours {
			v += s.Pours[i].ML * a.PerML(c.Space, s.Pours[i].Profile)
		}
		return v
	}
	least := leastLess
	if a.kind == wish.Sense && a.sense == sense.Ethanol {
		least = leastLessAlcohol
	}
	return sum(c.To.Spec) > (1-least)*sum(c.From.Spec)
}

// sparesSugar reports whether a wish for less of a sense is met by less of what carries
// the drink while a sweetener that has as much to do with it stays whole: who wants less
// sugar wants the coffee liqueur no less.
func (c *Comparison) sparesSugar(a *Aim) bool {
	if a.Up || a.kind != wish.Sense {
		return false
	}
	cut, spared := false, false
	for i := range c.From.Spec.Pours {
		p := &c.From.Spec.Pours[i]
		if a.PerML(c.Space, p.Profile) <= 0 {
			continue
		}
		left := c.To.Spec.MLOf(p.Profile.Is)
		switch p.Profile.Class.Part() {
		case flavor.PartModifier:
			cut = cut || left < p.ML-wording.SameML
		case flavor.PartSweetener:
			spared = spared || left > p.ML-wording.SameML
		}
	}
	return cut && spared
}
