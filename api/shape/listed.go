package shape

import (
	"counterpour/api/service"
	"counterpour/api/shape/figure"
	"counterpour/flavor"
	"counterpour/flavor/riff/station"
)

// Search is what a search for drinks is told beside what it starts from.
type Search struct {
	Toward  []string           `json:"toward,omitempty" maxItems:"20" doc:"What every drink must do, such as \"more bitter\", \"nuttier\", \"no nuts\" or \"below 12 %\"; without a draft to compare with, limits only, such as the last two"`
	Avoid   []string           `json:"avoid,omitempty" maxItems:"50" doc:"Allergens that the guest must not have, or caffeine, coconut, grapefruit, liquorice, quinine; what may contain one counts as containing it"`
	Diet    []string           `json:"diet,omitempty" maxItems:"20" doc:"What the guest keeps to: vegan, vegetarian, no egg, no dairy, no honey, alcohol-free (up to 0.5 % vol) or 0.0 % alcohol"`
	MaxABV  float64            `json:"max_abv_pct,omitempty" minimum:"0" maximum:"100" doc:"Highest strength of the finished drink, in % vol; leave it out for any strength"`
	Prices  map[string]float64 `json:"prices_per_ml,omitempty" doc:"What a millilitre costs, by ingredient id, in any currency; left out, by the prices of the house"`
	MaxCost float64            `json:"max_cost,omitempty" minimum:"0" doc:"Highest cost of all pours of one drink, in the currency of the prices; ingredients without a price are then left out"`
	Stock   []string           `json:"stock,omitempty" maxItems:"10000" doc:"Ids of what may be poured, beside bottles that must move; left out, what the house has in stock and what is in the draft, less what has run out"`
	Limit   int                `json:"limit,omitempty" minimum:"1" maximum:"100" default:"10" doc:"Most drinks to list"`
	Seed    uint64             `json:"seed,omitempty" doc:"Another seed gives another list of about the same quality"`
}

func (q *Search) guest() service.Guest {
	return service.Guest{Avoid: q.Avoid, Diet: q.Diet, MaxABV: q.MaxABV, MaxCost: q.MaxCost, Prices: q.Prices}
}

// Found is what a search for drinks tells beside its list.
type Found struct {
	LeastJND      float64      `json:"least_jnd" doc:"The least distance between any two of the list, in noticeable steps"`
	Refused       Unlisted     `json:"refused" doc:"How many could not be listed, and why"`
	IfLabelClears []Ingredient `json:"if_label_clears,omitempty" doc:"What else could be poured if its label clears it for the guest: it may carry what the guest avoids, or nobody has stated it"`
	CutShort      bool         `json:"cut_short" doc:"Time ran out, so that better ones may be missing"`
	Seed          uint64       `json:"seed" doc:"The seed of this list; send it to get the same list again"`
	Currency      string       `json:"currency" doc:"Of every cost, as in ISO 4217; empty for prices that were sent"`
	CrossContact  string       `json:"cross_contact,omitempty" doc:"What to clean before a drink is mixed for this guest; left out where the guest avoids nothing"`
}

func (q *Search) found(least float64, refused station.Refused, labels []*flavor.Profile, cutShort bool, currency string) Found {
	return Found{LeastJND: least, Refused: Unlisted(refused), IfLabelClears: figure.List(labels, IngredientOf), CutShort: cutShort,
		Seed: q.Seed, Currency: currency, CrossContact: crossContact(q.Avoid, q.Diet)}
}

// Listed is a drink in balance, as it is listed.
type Listed struct {
	Spec      Spec       `json:"spec" doc:"As a spec that can be sent back"`
	Family    string     `json:"family" doc:"Id of the family that it is likeliest to be"`
	Score     float64    `json:"score"`
	ABVPct    float64    `json:"abv_pct" doc:"Finished"`
	Allergens []Allergen `json:"allergens"`
	Ask       []string   `json:"ask,omitempty" doc:"What to ask the guest before you pour: what the law does not count as an avoided allergen, but some guests avoid"`
	Cautions  []Caution  `json:"cautions" doc:"Cautions of its pours, without the general ones on alcohol"`
	Cost      *float64   `json:"cost,omitempty" doc:"Of all pours, in the currency of the prices; left out if one has no price"`
	Name      string     `json:"name" doc:"What it is, as the trade says it: what leads it, its family, how it is served"`
	Why       string     `json:"why" doc:"Why it is worth a try"`
	Text      string     `json:"text" doc:"In one line: what to pour, and what that does"`
}

func listedOf(house *service.Snapshot, x *station.Listed, avoid []flavor.Allergen, prices map[string]float64) Listed {
	return Listed{Spec: SpecOf(&x.Spec), Family: x.FamilyID, Score: figure.RoundDown(x.Score), ABVPct: figure.Round(x.Drink.ABV, figure.Pct),
		Allergens: AllergensOf(&x.Spec), Ask: x.Spec.Ask(avoid), Cautions: CautionsOf(house.CautionsOf(&x.Spec)),
		Cost: costOf(&x.Spec, prices), Name: x.Name, Why: x.Why, Text: x.Text}
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
