package station

import (
	"math"
	"slices"

	"counterpour/flavor"
	"counterpour/flavor/guest"
	"counterpour/flavor/riff/serve"
	"counterpour/flavor/riff/wish"
	"counterpour/flavor/riff/wording"
	"counterpour/flavor/sense"
)

// Limits is all that a drink must keep to: the guest's, and the wishes.
type Limits struct {
	Guest guest.Guest
	Aims  []Aim

	classes []flavor.Class
	barred  []string
	without []flavor.AromaFamily
	with    [][]string // of each, one must be poured
	words   []string   // of with, as they were written
	served  []wish.Wish
	minABV  float64
	maxABV  float64 // +Inf for none
	fewer   bool
	cheaper bool
}

// NewLimits joins what a guest must not have and what they wish for. It fails if
// either is not sound.
func NewLimits(g *guest.Guest, wishes []wish.Wish) (*Limits, error) {
	if err := g.Check(); err != nil {
		return nil, err
	}
	l := &Limits{Guest: *g, maxABV: math.Inf(1)}
	l.Guest.Avoid = slices.Clone(g.Avoid)
	l.Guest.NoAnimal = slices.Clone(g.NoAnimal)
	if g.MaxABV > 0 {
		l.maxABV = g.MaxABV
	}
	for i := range wishes {
		if err := l.add(&wishes[i]); err != nil {
			return nil, err
		}
	}
	return l, nil
}

func (l *Limits) add(w *wish.Wish) error {
	switch w.Kind {
	case wish.Sense, wish.Aroma, wish.Poured:
		a, err := aimOf(w)
		if err != nil {
			return err
		}
		l.Aims = append(l.Aims, a)
	case wish.Without:
		l.without = append(l.without, w.Families...)
	case wish.Allergen:
		l.Guest.Avoid = append(l.Guest.Avoid, w.Allergen)
	case wish.Animal:
		l.Guest.NoAnimal = append(l.Guest.NoAnimal, w.Animal)
	case wish.Class:
		l.classes = append(l.classes, w.Class)
	case wish.Bar:
		l.barred = append(l.barred, w.IDs...)
	case wish.With:
		l.with, l.words = append(l.with, w.IDs), append(l.words, w.Word)
	case wish.Served:
		l.served = append(l.served, *w)
	case wish.Fewer:
		l.fewer = true
	case wish.Cheaper:
		l.cheaper = true
	case wish.Below:
		l.maxABV = min(l.maxABV, w.ABV)
		l.Guest.NoAlcohol = l.Guest.NoAlcohol || w.ABV <= flavor.NoAlcoholABV
	case wish.Above:
		l.minABV = max(l.minABV, w.ABV)
	default:
		return flavor.Invalid("toward", w.Kind, "%q is no kind of wish; read wishes with package wish", w.Kind)
	}
	return nil
}

// Wished reports whether anything beside the guest's limits is asked for.
func (l *Limits) Wished() bool {
	return len(l.Aims)+len(l.with)+len(l.served) > 0 || l.fewer || l.cheaper
}

// Wants reports whether a wish asks for an ingredient.
func (l *Limits) Wants(p *flavor.Profile) bool {
	return slices.ContainsFunc(l.with, func(ids []string) bool { return slices.Contains(ids, p.ID) })
}

// Simpler reports whether fewer pours are asked for.
func (l *Limits) Simpler() bool { return l.fewer }

// Lighter reports whether less alcohol is asked for.
func (l *Limits) Lighter() bool {
	return !math.IsInf(l.maxABV, 1) || slices.ContainsFunc(l.Aims, func(a Aim) bool { return a.kind == wish.Sense && a.sense == sense.Ethanol && !a.Up })
}

// Ways lists how the wishes want a drink mixed and served; what they leave open
// stays as it is.
func (l *Limits) Ways(s *flavor.Spec) []serve.Way {
	way := serve.Way{Method: s.Method, Service: s.Service}
	for _, w := range l.served {
		if w.Method != "" {
			way.Method = w.Method
		}
		if w.Service != "" {
			way.Service = w.Service
		}
	}
	if len(l.served) == 0 {
		return nil
	}
	return []serve.Way{way}
}

// neatAroma is the intensity of a family from which a bottle is known for it.
const neatAroma = 2.0

// Accepts reports whether p may be poured at all: by the guest, allergens first,
// and by the wishes.
func (l *Limits) Accepts(p *flavor.Profile) bool { return l.Guest.Accepts(p) && !l.unwished(p) }

// Cleared reports whether p may be poured once its label is found to clear it for the
// guest, and not before.
func (l *Limits) Cleared(p *flavor.Profile) bool {
	return l.Guest.LabelDecides(p) && !l.unwished(p)
}

