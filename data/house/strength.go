package house

import (
	"fmt"

	"counterpour/flavor"
)

// A strength is that of a kind if it is within strengthFactor of what the kind has, or
// beyond it by no more than traceABV, in % vol: so far apart no two bottles of one kind
// are. Above 1.2 % vol a drink has to state that it holds alcohol (Regulation (EU) No
// 1169/2011, Article 28; from memory). The factor is common practice, no source.
const (
	strengthFactor = 3
	traceABV       = 1.2
)

// Contradicts returns why a strength that was read off a label is not that of the kind that
// the bottle is said to be, whose profile in the catalogue is p: then one of the two is
// wrong, and a guest would be told what is not so. It is nil if nothing was read.
func (m Measured) Contradicts(p *flavor.Profile) error {
	if m.ABVPct == nil {
		return nil
	}
	states, has := *m.ABVPct, p.ABV.Value
	if states <= max(strengthFactor*has, has+traceABV) && states >= min(has/strengthFactor, has-traceABV) {
		return nil
	}
	holds := "holds no alcohol"
	if has > 0 {
		holds = fmt.Sprintf("holds about %.3g %% vol", has)
	}
	return invalid("abv", states, "%v %% vol does not go with %s, which %s; say which kind it is, or leave the strength out", states, p.Name, holds)
}
