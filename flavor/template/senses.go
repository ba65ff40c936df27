package template

import (
	"counterpour/flavor"
	"counterpour/flavor/habit"
)

// Axis returns the axis in which a drink goes wrong by it.
func (x *Beyond) Axis() Axis {
	if x.Sense {
		return axisOfLevel(x.Level, x.Profile)
	}
	return axisOfPour(x.Profile)
}

func axisOfLevel(l habit.Level, by *flavor.Profile) Axis {
	switch l {
	case habit.Salty:
		return Salty
	case habit.Bitter:
		return Bitter
	case habit.Acid:
		return Sour
	case habit.Sugar:
		return Sweet
	case habit.Fat:
		return Fat
	case habit.Body:
		if by.Class == flavor.ClassEgg || by.Class == flavor.ClassFoam {
			return Foam
		}
		return Fat
	case habit.Level(flavor.Pungent):
		return Pungent
	}
	return Aroma
}

// axisOfPour returns what too much of an ingredient tastes of first.
func axisOfPour(p *flavor.Profile) Axis {
	switch p.Class {
	case flavor.ClassCocktailBitters, flavor.ClassAmaro, flavor.ClassBitterAperitif:
		return Bitter
	case flavor.ClassEgg, flavor.ClassFoam:
		return Foam
	case flavor.ClassDairy, flavor.ClassPlantMilk, flavor.ClassCreamLiqueur:
		return Fat
	}
	switch p.Class.Part() {
	case flavor.PartBase:
		return Strong
	case flavor.PartSweetener:
		return Sweet
	case flavor.PartSour:
		return Sour
	case flavor.PartLength:
		return Long
	case flavor.PartSeasoning:
		if p.Aroma[flavor.Pungent] > p.Aroma.Total()/3 {
			return Pungent
		}
		if p.Salt.Value > p.Aroma.Total() {
			return Salty
		}
	}
	return Aroma
}
