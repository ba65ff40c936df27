package trial

import (
	"slices"

	"counterpour/flavor"
	"counterpour/flavor/measure"
	"counterpour/flavor/mix"
)

// Mischief is one thing done to a drink that its ratio may not show.
type Mischief struct {
	Name string
	// spoil does it. It returns the spec, the ingredient to blame, nil if it is
	// the method, and whether it can be done to such a drink.
	spoil func(s flavor.Spec, larder Larder) (flavor.Spec, *flavor.Profile, bool)
}

// Larder finds an ingredient by its id.
type Larder func(id string) (*flavor.Profile, bool)

// Mischiefs returns the list that a trial goes through: what a slip of the pen,
// of the hand or of judgement does, each far enough that any guest would notice.
func Mischiefs() []Mischief {
	return []Mischief{
		add("a teaspoon of salt", "salt", 1, flavor.Teaspoon),
		add("saline, twenty dashes", "saline", 20, flavor.Dash),
		times("bitters × 10, or twenty dashes", flavor.ClassCocktailBitters, 10, "aromatic-bitters", 20, flavor.Dash),
		add("½ oz absinthe", "absinthe", 0.5, flavor.Ounce),
		add("½ oz rose water", "rose-water", 0.5, flavor.Ounce),
		add("½ oz fish sauce", "fish-sauce", 0.5, flavor.Ounce),
		add("½ oz hot pepper sauce", "hot-pepper-sauce", 0.5, flavor.Ounce),
		add("twelve slices of chilli", "fresh-chilli", 12, flavor.Slice),
		times("cream × 3, or 3 oz", flavor.ClassDairy, 3, "heavy-cream", 3, flavor.Ounce),
		times("egg × 3, or three", flavor.ClassEgg, 3, "whole-egg", 3, flavor.Piece),
		unless(add("1 oz peated whisky", "peated-malt", 1, flavor.Ounce), flavor.ClassWhiskey, flavor.ClassAgaveSpirit),
		add("1 oz allspice liqueur", "allspice-dram", 1, flavor.Ounce),
		add("1½ oz violet liqueur", "creme-de-violette", 1.5, flavor.Ounce),
		add("1 oz cinnamon syrup", "cinnamon-syrup", 1, flavor.Ounce),
		add("½ oz vanilla extract", "vanilla-extract", 0.5, flavor.Ounce),
		add("1 oz fernet", "fernet", 1, flavor.Ounce),
		add("1 oz vinegar", "cider-vinegar", 1, flavor.Ounce),
		unless(add("1 oz olive brine", "olive-brine", 1, flavor.Ounce), flavor.ClassSavoury, flavor.ClassVermouth),
		add("3 oz coconut cream", "cream-of-coconut", 3, flavor.Ounce),
		{"no base", withoutBase},
		{"base × 2", twiceTheBase},
		{"liqueur, bitter or vermouth × 2¼", twiceWhatModifies},
		{"water × 2", twiceTheWater},
		{"blended with what sparkles", blendedWithSoda},
		{"raw egg, built", rawEgg},
		{"milk on citrus, built", curdled},
		{"everything shaken, with what sparkles", shakenWithSoda},
		{"citrus stirred", stirredCitrus},
		{"hot, poured cold", pouredCold},
	}
}

// pour makes a pour of an ingredient of the larder.
func (l Larder) pour(id string, amount float64, u flavor.Unit) (flavor.Pour, bool) {
	p, ok := l(id)
	if !ok {
		return flavor.Pour{}, false
	}
	per, ok := measure.MLPerUnit(u, p)
	return flavor.Pour{Profile: p, Amount: amount, Unit: u, ML: amount * per}, ok
}

// add pours something that the drink has nothing of.
func add(name, id string, amount float64, u flavor.Unit) Mischief {
	return Mischief{name, func(s flavor.Spec, l Larder) (flavor.Spec, *flavor.Profile, bool) {
		p, ok := l.pour(id, amount, u)
		if !ok || slices.ContainsFunc(s.Pours, func(o flavor.Pour) bool { return o.Profile.ID == id }) {
			return s, nil, false
		}
		s.Pours = append(s.Pours, p)
		return s, p.Profile, true
	}}
}

// times multiplies what the drink has of a class, or adds an ingredient.
func times(name string, c flavor.Class, factor float64, id string, amount float64, u flavor.Unit) Mischief {
	return Mischief{name, func(s flavor.Spec, l Larder) (flavor.Spec, *flavor.Profile, bool) {
		var by *flavor.Profile
		for i := range s.Pours {
			if p := &s.Pours[i]; p.Profile.Class == c {
				p.Amount *= factor
				p.ML *= factor
				by = p.Profile
			}
		}
		if by != nil {
			return s, by, true
		}
		return add(name, id, amount, u).spoil(s, l)
	}}
}

// unless leaves drinks alone that have a class in which it would be no mischief.
func unless(m Mischief, classes ...flavor.Class) Mischief {
	return Mischief{m.Name, func(s flavor.Spec, l Larder) (flavor.Spec, *flavor.Profile, bool) {
		if slices.ContainsFunc(s.Pours, func(p flavor.Pour) bool { return slices.Contains(classes, p.Profile.Class) }) {
			return s, nil, false
		}
		return m.spoil(s, l)
	}}
}

