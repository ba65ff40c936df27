package mend

import (
	"counterpour/flavor"
	"counterpour/flavor/balance/change"
	"counterpour/flavor/balance/fault"
)

// A fix goes on from unusualTimes what is usual, to less than usualTimes that. Judged.
const unusualTimes, usualTimes = 1.75, 1.2

// asUsual takes a modifier of which there is too much further down its ladder: past the first
// amount that mends the draft, down to what is usual in drinks like it, as long as the draft is
// mended as surely. Nobody pours twice what is usual because it would pass.
func (f *fixing) asUsual(pour int, ladder []change.Change, x *fault.Fault, at int, score float64) (int, float64) {
	p := f.spec.Pours[pour].Profile
	if !x.High || p.Class.Part() != flavor.PartModifier {
		return at, score
	}
	usual := f.build.UsualPour(pour, f.ml)
	if ladder[at].ToML < unusualTimes*usual {
		return at, score
	}
	for i := at + 1; i < len(ladder) && ladder[i].ToML >= usual/usualTimes; i++ {
		if got, ok := f.reaches(pour, ladder[i].ToML, min(score, Surely)); ok {
			at, score = i, got
			if ladder[i].ToML < usualTimes*usual {
				break // near enough: to go on would be to pour less than was asked for
			}
		}
		if ladder[i].ToML <= usual {
			break
		}
	}
	return at, score
}

// notPast takes an amount that went past what is usual in drinks like it back to that, if that
// balances the draft with room: the best score may lie where nobody pours.
func (f *fixing) notPast(pour int, ladder []change.Change, x *fault.Fault, at int, score float64) (int, float64) {
	usual := f.build.UsualPour(pour, f.ml)
	past := func(i int) bool { return x.High && ladder[i].ToML < usual || !x.High && ladder[i].ToML > usual }
	for i := at; i > 0 && past(i); i-- {
		if got, ok := f.reaches(pour, ladder[i-1].ToML, roomy); ok {
			at, score = i-1, got
		} else if i < at {
			break
		}
	}
	return at, score
}
