package part

import (
	"math"
	"slices"

	"counterpour/data/house"
	"counterpour/flavor"
	"counterpour/flavor/measure/draft/names/naming"
)

// What a bottle may be that does not say its kind: common practice, no source.
const (
	mostLikely = 6 // kinds that are offered
	nearABV    = 3 // % vol that a kind may differ from what the label says
)

// LikelyKinds are the kinds that a bottle may be whose name says none: the first of some, which
// begin with the most usual, that hold about as much alcohol as its label says, and whatever its
// name says that there is. Without a strength none is likelier than others: one tap on a wrong kind
// would lose what its label says of allergens.
func LikelyKinds(b *house.Bottle, kinds []*flavor.Profile) (out []*flavor.Profile) {
	states := b.Measured.ABVPct
	if states == nil {
		return nil
	}
	for _, p := range kinds {
		near := math.Abs(*states-p.ABV.Value) <= nearABV && b.Measured.Contradicts(p) == nil
		if len(out) < mostLikely && near && naming.Loses(b.Name, p) == "" && !slices.ContainsFunc(out, func(o *flavor.Profile) bool { return o.ID == p.ID }) {
			out = append(out, p)
		}
	}
	return out
}
