package shape

import (
	"counterpour/api/service"
	"counterpour/flavor"
)

// MarksBody says what ran out and what is back. Either all of it is written or nothing.
type MarksBody struct {
	Out  []string `json:"out,omitempty" maxItems:"200" doc:"Names, aliases or ids of what ran out"`
	Back []string `json:"back,omitempty" maxItems:"200" doc:"Names, aliases or ids of what is there again"`
}

// MarksAnswer is the stock of the house and what of it has run out.
type MarksAnswer struct {
	Stock []Ingredient `json:"stock" doc:"All that the house keeps, run out or not, by id"`
	Out   []Ingredient `json:"out" doc:"Those that have run out"`
}

// AnswerMarks returns the stock of the house and what of it has run out.
func AnswerMarks(house *service.Snapshot) *MarksAnswer {
	named := func(p *flavor.Profile) Ingredient { return Ingredient{p.ID, p.Name} }
	return &MarksAnswer{Stock: list(house.Stock, named), Out: list(house.Out, named)}
}
