package balance

import (
	"counterpour/flavor"
	"counterpour/flavor/makeup"
	"counterpour/flavor/ratio"
)

// AxisSpreads returns one standard deviation of each equivalent of a spec,
// relative to it, from the tolerance of the pours and the spread of the
// profiles. An axis that the drink has nothing of has none.
func AxisSpreads(s *flavor.Spec) ratio.Equivalents {
	e := makeup.EquivalentsOf(s)
	return axisSpreads(s, &e)
}
