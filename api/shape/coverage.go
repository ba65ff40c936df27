package shape

import (
	"context"

	"counterpour/api/service"
	"counterpour/flavor/cover"
	"counterpour/flavor/cover/lookahead"
)

// CoverageBody asks, before service, which bottles a menu cannot do without.
type CoverageBody struct {
	Specs []Spec   `json:"specs,omitempty" maxItems:"200" doc:"The menu; left out, that of the house"`
	Stock []string `json:"stock,omitempty" maxItems:"10000" doc:"Ids of what may be poured; left out, the stock of the house"`
}

// CoverageAnswer is the bottles that nothing in stock covers well.
type CoverageAnswer struct {
	House    string       `json:"house" doc:"Whose menu it is; empty for one that was sent"`
	Invented bool         `json:"invented" doc:"The house is made up, for demonstration"`
	Weak     []Weak       `json:"weak" doc:"Order two of these; the bottle that most drinks need comes first"`
	Left     []Ingredient `json:"left,omitempty" doc:"Bottles that time ran out for: whether something covers them is not known"`
	GoodJND  float64      `json:"good_jnd" doc:"The distance up to which a cover is called good, in noticeable steps; one that every bar pours may lie further"`
}

// Weak is a bottle that has no good cover, and the drinks that need it.
type Weak struct {
	ID     string   `json:"id"`
	Name   string   `json:"name"`
	Drinks []string `json:"drinks" doc:"Those without a good cover if it runs out"`
}

// AnswerCoverage finds, for every bottle of the menu, the drinks that would have no good
// cover if it ran out.
func AnswerCoverage(ctx context.Context, house *service.Snapshot, body CoverageBody) (*CoverageAnswer, error) {
	r, err := house.Coverage(ctx, service.CoverageRequest{Menu: fieldsOf(body.Specs), Stock: body.Stock})
	if err != nil {
		return nil, err
	}
	return &CoverageAnswer{House: r.House.Name, Invented: r.House.Invented, GoodJND: cover.NearJND, Left: list(r.Left, ingredientOf), Weak: list(r.Weak, func(w lookahead.Weak) Weak {
		return Weak{w.Profile.ID, w.Profile.Name, w.Drinks}
	})}, nil
}
