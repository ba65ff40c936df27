package shape

import (
	"context"

	"counterpour/api/service"
	"counterpour/api/shape/figure"
	"counterpour/flavor/cover"
	"counterpour/flavor/cover/barred"
	"counterpour/flavor/cover/outs"
)

// OutsBody asks for covers for a whole menu when bottles run out.
type OutsBody struct {
	Out      []string `json:"out" minItems:"1" maxItems:"200" nullable:"false" doc:"The bottles that ran out: names, aliases or ids"`
	Specs    []Spec   `json:"specs,omitempty" maxItems:"2000" doc:"The menu; left out, that of the house"`
	Avoid    []string `json:"avoid,omitempty" maxItems:"50" doc:"Allergens that the guest must not have, or caffeine, coconut, grapefruit, liquorice, quinine; what may contain one counts as containing it"`
	Stock    []string `json:"stock,omitempty" maxItems:"10000" doc:"Ids of what may be poured; left out, the stock of the house"`
	Diet     []string `json:"diet,omitempty" maxItems:"20" doc:"What the guest keeps to: vegan, vegetarian, no egg, no dairy, no honey, alcohol-free (up to 0.5 % vol) or 0.0 % alcohol"`
	MaxABV   float64  `json:"max_abv_pct,omitempty" minimum:"0" maximum:"100" doc:"Highest strength of a finished drink, in % vol; leave it out for any strength"`
	MaxCost  float64  `json:"max_cost,omitempty" minimum:"0" doc:"Highest cost of the substitutes of one drink, by the prices of the house"`
	MaxParts int      `json:"max_parts,omitempty" minimum:"1" maximum:"3" default:"2" doc:"Most ingredients that one cover may be made of; with 2, three that the trade pours together where nothing of fewer keeps the drink"`
}

// OutsAnswer is the drinks of a menu that lose a pour, and their covers.
type OutsAnswer struct {
	House    string   `json:"house" doc:"Whose menu it is; empty for one that was sent"`
	Invented bool     `json:"invented" doc:"The house is made up, for demonstration"`
	Outs     []Out    `json:"outs" doc:"Every drink that needs a missing bottle: those without a cover first, then those that move furthest"`
	Fetch    []Fetch  `json:"fetch" doc:"The missing bottles; the one that brings most drinks back comes first"`
	Opened   []Opened `json:"opened" doc:"What the chosen covers are made of, the one that serves most drinks first"`
	// Spared and GivenJND say what choosing covers for the whole menu together saved, and
	// what it cost.
	Spared       int     `json:"spared" doc:"How many fewer substitutes the chosen covers need than the best cover of each drink"`
	GivenJND     float64 `json:"given_jnd" doc:"How much further all the drinks move for it, in noticeable steps"`
	CrossContact string  `json:"cross_contact,omitempty" doc:"What to clean before a drink is mixed for this guest; left out where the guest avoids nothing"`
}

// Out is one drink that lost a pour.
type Out struct {
	Spec     Spec         `json:"spec"`
	Missing  []Ingredient `json:"missing"`
	Removed  []Ingredient `json:"removed" doc:"Everything that was taken out: what is missing, and what the guest must not have"`
	Unstated []Ingredient `json:"unstated,omitempty" doc:"Ingredients of removed that a label may clear for the guest: they may carry what the guest avoids, or nobody has stated it"`
	Covers   []Cover      `json:"covers" doc:"The best first"`
	// IfLabelClears stands apart from Covers; none of it is ever chosen.
	IfLabelClears []Cover  `json:"if_label_clears,omitempty" doc:"Not safe as they stand: pour one only if the labels in read clear it for the guest"`
	LeftOut       *Cover   `json:"left_out,omitempty" doc:"The drink with nothing in place of what is missing, if that keeps the drink"`
	Barred        []Barred `json:"barred,omitempty" doc:"What a bar would pour in place of what is missing and why it does not now, where nothing that is known to be safe keeps the drink"`
	Unbalanced    bool     `json:"unbalanced" doc:"True if no cover keeps the drink in balance, not even those listed"`
	Near          bool     `json:"near" doc:"False if no cover keeps the drink: none lies within 4 noticeable steps"`
	ProvenBest    bool     `json:"proven_best" doc:"False if time ran out, so that a better cover may be missing"`
	NotSearched   bool     `json:"not_searched,omitempty" doc:"Time ran out before this drink: whether it has a cover is not known"`
	Chosen        int      `json:"chosen" doc:"Which of the covers serves the whole menu best, counted from 0; -1 if there is none"`
}

// Fetch is a bottle to buy or fetch, and the drinks that it alone would bring back.
type Fetch struct {
	ID     string `json:"id"`
	Name   string `json:"name"`
	Drinks int    `json:"drinks" doc:"Drinks that are complete again with it alone"`
	Lost   int    `json:"lost" doc:"Of these, the ones without a cover"`
}

// Opened is a substitute and the number of drinks that use it.
type Opened struct {
	ID     string `json:"id"`
	Name   string `json:"name"`
	Drinks int    `json:"drinks"`
}

// AnswerOuts finds covers for a whole menu.
func AnswerOuts(ctx context.Context, house *service.Snapshot, body OutsBody) (*OutsAnswer, error) {
	r, err := house.Outs(ctx, service.OutsRequest{Out: body.Out, Menu: fieldsOf(body.Specs), Stock: body.Stock, Parts: body.MaxParts,
		Guest: service.Guest{Avoid: body.Avoid, Diet: body.Diet, MaxABV: body.MaxABV, MaxCost: body.MaxCost}})
	if err != nil {
		return nil, err
	}
	touched := figure.List(r.Result.Touched, func(t outs.Touched) Out { return outOf(house, &t) })
	for i := range touched {
		touched[i].Barred = figure.List(barred.Lines(r.Barred[i]), barredOf)
	}
	return &OutsAnswer{
		CrossContact: crossContact(body.Avoid, body.Diet),
		House:        r.House.Name, Invented: r.House.Invented,
		Outs:  touched,
		Fetch: figure.List(r.Result.Fetch, func(f outs.Fetch) Fetch { return Fetch{f.Profile.ID, f.Profile.Name, f.Drinks, f.Lost} }),
		Opened: figure.List(r.Result.Opened, func(o outs.Opened) Opened {
			return Opened{o.Profile.ID, o.Profile.Name, o.Drinks}
		}),
		Spared: r.Result.Spared, GivenJND: figure.Round(r.Result.Given, figure.JND),
	}, nil
}

func outOf(house *service.Snapshot, t *outs.Touched) Out {
	shown := func(c cover.Cover) Cover { return coverOf(house, &c, t.ScoreBefore) }
	out := Out{Spec: SpecOf(t.Spec), Missing: figure.List(t.Missing, IngredientOf), Removed: figure.List(t.Removed, IngredientOf), Unbalanced: t.Unbalanced, Chosen: t.Chosen,
		Unstated: figure.List(t.Unstated, IngredientOf), Covers: figure.List(t.Covers, shown), IfLabelClears: figure.List(t.IfLabelClears, shown), Near: t.Near, ProvenBest: t.Proven, NotSearched: t.NotSearched}
	if t.LeftOut != nil {
		left := shown(*t.LeftOut)
		out.LeftOut = &left
	}
	return out
}