// withoutBase leaves out every base; the first of them is what is missing.
func withoutBase(s flavor.Spec, _ Larder) (flavor.Spec, *flavor.Profile, bool) {
	based := func(p flavor.Pour) bool { return p.Profile.Base() }
	i := slices.IndexFunc(s.Pours, based)
	if i < 0 {
		return s, nil, false
	}
	by := s.Pours[i].Profile
	s.Pours = slices.DeleteFunc(s.Pours, based)
	return s, by, len(s.Pours) > 1
}

func twiceTheBase(s flavor.Spec, _ Larder) (flavor.Spec, *flavor.Profile, bool) {
	var by *flavor.Profile
	for i := range s.Pours {
		if p := &s.Pours[i]; p.Profile.Base() {
			p.Amount *= 2
			p.ML *= 2
			by = p.Profile
		}
	}
	return s, by, by != nil && len(s.Pours) > 1
}

// leastModifier is the share of a drink from which what modifies its base is no accent.
const leastModifier = 0.1

// twiceWhatModifies pours the largest liqueur, bitter or aromatised wine beside a base as a
// ratio is spoilt in the first degree.
func twiceWhatModifies(s flavor.Spec, _ Larder) (flavor.Spec, *flavor.Profile, bool) {
	var most *flavor.Pour
	based := false
	for i := range s.Pours {
		p := &s.Pours[i]
		based = based || p.Profile.Base()
		if p.Profile.Class.Part() == flavor.PartModifier && (most == nil || p.ML > most.ML) {
			most = p
		}
	}
	if !based || most == nil || most.ML < leastModifier*s.VolumeML() {
		return s, nil, false
	}
	factor := Spoilings()[0].Up
	most.Amount *= factor
	most.ML *= factor
	return s, most.Profile, true
}

// twiceTheWater pours as much water again as everything, into a short drink.
func twiceTheWater(s flavor.Spec, l Larder) (flavor.Spec, *flavor.Profile, bool) {
	water, ok := l.pour("water", s.VolumeML(), flavor.Millilitre)
	if !ok || s.Service == flavor.Long || s.Service == flavor.Hot || slices.ContainsFunc(s.Pours, func(p flavor.Pour) bool {
		return p.Profile.Class.Part() == flavor.PartLength
	}) {
		return s, nil, false
	}
	s.Pours = append(s.Pours, water)
	return s, water.Profile, true
}

func blendedWithSoda(s flavor.Spec, l Larder) (flavor.Spec, *flavor.Profile, bool) {
	if !slices.ContainsFunc(s.Pours, func(p flavor.Pour) bool { return p.Profile.Carbonated }) {
		return s, nil, false
	}
	s.Method, s.Service = flavor.Blend, flavor.Crushed
	return s, nil, true
}

func rawEgg(s flavor.Spec, l Larder) (flavor.Spec, *flavor.Profile, bool) {
	if s.Service == flavor.Hot || s.HasClass(flavor.ClassDairy) ||
		!s.HasClass(flavor.ClassEgg) {
		return s, nil, false
	}
	s.Method = flavor.Build
	return s, nil, true
}

func curdled(s flavor.Spec, l Larder) (flavor.Spec, *flavor.Profile, bool) {
	if !slices.ContainsFunc(s.Pours, func(p flavor.Pour) bool { return p.Profile.Class.Kin() == flavor.KinSourJuice && p.ML > 15 }) {
		return s, nil, false
	}
	milk, ok := l.pour("whole-milk", 2, flavor.Ounce)
	s.Pours = append(s.Pours, milk)
	s.Method = flavor.Build
	return s, milk.Profile, ok
}

func shakenWithSoda(s flavor.Spec, _ Larder) (flavor.Spec, *flavor.Profile, bool) {
	if s.Method != flavor.Shake || !slices.ContainsFunc(s.Pours, func(p flavor.Pour) bool { return p.Profile.Carbonated && !p.Unit.After() }) {
		return s, nil, false
	}
	s.Together = true
	return s, nil, true
}

// stirredCitrus stirs a short drink that lives by its citrus.
func stirredCitrus(s flavor.Spec, _ Larder) (flavor.Spec, *flavor.Profile, bool) {
	var sour float64
	for _, p := range s.Pours {
		if p.Profile.Class.Kin() == flavor.KinSourJuice {
			sour += p.ML
		}
	}
	if s.Method != flavor.Shake || s.Service != flavor.Up && s.Service != flavor.Rocks || sour < 0.2*s.VolumeML() {
		return s, nil, false
	}
	s.Method = flavor.Stir
	return s, nil, true
}

// pouredCold pours what makes a hot drink hot from the refrigerator.
func pouredCold(s flavor.Spec, _ Larder) (flavor.Spec, *flavor.Profile, bool) {
	if s.Service != flavor.Hot {
		return s, nil, false
	}
	s.HotC = 0
	done := false
	for i := range s.Pours {
		if p := &s.Pours[i]; mix.Heats(&s, p) {
			p.Heat, done = flavor.HeatCold, true
		}
	}
	return s, nil, done
}
