package aim

import (
	"math"
	"slices"

	"counterpour/flavor"
	"counterpour/flavor/guest"
	"counterpour/flavor/mix"
	"counterpour/flavor/riff/serve"
	"counterpour/flavor/riff/wish"
	"counterpour/flavor/sense"
)

// Limits is all that a drink must keep to: the guest's, and the wishes.
type Limits struct {
	Guest guest.Guest
	Aims  []Aim

	classes []wish.Wish // each rules out a class, but for what it spares
	barred  []string
	without []flavor.AromaFamily
	with    [][]string // of each, one must be poured
	words   []string   // of with, as they were written
	served  []wish.Wish
	minABV  float64
	maxABV  float64 // +Inf for none
	cold    string  // the words that ask for a hot drink to be cold; empty if nothing does
	hotDay  bool
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
		a, err := newAim(w)
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
		l.classes = append(l.classes, *w)
	case wish.Bar:
		l.barred = append(l.barred, w.IDs...)
	case wish.With:
		l.with, l.words = append(l.with, w.IDs), append(l.words, w.Word)
	case wish.Served:
		l.served = append(l.served, *w)
	case wish.Cold:
		l.cold = w.Word
	case wish.HotDay:
		l.hotDay = true
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
	return len(l.Aims)+len(l.with)+len(l.served) > 0 || l.cold != "" || l.fewer || l.cheaper
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

// Stronger reports whether a stronger drink is asked for.
func (l *Limits) Stronger() bool {
	return slices.ContainsFunc(l.Aims, func(a Aim) bool { return a.OfStrength() })
}

// Salts reports whether a saltier drink is asked for, or one that salt makes so.
func (l *Limits) Salts() bool {
	return slices.ContainsFunc(l.Aims, func(a Aim) bool {
		return a.Up && slices.ContainsFunc(a.ways(), func(way *Aim) bool { return way.kind == wish.Sense && way.sense == sense.Salty })
	})
}

// Unwished returns the limits without wishes for more or less and without those of strength.
// What may not be poured stays so.
func (l *Limits) Unwished() *Limits {
	out := *l
	out.Aims, out.minABV, out.maxABV = nil, 0, math.Inf(1)
	return &out
}

// AsServed reports whether how a drink is mixed or served is asked for.
func (l *Limits) AsServed() bool { return len(l.served) > 0 || l.cold != "" }

// Heats reports whether a drink that is cold is to be served hot.
func (l *Limits) Heats(s *flavor.Spec) bool {
	return s.Service != flavor.Hot && slices.ContainsFunc(l.served, func(w wish.Wish) bool { return w.Service == flavor.Hot })
}

// Chills reports whether a hot drink is to be served cold.
func (l *Limits) Chills(s *flavor.Spec) bool {
	iced := func(w wish.Wish) bool { return w.Service != "" && w.Service != flavor.Hot }
	return s.Service == flavor.Hot && (l.cold != "" || l.hotDay || slices.ContainsFunc(l.served, iced))
}

// Regauged reports whether how a drink is served, or how long it is, is asked for.
func (l *Limits) Regauged() bool {
	return l.AsServed() || slices.ContainsFunc(l.Aims, func(a Aim) bool {
		return slices.ContainsFunc(a.ways(), func(way *Aim) bool { return way.kind == wish.Sense && way.sense == sense.Volume })
	})
}

// Relengths reports whether a longer or a shorter drink is asked for, and no other more or less.
func (l *Limits) Relengths() (longer, shorter bool) {
	if len(l.Aims) != 1 || l.Aims[0].kind != wish.Sense || l.Aims[0].sense != sense.Volume {
		return false, false
	}
	return l.Aims[0].Up, !l.Aims[0].Up
}

// Adds reports whether all that is wished is more of something, an ingredient, or another glass.
func (l *Limits) Adds() bool {
	return l.Wished() && !l.fewer && !l.cheaper && !slices.ContainsFunc(l.Aims, func(a Aim) bool { return !a.Up })
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
	ruledOut := func(w wish.Wish) bool { return w.Class == p.Class && !slices.Contains(w.Spared, p.ID) }
	return slices.ContainsFunc(l.classes, ruledOut) || slices.Contains(l.barred, p.ID) ||
		slices.ContainsFunc(l.without, func(f flavor.AromaFamily) bool { return p.Aroma[f] >= neatAroma })
}

// AcceptsAll reports whether every pour of a drink may be poured, and what is laid on it served.
func (l *Limits) AcceptsAll(s *flavor.Spec) bool {
	if !l.Guest.MayHaveLaid(s) {
		return false
	}
	for i := range s.Pours {
		if !l.Accepts(s.Pours[i].Profile) {
			return false
		}
	}
	return true
}

// CostOf returns the cost of a drink by the prices of the guest, as far as they are known.
func (l *Limits) CostOf(s *flavor.Spec) float64 {
	sum, _ := s.Cost(l.Guest.Prices)
	return sum
}

// lessCost is the share of a drink's cost that a cheaper one may cost.
const lessCost = 0.9

// Strengths are the least and the most strength of the finished drink, in % vol: 0 and +Inf
// where nothing is asked.
func (l *Limits) Strengths() (least, most float64) { return l.minABV, l.maxABV }

// Keeps reports whether a finished drink breaks no limit. The wishes that need a
// drink to be compared with are not among them.
func (l *Limits) Keeps(s *flavor.Spec, d *mix.Drink) bool {
	if !l.AcceptsAll(s) || d.ABV > l.maxABV || d.ABV < l.minABV {
		return false
	}
	if l.Guest.MaxCost > 0 && l.CostOf(s) > l.Guest.MaxCost {
		return false
	}
	return !slices.ContainsFunc(l.without, func(f flavor.AromaFamily) bool { return d.Aroma[f] >= sense.Aroma.Threshold()/sense.Aroma.Weber() })
}

// PoursAsked reports whether a drink pours everything that is asked for, and is mixed and
// served as is asked.
func (l *Limits) PoursAsked(s *flavor.Spec) bool {
	for _, ids := range l.with {
		if !s.Has(func(p *flavor.Profile) bool { return slices.Contains(ids, p.ID) }) {
			return false
		}
	}
	if (l.cold != "" || l.hotDay) && s.Service == flavor.Hot {
		return false
	}
	for _, w := range l.served {
		shaken := w.Method == flavor.Shake && s.Method == flavor.DryShake
		if w.Method != "" && w.Method != s.Method && !shaken || w.Service != "" && w.Service != s.Service {
			return false
		}
	}
	return true
}

// Smaller reports whether a drink has fewer pours than another and costs less, as far as
// either is asked for.
func (l *Limits) Smaller(s, than *flavor.Spec) bool {
	if l.fewer && len(s.Pours) >= len(than.Pours) {
		return false
	}
	return !l.cheaper || l.CostOf(s) < lessCost*l.CostOf(than)
}

// What a drink for a hot day has at most, in % vol: hardly more than the one that it is held
// against, since an amount is rounded to what a jigger pours, and no more than a sour, which what is
// stirred of spirits and wines alone is above. Common practice, no source.
const (
	mildBy    = 0.5
	mildAtAll = 20.0
)

// AsMild reports whether a drink is no stronger than another and not strong, where it is for a hot
// day.
func (l *Limits) AsMild(d, than *mix.Drink) bool {
	return !l.hotDay || d.ABV <= min(than.ABV+mildBy, mildAtAll)
}

// Check fails with a fault if a wish names what is not at hand, by id, or asks a drink to be
// served cold that is.
func (l *Limits) Check(s *flavor.Spec, atHand func(id string) bool) error {
	if l.cold != "" && s != nil && s.Service != flavor.Hot {
		return flavor.Invalid("toward", l.cold, "the drink is served cold already; for a colder one ask for \"on crushed ice\" or \"frozen\"")
	}
	for i, ids := range l.with {
		if !slices.ContainsFunc(ids, atHand) {
			return flavor.Invalid("toward", l.words[i], "no allowed ingredient matches %q; name one that is in stock", l.words[i])
		}
	}
	return nil
}
