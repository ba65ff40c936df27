package shape

import (
	"context"

	"counterpour/api/service"
	"counterpour/api/shape/figure"
	"counterpour/data/house/prep"
	"counterpour/flavor"
)

// BatchBody asks for a batch of a draft or of a drink of the house: a number of servings, or
// enough to fill a bottle or a keg.
type BatchBody struct {
	Draft
	Drink     *string `json:"drink,omitempty" maxLength:"200" doc:"The name of a drink of the house, in place of text and spec"`
	Servings  float64 `json:"servings,omitempty" minimum:"0" doc:"How many to make"`
	BottleML  float64 `json:"bottle_ml,omitempty" minimum:"0" doc:"Volume of the bottle to fill, in mL; give it instead of servings"`
	KegLitres float64 `json:"keg_litres,omitempty" minimum:"0" doc:"Volume of the keg to fill, in litres; give it instead of servings"`
	From      string  `json:"from,omitempty" enum:"fridge,freezer,to order" default:"fridge" doc:"Where the batch is kept; to order: each serving is shaken or stirred, so no water is added"`

	JuiceApart bool `json:"juice_apart,omitempty" doc:"Leaves fresh juice out of the batch; it is pressed for each drink"`
}

// BatchAnswer is a batch of a drink, made ahead.
type BatchAnswer struct {
	ID        string      `json:"id" doc:"Of the drink of the house; empty for a draft"`
	Name      string      `json:"name"`
	Servings  float64     `json:"servings"`
	Lines     []BatchLine `json:"lines" doc:"In the order of the spec, the water last"`
	Apart     []ApartLine `json:"apart" doc:"For each drink, as it is made"`
	Tops      []ApartLine `json:"tops" doc:"For each glass, at the end"`
	TotalML   float64     `json:"total_ml"`
	ServingML float64     `json:"serving_ml"`
	LaterML   float64     `json:"later_ml" doc:"Water to add to each glass, since it would freeze in the batch"`
	ABVPct    float64     `json:"abv_pct" doc:"Of the mixture"`
	FreezingC float64     `json:"freezing_c" doc:"Where ice begins to form"`
	Cost      float64     `json:"cost" doc:"Of what has a price"`
	Currency  string      `json:"currency" doc:"As in ISO 4217"`
	Unpriced  []string    `json:"unpriced" doc:"Names of what has no price"`
	KeepDays  int         `json:"keep_days" doc:"Days it keeps at most; 0: do not make it ahead"`
	Keep      string      `json:"keep" doc:"How to keep it"`
	Notes     []string    `json:"notes"`
}

// BatchLine is one ingredient of a batch, by volume and by weight, rounded to the marks
// of a jug and a scale.
type BatchLine struct {
	Name   string  `json:"name"`
	ML     float64 `json:"ml"`
	G      float64 `json:"g"`
	JugML  float64 `json:"jug_ml"`
	ScaleG float64 `json:"scale_g"`
}

// ApartLine is an ingredient that is left out of the batch and added to each drink.
type ApartLine struct {
	Name   string  `json:"name"`
	Amount float64 `json:"amount"`
	Unit   string  `json:"unit"`
}

// digitsTotalML is the decimals of what a whole batch holds.
const digitsTotalML = 0

// AnswerBatch plans a batch.
func AnswerBatch(ctx context.Context, house *service.Snapshot, body BatchBody) (*BatchAnswer, error) {
	draft := body.ToCentre()
	draft.Drink = body.Drink
	r, err := house.Batch(ctx, service.BatchRequest{Draft: draft, Servings: body.Servings, BottleML: body.BottleML, KegLitres: body.KegLitres, Place: body.From, JuiceApart: body.JuiceApart})
	if err != nil {
		return nil, err
	}
	b := r.Batch
	apart := func(p flavor.Pour) ApartLine { return ApartLine{p.Profile.Name, p.Amount, string(p.Unit)} }
	return &BatchAnswer{
		ID: r.Drink.Slug, Name: r.Drink.Spec.Name, Servings: figure.Round(b.Servings, figure.Batch),
		Lines: figure.List(b.Lines, func(l prep.BatchLine) BatchLine {
			return BatchLine{l.Name, figure.Round(l.ML, figure.Batch), figure.Round(l.G, figure.Batch), figure.Round(l.JugML, figure.Marks), figure.Round(l.ScaleG, figure.Marks)}
		}),
		Apart: figure.List(b.Apart, apart), Tops: figure.List(b.Tops, apart),
		TotalML: figure.Round(b.TotalML, digitsTotalML), ServingML: figure.Round(b.ServingML, figure.Batch), LaterML: figure.Round(b.LaterML, figure.Batch),
		ABVPct: figure.Round(b.ABVPct, figure.Batch), FreezingC: figure.Round(b.FreezingC, figure.Batch),
		Cost: figure.Round(r.Cost.Amount, figure.Cost), Currency: r.Cost.Currency, Unpriced: figure.List(r.Cost.Unpriced, house.NameOf),
		KeepDays: b.Keep.Days, Keep: b.Keep.Text, Notes: append([]string{}, b.Notes...),
	}, nil
}
