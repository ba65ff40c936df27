package house

import (
	"errors"
	"fmt"
	"slices"

	"counterpour/flavor"
	"counterpour/flavor/mix"
)

// Spreads of what a bar measures, one standard deviation.
const (
	// labelSpread in % vol: a label may be 0.3 off (Regulation (EU) No
	// 1169/2011, Annex XII; from memory), taken as two standard deviations.
	labelSpread = 0.15
	// brixSpread in °Bx is what a hand refractometer is read to; common practice.
	brixSpread = 0.2
	// weighedSpread is relative: titration, or a figure from a data sheet;
	// common practice.
	weighedSpread = 0.05
	// brixABV in % vol is where a refractometer begins to read the alcohol.
	brixABV = 0.5
)

// Overlay lays the house over the catalogue. Where the house has a bottle of a
// category, its profile is replaced by a copy with the bottle's measured
// values and with what was read on its label, and the bottle's name joins the
// aliases; what the house makes is added, or stands in for the profile that has its
// id. The result is by id; none of the arguments is changed, and profiles that
// nothing overlays are shared with the catalogue.
//
// Of several bottles of a category the one of [Wells] counts. What cannot be laid
// over, such as a strength that leaves no room for the sugar, is left out and
// reported, by record. What is known of allergens is not left out with it: a label
// holds whatever was measured, and where a recipe that stands in for a profile cannot
// be worked out, nobody has stated what is in its place.
func Overlay(catalogue []*flavor.Profile, bottles []Bottle, made []Made) ([]*flavor.Profile, []error) {
	o := &overlay{shelf: NewShelf(catalogue)}
	chosen := Wells(bottles)
	list := o.shelf.Profiles()
	for i, p := range list {
		if b, ok := chosen[p.ID]; ok {
			list[i] = o.bottle(p, b)
			delete(chosen, p.ID)
		}
	}
	list = o.make(list, made)
	for _, id := range sortedKeys(chosen) {
		if _, ok := o.shelf.ByID(id); !ok {
			o.report(chosen[id], fmt.Errorf("there is no ingredient %q in the catalogue", id))
		}
	}
	return list, o.faults
}

// Wells returns, for each ingredient, the bottle that is poured where it is
// asked for: the one marked as the well, then one in stock, then the first by id.
func Wells(bottles []Bottle) map[string]Bottle {
	chosen := map[string]Bottle{}
	for _, b := range bottles {
		if old, ok := chosen[b.Ingredient]; !ok || b.before(old) {
			chosen[b.Ingredient] = b
		}
	}
	return chosen
}

type overlay struct {
	shelf  *Shelf
	faults []error
}

func (o *overlay) report(item Item, err error) {
	broken := fail(ErrInvalid, "overlay", item.Ref().String(), "%s", err)
	broken.Cause = err
	o.faults = append(o.faults, broken)
}

// before is the order in which bottles of a category are poured.
func (b Bottle) before(o Bottle) bool {
	switch {
	case b.Well != o.Well:
		return b.Well
	case (b.Stock > 0) != (o.Stock > 0):
		return b.Stock > 0
	}
	return b.ID < o.ID
}

func (o *overlay) bottle(p *flavor.Profile, b Bottle) *flavor.Profile {
	c := *p
	c.Aliases = slices.Clone(p.Aliases)
	if _, taken := o.shelf.byName[flavor.NormaliseName(b.Name)]; !taken {
		c.Aliases = append(c.Aliases, b.Name)
	}
	b.Label.overlay(&c)
	measured := c
	if err := b.Measured.overlay(&measured); err != nil {
		o.report(b, err)
		return &c
	}
	return &measured
}