// unwished reports whether a wish rules p out.
func (l *Limits) unwished(p *flavor.Profile) bool {
	return slices.Contains(l.classes, p.Class) || slices.Contains(l.barred, p.ID) ||
		slices.ContainsFunc(l.without, func(f flavor.AromaFamily) bool { return p.Aroma[f] >= neatAroma })
}

// acceptsAll reports whether every pour of a drink may be poured.
func (l *Limits) acceptsAll(s *flavor.Spec) bool {
	for i := range s.Pours {
		if !l.Accepts(s.Pours[i].Profile) {
			return false
		}
	}
	return true
}

// costOf returns the cost of a drink by the prices of the guest, as far as they are known.
func (l *Limits) costOf(s *flavor.Spec) float64 {
	sum, _ := s.Cost(l.Guest.Prices)
	return sum
}

// lessCost is the share of a drink's cost that a cheaper one may cost.
const lessCost = 0.9

// Kept reports whether a finished drink breaks no limit. The wishes that need a
// drink to be compared with are not among them.
func (j *Job) Kept(s *Settled) bool {
	l, d := j.Limits, s.Drink
	if !l.acceptsAll(&s.Spec) || d.ABV > l.maxABV || d.ABV < l.minABV {
		return false
	}
	if l.Guest.MaxCost > 0 && l.costOf(&s.Spec) > l.Guest.MaxCost {
		return false
	}
	return !slices.ContainsFunc(l.without, func(f flavor.AromaFamily) bool { return d.Aroma[f] >= sense.Aroma.Threshold()/sense.Aroma.Weber() })
}

// wishes reports whether a finished drink meets every wish.
func (j *Job) wishes(s *Settled) bool {
	l := j.Limits
	for _, ids := range l.with {
		if !slices.ContainsFunc(s.Spec.Pours, func(p flavor.Pour) bool { return slices.Contains(ids, p.Profile.ID) }) {
			return false
		}
	}
	for _, w := range l.served {
		shaken := w.Method == flavor.Shake && s.Spec.Method == flavor.DryShake
		if w.Method != "" && w.Method != s.Spec.Method && !shaken || w.Service != "" && w.Service != s.Spec.Service {
			return false
		}
	}
	if j.From == nil {
		return true
	}
	if l.fewer && len(s.Spec.Pours) >= len(j.From.Pours) {
		return false
	}
	if l.cheaper && !(l.costOf(&s.Spec) < lessCost*l.costOf(j.From)) {
		return false
	}
	for i := range l.Aims {
		if !j.brought(&l.Aims[i], s) || j.sparesSugar(&l.Aims[i], s) || j.waters(&l.Aims[i], s) || !l.Aims[i].Up && j.bringsBack(&l.Aims[i], s) {
			return false
		}
	}
	return s.short == 0
}

// leastLess is how much less of what there should be less of a drink pours, as a share.
const leastLess = 0.08

// waters reports whether a wish for less of a taste or a smell is met by length alone, or by
// more of the rest: a sour that is topped with soda is as sweet.
func (j *Job) waters(a *Aim, s *Settled) bool {
	if a.Up || a.kind == wish.Poured || a.sense == sense.Ethanol || a.sense == sense.Volume {
		return false
	}
	sum := func(s *flavor.Spec) (v float64) {
		for i := range s.Pours {
			v += s.Pours[i].ML * a.PerML(j.Station.Space, s.Pours[i].Profile)
		}
		return v
	}
	return sum(&s.Spec) > (1-leastLess)*sum(j.wished.spec)
}

// sparesSugar reports whether a wish for less of a sense is met by less of what carries
// the drink while a sweetener that has as much to do with it stays whole: who wants less
// sugar wants the coffee liqueur no less.
func (j *Job) sparesSugar(a *Aim, s *Settled) bool {
	if a.Up || a.kind != wish.Sense {
		return false
	}
	cut, spared := false, false
	for i := range j.wished.spec.Pours {
		p := &j.wished.spec.Pours[i]
		if a.PerML(j.Station.Space, p.Profile) <= 0 {
			continue
		}
		left := s.Spec.MLOf(p.Profile.Is)
		switch p.Profile.Class.Part() {
		case flavor.PartModifier:
			cut = cut || left < p.ML-wording.SameML
		case flavor.PartSweetener:
			spared = spared || left > p.ML-wording.SameML
		}
	}
	return cut && spared
}

// CheckWishes fails with a fault if a wish names what is not on the shelf.
func (j *Job) CheckWishes() error {
	for i, ids := range j.Limits.with {
		if !slices.ContainsFunc(ids, func(id string) bool { at, ok := j.byID[id]; return ok && at >= 0 }) {
			return flavor.Invalid("toward", j.Limits.words[i], "no allowed ingredient matches %q; name one that is in stock", j.Limits.words[i])
		}
	}
	return nil
}
