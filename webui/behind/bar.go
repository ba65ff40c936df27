package behind

import (
	"context"

	"counterpour/api/service"
	"counterpour/api/service/coaching"
	"counterpour/api/service/kitchen"
	"counterpour/flavor"
	"counterpour/flavor/balance"
	"counterpour/flavor/cover"
	"counterpour/flavor/ratio"
	"counterpour/flavor/template"
	"counterpour/webui/draw"
)

// Bar does the work behind the pages. Faults of what a user wrote are
// [flavor.Faults] or a [*flavor.Fault] and are shown as they are; any other
// error is logged and told in general words.
type Bar interface {
	// Read reads a spec as text.
	Read(text string) (flavor.Spec, error)
	// ReadRest reads what can be read of a spec as text, and the faults of what
	// cannot. It fails as Read does where nothing of it can be weighed.
	ReadRest(text string) (flavor.Spec, flavor.Faults, error)
	// Score scores a spec and finds how to fix it. A spec in which there
	// is nothing to weigh is a fault.
	Score(s *flavor.Spec) (*balance.Result, []balance.Fix, error)
	// Judge scores a spec as Score does, and leaves out what would mend it.
	Judge(s *flavor.Spec) (*balance.Result, error)
	// Explain works out the score of a spec line by line, for a spec that Judge
	// scores.
	Explain(s *flavor.Spec) ([]balance.Step, error)
	// Cover finds what to pour instead of an ingredient.
	Cover(ctx context.Context, r CoverRequest) (*service.CoverAnswer, error)
	// Nearest returns the drink of the menu that is nearest to a spec, of those
	// that a stock pours and the guest may have; nil if there is none.
	Nearest(s *flavor.Spec, stock []*flavor.Profile, guest cover.Guest) (*cover.Offered, error)
	// Outs finds what becomes of a menu when bottles run out.
	Outs(ctx context.Context, r cover.MenuRequest) (*cover.MenuResult, error)
	// Suggest returns up to limit ingredients whose name goes on from what was
	// typed, the likeliest first.
	Suggest(ctx context.Context, prefix string, limit int) ([]*flavor.Profile, error)
	// Examples returns the specs that a draft may start from: the house's menu.
	Examples() []flavor.Spec
	// Families returns every family of drinks.
	Families() []template.Family
	// Family returns a family of drinks by its id.
	Family(id string) (template.Family, bool)
	// Ranges returns, for each axis, what the good drinks of a family carry at
	// the size and make-up of s. It is false for an unknown family or a spec
	// with nothing to weigh.
	Ranges(s *flavor.Spec, family string) ([ratio.NumAxes]draw.Range, bool)
	// Look returns how a drink looks in its glass. It fails as Judge does.
	Look(s *flavor.Spec) (*kitchen.Look, error)
	// Contrast compares two drinks as a guest would who has both. It fails as
	// Judge does.
	Contrast(before, after *flavor.Spec) (*kitchen.Contrast, error)
	// Cautions returns what has to be said of the ingredients of s, each once.
	Cautions(s *flavor.Spec) []Caution
	Riffer // what else a drink, or a bottle, could become
}

// What the pages and the centre say to each other.
type (
	// CoverRequest asks what to pour in place of an ingredient.
	CoverRequest = service.PageCover
	// Caution is a warning and where it comes from.
	Caution = service.Warning
	// HouseSpec is a drink on the menu of a house.
	HouseSpec = service.Drink
	// SpecQuery asks for drinks of a menu.
	SpecQuery = service.DrinkQuery
	// RoundWish asks for a round of training.
	RoundWish = coaching.RoundWish
)
