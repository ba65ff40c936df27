// Package fitting tells which of several meanings of a name fits beside what else a drink
// pours.
package fitting

import (
	"slices"

	"counterpour/flavor"
)

// How much of a name in doubt points at one of its meanings, in mL; common practice.
const (
	leastSpirit = 29.0 // a spirit rather than what seasons or sweetens
	leastPureed = 20.0 // purée rather than a liqueur beside a sweetener
	leastPlain  = 14.0 // a liqueur rather than the syrup of a drink that has none
	mostLiqueur = 31.0
)

// Others are what the other lines of a drink pour.
type Others struct{ Strong, Sour, Sweetened, Modified, Soft, Sparkling bool }

// Add adds one of them.
func (o *Others) Add(p *flavor.Profile) {
	switch part := p.Class.Part(); {
	case part == flavor.PartBase:
		o.Strong = true
	case p.Class == flavor.ClassSourJuice || p.Class == flavor.ClassAcid:
		o.Sour = true
	case part == flavor.PartSweetener && p.ABV.Value == 0:
		o.Sweetened = true
	case part == flavor.PartModifier:
		o.Modified = true
	case p.Class == flavor.ClassJuice, p.Class == flavor.ClassPuree, p.Class == flavor.ClassDairy, p.Class == flavor.ClassPlantMilk, p.Class == flavor.ClassEgg:
		o.Soft = true
	}
	o.Sparkling = o.Sparkling || p.Carbonated
}

// Of returns the one of several meanings that fits beside what else is poured, and
// why; nil if several do.
func Of(means []*flavor.Profile, o Others, ml float64) (*flavor.Profile, string) {
	of := func(fits func(flavor.Class) bool) *flavor.Profile {
		var hit *flavor.Profile
		for _, p := range means {
			if fits(p.Class) {
				if hit != nil {
					return nil
				}
				hit = p
			}
		}
		return hit
	}
	is := func(classes ...flavor.Class) *flavor.Profile {
		return of(func(c flavor.Class) bool { return slices.Contains(classes, c) })
	}
	spirit := of(func(c flavor.Class) bool { return c.Part() == flavor.PartBase })
	syrup := is(flavor.ClassSyrup, flavor.ClassFruitSyrup, flavor.ClassSpicedSyrup)
	liqueur, puree := is(flavor.ClassLiqueur), is(flavor.ClassPuree)
	short := o.Strong && !o.Sour && !o.Soft && !o.Sparkling && !o.Sweetened // what a sweetener stands beside may be sour
	switch {
	case spirit != nil && len(means) == 2 && syrup != nil && ml >= leastSpirit:
		return spirit, "it is as much as a spirit"
	case liqueur != nil && short && ml <= mostLiqueur && (o.Modified || ml >= leastPlain):
		return liqueur, "nothing sour or soft stands beside it"
	case puree != nil && o.Sweetened && (liqueur == nil || o.Sour && ml >= leastPureed):
		return puree, "the drink is sweetened already"
	case liqueur != nil && puree == nil && syrup != nil && o.Strong && o.Sour && o.Sweetened:
		return liqueur, "the drink is sweetened already"
	case syrup != nil && liqueur == nil && o.Sour && !o.Sweetened && !o.Modified:
		return syrup, "nothing else sweetens the drink"
	case o.Strong && !o.Sparkling && !slices.ContainsFunc(means, func(p *flavor.Profile) bool { return p.Class != flavor.ClassBitterAperitif }):
		return means[0], "that is the usual one in a short drink"
	}
	return nil, ""
}
