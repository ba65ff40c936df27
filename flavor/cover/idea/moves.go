package idea

import (
	"slices"

	"counterpour/flavor"
	"counterpour/flavor/cover/gap"
	"counterpour/flavor/cover/portion"
	"counterpour/flavor/cover/search"
	"counterpour/flavor/sense"
)

// Move is one step of one of the other pours.
type Move struct {
	Pour   int
	Amount portion.Amount
	By     sense.Row
}

// mostMore is how many times as much of a pour that flavours a drink is poured to make up for
// another: an aviation with twice its violet is soap (common practice, no source).
const mostMore = 1.5

// tooMuch reports whether so many mL of a pour that flavours the drink are another drink. What
// sweetens, sours or lengthens it may move by any step.
func (t *Task) tooMuch(p *flavor.Pour, ml float64) bool {
	const rounding = 1e-6
	switch p.Profile.Class.Part() {
	case flavor.PartModifier, flavor.PartSeasoning:
		return ml > mostMore*p.ML+rounding && !t.Trade.Cellar.Of(p.Profile).Smell.Plain()
	}
	return false
}

// AddMoves lists one step up and one down of every other pour, the base among
// them if it may move.
func (t *Task) AddMoves(base bool) {
	t.Moves, t.scored, t.serves = nil, map[search.Key]float64{}, map[search.Key]bool{}
	for _, i := range t.Gap.Keep {
		p := &t.Req.Spec.Pours[i]
		if p.Profile.Base() && !base {
			continue
		}
		v := t.Gap.RowOf(&t.Trade.Cellar.Of(p.Profile).Holds)
		for _, a := range portion.Steps(p) {
			if t.tooMuch(p, a.ML) {
				continue
			}
			m := Move{Pour: i, Amount: a}
			gap.AddTo(&m.By, &v, a.ML-p.ML)
			t.Moves = append(t.Moves, m)
		}
	}
}

// BaseMoves reports whether the drink keeps a base that could move.
func (t *Task) BaseMoves() bool {
	return slices.ContainsFunc(t.Gap.Keep, func(i int) bool {
		p := &t.Req.Spec.Pours[i]
		return p.Profile.Base() && len(portion.Steps(p)) > 0
	})
}
