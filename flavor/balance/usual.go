package balance

import "counterpour/flavor"

// usualTimes is how many times what is usual an amount is from where a fix goes on to it.
// Judged.
const usualTimes = 1.2

// asUsual goes on down the ladder of what modifies a drink, and is too much, to what is
// usual in drinks like it, in place of the first amount that mends the draft, as long as
// the draft is mended as surely: nobody pours twice what is usual because it would pass.
func (f *fixing) asUsual(pour int, ladder []Change, x *Fault, at int, score float64) (int, float64) {
	p := f.spec.Pours[pour].Profile
	if !x.High || p.Class.Part() != flavor.PartModifier {
		return at, score
	}
	usual := f.build.UsualPour(pour, f.ml)
	if ladder[at].ToML < usualTimes*usual {
		return at, score
	}
	for i := at + 1; i < len(ladder) && ladder[i].ToML >= usual/usualTimes; i++ {
		if got, ok := f.reaches(pour, ladder[i].ToML, min(score, asSure)); ok {
			at, score = i, got
		}
		if ladder[i].ToML <= usual {
			break
		}
	}
	return at, score
}
