package habit

import "counterpour/flavor"

// roundML is the rest of a drink in which the largest usual pour of a class is
// taken to go, in mL before ice: common practice.
const roundML = 60.0

// commonMost returns the dose that common practice pours of a class at most: a
// share of the drink before ice, times the strength of what is usual in the class.
func commonMost(c flavor.Class) float64 {
	most := c.MostML()
	return most / (most + roundML) * c.UsualStrength()
}
