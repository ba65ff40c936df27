package cover

import "slices"

// Ahead is why a cover ranks above another that lies nearer; empty if it ranks above none.
type Ahead string

// The reasons for which a cover ranks above a nearer one.
const (
	AheadByCustom  Ahead = "custom"  // the trade or the house pours it
	AheadByBottles Ahead = "bottles" // it is made of fewer
	AheadByBalance Ahead = "balance" // it is better balanced
	AheadByKind    Ahead = "kind"    // it is closer in kind to what went
)

// AheadReasons lists every reason, the one that is told before the others first.
func AheadReasons() []Ahead {
	return []Ahead{AheadByCustom, AheadByBottles, AheadByBalance, AheadByKind}
}

// A cover is nearer than another by more than clearlyNearer, in just-noticeable steps, and
// better balanced by more than clearlyBetter, in points of the score: less says nothing.
const (
	clearlyNearer = 0.5
	clearlyBetter = 1.0
)

// rankedAhead tells of each cover of a ranked list why it ranks above the first nearer one
// that follows it.
func rankedAhead(ranked []Cover) {
	for i := range ranked {
		ranked[i].Ahead = ranked[i].aheadOf(ranked[i+1:])
	}
}

// aheadOf returns why a cover ranks above the first nearer one of those below it.
func (c *Cover) aheadOf(below []Cover) Ahead {
	at := slices.IndexFunc(below, func(o Cover) bool { return o.Distance < c.Distance-clearlyNearer })
	if at < 0 {
		return ""
	}
	switch o := &below[at]; {
	case c.Custom:
		return AheadByCustom
	case len(o.Parts) > len(c.Parts):
		return AheadByBottles
	case o.Score < c.Score-clearlyBetter:
		return AheadByBalance
	}
	return AheadByKind
}
