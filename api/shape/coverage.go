package shape

import (
	"context"

	"counterpour/api/service"
	"counterpour/api/shape/figure"
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
	Buy      []Buy        `json:"buy" doc:"Bottles not in stock that would by themselves be a good cover: the one that closes most gaps first"`
	Left     []Ingredient `json:"left,omitempty" doc:"Bottles that time ran out for: whether something covers them is not known"`
	GoodJND  float64      `json:"good_jnd" doc:"The distance up to which a cover is called good, in noticeable steps; one that every bar pours may lie further"`
}

// Weak is a bottle that has no good cover, and the drinks that need it.
type Weak struct {
	ID     string   `json:"id"`
	Name   string   `json:"name"`
	Drinks []string `json:"drinks" doc:"Those without a good cover if it runs out"`
}

// Buy is a bottle to buy, and the gaps that it closes.
type Buy struct {
	ID     string `json:"id"`
	Name   string `json:"name"`
	Closes []Gap  `json:"closes"`
}

// Gap is a drink that has no good cover for one of its bottles.
type Gap struct {
	Without Ingredient `json:"without"`
	Drink   string     `json:"drink"`
}

// AnswerCoverage finds, for every bottle of the menu, the drinks that would have no good
// cover if it ran out, and what could be bought to cover it.
func AnswerCoverage(ctx context.Context, house *service.Snapshot, body CoverageBody) (*CoverageAnswer, error) {
	r, err := house.Coverage(ctx, service.CoverageRequest{Menu: fieldsOf(body.Specs), Stock: body.Stock})
	if err != nil {
		return nil, err
	}
	return &CoverageAnswer{House: r.House.Name, Invented: r.House.Invented, GoodJND: cover.NearJND, Left: figure.List(r.Left, IngredientOf), Weak: figure.List(r.Weak, func(w lookahead.Weak) Weak {
		return Weak{w.Profile.ID, w.Profile.Name, w.Drinks}
	}), Buy: figure.List(r.Buy, func(b lookahead.Buy) Buy {
		return Buy{b.Profile.ID, b.Profile.Name, figure.List(b.Closes, func(g lookahead.Gap) Gap { return Gap{IngredientOf(g.Without), g.Drink} })}
	})}, nil
}
