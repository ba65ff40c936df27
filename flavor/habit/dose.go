package habit

import "math"

// leastRest is the least share of a drink that the rest of it is taken as, so that what
// is poured all but alone is compared at all.
const leastRest = 0.01

// Dose returns how much there is of a part to one of all the rest, given its share of
// the drink, 0 to 1. To pour twice as much of a part makes its dose twice as large,
// whatever there is of it; its share grows the less the larger it is.
func Dose(share float64) float64 { return share / math.Max(leastRest, 1-share) }

// ShareOf returns the share of the drink that a dose is.
func ShareOf(dose float64) float64 { return dose / (1 + dose) }
