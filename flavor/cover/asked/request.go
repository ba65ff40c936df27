package asked

import (
	"errors"
	"fmt"

	"counterpour/flavor"
	"counterpour/flavor/cover/search"
	"counterpour/flavor/guest"
)

// Limits of a request.
const (
	MaxParts = search.MaxParts
	// UsualParts is the most substitutes if nobody says.
	UsualParts = 2
	MaxLimit   = 100
)

// Request asks for covers.
type Request struct {
	Spec       *flavor.Spec
	Missing    []*flavor.Profile // what ran out; one or more pours of the spec
	Candidates []*flavor.Profile // what may be poured instead
	// Common weighs candidates by how common they are, for when nobody has said
	// what is at hand; nil if all of them are.
	Common   *flavor.Commonness
	Guest    guest.Guest
	Tastings []Tasting // what the house has learnt of covers
	// Parts is the most substitutes, 1 to MaxParts, for one thing that had to go;
	// each further one may have one more, up to MaxParts in all. 0 means
	// UsualParts. With that, where nothing of fewer keeps the drink, three are listed that the
	// trade pours together.
	Parts int
	Limit int  // most covers, 1 to MaxLimit; 0 means 10
	Far   bool // list what ranks far behind the best too
	// Effort is how much work the search may take, see [search.Problem]; 0 means as
	// much as it needs. What it has by then, or by the deadline of the context, is
	// returned as the best so far.
	Effort int
}

// Check sets what is left to the program, and fails if the request is out of range or what is
// missing is not in the spec.
func (r *Request) Check() error {
	if r.Limit == 0 {
		r.Limit = 10
	}
	switch {
	case r.Spec == nil || len(r.Missing) == 0:
		return errors.New("cover: a request needs a spec and what is missing")
	case r.Parts < 0 || r.Parts > MaxParts:
		return fmt.Errorf("cover: %d substitutes; ask for 1 to %d", r.Parts, MaxParts)
	case r.Limit < 1 || r.Limit > MaxLimit:
		return fmt.Errorf("cover: limit %d; ask for 1 to %d", r.Limit, MaxLimit)
	}
	for _, m := range r.Missing {
		if !r.Spec.HasProfile(m) {
			return &flavor.DataFault{Kind: flavor.ErrInvalid, Location: "missing", Value: m.Name,
				Message: fmt.Sprintf("%s is not a pour of this drink; name one that is", m.Name)}
		}
	}
	return r.Guest.Check()
}

// Tasting is what became of a cover that was poured: kept, sent back, or
// scored by a taster.
type Tasting struct {
	Missing string   // id of what was out
	Parts   []string // ids of what was poured instead
	// Liked is 1 for a cover that was kept, 0 for one that was sent back, and
	// between the two for a score.
	Liked float64
}
