package shape

import (
	"context"

	"counterpour/api/service"
	"counterpour/flavor/riff"
	"counterpour/flavor/riff/precedent"
	"counterpour/flavor/riff/station"
)

// RiffBody asks for variations of a draft.
type RiffBody struct {
	Draft
	Toward  []string           `json:"toward,omitempty" maxItems:"20" doc:"What every riff must do, such as \"more bitter\", \"nuttier\", \"no nuts\" or \"below 12 %\""`
	Avoid   []string           `json:"avoid,omitempty" maxItems:"50" doc:"Allergens that the guest must not have; what may contain one counts as containing it"`
	Diet    []string           `json:"diet,omitempty" maxItems:"20" doc:"What the guest keeps to: vegan, vegetarian, no egg, no dairy, no honey, alcohol-free (up to 0.5 % vol) or 0.0 % alcohol"`
	MaxABV  float64            `json:"max_abv_pct,omitempty" minimum:"0" maximum:"100" doc:"Highest strength of the finished drink, in % vol; leave it out for any strength"`
	Prices  map[string]float64 `json:"prices_per_ml,omitempty" doc:"What a millilitre costs, by ingredient id, in any currency; left out, by the prices of the house"`
	MaxCost float64            `json:"max_cost,omitempty" minimum:"0" doc:"Highest cost of all pours of one riff, in the currency of the prices; ingredients without a price are then left out"`
	Stock   []string           `json:"stock,omitempty" maxItems:"10000" doc:"Ids of what may be poured; left out, what the house has in stock and what is in the draft, less what has run out"`
	Limit   int                `json:"limit,omitempty" minimum:"1" maximum:"100" default:"10" doc:"Most riffs to list"`
	Seed    uint64             `json:"seed,omitempty" doc:"Another seed gives another list of about the same quality"`
}

// RiffAnswer is the variations found.
type RiffAnswer struct {
	Riffs         []Riff       `json:"riffs" doc:"The best first, each unlike the others"`
	Nearest       *Miss        `json:"nearest,omitempty" doc:"What comes nearest to the wishes of what is not listed; left out where the list has what a bartender would try first: amounts changed or something left out, and nothing else"`
	Relatives     []Relative   `json:"relatives" doc:"The proven drinks nearest to the draft, of those that the guest may have"`
	LeastJND      float64      `json:"least_jnd" doc:"The least distance between any two riffs, in noticeable steps"`
	Refused       Unlisted     `json:"refused" doc:"How many could not be listed, and why"`
	LeftOut       []LeftOut    `json:"left_out,omitempty" doc:"What of the draft no riff pours, and why"`
	OfRest        bool         `json:"of_rest,omitempty" doc:"The wishes are compared with the draft without what is left out, since too few riffs meet them compared with all of it"`
	IfLabelClears []Ingredient `json:"if_label_clears,omitempty" doc:"What else could be poured if its label clears it for the guest: it may carry what the guest avoids, or nobody has stated it"`
	CutShort      bool         `json:"cut_short" doc:"Time ran out, so that better riffs may be missing"`
	Seed          uint64       `json:"seed" doc:"The seed of this list; send it to get the same list again"`
	Currency      string       `json:"currency" doc:"Of every cost, as in ISO 4217; empty for prices that were sent"`
	CrossContact  string       `json:"cross_contact,omitempty" doc:"What to clean before a drink is mixed for this guest; left out where the guest avoids nothing"`
}

// Riff is one variation.
type Riff struct {
	Spec         Spec       `json:"spec" doc:"As a spec that can be sent back"`
	Kind         string     `json:"kind" doc:"What was varied"`
	Family       string     `json:"family" doc:"Id of the family that it is likeliest to be"`
	Score        float64    `json:"score"`
	DistanceJND  float64    `json:"distance_jnd" doc:"From the draft, in noticeable steps"`
	Changes      []Change   `json:"changes"`
	ABVPct       float64    `json:"abv_pct" doc:"Finished"`
	Allergens    []Allergen `json:"allergens"`
	NewAllergens []string   `json:"new_allergens" doc:"Those that the draft does not have"`
	Ask          []string   `json:"ask,omitempty" doc:"What to ask the guest before you pour: what the law does not count as an avoided allergen, but some guests avoid"`
	Cautions     []Caution  `json:"cautions" doc:"Cautions of its pours, without the general ones on alcohol"`
	Cost         *float64   `json:"cost,omitempty" doc:"Of all pours, in the currency of the prices; left out if one has no price"`
	Notice       string     `json:"notice" enum:"won't,may,will" doc:"Whether a guest will notice that it is another drink"`
	Name         string     `json:"name" doc:"What it is, as the trade says it: what leads it, its family, how it is served"`
	Why          string     `json:"why" doc:"Why it is worth a try"`
	Text         string     `json:"text" doc:"What to pour differently, and what that does"`
}

