package shape

import (
	"counterpour/api/service"
	"counterpour/api/shape/figure"
	"counterpour/flavor/cover"
)

// TastingBody says how guests received a cover.
type TastingBody struct {
	Draft
	Missing string   `json:"missing" minLength:"1" maxLength:"200" doc:"What had run out: name, alias or id"`
	Verdict string   `json:"verdict,omitempty" enum:"kept,sent back" doc:"How the guest received it; left out if there is a score"`
	Score   *float64 `json:"score,omitempty" minimum:"0" maximum:"10" doc:"How it tasted, 0 to 10; left out if there is a verdict"`
}

// TastingsAnswer lists how covers poured in the house were received.
type TastingsAnswer struct {
	Tastings []Tasting `json:"tastings"`
}

// Tasting is one cover and how it was received.
type Tasting struct {
	Missing Ingredient   `json:"missing" doc:"What had run out"`
	Parts   []Ingredient `json:"parts" doc:"What was poured instead"`
	Liked   float64      `json:"liked" minimum:"0" maximum:"1" doc:"0 sent back, 1 kept"`
}

// digitsLiked is the decimals of how much a cover was liked.
const digitsLiked = 2

// AnswerTastings lists how covers were received.
func AnswerTastings(house *service.Snapshot) *TastingsAnswer {
	named := func(id string) Ingredient { return Ingredient{id, house.NameOf(id)} }
	return &TastingsAnswer{figure.List(house.Tastings, func(t cover.Tasting) Tasting {
		return Tasting{named(t.Missing), figure.List(t.Parts, named), figure.Round(t.Liked, digitsLiked)}
	})}
}
