package naming

import (
	"counterpour/flavor"
	"counterpour/flavor/measure"
	"counterpour/flavor/measure/draft/names/jargon"
)

// Place is where a name stands: what its unit is, and what is done to it.
type Place struct {
	Unit   flavor.Unit
	Amount float64 // in Unit
	Topped bool    // it goes in once the rest is mixed
}

// PlaceOf is the place of a pour; what rinses or scents a glass is no topping.
func PlaceOf(u flavor.Unit, amount float64, after bool) Place {
	return Place{Unit: u, Amount: amount, Topped: after && u != flavor.Rinse && u != flavor.Spritz}
}

// allows reports whether an ingredient may stand there.
func (p Place) allows(x *flavor.Profile) bool {
	if _, ok := measure.MLPerUnit(p.Unit, x); !ok {
		return false
	}
	switch {
	case p.Unit == flavor.Dash || p.Unit == flavor.Drop || p.Unit == flavor.Spritz:
		if _, own := x.Yield(p.Unit); own {
			return true
		}
		part := x.Class.Part()
		return part == flavor.PartSeasoning && !x.Class.Solid() || part == flavor.PartModifier || part == flavor.PartSweetener ||
			part == flavor.PartTexture || x.Class == flavor.ClassAcid || x.Class == flavor.ClassSavoury
	case p.Unit.Jigger() || p.Unit == flavor.PartUnit || p.Topped:
		return !x.Class.Solid() && x.Class != flavor.ClassCocktailBitters || x.Class == flavor.ClassSugar
	}
	return true
}

// Volume reports whether the place is one of a jigger or the glass.
func (p Place) Volume() bool {
	return p.Unit.Jigger() || p.Unit == flavor.PartUnit || p.Unit == flavor.Splash || p.Unit == flavor.Top || p.Unit == flavor.Float
}

// ML is the size of the pour, as far as a volume says.
func (p Place) ML() float64 {
	per, ok := measure.MLPerUnit(p.Unit, nil)
	if !ok {
		return 0
	}
	return per * p.Amount
}

// PlaceWords says in words where a name stands.
func PlaceWords(u flavor.Unit) string {
	switch {
	case u == flavor.Dash || u == flavor.Drop:
		return "by the " + string(u)
	case u.Spoon():
		return "by the spoon"
	case u == flavor.Top || u == flavor.Float || u == flavor.Splash || u == flavor.Rinse || u == flavor.Spritz:
		return "as a " + string(u)
	case u.Jigger() || u == flavor.PartUnit:
		return "by volume"
	}
	return "here"
}

// Movable reports whether the place would make another ingredient of the name,
// or ask.
func Movable(name string, p *flavor.Pour) bool {
	pl := PlaceOf(p.Unit, p.Amount, p.After)
	for _, n := range jargon.Strip(name) {
		key := flavor.NormaliseName(n)
		switch {
		case pl.Volume() && jargon.Sweetened(key) != "":
			return true
		case p.Unit == flavor.Drop && jargon.ByDrop(key) != "", p.Unit == flavor.Gram && jargon.ByVolume(key) != "":
			return true
		case (p.Unit == flavor.Dash || p.Unit == flavor.Drop) && (jargon.ByDash(key) != "" && flavor.NormaliseName(jargon.ByDash(key)) != key || jargon.AskDash(key) != nil):
			return true
		case p.Unit.Spoon() && jargon.BySpoon(key) != "":
			return flavor.NormaliseName(jargon.BySpoon(key)) != key
		case (p.Unit.Spoon() || pl.Volume() || pl.Topped) && (jargon.ByVolume(key) != "" || jargon.AskVolume(key) != nil || jargon.AskTop(key) != nil):
			return true
		}
	}
	return false
}