// Miss is a variation that is not listed.
type Miss struct {
	Riff
	Misses string `json:"misses" enum:"balance,wish" doc:"What it lacks: its score is below what counts as balanced, or it falls short of a wish"`
}

// LeftOut is an ingredient of the draft that the riffs do not pour, and why.
type LeftOut struct {
	Ingredient
	Why           string `json:"why" doc:"In words that go on from its name"`
	LabelMayClear bool   `json:"label_may_clear" doc:"Nobody has stated all its allergens: its label may clear it for the guest"`
}

// Relative is a proven drink that is near to the draft.
type Relative struct {
	Name     string  `json:"name"`
	Family   string  `json:"family"`
	Source   string  `json:"source"`
	Status   string  `json:"status" enum:"read,recalled" doc:"Whether the source was read, or the drink is recalled from memory"`
	Distance float64 `json:"distance" doc:"In log-ratios, aroma and make-up; 0 is the same drink"`
}

// Unlisted counts the variations that were found and not listed, by reason.
type Unlisted struct {
	ByGuest  int `json:"by guest" doc:"Ingredients that the guest or a wish rules out"`
	Off      int `json:"out of balance"`
	Unfit    int `json:"not poured so" doc:"Balanced, but with more of something than proven drinks pour, or mixed or served as the trade does not"`
	ByLimit  int `json:"beyond a limit"`
	Unmet    int `json:"wish not met"`
	TooAlike int `json:"too alike"`
}

// AnswerRiff finds variations of a draft that stay in balance.
func AnswerRiff(ctx context.Context, house *service.Snapshot, body RiffBody) (*RiffAnswer, error) {
	r, err := house.Riff(ctx, service.RiffRequest{Draft: body.Draft.ToCentre(), Toward: body.Toward, Stock: body.Stock, Limit: body.Limit, Seed: body.Seed,
		Guest: service.Guest{Avoid: body.Avoid, Diet: body.Diet, MaxABV: body.MaxABV, MaxCost: body.MaxCost, Prices: body.Prices}})
	if err != nil {
		return nil, err
	}
	shown := func(x riff.Riff) Riff {
		return Riff{Spec: specOf(&x.Spec), Kind: string(x.Kind), Family: x.FamilyID, Score: roundScore(x.Score),
			DistanceJND: round(x.Distance, digitsJND), Changes: list(x.Changes, changeOf),
			ABVPct: round(x.Drink.ABV, digitsPct), Allergens: allergensOf(&x.Spec), NewAllergens: newAllergens(&r.Spec, &x.Spec), Ask: x.Spec.Ask(r.Avoid),
			Cautions: cautionsOf(house.CautionsOf(&x.Spec)), Cost: costOf(&x.Spec, r.Prices), Notice: string(x.Notice), Name: x.Name, Why: x.Why, Text: x.Text}
	}
	var nearest *Miss
	if r.Result.Nearest != nil {
		nearest = &Miss{shown(*r.Result.Nearest), string(r.Result.Misses)}
	}
	return &RiffAnswer{
		CrossContact: crossContact(body.Avoid, body.Diet),
		Riffs:        list(r.Result.Riffs, shown),
		Nearest:      nearest,
		Relatives: list(r.Relatives, func(x precedent.Relative) Relative {
			return Relative{x.Proven.Spec.Name, x.Proven.Family, x.Proven.Source, x.Proven.Status, round(x.Distance, digitsJND)}
		}),
		LeftOut: list(r.Result.LeftOut, func(x station.LeftOut) LeftOut {
			return LeftOut{ingredientOf(x.Profile), x.Why, x.Read}
		}),
		OfRest:        r.Result.OfRest,
		IfLabelClears: list(r.Result.Labels, ingredientOf),
		LeastJND:      r.Result.Least,
		Refused:       Unlisted(r.Result.Refused), CutShort: r.Result.CutShort, Seed: body.Seed, Currency: r.Currency,
	}, nil
}
