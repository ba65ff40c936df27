package shape

import (
	"counterpour/api/service"
	"counterpour/api/service/kitchen"
	"counterpour/api/shape/figure"
)

// LikenessBody asks how alike ingredients or materials smell.
type LikenessBody struct {
	Of          string   `json:"of" enum:"ingredients,materials" doc:"How the names are read first: as bottles, or as the materials of aromas"`
	Names       []string `json:"names" minItems:"1" maxItems:"200" nullable:"false" doc:"Names, aliases or ids"`
	SkipUnknown bool     `json:"skip_unknown,omitempty" doc:"Leave out names that are not known and list them, instead of failing"`
}

// LikenessAnswer is how alike ingredients or materials smell.
type LikenessAnswer struct {
	Names   []Likened   `json:"names" doc:"In the order of the request"`
	Unknown []string    `json:"unknown" doc:"The names that are not known, as they were asked"`
	Aroma   [][]float64 `json:"aroma" doc:"Likeness of aroma of each two names, 0 to 1, in the order of names; symmetric"`
}

// Likened is a name from the request and what it was read as.
type Likened struct {
	Asked string `json:"asked"`
	ID    string `json:"id" doc:"Of the ingredient; a material's is its name"`
	Name  string `json:"name"`
}

// AnswerLikeness works out how alike ingredients or materials smell.
func AnswerLikeness(s *service.Snapshot, body LikenessBody) (*LikenessAnswer, error) {
	l, err := s.Likeness(kitchen.LikenessRequest{Of: kitchen.Of(body.Of), Names: body.Names, SkipUnknown: body.SkipUnknown})
	if err != nil {
		return nil, err
	}
	return &LikenessAnswer{
		Names:   figure.List(l.Names, func(n kitchen.Likened) Likened { return Likened{n.Asked, n.ID, n.Name} }),
		Unknown: append([]string{}, l.Unknown...),
		Aroma: figure.List(l.Aroma, func(row []float64) []float64 {
			return figure.List(row, func(x float64) float64 { return figure.Round(x, figure.Likeness) })
		}),
	}, nil
}
