package shape

import (
	"context"

	"counterpour/api/service"
	"counterpour/api/shape/figure"
	"counterpour/flavor/riff"
	"counterpour/flavor/riff/useup"
)

// UseUpBody asks for drinks that use bottles up.
type UseUpBody struct {
	Bottles  []string `json:"bottles" minItems:"1" maxItems:"24" nullable:"false" doc:"The bottles that must move: names, aliases or ids"`
	Families []string `json:"families,omitempty" maxItems:"50" doc:"Ids of the families wanted; left out, all"`
	Unit     string   `json:"unit,omitempty" enum:"oz,ml" default:"oz" doc:"What the amounts are measured in"`
	Search
}

// UseUpAnswer is the drafts found.
type UseUpAnswer struct {
	House    string    `json:"house" doc:"Whose stock it is; empty for one that was sent"`
	Invented bool      `json:"invented" doc:"The house is made up, for demonstration"`
	Drafts   []UpDraft `json:"drafts" doc:"The best first; together they move as many of the bottles as they can"`
	Unused   []Unused  `json:"unused" doc:"The bottles that no draft moves, and why"`
	Found
}

// UpDraft is a balanced draft that uses at least one of the bottles.
type UpDraft struct {
	Listed
	Uses []Use `json:"uses" doc:"What it moves, in the order of the request"`
}

// Use is how much of a bottle one drink uses.
type Use struct {
	ID   string  `json:"id"`
	Name string  `json:"name"`
	ML   float64 `json:"ml"`
}

// Unused is a bottle that no draft uses.
type Unused struct {
	ID   string `json:"id"`
	Name string `json:"name"`
	Why  string `json:"why" enum:"guest,place,balance,limit,time,crowded"`
	Text string `json:"text" doc:"The reason in words"`
}

// AnswerUseUp finds drafts that use bottles up.
func AnswerUseUp(ctx context.Context, house *service.Snapshot, body UseUpBody) (*UseUpAnswer, error) {
	r, err := house.UseUp(ctx, service.UseUpRequest{Bottles: body.Bottles, Toward: body.Toward, Families: body.Families, Stock: body.Stock,
		Unit: body.Unit, Limit: body.Limit, Seed: body.Seed, Guest: body.guest()})
	if err != nil {
		return nil, err
	}
	return &UseUpAnswer{
		House: r.House.Name, Invented: r.House.Invented,
		Drafts: figure.List(r.Result.Drafts, func(x useup.Draft) UpDraft {
			return UpDraft{Listed: listedOf(house, &x.Listed, r.Avoid, r.Prices),
				Uses: figure.List(x.Uses, func(u useup.Use) Use { return Use{u.Profile.ID, u.Profile.Name, figure.Round(u.ML, figure.ML)} })}
		}),
		Unused: figure.List(r.Result.Unused, func(u useup.Unused) Unused {
			return Unused{u.Profile.ID, u.Profile.Name, string(u.Why), u.String()}
		}),
		Found: body.found(riff.LeastDistance, r.Result.Refused, r.Result.Labels, r.Result.CutShort, r.Currency),
	}, nil
}
