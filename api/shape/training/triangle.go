package training

import (
	"context"
	"errors"
	"strconv"

	"counterpour/api/service"
	"counterpour/api/service/coaching"
	"counterpour/api/shape"
	"counterpour/api/shape/figure"
	"counterpour/flavor"
	"counterpour/flavor/drill/tasting"
)

// TriangleBody asks for a triangle test: can tasters tell a drink from the same drink with
// something else poured in it?
type TriangleBody struct {
	Drink   string  `json:"drink" minLength:"1" maxLength:"200" doc:"Name of a drink of the house or of a proven one; any other is taken for a neat spirit, so that the limit on alcohol errs on the safe side"`
	Cover   string  `json:"cover" minLength:"1" maxLength:"200" doc:"Name of what is poured in it instead, or of another such drink"`
	GlassML float64 `json:"glass_ml,omitempty" minimum:"5" maximum:"120" default:"20" doc:"What one of three glasses holds"`
	Tasters int     `json:"tasters,omitempty" minimum:"0" maximum:"100" doc:"Left out, as many as the test needs"`
	Alpha   float64 `json:"alpha,omitempty" minimum:"0.001" maximum:"0.2" default:"0.05" doc:"Chance of calling alike drinks different"`
	Power   float64 `json:"power,omitempty" minimum:"0.5" maximum:"0.99" default:"0.8" doc:"Chance of finding out if the share can tell"`
	Share   float64 `json:"share,omitempty" exclusiveMinimum:"0" maximum:"1" default:"0.5" doc:"Of people who can tell, that is worth finding out"`
	Seed    string  `json:"seed,omitempty" maxLength:"13" doc:"Digits and letters, from which codes and orders are drawn; left out, one is drawn"`
}

// What is planned of a triangle test unless something else is asked for: common practice
// in sensory testing, no source.
const (
	DefaultGlassML = 20.0
	DefaultAlpha   = 0.05
	DefaultPower   = 0.8
	DefaultShare   = 0.5
)

// TriangleAnswer is the plan of a triangle test. Orders and odd glasses are not for tasters.
type TriangleAnswer struct {
	Tasters    int               `json:"tasters"`
	LeastRight int               `json:"least_right" doc:"Right answers from which the two count as different"`
	Alpha      float64           `json:"alpha" doc:"What it comes to, answers being whole"`
	Power      float64           `json:"power" doc:"Chance of finding out if the share can tell; what it comes to"`
	Share      float64           `json:"share" doc:"Of people who can tell, as it was asked for"`
	Enough     int               `json:"enough" doc:"Tasters needed for the power that was asked for; 0 if no number has it"`
	Seed       string            `json:"seed" doc:"Makes the same plan again"`
	EthanolG   float64           `json:"ethanol_g" doc:"For each taster, at the strength of the stronger side"`
	Servings   []shape.Serving   `json:"servings" doc:"That alcohol in the standard drinks of each country"`
	Assumed    bool              `json:"assumed" doc:"The strength is not known and taken for that of a neat spirit"`
	Handed     []Handed          `json:"handed" doc:"What each taster is handed"`
	Allergens  []shape.Allergen  `json:"allergens" doc:"Of either side: every taster is handed both"`
	Unknown    []string          `json:"unknown,omitempty" doc:"Names that nobody here knows: any allergen may be in them"`
	Cautions   []string          `json:"cautions" doc:"To be read out before the first sip"`
	Care       []shape.Caution   `json:"care" doc:"What to mind of what is poured, such as raw egg, and how to keep it"`
	A          *TriangleSide     `json:"a,omitempty" doc:"The drink; left out if the house does not know both"`
	B          *TriangleSide     `json:"b,omitempty" doc:"What it is tested against"`
	Instead    *shape.Ingredient `json:"instead,omitempty" doc:"The pour of the drink that the cover stands for"`
	Looks      string            `json:"looks,omitempty" doc:"How b looks against a where anybody sees it: serve it in dark glasses"`
}

// Handed is what one taster is handed: three glasses from left to right.
type Handed struct {
	Order string `json:"order" doc:"Such as AAB"`
	Codes [3]int `json:"codes" doc:"What stands on the glasses"`
	Odd   int    `json:"odd" doc:"The place of the odd one, from 0"`
}

// TriangleSide is one of the two drinks of a triangle test.
type TriangleSide struct {
	Spec      shape.Spec       `json:"spec"`
	Allergens []shape.Allergen `json:"allergens"`
	Glasses   int              `json:"glasses" doc:"That all tasters are handed, and one to spare"`
	Pours     []BatchRow       `json:"pours" doc:"For that many glasses"`
	WaterML   float64          `json:"water_ml" doc:"In place of the ice; of a drink that foams, what the ice gives it when the batch is shaken"`
	Tops      []BatchRow       `json:"tops" doc:"Into each glass at the end"`
	Foams     bool             `json:"foams" doc:"It lives by its foam, which no batch keeps"`
}

// Decimals of probabilities of a test.
const digitsChance = 4

// AnswerTriangle plans a triangle test.
func AnswerTriangle(ctx context.Context, house *service.Snapshot, body TriangleBody) (*TriangleAnswer, error) {
	var faults flavor.DataFaults
	seed := seedOf(body.Seed, &faults)
	if len(faults) > 0 {
		return nil, faults
	}
	t, err := house.Triangle(ctx, coaching.TriangleRequest{Drink: body.Drink, Cover: body.Cover, GlassML: body.GlassML,
		TriangleRequest: tasting.TriangleRequest{Tasters: body.Tasters, Alpha: body.Alpha, Power: body.Power, Share: body.Share, Seed: seed}})
	var alcohol *coaching.AlcoholError
	if errors.As(err, &alcohol) {
		return nil, flavor.Invalid("glass_ml", body.GlassML, "%s", alcohol)
	}
	if err != nil {
		return nil, moved(err, map[string]string{"each": "glass_ml"})
	}
	a := &TriangleAnswer{Tasters: t.Tasters, LeastRight: t.LeastRight, Alpha: figure.Round(t.RealAlpha, digitsChance), Power: figure.Round(t.Power, digitsChance), Share: figure.Round(t.Share, digitsChance), Enough: t.Enough,
		Seed: strconv.FormatUint(seed, seedBase), EthanolG: figure.Round(t.EthanolG, figure.Grams), Servings: shape.ServingsOf(t.EthanolG), Assumed: t.Assumed,
		Handed: figure.List(t.Servings, func(s tasting.Serving) Handed { return Handed(s) }), A: sideOf(t.A), B: sideOf(t.B), Looks: t.Looks,
		Unknown: t.Unknown, Cautions: t.Cautions, Allergens: shape.AllergensOf(&t.Tasted), Care: shape.CautionsOf(house.CautionsOf(&t.Tasted))}
	if t.Instead != nil {
		instead := shape.IngredientOf(t.Instead)
		a.Instead = &instead
	}
	return a, nil
}

func sideOf(s *coaching.TriangleSide) *TriangleSide {
	if s == nil {
		return nil
	}
	return &TriangleSide{Spec: shape.SpecOf(&s.Spec), Allergens: shape.AllergensOf(&s.Spec), Glasses: s.Glasses, Pours: figure.List(s.Sheet.Pours, batchRow),
		WaterML: figure.Round(s.Sheet.WaterML, figure.Marks), Tops: figure.List(s.Sheet.Tops, batchRow), Foams: s.Foams}
}
