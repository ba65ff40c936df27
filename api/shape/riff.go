package shape

import (
	"context"

	"counterpour/api/service"
	"counterpour/api/shape/figure"
	"counterpour/flavor/riff"
	"counterpour/flavor/riff/precedent"
	"counterpour/flavor/riff/station"
)

// RiffBody asks for variations of a draft.
type RiffBody struct {
	Draft
	Search
}

// RiffAnswer is the variations found.
type RiffAnswer struct {
	Riffs     []Riff     `json:"riffs" doc:"The best first, each unlike the others"`
	Nearest   *Miss      `json:"nearest,omitempty" doc:"What comes nearest to the wishes of what is not listed; left out where the list has what a bartender would try first: amounts changed or something left out, and nothing else"`
	Relatives []Relative `json:"relatives" doc:"The proven drinks nearest to the draft, of those that the guest may have"`
	LeftOut   []LeftOut  `json:"left_out,omitempty" doc:"What of the draft no riff pours, and why"`
	OfRest    bool       `json:"of_rest,omitempty" doc:"The wishes are compared with the draft without what is left out, since too few riffs meet them compared with all of it"`
	Found
}

// Riff is one variation.
type Riff struct {
	Listed
	Kind         string   `json:"kind" doc:"What was varied"`
	DistanceJND  float64  `json:"distance_jnd" doc:"From the draft, in noticeable steps"`
	Changes      []Change `json:"changes"`
	NewAllergens []string `json:"new_allergens" doc:"Those that the draft does not have"`
	Notice       string   `json:"notice" enum:"won't,may,will" doc:"Whether a guest will notice that it is another drink"`
}

// Miss is a variation that is not listed.
type Miss struct {
	Riff
	Misses string `json:"misses" enum:"balance,nothing,spirit,wish" doc:"What it lacks: its score is below what counts as balanced, or it falls short of a wish; the spirit, since it is a soft drink, which the score holds against drinks with alcohol; or nothing, since it is hardly another drink than the draft"`
}

// LeftOut is an ingredient of the draft that the riffs do not pour, and why.
type LeftOut struct {
	Ingredient
	Why           string `json:"why" doc:"In words that go on from its name"`
	LabelMayClear bool   `json:"label_may_clear" doc:"Nobody has stated all its allergens: its label may clear it for the guest"`
}

// Relative is a proven drink that is near to the draft.
type Relative struct {
	Name     string  `json:"name"`
	Family   string  `json:"family"`
	Source   string  `json:"source"`
	Status   string  `json:"status" enum:"read,recalled" doc:"Whether the source was read, or the drink is recalled from memory"`
	Distance float64 `json:"distance" doc:"In log-ratios, aroma and make-up; 0 is the same drink"`
}

// AnswerRiff finds variations of a draft that stay in balance.
func AnswerRiff(ctx context.Context, house *service.Snapshot, body RiffBody) (*RiffAnswer, error) {
	r, err := house.Riff(ctx, service.RiffRequest{Draft: body.Draft.ToCentre(), Toward: body.Toward, Stock: body.Stock, Limit: body.Limit, Seed: body.Seed, Guest: body.guest()})
	if err != nil {
		return nil, err
	}
	shown := func(x riff.Riff) Riff {
		return Riff{Listed: listedOf(house, &x.Listed, r.Avoid, r.Prices), Kind: string(x.Kind), DistanceJND: figure.Round(x.Distance, figure.JND),
			Changes: figure.List(x.Changes, changeOf), NewAllergens: newAllergens(&r.Spec, &x.Spec), Notice: string(x.Notice)}
	}
	var nearest *Miss
	if r.Result.Nearest != nil {
		nearest = &Miss{shown(*r.Result.Nearest), string(r.Result.Misses)}
	}
	return &RiffAnswer{
		Riffs:   figure.List(r.Result.Riffs, shown),
		Nearest: nearest,
		Relatives: figure.List(r.Relatives, func(x precedent.Relative) Relative {
			return Relative{x.Proven.Spec.Name, x.Proven.Family, x.Proven.Source, x.Proven.Status, figure.Round(x.Distance, figure.JND)}
		}),
		LeftOut: figure.List(r.Result.LeftOut, func(x station.LeftOut) LeftOut {
			return LeftOut{IngredientOf(x.Profile), x.Why, x.Read}
		}),
		OfRest: r.Result.OfRest,
		Found:  body.found(r.Result.Least, r.Result.Refused, r.Result.Labels, r.Result.CutShort, r.Currency),
	}, nil
}
