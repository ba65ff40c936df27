package naming

import (
	"counterpour/flavor"
	"counterpour/flavor/measure"
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
