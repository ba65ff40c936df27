package shape

import (
	"time"

	"counterpour/api/service"
	"counterpour/api/shape/figure"
	"counterpour/flavor"
)

// MarksBody says what ran out and what is back. Either all of it is written or nothing.
type MarksBody struct {
	Out  []string `json:"out,omitempty" maxItems:"200" doc:"Names, aliases or ids of what ran out, every bottle of it"`
	Back []string `json:"back,omitempty" maxItems:"200" doc:"Names, aliases or ids of what is there again"`

	BottlesOut  []string `json:"bottles_out,omitempty" maxItems:"200" doc:"Ids or names of single bottles that ran out: what they are is poured from another bottle of it, and is out with the last"`
	BottlesBack []string `json:"bottles_back,omitempty" maxItems:"200" doc:"Ids or names of single bottles that are there again"`
}

// MarksAnswer is the stock of the house and what of it has run out.
type MarksAnswer struct {
	Stock []Ingredient `json:"stock" doc:"All that the house keeps, run out or not, by id"`
	Out   []Ingredient `json:"out" doc:"Those that have run out"`

	BottlesOut []BottleOut `json:"bottles_out,omitempty" doc:"Single bottles that have run out beside others of the same"`
}

// BottleOut is a bottle that ran out while others of its ingredient were left.
type BottleOut struct {
	ID         string    `json:"id" doc:"Id of the bottle"`
	Name       string    `json:"name" doc:"Name of the bottle"`
	Ingredient string    `json:"ingredient" doc:"Id of what it is"`
	Poured     string    `json:"poured,omitempty" doc:"Id of the bottle that is poured now; absent if all of it is out"`
	Since      time.Time `json:"since" doc:"When it ran out"`
}

// AnswerMarks returns the stock of the house and what of it has run out.
func AnswerMarks(house *service.Snapshot) *MarksAnswer {
	named := func(p *flavor.Profile) Ingredient { return Ingredient{p.ID, p.Name} }
	return &MarksAnswer{Stock: figure.List(house.Stock, named), Out: figure.List(house.Out, named), BottlesOut: bottlesOut(house)}
}

func bottlesOut(house *service.Snapshot) (out []BottleOut) {
	poured := house.Poured()
	for _, b := range house.Bottles() {
		if b.OutSince != nil {
			out = append(out, BottleOut{b.ID, b.Name, b.Ingredient, poured[b.Ingredient].ID, *b.OutSince})
		}
	}
	return out
}
