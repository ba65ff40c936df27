package cover

import "counterpour/flavor/cover/asked"

// What may be asked of a finder, and by what it judges, see package asked.
type (
	Request = asked.Request
	Tasting = asked.Tasting
	Weights = asked.Weights
)

// Limits of a request, and distances between glasses, see package asked.
const (
	MaxParts = asked.MaxParts
	MaxLimit = asked.MaxLimit
	NearJND  = asked.NearJND
	LastJND  = asked.LastJND
	SpareJND = asked.SpareJND
)

// DefaultWeights returns the weights that the program uses.
func DefaultWeights() Weights { return asked.DefaultWeights() }
