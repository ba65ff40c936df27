package training

import (
	"strconv"

	"counterpour/api/service"
	"counterpour/api/shape"
	"counterpour/api/shape/figure"
	"counterpour/flavor"
	"counterpour/flavor/drill/tasting"
)

// FlightBody asks for a tasting flight: small builds of one drink that differ along one axis.
type FlightBody struct {
	shape.Draft
	Drink   *string `json:"drink,omitempty" maxLength:"200" doc:"The name of a drink of the house or of a proven one, in place of text and spec"`
	Axis    string  `json:"axis" enum:"strong,sweet,sour,bitter,long"`
	Builds  int     `json:"builds,omitempty" enum:"3,5" default:"3" doc:"How many, the drink as it is in the middle"`
	StepJND float64 `json:"step_jnd,omitempty" minimum:"0.5" maximum:"4" default:"1.5" doc:"Just-noticeable steps between neighbours"`
	BuildML float64 `json:"build_ml,omitempty" minimum:"10" maximum:"120" doc:"What each taster gets of each, in mL; left out, 60 or as much as is safe"`
	Tasters int     `json:"tasters,omitempty" minimum:"1" maximum:"60" default:"6"`
	Seed    string  `json:"seed,omitempty" maxLength:"13" doc:"Digits and letters, from which codes and orders are drawn; left out, one is drawn"`
}

// What is planned of a flight unless something else is asked for. Common practice, no source.
const (
	DefaultBuilds  = 3
	DefaultStepJND = 1.5
	DefaultTasters = 6
)

// FlightAnswer is a tasting flight, ready to be set up.
type FlightAnswer struct {
	Axis      string           `json:"axis"`
	Unit      string           `json:"unit" doc:"Of the values"`
	Seed      string           `json:"seed" doc:"Makes the same flight again"`
	Builds    []FlightBuild    `json:"builds" doc:"The least first"`
	Orders    [][]int          `json:"orders" doc:"For each taster, the codes in the order to serve them"`
	EthanolG  float64          `json:"ethanol_g" doc:"What one taster takes in if nothing is spat out"`
	Servings  []shape.Serving  `json:"servings" doc:"That alcohol in the standard drinks of each country"`
	Allergens []shape.Allergen `json:"allergens" doc:"Of every glass"`
	Cautions  []string         `json:"cautions" doc:"To be read out before the first sip"`
	Care      []shape.Caution  `json:"care" doc:"What to mind of what is poured, such as raw egg, and how to keep it"`
	Lesson    string           `json:"lesson" doc:"To be said once it is tasted"`
	Stray     *FlightStray     `json:"stray,omitempty" doc:"What else moves further than the axis does from one build to the next"`
	Watered   bool             `json:"watered" doc:"Nothing differs but the water of the ice: stirred or shaken too short, rightly, too long"`
	Hot       bool             `json:"hot" doc:"It is served hot: the batch is kept hot, and every glass poured at one heat"`
	Foams     bool             `json:"foams" doc:"The drink lives by its foam, which no batch keeps"`
}

// FlightBuild is one glass of a flight.
type FlightBuild struct {
	Code    int        `json:"code" doc:"What stands on the glass"`
	JND     float64    `json:"jnd" doc:"Just-noticeable steps from the middle"`
	Value   float64    `json:"value" doc:"Of the axis in the glass, in unit"`
	Spec    shape.Spec `json:"spec"`
	Pours   []BatchRow `json:"pours" doc:"For all tasters and one to spare"`
	WaterML float64    `json:"water_ml" doc:"In place of the ice; of a drink that foams, what the ice gives it when the batch is shaken"`
	TotalML float64    `json:"total_ml"`
	PourML  float64    `json:"pour_ml" doc:"For one taster"`
	Tops    []BatchRow `json:"tops" doc:"Into each glass at the end"`
}

// BatchRow is one ingredient of what is made for several.
type BatchRow struct {
	ID     string  `json:"id"`
	Name   string  `json:"name"`
	Amount float64 `json:"amount"`
	Unit   string  `json:"unit"`
	ML     float64 `json:"ml"`
}

// FlightStray is another axis that moves with that of a flight.
type FlightStray struct {
	Axis string  `json:"axis"`
	JND  float64 `json:"jnd" doc:"At most, from the middle"`
}

// AnswerFlight plans a tasting flight.
func AnswerFlight(house *service.Snapshot, body FlightBody) (*FlightAnswer, error) {
	var faults flavor.DataFaults
	axis, _ := axisOf("axis", body.Axis, &faults)
	seed := seedOf(body.Seed, &faults)
	if len(faults) > 0 {
		return nil, faults
	}
	from := body.ToCentre()
	from.Drink = body.Drink
	f, err := house.FlightOf(from, tasting.FlightRequest{Axis: axis, Builds: body.Builds, Step: body.StepJND, BuildML: body.BuildML, Tasters: body.Tasters, Seed: seed})
	if err != nil {
		return nil, moved(err, map[string]string{"step": "step_jnd"})
	}
	a := &FlightAnswer{Axis: f.Axis.String(), Unit: f.Unit, Seed: strconv.FormatUint(seed, seedBase), Builds: figure.List(f.Builds, flightBuild), Orders: f.Orders,
		EthanolG: figure.Round(f.EthanolG, figure.Grams), Servings: shape.ServingsOf(f.EthanolG), Allergens: shape.AllergensOf(&f.Builds[0].Spec), Cautions: f.Cautions,
		Care: shape.CautionsOf(house.CautionsOf(&f.Builds[0].Spec)), Lesson: f.Lesson, Watered: f.Watered, Hot: f.Hot, Foams: f.Foams}
	if f.Stray != nil {
		a.Stray = &FlightStray{f.Stray.Axis.String(), figure.Round(f.Stray.Steps, figure.JND)}
	}
	return a, nil
}

func flightBuild(b tasting.Glass) FlightBuild {
	return FlightBuild{Code: b.Code, JND: figure.Round(b.JND, figure.JND), Value: figure.Round(b.Value, figure.ML), Spec: shape.SpecOf(&b.Spec), Pours: figure.List(b.Sheet.Pours, batchRow),
		WaterML: figure.Round(b.Sheet.WaterML, figure.Marks), TotalML: figure.Round(b.Sheet.TotalML, figure.Batch), PourML: figure.Round(b.Sheet.PourML, figure.Batch), Tops: figure.List(b.Sheet.Tops, batchRow)}
}

func batchRow(p flavor.Pour) BatchRow {
	return BatchRow{p.Profile.ID, p.Profile.Name, figure.Round(p.Amount, figure.ML), string(p.Unit), figure.Round(p.ML, figure.Marks)}
}
