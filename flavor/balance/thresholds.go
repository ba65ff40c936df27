package balance

import (
	"math"

	"counterpour/flavor/template"
)

// Weber fractions: the least relative change that most tasters notice.
const (
	// WeberStrong: Yu and Pickering, Am J Enol Vitic 59:146, 2008, ethanol in
	// wine, retronasal, over the wines' strengths.
	WeberStrong = 0.10
	// WeberSweet: McBride, Perception and Psychophysics, 1983; Schutz and
	// Pilgrim, J Exp Psychol 54:41, 1957 (from memory).
	WeberSweet = 0.15
	// WeberSour and WeberBitter: a reading of Camacho et al., J Food Sci,
	// 2015, who find them comparable to thickness.
	WeberSour   = 0.25
	WeberBitter = 0.28
	// WeberBody: Camacho, Dop, de Graaf and Stieger, J Food Sci, 2015, doi
	// 10.1111/1750-3841.12922, oral thickness.
	WeberBody = 0.26
	// WeberAroma: Cain, Science 195:796, 1977 (from memory).
	WeberAroma = 0.25
	// WeberLong: more length is noticed as less strength.
	WeberLong = WeberStrong
)

// Weber returns the Weber fraction of an axis.
func Weber(a template.Axis) float64 {
	switch a {
	case template.Strong:
		return WeberStrong
	case template.Sweet:
		return WeberSweet
	case template.Sour:
		return WeberSour
	case template.Bitter:
		return WeberBitter
	}
	return WeberLong
}

// JND returns how many just-noticeable differences lie between an amount and
// the same amount times exp(change), each step multiplying by 1 + Weber.
func JND(a template.Axis, change float64) float64 {
	return math.Abs(change) / math.Log1p(Weber(a))
}
