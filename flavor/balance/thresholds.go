package balance

import (
	"math"

	"counterpour/flavor/sense"
	"counterpour/flavor/template"
)

// senseOf returns the sense by which an axis is noticed: more length is noticed
// as more volume.
func senseOf(a template.Axis) sense.Sense {
	switch a {
	case template.Strong:
		return sense.Ethanol
	case template.Sweet:
		return sense.Sweet
	case template.Sour:
		return sense.Sour
	case template.Bitter:
		return sense.Bitter
	}
	return sense.Volume
}

// Weber returns the Weber fraction of an axis, which is that of its sense.
func Weber(a template.Axis) float64 { return senseOf(a).Weber() }

// JND returns how many just-noticeable differences lie between an amount and
// the same amount times exp(change), each step multiplying by 1 + Weber. It has
// no floor: a ratio of parts is judged, not an amount near nothing.
func JND(a template.Axis, change float64) float64 {
	return math.Abs(change) / math.Log1p(Weber(a))
}
