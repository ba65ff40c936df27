// Package fitting tells which of several meanings of a name fits beside what else a drink
// pours.
package fitting

import (
	"slices"

	"counterpour/flavor"
)

// How much of a name in doubt points at one of its meanings, in mL where nothing else is said; common practice.
const (
	leastSpirit = 29.0 // a spirit rather than what seasons or sweetens
	leastPureed = 20.0 // purée rather than a liqueur beside a sweetener
	leastPlain  = 14.0 // a liqueur rather than the syrup of a drink that has none
	leastJuiced = 35.0 // juice rather than a syrup, of which so much is hardly poured
	mostLiqueur = 31.0
	plainAcid   = 1.0 // g/L of acid from which a soda without sugar is none to lengthen whisky with
)

// Others are what the other lines of a drink pour.
// Watered is that soda or water is among them, Else that anything else is.
type Others struct {
	Strong, Sour, Sweetened, Modified, Soft, Sparkling bool
	Watered, Else                                      bool
}

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
	if p.Class == flavor.ClassWater || p.Class == flavor.ClassSoda && p.Sugar.Value == 0 && p.Acid.Value < plainAcid {
		o.Watered = true
	} else {
		o.Else = true
	}
}

// Of returns the one of several meanings that fits beside what else is poured, and
// why; nil if several do.
func Of(means []*flavor.Profile, o Others, ml float64) (*flavor.Profile, string) {
	m := kindsOf(means)
	for i := range rules {
		if p := rules[i].fits(&m, &o, ml); p != nil {
			return p, rules[i].why
		}
	}
	return nil, ""
}

// rules say which meaning fits, the surest first: common practice. Each returns nil where it says
// nothing.
var rules = []struct {
	fits func(m *meanings, o *Others, ml float64) *flavor.Profile
	why  string
}{
	{func(m *meanings, _ *Others, ml float64) *flavor.Profile {
		return when(m.many == 2 && m.syrup != nil && ml >= leastSpirit, m.spirit)
	}, "it is as much as a spirit"},
	{func(m *meanings, o *Others, ml float64) *flavor.Profile {
		return when(o.short() && ml <= mostLiqueur && (o.Modified || ml >= leastPlain), m.liqueur)
	}, "nothing sour or soft stands beside it"},
	{func(m *meanings, o *Others, ml float64) *flavor.Profile {
		return when(ml >= leastJuiced && m.liqueur == nil && m.syrup != nil && m.puree != nil && o.Strong, m.juice)
	}, "it is more than is poured of a syrup"},
	{func(m *meanings, o *Others, _ float64) *flavor.Profile {
		return when(o.Watered && !o.Else, m.whisky)
	}, "that is the usual one with soda or water alone"},
	{func(m *meanings, o *Others, ml float64) *flavor.Profile {
		return when(o.Sweetened && (m.liqueur == nil || o.Sour && ml >= leastPureed), m.puree)
	}, "the drink is sweetened already"},
	{func(m *meanings, o *Others, _ float64) *flavor.Profile {
		return when(m.puree == nil && m.syrup != nil && o.Strong && o.Sour && o.Sweetened, m.liqueur)
	}, "the drink is sweetened already"},
	{func(m *meanings, o *Others, _ float64) *flavor.Profile {
		return when(m.liqueur == nil && o.Sour && !o.Sweetened && !o.Modified, m.syrup)
	}, "nothing else sweetens the drink"},
	{func(m *meanings, o *Others, _ float64) *flavor.Profile {
		return when(o.Strong && !o.Sparkling, m.aperitif)
	}, "that is the usual one in a short drink"},
	{func(m *meanings, _ *Others, _ float64) *flavor.Profile { return m.whisky }, "that is the most usual one that is written so"},
}

// when is a meaning where a condition holds, and nil elsewhere.
func when(holds bool, p *flavor.Profile) *flavor.Profile {
	if !holds {
		return nil
	}
	return p
}

// short reports whether nothing sour, soft or sparkling stands beside a spirit: what a sweetener
// stands beside may be sour.
func (o *Others) short() bool {
	return o.Strong && !o.Sour && !o.Soft && !o.Sparkling && !o.Sweetened
}

// meanings are the several meanings of a name by their kind: the one of a kind, nil if it has none
// or several. Where all are bitter aperitifs, or all whiskies, the first of them is the usual one.
type meanings struct {
	many                                                   int
	spirit, syrup, liqueur, puree, juice, aperitif, whisky *flavor.Profile
}

// kindsOf sorts the meanings of a name by their kind.
func kindsOf(means []*flavor.Profile) meanings {
	only := func(fits func(flavor.Class) bool) *flavor.Profile {
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
		return only(func(c flavor.Class) bool { return slices.Contains(classes, c) })
	}
	m := meanings{
		many:    len(means),
		spirit:  only(func(c flavor.Class) bool { return c.Part() == flavor.PartBase }),
		syrup:   is(flavor.ClassSyrup, flavor.ClassFruitSyrup, flavor.ClassSpicedSyrup),
		liqueur: is(flavor.ClassLiqueur),
		puree:   is(flavor.ClassPuree),
		juice:   is(flavor.ClassJuice),
	}
	if len(means) > 0 && !slices.ContainsFunc(means, func(p *flavor.Profile) bool { return p.Class != flavor.ClassWhiskey }) {
		m.whisky = means[0]
	}
	if len(means) > 0 && !slices.ContainsFunc(means, func(p *flavor.Profile) bool { return p.Class != flavor.ClassBitterAperitif }) {
		m.aperitif = means[0]
	}
	return m
}
