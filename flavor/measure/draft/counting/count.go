package counting

import (
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/measure/draft/entry"
	"counterpour/flavor/measure/draft/naming"
)

// counts says what a bare number counts, whatever the other lines say: eggs,
// leaves, dashes. It is empty for what is poured, and for what may be both.
func (t *Task) counts() flavor.Unit {
	p := t.Base.Profile
	if p == nil {
		if strings.HasSuffix(strings.ToLower(t.Line.Name), " bitters") && t.Whole() && t.Amount <= mostDashes { // of a kind unheard of
			return flavor.Dash
		}
		return ""
	}
	_, piece := p.Yield(flavor.Piece)
	_, leaf := p.Yield(flavor.Leaf)
	_, sprig := p.Yield(flavor.Sprig)
	_, slice := p.Yield(flavor.Slice)
	switch {
	case strings.EqualFold(t.Line.Name, "bitter"): // one bitter is an aperitif, several are bitters
		return ""
	case p.Class == flavor.ClassCocktailBitters || p.Class == flavor.ClassTincture:
		if t.Whole() && t.Amount <= mostBitters {
			return flavor.Dash
		}
	case p.Class == flavor.ClassSavoury && !strings.Contains(strings.ToLower(t.Line.Name), "brine"):
		if t.Whole() && t.Amount <= mostBitters {
			return flavor.Dash
		}
	case p.Class == flavor.ClassSpice && slice && piece && t.Whole() && t.Amount > 1 && t.Amount < LeastMillis:
		return flavor.Slice
	case p.Class == flavor.ClassEgg || p.Class == flavor.ClassFoam && piece:
		if t.Amount <= mostEggs && (t.Whole() || t.Amount == 0.5 || t.Amount == 0.25) {
			return flavor.Piece
		}
	case p.Class == flavor.ClassFreshHerb && leaf && t.Whole() && t.Amount >= 3 && t.Amount <= mostLeaves:
		return flavor.Leaf
	case p.Class == flavor.ClassFreshHerb && sprig && t.Whole() && t.Amount < 3:
		return flavor.Sprig
	case t.juicy():
		if t.fruits() {
			return flavor.Piece
		}
	case piece && (t.Line.Muddled || t.Line.Cut) && t.Amount <= mostPieces:
		return flavor.Piece
	case piece && t.Amount <= mostBerries && (t.Whole() || t.Amount == 0.5):
		return flavor.Piece
	case slice && p.Class.Solid() && t.Whole():
		return flavor.Slice
	}
	return ""
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
	return naming.Pressed(t.Line.Name) != ""
}

// Several reports whether a name says several of a fruit, "2 fresh limes", which is no
// juice.
func (t *Task) Several() bool {
	return t.Bare() && plural(t.Line.Name) && strings.HasSuffix(naming.Pressed(t.Line.Name), " juice")
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
	full, _ := naming.Lengthen(flavor.NormaliseName(t.Line.Name))
	if strings.HasSuffix(naming.ByVolume(full), " juice") && t.Amount <= mostJuiceOz { // "3 pineapple"
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
