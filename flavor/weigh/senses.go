package weigh

import (
	"counterpour/flavor"
	"counterpour/flavor/habit"
	"counterpour/flavor/ratio"
)

// Axis returns the axis in which a drink goes wrong by it.
func (x *Beyond) Axis() ratio.Axis {
	if x.Foreign {
		return axisOfCharacter(x.Profile)
	}
	if x.Sense {
		return axisOfLevel(x.Level, x.Profile)
	}
	return axisOfPour(x.Profile)
}

// axisOfCharacter returns what a foreign pour tastes of first, whatever it does beside.
func axisOfCharacter(p *flavor.Profile) ratio.Axis {
	switch {
	case isSavoury(p):
		return ratio.Umami
	case isMilk(p):
		return ratio.Fat
	case p.Class.Part() == flavor.PartSweetener:
		return ratio.Sweet
	}
	return ratio.Aroma
}

func axisOfLevel(l habit.Level, by *flavor.Profile) ratio.Axis {
	switch l {
	case habit.Salty:
		return ratio.Salty
	case habit.Bitter:
		return ratio.Bitter
	case habit.Acid:
		return ratio.Sour
	case habit.Sugar:
		return ratio.Sweet
	case habit.Fat:
		return ratio.Fat
	case habit.Body:
		if by.Class.Kin() == flavor.KinFoam {
			return ratio.Foam
		}
		return ratio.Fat
	case habit.Level(flavor.Pungent):
		return ratio.Pungent
	}
	return ratio.Aroma
}

// axisOfPour returns what too much of an ingredient tastes of first.
func axisOfPour(p *flavor.Profile) ratio.Axis {
	switch {
	case p.Class.Kin() == flavor.KinBitter, p.Class == flavor.ClassCocktailBitters:
		return ratio.Bitter
	case p.Class.Kin() == flavor.KinFoam:
		return ratio.Foam
	case p.Class.Milky():
		return ratio.Fat
	case p.Class.Part() == flavor.PartSeasoning:
		return axisOfSeasoning(p)
	}
	if axis, ok := axisOfPart[p.Class.Part()]; ok {
		return axis
	}
	return ratio.Aroma
}

var axisOfPart = map[flavor.Part]ratio.Axis{
	flavor.PartBase: ratio.Strong, flavor.PartSweetener: ratio.Sweet, flavor.PartSour: ratio.Sour, flavor.PartLength: ratio.Long,
}

func axisOfSeasoning(p *flavor.Profile) ratio.Axis {
	switch {
	case p.Aroma[flavor.Pungent] > p.Aroma.Total()/3:
		return ratio.Pungent
	case p.Salt.Value > p.Aroma.Total():
		return ratio.Salty
	}
	return ratio.Aroma
}

// Axis returns what there is too much or too little of by it.
func (x *Uneven) Axis() ratio.Axis { return axisOfPour(x.Profile) }
