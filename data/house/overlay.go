package house

import (
	"errors"
	"fmt"
	"slices"

	"counterpour/flavor"
	"counterpour/flavor/carrier"
	"counterpour/flavor/mix"
)

// Spreads of measurements in a bar, as one standard deviation.
const (
	// labelSpread, in % vol: the strength on a label may be off by 0.3 (Regulation (EU)
	// No 1169/2011, Annex XII; from memory), taken as two standard deviations.
	labelSpread = 0.15
	// brixSpread, in °Bx, is the precision of a hand refractometer. Common practice.
	brixSpread = 0.2
	// weighedSpread is relative, for titration and for figures from a data sheet. Common
	// practice.
	weighedSpread = 0.05
	// brixABV, in % vol, is the strength above which alcohol distorts a refractometer's
	// reading.
	brixABV = 0.5
)

// Overlay replaces catalogue profiles by those of the house. If the house has a bottle of
// an ingredient, the profile is replaced by a copy with the bottle's measured values and
// label, and with its name as an alias. What the house makes is added, or replaces the
// profile with its id. The result is sorted by id. The arguments do not change;
// unaffected profiles are shared with the catalogue.
//
// If there are several bottles of an ingredient, the one of [Wells] counts. A record that
// cannot be applied, for example because the strength leaves no room for the sugar, is
// left out and returned as an error. Its allergens are applied nevertheless: the label
// holds whatever was measured. If a recipe that replaces a profile cannot be computed,
// the allergens of that profile become unstated.
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

// Wells returns, for each ingredient, the bottle that is poured: of those that are there
// the one marked as the well, otherwise the first by id. If none is there it is the one
// that would be.
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

// before reports whether b is poured before o, which is of the same ingredient.
func (b Bottle) before(o Bottle) bool {
	switch {
	case b.There() != o.There():
		return b.There()
	case b.Well != o.Well:
		return b.Well
	}
	return b.ID < o.ID
}

func (o *overlay) bottle(p *flavor.Profile, b Bottle) *flavor.Profile {
	c := *p
	c.Aliases = slices.Clone(p.Aliases)
	if _, taken := o.shelf.byName[flavor.NormaliseName(b.Name)]; !taken {
		c.Aliases = append(c.Aliases, b.Name)
	}
	b.named(&c, p)
	if b.Unread && b.Label == nil {
		c.AllergensKnown, c.FreeOf = false, nil
	}
	b.Label.overlay(&c)
	measured := c
	if err := b.Measured.overlay(&measured); err != nil {
		o.report(b, err)
		return &c
	}
	return &measured
}

// named adds what the name of a bottle says that there is and the record of its kind does not
// carry: a "hazelnut rum" may hold hazelnuts until somebody has read its label.
func (b Bottle) named(p, kind *flavor.Profile) {
	marks, animal := carrier.Lost(b.Name, kind)
	if len(marks) == 0 && len(animal) == 0 {
		return
	}
	p.AllergenMarks = slices.Clone(p.AllergenMarks)
	for _, m := range marks {
		p.AllergenMarks = append(p.AllergenMarks, flavor.AllergenMark{Allergen: m.Allergen, Certainty: flavor.MayContain})
	}
	if b.Label.SaysVegan() {
		return
	}
	p.Animal = append(slices.Clone(p.Animal), animal...)
}

// make adds what the house makes. Recipes may contain one another, so make works in
// rounds: each round computes the recipes whose parts are known.
func (o *overlay) make(list []*flavor.Profile, made []Made) []*flavor.Profile {
	left := slices.Clone(made)
	slices.SortFunc(left, func(a, b Made) int { return compare(a.ID, b.ID) })
	waiting := map[string]bool{}
	for _, m := range left {
		waiting[m.ID] = true
	}
	for len(left) > 0 {
		var later []Made
		var done []string // computed in this round, not on its shelf yet
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

// without reports a recipe that cannot be computed. A profile with its id stays, with its
// allergens unstated.
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

// replace replaces the profile with p's id, or appends p.
func replace(list []*flavor.Profile, p *flavor.Profile) []*flavor.Profile {
	i := slices.IndexFunc(list, func(q *flavor.Profile) bool { return q.ID == p.ID })
	if i < 0 {
		return append(list, p)
	}
	list[i] = p
	return list
}

// overlay writes the measured values into a profile and completes it.
func (m Measured) overlay(p *flavor.Profile) error {
	if m.ABVPct != nil {
		spread := labelSpread
		if *m.ABVPct == 0 { // a label says 0.0 of what holds none, which guests rely on
			spread = 0
		}
		p.ABV = flavor.Figure{Value: *m.ABVPct, Spread: spread, Origin: flavor.OriginPractice, Source: "the house's bottle: its label"}
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

// sugarOfBrix converts degrees Brix to g of sugar per L: dissolved solids without acid
// and salt.
func sugarOfBrix(brix float64, p *flavor.Profile) flavor.Figure {
	perL := 10 * mix.SyrupDensity(brix/100) // g/L of solids per °Bx
	sugar := max(brix*perL-p.Acid.Value-p.Salt.Value, 0)
	f := measuredFigure(sugar, brixSpread*perL)
	f.Source = fmt.Sprintf("measured by the house: %v °Bx, less the acid", brix)
	return f
}
