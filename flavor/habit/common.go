package habit

import "counterpour/flavor"

// roundML is the rest of a drink in which the largest usual pour of a class is
// taken to go, in mL before ice: common practice.
const roundML = 60.0

// commonMost returns the dose that common practice pours of a class at most: a
// share of the drink before ice, times the strength of what is usual in the class.
func commonMost(c flavor.Class) float64 {
	most := c.MostML()
	return most / (most + roundML) * usualStrength(c)
}

// usualStrength is the strength of an ordinary seasoning of a class: aromatic
// bitters, extracts, saline of 20 %, pepper, mint, brine, berries.
func usualStrength(c flavor.Class) float64 {
	switch c {
	case flavor.ClassCocktailBitters:
		return 180
	case flavor.ClassTincture:
		return 85
	case flavor.ClassSaline:
		return 77
	case flavor.ClassSpice:
		return 250
	case flavor.ClassFreshHerb:
		return 100
	case flavor.ClassSavoury:
		return 28
	case flavor.ClassFruit:
		return 10
	}
	return 1
}
