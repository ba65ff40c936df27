package behind

import (
	"context"

	"counterpour/flavor"
	"counterpour/flavor/guest"
	"counterpour/flavor/riff"
	"counterpour/flavor/riff/precedent"
	"counterpour/flavor/riff/useup"
	"counterpour/flavor/riff/walk"
)

// Riffer finds what else a drink, or a bottle, could become.
type Riffer interface {
	// Named finds the ingredient that a name means. Misspelt names are faults.
	Named(name string) (*flavor.Profile, error)
	// Riff finds variations of a drink.
	Riff(ctx context.Context, r riff.Request) (*riff.Result, error)
	// Relatives returns the n proven drinks nearest to a spec that the guest may have.
	Relatives(s *flavor.Spec, n int, g guest.Guest) ([]precedent.Relative, error)
	// UseUp drafts drinks that use up bottles.
	UseUp(ctx context.Context, r useup.Request) (*useup.Result, error)
	// Walk finds drinks that lie between two drinks.
	Walk(ctx context.Context, r walk.Request) (*walk.Result, error)
}
