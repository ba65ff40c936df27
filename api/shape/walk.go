package shape

import (
	"context"

	"counterpour/api/service"
	"counterpour/api/shape/figure"
	"counterpour/flavor/mix"
)

// WalkBody asks for a path from one drink to another.
type WalkBody struct {
	From    WalkEnd            `json:"from" doc:"The drink that the walk begins with"`
	To      WalkEnd            `json:"to" doc:"The drink that it ends with"`
	Steps   int                `json:"steps,omitempty" minimum:"1" maximum:"8" default:"3" doc:"Balanced drinks between the two"`
	PourML  float64            `json:"pour_ml,omitempty" minimum:"10" maximum:"200" default:"60" doc:"How much of each drink is poured, in mL of the finished drink"`
	Avoid   []string           `json:"avoid,omitempty" maxItems:"50" doc:"Allergens that the guest must not have, or caffeine, coconut, grapefruit, liquorice, quinine; neither end may hold one, and what nobody has stated stands apart"`
	Diet    []string           `json:"diet,omitempty" maxItems:"20" doc:"What the guest keeps to: vegan, vegetarian, no egg, no dairy, no honey, alcohol-free (up to 0.5 % vol) or 0.0 % alcohol"`
	MaxABV  float64            `json:"max_abv_pct,omitempty" minimum:"0" maximum:"100" doc:"Highest strength of every drink of the walk, in % vol; leave it out for any strength"`
	Prices  map[string]float64 `json:"prices_per_ml,omitempty" doc:"What a millilitre costs, by ingredient id, in any currency; left out, by the prices of the house"`
	Stock   []string           `json:"stock,omitempty" maxItems:"10000" doc:"Ids of what proven drinks between the two may pour beside what the two pour; left out, what the house has in stock, less what has run out"`
	MaxCost float64            `json:"max_cost,omitempty" minimum:"0" doc:"Highest cost of all pours of one whole drink, in the currency of the prices; every pour of both ends must then have a price"`
}

// WalkEnd is one end of a walk: a text, a spec in fields, or the name of a drink of the
// house.
type WalkEnd struct {
	Draft
	Drink *string `json:"drink,omitempty" maxLength:"200" doc:"The name of a drink of the house, in place of text and spec"`
}

// WalkAnswer is the path found.
type WalkAnswer struct {
	Stops         []Stop       `json:"stops" doc:"The first drink, those between, and the last; empty where only labels could clear the walk for the guest"`
	IfLabelClears *UnclearWalk `json:"if_label_clears,omitempty" doc:"Not safe as it stands: the walk where an end pours what nobody has stated to be free of what the guest avoids; left out otherwise"`
	PourML        float64      `json:"pour_ml" doc:"Poured of each drink, or all of a drink that is smaller"`
	VolumeML      float64      `json:"volume_ml" doc:"Of all small pours together"`
	EthanolG      float64      `json:"ethanol_g" doc:"In all small pours together"`
	Servings      []Serving    `json:"servings" doc:"That alcohol in the standard drinks of each country"`
	Cautions      []Caution    `json:"cautions"`
	CrossContact  string       `json:"cross_contact,omitempty" doc:"What to clean before a drink is mixed for this guest; left out where the guest avoids nothing"`
}

// UnclearWalk is a walk that labels must clear for the guest first.
type UnclearWalk struct {
	Read  []Ingredient `json:"read" doc:"Whose labels to read: pour the walk only if none names what the guest avoids"`
	Stops []Stop       `json:"stops" doc:"The first drink, those between, and the last"`
}

// Stop is one drink of a walk.
type Stop struct {
	Spec         Spec       `json:"spec" doc:"As a spec that can be sent back; a proven drink bears its name"`
	Score        float64    `json:"score"`
	HopJND       float64    `json:"hop_jnd" doc:"From the drink before, in noticeable steps; 0 for the first"`
	Changes      []Change   `json:"changes" doc:"From the drink before"`
	ABVPct       float64    `json:"abv_pct" doc:"Finished"`
	VolumeML     float64    `json:"volume_ml" doc:"Of the whole drink, finished"`
	EthanolG     float64    `json:"ethanol_g" doc:"In its small pour"`
	Allergens    []Allergen `json:"allergens"`
	NewAllergens []string   `json:"new_allergens" doc:"Those that the drink before does not have"`
	Ask          []string   `json:"ask,omitempty" doc:"What to ask the guest before you pour: what the law does not count as an avoided allergen, but some guests avoid"`
	Text         string     `json:"text" doc:"What changes"`
}

// AnswerWalk finds a path from one drink to another.
func AnswerWalk(ctx context.Context, house *service.Snapshot, body WalkBody) (*WalkAnswer, error) {
	r, err := house.Walk(ctx, service.WalkRequest{From: body.From.ToCentre(), To: body.To.ToCentre(), Steps: body.Steps, PourML: body.PourML, Stock: body.Stock,
		Guest: service.Guest{Avoid: body.Avoid, Diet: body.Diet, MaxABV: body.MaxABV, MaxCost: body.MaxCost, Prices: body.Prices}})
	if err != nil {
		return nil, err
	}
	stops := make([]Stop, len(r.Stops))
	a := &WalkAnswer{Stops: []Stop{}, PourML: body.PourML, VolumeML: figure.Round(r.VolumeML, figure.ML),
		EthanolG: figure.Round(r.EthanolG, figure.Grams), Servings: ServingsOf(r.EthanolG), Cautions: CautionsOf(r.Cautions), CrossContact: crossContact(body.Avoid, body.Diet)}
	for i := range r.Stops {
		s := &r.Stops[i]
		before := &r.Stops[max(i-1, 0)]
		stops[i] = Stop{Spec: SpecOf(&s.Spec), Score: figure.RoundDown(s.Score), HopJND: figure.Round(s.Hop, figure.JND), Changes: figure.List(s.Changes, changeOf),
			ABVPct: figure.Round(s.Drink.ABV, figure.Pct), VolumeML: figure.Round(s.Drink.VolumeML, figure.ML), EthanolG: figure.Round(s.EthanolG, figure.Grams),
			Allergens: AllergensOf(&s.Spec), NewAllergens: newAllergens(&before.Spec, &s.Spec), Ask: s.Spec.Ask(r.Avoid), Text: s.Text}
	}
	if len(r.Labels) > 0 {
		a.IfLabelClears = &UnclearWalk{Read: figure.List(r.Labels, IngredientOf), Stops: stops}
	} else {
		a.Stops = stops
	}
	return a, nil
}

// ToCentre returns the end as the centre takes it.
func (e WalkEnd) ToCentre() service.Draft {
	out := e.Draft.ToCentre()
	out.Drink = e.Drink
	return out
}

// ServingsOf gives grams of alcohol in the standard drinks of each country.
func ServingsOf(ethanolG float64) []Serving {
	return figure.List(mix.StandardDrinks(ethanolG), func(s mix.Standard) Serving {
		return Serving{s.Country, s.Grams, figure.Round(s.Count, figure.Servings)}
	})
}
