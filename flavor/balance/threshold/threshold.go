package threshold

import (
	"math"

	"counterpour/flavor/ratio"
	"counterpour/flavor/sense"
)

// senseOf returns the sense by which an axis is noticed: more length is noticed
// as more volume.
func senseOf(a ratio.Axis) sense.Sense {
	switch a {
	case ratio.Strong:
		return sense.Ethanol
	case ratio.Sweet:
		return sense.Sweet
	case ratio.Sour:
		return sense.Sour
	case ratio.Bitter:
		return sense.Bitter
	}
	return sense.Volume
}

// Weber returns the Weber fraction of an axis, which is that of its sense.
func Weber(a ratio.Axis) float64 { return senseOf(a).Weber() }

// JND returns how many just-noticeable differences lie between an amount and
// the same amount times exp(change), each step multiplying by 1 + Weber. It has
// no floor: a ratio of parts is judged, not an amount near nothing.
func JND(a ratio.Axis, change float64) float64 {
	return math.Abs(change) / math.Log1p(Weber(a))
}
