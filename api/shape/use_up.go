package shape

import (
	"context"

	"counterpour/api/service"
	"counterpour/flavor/riff"
	"counterpour/flavor/riff/useup"
)

// UseUpBody asks for drinks that use bottles up.
type UseUpBody struct {
	Bottles  []string           `json:"bottles" minItems:"1" maxItems:"24" nullable:"false" doc:"The bottles that must move: names, aliases or ids"`
	Avoid    []string           `json:"avoid,omitempty" maxItems:"50" doc:"Allergens that the guest must not have; what may contain one counts as containing it"`
	Diet     []string           `json:"diet,omitempty" maxItems:"20" doc:"What the guest keeps to: vegan, vegetarian, no egg, no dairy, no honey, alcohol-free (up to 0.5 % vol) or 0.0 % alcohol"`
	MaxABV   float64            `json:"max_abv_pct,omitempty" minimum:"0" maximum:"100" doc:"Highest strength of the finished drink, in % vol; leave it out for any strength"`
	Prices   map[string]float64 `json:"prices_per_ml,omitempty" doc:"What a millilitre costs, by ingredient id, in any currency; left out, by the prices of the house"`
	MaxCost  float64            `json:"max_cost,omitempty" minimum:"0" doc:"Highest cost of all pours of one draft, in the currency of the prices; ingredients without a price are then left out"`
	Toward   []string           `json:"toward,omitempty" maxItems:"20" doc:"Limits that every draft keeps to, such as \"no smoke\" or \"below 12 %\""`
	Families []string           `json:"families,omitempty" maxItems:"50" doc:"Ids of the families wanted; left out, all"`
	Stock    []string           `json:"stock,omitempty" maxItems:"10000" doc:"Ids of what may be poured beside the bottles; left out, what the house has in stock, less what has run out"`
	Unit     string             `json:"unit,omitempty" enum:"oz,ml" default:"oz" doc:"What the amounts are measured in"`
	Limit    int                `json:"limit,omitempty" minimum:"1" maximum:"100" default:"10" doc:"Most drafts to list"`
	Seed     uint64             `json:"seed,omitempty" doc:"Another seed gives another list of about the same quality"`
}

// UseUpAnswer is the drafts found.
type UseUpAnswer struct {
	House         string       `json:"house" doc:"Whose stock it is; empty for one that was sent"`
	Invented      bool         `json:"invented" doc:"The house is made up, for demonstration"`
	Drafts        []UpDraft    `json:"drafts" doc:"The best first; together they move as many of the bottles as they can"`
	Unused        []Unused     `json:"unused" doc:"The bottles that no draft moves, and why"`
	LeastJND      float64      `json:"least_jnd" doc:"The least distance between any two drafts, in noticeable steps"`
	Refused       Unlisted     `json:"refused" doc:"How many could not be listed, and why"`
	IfLabelClears []Ingredient `json:"if_label_clears,omitempty" doc:"What else could be poured if its label clears it for the guest: it may carry what the guest avoids, or nobody has stated it"`
	CutShort      bool         `json:"cut_short" doc:"Time ran out, so that better drafts may be missing"`
	Seed          uint64       `json:"seed" doc:"The seed of this list; send it to get the same list again"`
	Currency      string       `json:"currency" doc:"Of every cost, as in ISO 4217; empty for prices that were sent"`
	CrossContact  string       `json:"cross_contact,omitempty" doc:"What to clean before a drink is mixed for this guest; left out where the guest avoids nothing"`
}

// UpDraft is a balanced draft that uses at least one of the bottles.
type UpDraft struct {
	Spec      Spec       `json:"spec" doc:"As a spec that can be sent back"`
	Family    string     `json:"family" doc:"Id of the family that it is likeliest to be"`
	Score     float64    `json:"score"`
	ABVPct    float64    `json:"abv_pct" doc:"Finished"`
	Uses      []Use      `json:"uses" doc:"What it moves, in the order of the request"`
	Allergens []Allergen `json:"allergens"`
	Ask       []string   `json:"ask,omitempty" doc:"What to ask the guest before you pour: what the law does not count as an avoided allergen, but some guests avoid"`
	Cautions  []Caution  `json:"cautions" doc:"Cautions of its pours, without the general ones on alcohol"`
	Cost      *float64   `json:"cost,omitempty" doc:"Of all pours, in the currency of the prices; left out if one has no price"`
	Name      string     `json:"name" doc:"What it is, as the trade says it: what leads it, its family, how it is served"`
	Why       string     `json:"why" doc:"Why it is worth a try"`
	Text      string     `json:"text"`
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
		Unit: body.Unit, Limit: body.Limit, Seed: body.Seed,
		Guest: service.Guest{Avoid: body.Avoid, Diet: body.Diet, MaxABV: body.MaxABV, MaxCost: body.MaxCost, Prices: body.Prices}})
	if err != nil {
		return nil, err
	}
	return &UseUpAnswer{
		CrossContact: crossContact(body.Avoid, body.Diet),
		House:        r.House.Name, Invented: r.House.Invented,
		Drafts: list(r.Result.Drafts, func(x useup.Draft) UpDraft {
			return UpDraft{Spec: specOf(&x.Spec), Family: x.FamilyID, Score: roundScore(x.Score), ABVPct: round(x.Drink.ABV, digitsPct),
				Uses:      list(x.Uses, func(u useup.Use) Use { return Use{u.Profile.ID, u.Profile.Name, round(u.ML, digitsML)} }),
				Allergens: allergensOf(&x.Spec), Ask: x.Spec.Ask(r.Avoid), Cautions: cautionsOf(house.CautionsOf(&x.Spec)), Cost: costOf(&x.Spec, r.Prices), Name: x.Name, Why: x.Why, Text: x.Text}
		}),
		Unused: list(r.Result.Unused, func(u useup.Unused) Unused {
			return Unused{u.Profile.ID, u.Profile.Name, string(u.Why), u.String()}
		}),
		LeastJND: riff.LeastDistance, Refused: Unlisted(r.Result.Refused), IfLabelClears: list(r.Result.Labels, ingredientOf), CutShort: r.Result.CutShort, Seed: body.Seed, Currency: r.Currency,
	}, nil
}