// make adds what the house makes. A recipe may use another one; they are done
// in rounds, as soon as their parts are known.
func (o *overlay) make(list []*flavor.Profile, made []Made) []*flavor.Profile {
	left := slices.Clone(made)
	slices.SortFunc(left, func(a, b Made) int { return compare(a.ID, b.ID) })
	waiting := map[string]bool{}
	for _, m := range left {
		waiting[m.ID] = true
	}
	for len(left) > 0 {
		var later []Made
		var done []string // which the shelf of this round does not have yet
		o.shelf = NewShelf(list)
		for _, m := range left {
			if slices.ContainsFunc(m.Parts, func(p Pour) bool { return waiting[p.Ingredient] }) {
				later = append(later, m)
				continue
			}
			p, err := m.Profile(o.shelf)
			if err != nil {
				list = o.without(list, m, err)
			} else {
				list = replace(list, p)
			}
			done = append(done, m.ID)
		}
		for _, id := range done {
			delete(waiting, id)
		}
		if len(later) == len(left) {
			for _, m := range later {
				list = o.without(list, m, errors.New("its recipe uses itself through the recipes of others"))
			}
			break
		}
		left = later
	}
	o.shelf = NewShelf(list)
	return o.shelf.Profiles()
}

// without reports a recipe that cannot be worked out. A profile that it stands in for
// stays, but nobody has stated what the house's own holds.
func (o *overlay) without(list []*flavor.Profile, m Made, err error) []*flavor.Profile {
	o.report(m, err)
	p, there := o.shelf.ByID(m.ID)
	if !there {
		return list
	}
	unsure := *p
	unsure.AllergensKnown, unsure.FreeOf = false, nil
	return replace(list, &unsure)
}

// replace puts p in the place of the profile with its id, or at the end.
func replace(list []*flavor.Profile, p *flavor.Profile) []*flavor.Profile {
	i := slices.IndexFunc(list, func(q *flavor.Profile) bool { return q.ID == p.ID })
	if i < 0 {
		return append(list, p)
	}
	list[i] = p
	return list
}

// overlay puts what was measured into a profile and completes it.
func (m Measured) overlay(p *flavor.Profile) error {
	if m.ABVPct != nil {
		p.ABV = flavor.Figure{Value: *m.ABVPct, Spread: labelSpread, Origin: flavor.OriginPractice, Source: "the house's bottle: its label"}
	}
	if m.AcidGPerL != nil {
		p.Acid = measuredFigure(*m.AcidGPerL, *m.AcidGPerL*weighedSpread)
	}
	if m.SugarGPerL != nil {
		p.Sugar = measuredFigure(*m.SugarGPerL, *m.SugarGPerL*weighedSpread)
	}
	if m.Brix != nil {
		if p.ABV.Value > brixABV {
			return invalid("brix", *m.Brix, "brix says nothing about sugar at %v %% vol, since alcohol makes the reading wrong; give the sugar in g/L, or leave it out", p.ABV.Value)
		}
		p.Sugar = sugarOfBrix(*m.Brix, p)
	}
	if p.Sugar.Value > 0 && p.Sugars == (flavor.SugarBlend{Name: p.Sugars.Name}) {
		p.Sugars = flavor.SugarBlend{Name: "sucrose", Sucrose: 1}
	}
	if p.Acid.Value > 0 && p.Acids == (flavor.AcidBlend{Name: p.Acids.Name}) {
		p.Acids = flavor.AcidBlend{Name: "citric", Citric: 1}
	}
	return mix.Complete(p)
}

func measuredFigure(v, spread float64) flavor.Figure {
	return flavor.Figure{Value: v, Spread: spread, Origin: flavor.OriginComputed, Source: "measured by the house"}
}

// sugarOfBrix turns grams of solids in 100 g into grams of sugar in a litre:
// what is left of the solids once acid and salt are taken off.
func sugarOfBrix(brix float64, p *flavor.Profile) flavor.Figure {
	perL := 10 * mix.SyrupDensity(brix/100) // g/L of solids for one °Bx
	sugar := max(brix*perL-p.Acid.Value-p.Salt.Value, 0)
	f := measuredFigure(sugar, brixSpread*perL)
	f.Source = fmt.Sprintf("measured by the house: %v °Bx, less the acid", brix)
	return f
}
