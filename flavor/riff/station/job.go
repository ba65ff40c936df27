package station

import (
	"context"
	"math/rand/v2"
	"slices"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/measure"
	"counterpour/flavor/mix"
	"counterpour/flavor/ratio"
	"counterpour/flavor/riff/aim"
	"counterpour/flavor/riff/precedent"
	"counterpour/flavor/riff/wish"
	"counterpour/flavor/sense"
)

// Item is one ingredient that may be poured.
type Item struct {
	Profile *flavor.Profile
	Part    flavor.Part
	Per     ratio.Equivalents // a millilitre
	Unit    flavor.Unit       // in which it is usually poured
	Chance  float64           // what the seed adds to its standing

	ledger mix.Ledger // a millilitre
	most   float64    // mL, 0 until it is first asked for
	made   precedent.MakeUp
	// products of made with the proven drinks, worked out when first needed
	products []float64
}

// Job is one request being worked on. It is not safe for concurrent use.
type Job struct {
	Station *Station
	Limits  *aim.Limits
	System  measure.System
	Shelf   []Item          // what may be poured, by id
	Must    map[string]bool // ids of the bottles that must move
	Left    Refused
	// Labels are what is left off the shelf though its label may clear it for the guest.
	Labels []*flavor.Profile

	// Given are the drinks that somebody brought: how they are poured, mixed and
	// served is not questioned. From is the one asked about, if there is one.
	Given     []*flavor.Spec
	From      *flavor.Spec
	FromDrink *mix.Drink
	FromGlass *sense.Percept
	wished    aim.Mixed // what wishes for more or less are held against

	byID  map[string]int // place on the shelf, −1 for what may not be poured
	keeps map[string]*precedent.Kept
	pairs map[[2]string]*precedent.Pair
}

// seedChance is how much a seed may lift an ingredient above another: enough to
// reorder what is nearly as good, not to bring up what is not.
const seedChance = 0.06

// seedStream keeps the numbers drawn here apart from those drawn elsewhere from
// the same seed.
const seedStream = 0x52696666

// NewJob gathers what may be poured: the stock, once each, without what the
// limits forbid.
func (s *Station) NewJob(stock []*flavor.Profile, l *aim.Limits, system measure.System, seed uint64) *Job {
	j := &Job{Station: s, Limits: l, System: system, byID: map[string]int{}, keeps: map[string]*precedent.Kept{}, pairs: map[[2]string]*precedent.Pair{}}
	if !slices.ContainsFunc(stock, func(p *flavor.Profile) bool { return p != nil && l.Accepts(p) && precedent.Carries(p) }) {
		l.Guest.NoAlcohol = true // a bar without alcohol serves none
	}
	for _, p := range stock {
		if p == nil {
			continue
		}
		if _, seen := j.byID[p.ID]; seen {
			continue
		}
		j.byID[p.ID] = -1
		if !l.Accepts(p) {
			j.Left.ByGuest++
			if l.Cleared(p) {
				j.Labels = append(j.Labels, p)
			}
			continue
		}
		unit, ok := usualUnit(p, system)
		if !ok {
			continue
		}
		j.Shelf = append(j.Shelf, Item{Profile: p, Part: p.Class.Part(), Per: ratio.PerML(p), ledger: mix.PerML(p),
			made: precedent.MakeUpOf(p), Unit: unit})
	}
	slices.SortFunc(j.Shelf, func(a, b Item) int { return strings.Compare(a.Profile.ID, b.Profile.ID) })
	for i := range l.Aims {
		l.Aims[i].CarriedBy(s.carriers, "", j.stocks)
	}
	chance := rand.New(rand.NewPCG(seed, seedStream))
	for i := range j.Shelf {
		j.byID[j.Shelf[i].Profile.ID] = i
		j.Shelf[i].Chance = seedChance * chance.Float64()
	}
	return j
}

// stocks reports whether the shelf has anything that carries a wish.
func (j *Job) stocks(row *wish.Row) bool {
	return slices.ContainsFunc(j.Shelf, func(it Item) bool { return row.Carries(it.Profile) })
}

// Has returns the item of a profile, if it may be poured.
func (j *Job) Has(p *flavor.Profile) (*Item, bool) {
	i, ok := j.byID[p.ID]
	if !ok || i < 0 {
		return nil, false
	}
	return &j.Shelf[i], true
}

// SetFrom sets the drink that the job is about.
func (j *Job) SetFrom(s *flavor.Spec) error {
	drink, err := j.Station.Mixer.Mix(s)
	if err != nil {
		return err
	}
	j.From, j.FromDrink, j.FromGlass = s, drink, j.Station.Space.Percept(s, drink)
	j.wished = aim.Mixed{Spec: s, Drink: drink, Glass: j.FromGlass}
	j.Given = append(j.Given, s)
	if base := largestBase(s); base != nil {
		for i := range j.Limits.Aims {
			j.Limits.Aims[i].CarriedBy(j.Station.carriers, base.Class, j.stocks)
		}
	}
	j.WriteAs(s)
	return nil
}

// largestBase is the spirit of a drink that is poured most, nil if it has none.
func largestBase(s *flavor.Spec) (base *flavor.Profile) {
	most := 0.0
	for i := range s.Pours {
		if p := &s.Pours[i]; p.Profile.Base() && p.ML > most {
			base, most = p.Profile, p.ML
		}
	}
	return base
}

// WishFrom holds wishes for more or less against another drink than the one asked about:
// where that cannot be poured, against what is poured in its place.
func (j *Job) WishFrom(s *flavor.Spec) error {
	drink, err := j.Station.Mixer.Mix(s)
	if err != nil {
		return err
	}
	j.wished = aim.Mixed{Spec: s, Drink: drink, Glass: j.Station.Space.Percept(s, drink)}
	return nil
}

// WriteAs pours what comes in by the centilitre where a drink is written in
// centilitres: a card has one unit.
func (j *Job) WriteAs(s *flavor.Spec) {
	in := func(u flavor.Unit) bool {
		return slices.ContainsFunc(s.Pours, func(p flavor.Pour) bool { return p.Unit == u })
	}
	if !in(flavor.Centilitre) || in(flavor.Millilitre) {
		return
	}
	for i := range j.Shelf {
		if it := &j.Shelf[i]; it.Unit == flavor.Millilitre {
			it.Unit = flavor.Centilitre
		}
	}
}

// Stopped returns the context's error once it has ended.
func Stopped(ctx context.Context) error {
	select {
	case <-ctx.Done():
		return ctx.Err()
	default:
		return nil
	}
}
