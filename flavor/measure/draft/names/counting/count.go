package counting

import (
	"slices"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/measure/draft/names/jargon"
	"counterpour/flavor/measure/draft/names/naming"
	"counterpour/flavor/measure/draft/words/entry"
	"counterpour/flavor/measure/draft/words/gauge"
)

// comes says in which parts an ingredient comes.
type comes struct{ piece, leaf, sprig, slice bool }

func comesIn(p *flavor.Profile) comes {
	has := func(u flavor.Unit) bool { _, ok := p.Yield(u); return ok }
	return comes{piece: has(flavor.Piece), leaf: has(flavor.Leaf), sprig: has(flavor.Sprig), slice: has(flavor.Slice)}
}

// rules say what a bare number of an ingredient counts: common practice. The first that is about the
// ingredient gives the unit where bars count such an amount of it, and none where they do not.
var rules = []struct {
	about func(t *Task, in comes) bool
	fits  func(t *Task) bool
	unit  flavor.Unit
}{
	{ // one bitter is an aperitif, several are bitters
		about: func(t *Task, _ comes) bool { return strings.EqualFold(t.Line.Name, "bitter") },
		fits:  func(*Task) bool { return false },
	},
	{about: isBitters, fits: dashes, unit: flavor.Dash},
	{about: isSauce, fits: dashes, unit: flavor.Dash},
	{about: func(t *Task, in comes) bool { // ginger, by the slice
		return t.Class() == flavor.ClassSpice && in.slice && in.piece && t.Whole() && t.Amount > 1 && t.Amount < LeastMillis
	}, fits: always, unit: flavor.Slice},
	{about: isEgg, fits: func(t *Task) bool {
		return t.Amount <= mostEggs && (t.Whole() || t.Amount == 0.5 || t.Amount == 0.25)
	}, unit: flavor.Piece},
	{about: func(t *Task, in comes) bool { // "mint sprigs x6"
		return in.sprig && strings.HasSuffix(strings.ToLower(t.Line.Name), " sprigs")
	}, fits: (*Task).Whole, unit: flavor.Sprig},
	{about: func(t *Task, in comes) bool {
		return t.Class() == flavor.ClassFreshHerb && in.leaf && t.Whole() && t.Amount >= fewLeaves && t.Amount <= mostLeaves
	}, fits: always, unit: flavor.Leaf},
	{about: func(t *Task, in comes) bool {
		return t.Class() == flavor.ClassFreshHerb && in.sprig && t.Whole() && t.Amount < fewLeaves
	}, fits: always, unit: flavor.Sprig},
	{about: func(t *Task, _ comes) bool { return t.juicy() }, fits: (*Task).fruits, unit: flavor.Piece},
	{about: func(t *Task, in comes) bool {
		return in.piece && (t.Line.Muddled && (t.Whole() || !t.small()) || t.Line.Cut) && t.Amount <= mostPieces
	}, fits: always, unit: flavor.Piece},
	{about: func(t *Task, in comes) bool {
		return in.piece && t.Amount <= mostBerries && (t.Whole() || t.Amount == 0.5 && !t.small()) // nobody cuts a berry
	}, fits: always, unit: flavor.Piece},
	{about: func(t *Task, in comes) bool {
		return in.slice && t.Base.Profile.Class.Solid() && t.Whole()
	}, fits: always, unit: flavor.Slice},
}

// handful gives a handful of leaves or berries its unit, and is false for anything else. A handful of
// what comes in neither is a fault.
func (t *Task) handful() bool {
	if !gauge.Handful(t.Line.Measure) {
		return false
	}
	in := comes{}
	if t.Base.Profile != nil {
		in = comesIn(t.Base.Profile)
	}
	switch {
	case in.leaf:
		t.Unit = flavor.Leaf
	case in.piece && (!t.juicy() || t.small()):
		t.Unit = flavor.Piece
	default:
		t.Fault = noUnit(t.Line.Measure)
	}
	t.Infer(flavor.InferredUnit)
	return true
}

// counts says what a bare number counts, whatever the other lines say: eggs,
// leaves, dashes. It is empty for what is poured, and for what may be both.
func (t *Task) counts() flavor.Unit {
	if t.Base.Profile == nil {
		if strings.HasSuffix(strings.ToLower(t.Line.Name), " bitters") && t.Whole() && t.Amount <= mostDashes { // of a kind unheard of
			return flavor.Dash
		}
		return ""
	}
	in := comesIn(t.Base.Profile)
	for i := range rules {
		if !rules[i].about(t, in) {
			continue
		}
		if rules[i].fits(t) {
			return rules[i].unit
		}
		return ""
	}
	return ""
}

