package mix

import "counterpour/flavor"

// within fails unless low <= v <= high, which a NaN never is.
func within(where string, v, low, high float64, unit string) error {
	if v >= low && v <= high {
		return nil
	}
	f := flavor.Invalid(where, v, "%v%s is out of range; use %v to %v%s", v, unit, low, high, unit)
	f.Bounds = &flavor.Bounds{Least: low, Most: high}
	return f
}

// maxML bounds every amount that is asked for: a cubic metre.
const maxML = 1e6

// amount fails unless v is more than nothing and no more than most.
func amount(where string, v, most float64, unit string) error {
	if v > 0 && v <= most {
		return nil
	}
	return flavor.Invalid(where, v, "%v %s must be more than 0 and no more than %.0f", v, unit, most)
}
