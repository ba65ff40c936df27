package behind

import (
	"context"

	"counterpour/api/service"
	"counterpour/api/service/coaching"
	"counterpour/api/service/kitchen"
	"counterpour/api/service/remedy"
	"counterpour/api/service/visit"
	"counterpour/flavor"
	"counterpour/flavor/balance"
	"counterpour/flavor/balance/arithmetic"
	"counterpour/flavor/cover/barred"
	"counterpour/flavor/cover/instead"
	"counterpour/flavor/cover/lookahead"
	"counterpour/flavor/cover/outs"
	"counterpour/flavor/guest"
	"counterpour/flavor/measure/draft/reading"
	"counterpour/flavor/ratio"
	"counterpour/flavor/template"
	"counterpour/webui/draw"
)

// Bar does the work behind the pages. Faults of user input are [flavor.DataFaults] or a
// [*flavor.DataFault] and are shown; any other error is logged and shown as an internal
// error.
type Bar interface {
	// Read reads a spec as text.
	Read(text string) (flavor.Spec, error)
	// ReadRest reads the lines of a text that can be read; the reading holds the faults of
	// the others. It fails as Read does if the lines that were read have nothing to weigh.
	ReadRest(text string) (reading.Reading, error)
	// Remedies returns what mends each fault of a draft.
	Remedies(r remedy.Request) ([]remedy.Remedies, error)
	// MeaningsOf returns what else the name of a line that was read may mean that the guest
	// may have.
	MeaningsOf(r *reading.Reading, line int, g guest.Guest) remedy.Meanings
	// Score scores a spec and finds fixes. A spec with nothing to weigh is a fault.
	Score(s *flavor.Spec) (*balance.Result, []balance.Fix, error)
	// Judge scores a spec as Score does, without fixes.
	Judge(s *flavor.Spec) (*balance.Result, error)
	// Explain works out the score of a spec line by line, for a spec that Judge
	// scores.
	Explain(s *flavor.Spec) ([]arithmetic.Step, error)
	// Cover finds what to pour instead of an ingredient.
	Cover(ctx context.Context, r CoverRequest) (*service.CoverAnswer, error)
	// Nearest returns the drink of the menu nearest to a spec, among those that the stock
	// can pour and the guest may have; nil if there is none.
	Nearest(s *flavor.Spec, stock []*flavor.Profile, g guest.Guest) (*instead.Offered, error)
	// Outs finds covers for a whole menu when bottles run out.
	Outs(ctx context.Context, r outs.Request) (*outs.Result, error)
	// BarredFrom says what the trade would pour for a drink that lost a pour, made of what is on a
	// shelf, and why nobody does now; nothing of one that a cover keeps.
	BarredFrom(t *outs.Touched, g guest.Guest, shelf []*flavor.Profile) []barred.Way
	// Coverage finds what the menu of the house leans on, and what could be bought instead.
	Coverage(ctx context.Context) (*lookahead.Answer, error)
	// Suggest returns up to limit ingredients whose name begins with prefix, the
	// likeliest first.
	Suggest(ctx context.Context, prefix string, limit int) ([]*flavor.Profile, error)
	// Examples returns the specs from which a draft may start: the house's menu.
	Examples() []flavor.Spec
	// Families returns every family of drinks.
	Families() []template.Family
	// Family returns a family of drinks by its id.
	Family(id string) (template.Family, bool)
	// Ranges returns, for each axis, what good drinks of a family contain at the volume
	// and make-up of s. It is false if the family is unknown or s has nothing to weigh.
	Ranges(s *flavor.Spec, family string) ([ratio.NumAxes]draw.Range, bool)
	// Look returns how a drink looks in its glass. It fails as Judge does.
	Look(s *flavor.Spec) (*kitchen.Look, error)
	// Contrast compares two drinks as a guest would who has both. It fails as
	// Judge does.
	Contrast(before, after *flavor.Spec) (*kitchen.Contrast, error)
	// Cautions returns the cautions of the ingredients of s, without duplicates.
	Cautions(s *flavor.Spec) []Caution
	Riffer // what else a drink, or a bottle, could become
}

// Types of the service under the names that the pages use.
type (
	// CoverRequest asks for covers of an ingredient.
	CoverRequest = visit.CoverRequest
	// Caution is a caution and its source.
	Caution = visit.Warning
	// HouseSpec is a drink on the menu of a house.
	HouseSpec = service.Drink
	// SpecQuery asks for drinks of the menu.
	SpecQuery = service.DrinkQuery
	// RoundWish asks for a round of training.
	RoundWish = coaching.RoundWish
)
