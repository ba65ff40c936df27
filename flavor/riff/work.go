package riff

import (
	"context"
	"math"
	"math/rand/v2"
	"slices"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/measure"
	"counterpour/flavor/mix"
	"counterpour/flavor/template"
)

// item is one ingredient that may be poured.
type item struct {
	profile *flavor.Profile
	part    flavor.Part
	per     template.Equivalents // a millilitre
	ledger  mix.Ledger           // a millilitre
	made    makeUp
	unit    flavor.Unit // in which it is usually poured
	// products of made with the proven drinks, worked out when first needed
	products []float64
	chance   float64 // what the seed adds to its standing
}

// work is one request being worked on.
type work struct {
	riffer *Riffer
	limits *limits
	system measure.System
	shelf  []item // what may be poured, by id
	byID   map[string]int

	must map[string]bool // ids of the bottles that must move

	spec  *flavor.Spec // the drink asked about
	drink *mix.Drink
	at    place
	left  Refused
	each  int // drafts of one move that are solved
}

// seedChance is how much a seed may lift an ingredient above another: enough to
// reorder what is nearly as good, not to bring up what is not.
const seedChance = 0.06

// newWork gathers what may be poured: the stock, once each, without what the
// limits forbid.
func (r *Riffer) newWork(stock []*flavor.Profile, l *limits, system measure.System, seed uint64) *work {
	w := &work{riffer: r, limits: l, system: system, byID: map[string]int{}, each: draftsEach}
	for _, p := range stock {
		if p == nil {
			continue
		}
		if _, seen := w.byID[p.ID]; seen {
			continue
		}
		w.byID[p.ID] = -1
		if !l.accepts(p) {
			w.left.ByGuest++
			continue
		}
		unit, ok := usualUnit(p, system)
		if !ok {
			continue
		}
		w.shelf = append(w.shelf, item{profile: p, part: p.Class.Part(), per: template.PerML(p), ledger: mix.PerML(p),
			made: makeUpOf(p, r.book.classes), unit: unit})
	}
	slices.SortFunc(w.shelf, func(a, b item) int { return strings.Compare(a.profile.ID, b.profile.ID) })
	chance := rand.New(rand.NewPCG(seed, seedStream))
	for i := range w.shelf {
		w.byID[w.shelf[i].profile.ID] = i
		w.shelf[i].chance = seedChance * chance.Float64()
	}
	return w
}

// seedStream keeps the numbers drawn here apart from those drawn elsewhere from
// the same seed.
const seedStream = 0x52696666

// has returns the item of a profile, if it may be poured.
func (w *work) has(p *flavor.Profile) (*item, bool) {
	i, ok := w.byID[p.ID]
	if !ok || i < 0 {
		return nil, false
	}
	return &w.shelf[i], true
}

// about sets the drink that the work is about.
func (w *work) about(s *flavor.Spec) error {
	drink, err := w.riffer.mixer.Mix(s)
	if err != nil {
		return err
	}
	w.spec, w.drink, w.at = s, drink, placeOf(s, drink)
	return nil
}

// usualUnit is the unit in which a bartender pours p; false if it is in none.
func usualUnit(p *flavor.Profile, system measure.System) (flavor.Unit, bool) {
	unit, ok := p.UsualUnit(system.Unit())
	per, known := measure.MLPerUnit(unit, p)
	return unit, ok && known && per > 0
}

// pour returns the pour of p nearest to ml millilitres that a hand can make.
func pour(p *flavor.Profile, unit flavor.Unit, ml float64) (flavor.Pour, bool) {
	amount := measure.Snap(ml, unit, p)
	per, ok := measure.MLPerUnit(unit, p)
	if !ok || !(amount > 0) || math.IsNaN(per) {
		return flavor.Pour{}, false
	}
	return flavor.Pour{Profile: p, Amount: amount, Unit: unit, ML: amount * per,
		Match: flavor.Match{Asked: p.Name, How: flavor.MatchExact}}, true
}

// snapped returns a spec with every amount one that a hand can pour.
func snapped(s *flavor.Spec) flavor.Spec {
	out := s.Clone()
	out.Notes = nil
	for i := range out.Pours {
		p := &out.Pours[i]
		if made, ok := pour(p.Profile, p.Unit, p.ML); ok && p.Unit != flavor.Top {
			p.Amount, p.ML = made.Amount, made.ML // a share of a pour still states the whole amount
		}
	}
	return out
}

// stopped returns the context's error once it has ended.
func stopped(ctx context.Context) error {
	select {
	case <-ctx.Done():
		return ctx.Err()
	default:
		return nil
	}
}
