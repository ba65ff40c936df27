package cover

import (
	"slices"

	"counterpour/flavor/cover/gap"
	"counterpour/flavor/cover/portion"
	"counterpour/flavor/cover/search"
	"counterpour/flavor/sense"
)

// move is one step of one of the other pours.
type move struct {
	pour   int
	amount portion.Amount
	by     sense.Row
}

// addMoves lists one step up and one down of every other pour, the base among
// them if it may move.
func (t *task) addMoves(base bool) {
	t.moves, t.scored, t.serves = nil, map[search.Key]float64{}, map[search.Key]bool{}
	for _, i := range t.gap.Keep {
		p := &t.req.Spec.Pours[i]
		if p.Profile.Base() && !base {
			continue
		}
		v := t.gap.RowOf(&t.finder.trade.Cellar.Of(p.Profile).Holds)
		for _, a := range portion.Steps(p) {
			m := move{pour: i, amount: a}
			gap.AddTo(&m.by, &v, a.ML-p.ML)
			t.moves = append(t.moves, m)
		}
	}
}

// baseMoves reports whether the drink keeps a base that could move.
func (t *task) baseMoves() bool {
	return slices.ContainsFunc(t.gap.Keep, func(i int) bool {
		p := &t.req.Spec.Pours[i]
		return p.Profile.Base() && len(portion.Steps(p)) > 0
	})
}