func always(*Task) bool { return true }

// dashes reports whether an amount is a number of dashes.
func dashes(t *Task) bool { return t.Whole() && t.Amount <= mostBitters }

// isBitters reports whether a name is that of what bars dash into a drink.
func isBitters(t *Task, _ comes) bool {
	return t.Class() == flavor.ClassCocktailBitters || t.Class() == flavor.ClassTincture
}

// isSauce reports whether a name is that of a savoury sauce, which is dashed; a brine is poured.
func isSauce(t *Task, _ comes) bool {
	if t.Class() != flavor.ClassSavoury {
		return false
	}
	said := strings.ToLower(t.Line.Name + " " + t.Base.Profile.Name)
	return !slices.ContainsFunc(longSavoury, func(w string) bool { return strings.Contains(said, w) })
}

// longSavoury are words in the names of what is savoury and poured by the jigger: nobody dashes a tomato mix.
var longSavoury = []string{"brine", "juice", " mix", "broth", "stock", "bouillon", "consommé", "dashi", "water"}

// isEgg reports whether a name is that of an egg, or of what froths in its place and comes by the
// piece.
func isEgg(t *Task, in comes) bool {
	return t.Class() == flavor.ClassEgg || t.Class() == flavor.ClassFoam && in.piece
}

// perhapsPoured reports whether a count of fruit may be its volume: "raspberry 15" beside
// millilitres is no fifteen berries.
func (t *Task) perhapsPoured() bool {
	return t.Class() == flavor.ClassFruit && !t.Line.Muddled && !t.Line.Cut && t.Amount >= LeastMillis && !plural(t.Line.Name)
}

// juicy reports whether the name is a fruit that is as likely to be its juice.
func (t *Task) juicy() bool {
	p := t.Base.Profile
	if p == nil || p.Class != flavor.ClassFruit && p.Class != flavor.ClassSpice {
		return false
	}
	return jargon.Pressed(t.Line.Name) != ""
}

// Several reports whether a name says several of a fruit, "2 fresh limes", which is no
// juice.
func (t *Task) Several() bool {
	return t.Bare() && plural(t.Line.Name) && strings.HasSuffix(jargon.Pressed(t.Line.Name), " juice")
}

// fruits reports whether a bare number of what may be juice is surely a number of
// fruits: they are muddled, or the word says several, or they are as small as a
// grape and the number is whole.
func (t *Task) fruits() bool {
	p := t.Base.Profile
	handful := t.Whole() || t.Amount == 0.5
	switch many := plural(t.Line.Name); {
	case (t.Line.Muddled || t.Line.Cut) && t.Amount <= mostPieces, many && handful && t.Amount <= mostPieces:
		return true
	case !t.small() || !t.Whole():
		return false
	case many:
		return t.Amount <= mostBerries
	case p.Class == flavor.ClassSpice:
		return t.Amount > 1 && t.Amount < LeastMillis
	}
	full, _ := jargon.Lengthen(flavor.NormaliseName(t.Line.Name))
	if strings.HasSuffix(jargon.ByVolume(full), " juice") && t.Amount <= mostJuiceOz { // "3 pineapple"
		return false
	}
	return t.Amount >= fewBerries && t.Amount < LeastMillis
}

// small reports whether one piece is hardly a spoonful.
func (t *Task) small() bool {
	y, ok := t.Base.Profile.Yield(flavor.Piece)
	return ok && y.Amount.Value <= smallML
}

// plural reports whether the last word of a name says several.
func plural(name string) bool {
	w := strings.ToLower(name[strings.LastIndexByte(name, ' ')+1:])
	one := flavor.NormaliseName(w)
	return strings.HasSuffix(w, "s") && len(one) > 1 && len(one) < len(w) && strings.HasPrefix(w, one[:len(one)-1])
}

// CountedBare reports whether a bare number of the pour is a number of things,
// whatever the other lines say.
func CountedBare(p *flavor.Pour) bool {
	if p.Profile == nil {
		return false
	}
	t := Task{Line: &entry.Line{Name: p.Profile.Name}, Base: naming.Found{Profile: p.Profile}, Amount: p.Amount}
	return t.counts() == flavor.Piece && !t.perhapsPoured()
}
