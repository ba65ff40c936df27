package shape

import (
	"counterpour/api/service"
	"counterpour/api/shape/figure"
)

// NameBody says what the house's own words mean, or that a word is forgotten.
type NameBody struct {
	Words string `json:"words" minLength:"1" maxLength:"200" doc:"As they are written, such as the name on a label"`
	Kind  string `json:"kind,omitempty" maxLength:"200" doc:"Name, alias or id of what they mean; left out with undo"`
	Undo  bool   `json:"undo,omitempty" doc:"Forget the words"`
}

// NamesAnswer lists the house's own words.
type NamesAnswer struct {
	Names []Named `json:"names" doc:"By what is written"`
}

// Named is one of the house's own words and what it means.
type Named struct {
	Words string `json:"words"`
	ID    string `json:"id"`
	Name  string `json:"name"`
}

// AnswerNames lists the house's own words.
func AnswerNames(house *service.Snapshot) *NamesAnswer {
	return &NamesAnswer{Names: figure.List(house.Names(), func(n service.Named) Named { return Named{n.Words, n.Profile.ID, n.Profile.Name} })}
}
