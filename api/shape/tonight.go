package shape

import (
	"context"

	"counterpour/api/service"
	"counterpour/api/service/evening"
	"counterpour/api/shape/figure"
	"counterpour/flavor"
	"counterpour/flavor/drill/tasting"
)

// TonightBody asks what can be poured of the menu of the house now, and for whom.
type TonightBody struct {
	Avoid    []string `json:"avoid,omitempty" maxItems:"50" doc:"Allergens that the guest must not have, or caffeine, coconut, grapefruit, liquorice, quinine; what may contain one counts as containing it"`
	Diet     []string `json:"diet,omitempty" maxItems:"20" doc:"What the guest keeps to: vegan, vegetarian, no egg, no dairy, no honey, alcohol-free (up to 0.5 % vol) or 0.0 % alcohol"`
	MaxABV   float64  `json:"max_abv_pct,omitempty" minimum:"0" maximum:"100" doc:"Highest strength of a finished drink, in % vol; leave it out for any strength"`
	MaxParts int      `json:"max_parts,omitempty" minimum:"1" maximum:"3" default:"2" doc:"Most ingredients that one cover may be made of; with 2, three that the trade pours together where nothing of fewer keeps the drink"`
}

// TonightAnswer is the whole menu of the house.
type TonightAnswer struct {
	House        string         `json:"house"`
	Invented     bool           `json:"invented" doc:"The house is made up, for demonstration"`
	Drinks       []TonightDrink `json:"drinks" doc:"In the order of the menu"`
	NotKept      []Ingredient   `json:"not_kept" doc:"What the menu pours and the house never kept"`
	CrossContact string         `json:"cross_contact,omitempty" doc:"What to clean before a drink is mixed for this guest; left out where the guest avoids nothing"`
}

// TonightDrink is a drink of the menu as it can be poured now.
type TonightDrink struct {
	Name      string       `json:"name"`
	State     string       `json:"state" enum:"ready,covered,missing,not for this guest"`
	Poured    *Spec        `json:"poured,omitempty" doc:"As it is poured now: as written, with its cover, or with what is missing left out; left out if it cannot be"`
	Text      string       `json:"text,omitempty" doc:"What its cover changes, in one line"`
	Nearest   string       `json:"nearest,omitempty" doc:"Where nothing keeps it: the nearest that there is, in one line, which is another drink; tell the guest"`
	Missing   []Ingredient `json:"missing" doc:"What of it ran out, or was never kept"`
	Because   string       `json:"because,omitempty" doc:"Why it is not for this guest"`
	Read      []Ingredient `json:"read,omitempty" doc:"Labels that may clear it for the guest; until they are read they count as not clearing it"`
	Allergens []Allergen   `json:"allergens" doc:"Of what is poured now"`
	Cautions  []Caution    `json:"cautions" doc:"Of what is poured now, without the general ones on alcohol"`
}

// states are the words for what can be made of a drink.
var states = [...]string{evening.Missing: "missing", evening.Covered: "covered", evening.Ready: "ready", evening.NotFor: "not for this guest"}

// AnswerTonight says what can be poured now.
func AnswerTonight(ctx context.Context, house *service.Snapshot, body TonightBody) (*TonightAnswer, error) {
	a, err := house.Tonight(ctx, service.TonightRequest{Parts: body.MaxParts, Guest: service.Guest{Avoid: body.Avoid, Diet: body.Diet, MaxABV: body.MaxABV}})
	if err != nil {
		return nil, err
	}
	return &TonightAnswer{House: house.About.Name, Invented: house.About.Invented, NotKept: figure.List(a.NotKept, IngredientOf), CrossContact: crossContact(body.Avoid, body.Diet),
		Drinks: figure.List(a.Drinks, func(d evening.Drink) TonightDrink { return tonightDrink(house, &d) })}, nil
}

func tonightDrink(house *service.Snapshot, d *evening.Drink) TonightDrink {
	out := TonightDrink{Name: d.Spec.Name, State: states[d.State], Missing: []Ingredient{}, Because: d.Because, Read: figure.List(d.Unread, IngredientOf), Allergens: []Allergen{}, Cautions: []Caution{}}
	if t := d.Touched; t != nil {
		out.Missing = figure.List(t.Missing, IngredientOf)
		if c := evening.Chosen(t); c != nil && d.State == evening.Missing {
			out.Nearest = c.Text
		}
	}
	if poured := d.Poured(); poured != nil {
		spec := SpecOf(poured)
		out.Poured, out.Text = &spec, changedIn(d, poured)
		out.Allergens, out.Cautions = AllergensOf(poured), CautionsOf(house.CautionsOf(poured))
	}
	return out
}

// changedIn says what a drink that lost a pour is poured with instead; empty if it is poured
// as it is written.
func changedIn(d *evening.Drink, poured *flavor.Spec) string {
	switch t := d.Touched; {
	case t == nil:
		return ""
	case t.LeftOut != nil && poured == &t.LeftOut.Spec:
		return t.LeftOut.Text
	default:
		return evening.Chosen(t).Text
	}
}

// TonightFlightBody asks for a little of several drinks of the menu, for each guest.
type TonightFlightBody struct {
	Drinks []string `json:"drinks" minItems:"2" maxItems:"6" nullable:"false" doc:"Names of drinks of the house that can be poured now"`
	EachML float64  `json:"each_ml,omitempty" minimum:"10" maximum:"120" default:"40" doc:"Of each drink for each guest, finished, in mL"`
	Guests int      `json:"guests,omitempty" minimum:"1" maximum:"60" default:"2"`
	Avoid  []string `json:"avoid,omitempty" maxItems:"50" doc:"Allergens that the guests must not have, or caffeine, coconut, grapefruit, liquorice, quinine; what may contain one counts as containing it"`
	Diet   []string `json:"diet,omitempty" maxItems:"20" doc:"What the guests keep to: vegan, vegetarian, no egg, no dairy, no honey, alcohol-free (up to 0.5 % vol) or 0.0 % alcohol"`
	MaxABV float64  `json:"max_abv_pct,omitempty" minimum:"0" maximum:"100" doc:"Highest strength of a drink, in % vol; leave it out for any strength"`
}

// What is planned of such a flight unless something else is asked for.
const (
	DefaultShareML = tasting.UsualShareML
	DefaultGuests  = 2
)

// TonightFlightAnswer is a flight of several drinks, ready to be poured.
type TonightFlightAnswer struct {
	Glasses      []TonightGlass `json:"glasses" doc:"In the order of tasting: the lighter before the stronger, then the less bitter, then the drier"`
	EachML       float64        `json:"each_ml"`
	Guests       int            `json:"guests"`
	EthanolG     float64        `json:"ethanol_g" doc:"What one guest takes in who drinks all of it"`
	Servings     []Serving      `json:"servings" doc:"That alcohol in the standard drinks of each country"`
	Cautions     []string       `json:"cautions" doc:"To be read out before the first sip"`
	Care         []Caution      `json:"care" doc:"What to mind of what is poured, such as raw egg"`
	CrossContact string         `json:"cross_contact,omitempty" doc:"What to clean before a drink is mixed for these guests; left out where they avoid nothing"`
}

// TonightGlass is one drink of such a flight.
type TonightGlass struct {
	TonightDrink
	ABVPct float64 `json:"abv_pct" doc:"Finished"`
	Make   int     `json:"make" doc:"How many whole drinks are made"`
	MadeML float64 `json:"made_ml"`
	LeftML float64 `json:"left_ml" doc:"When everyone has theirs"`
}

// AnswerTonightFlight plans a flight of several drinks.
func AnswerTonightFlight(ctx context.Context, house *service.Snapshot, body TonightFlightBody) (*TonightFlightAnswer, error) {
	f, err := house.TonightFlight(ctx, service.TonightFlightRequest{Drinks: body.Drinks, EachML: body.EachML, Guests: body.Guests,
		Guest: service.Guest{Avoid: body.Avoid, Diet: body.Diet, MaxABV: body.MaxABV}})
	if err != nil {
		return nil, err
	}
	var poured []*flavor.Spec
	for i := range f.Glasses {
		poured = append(poured, f.Glasses[i].Spec)
	}
	return &TonightFlightAnswer{EachML: body.EachML, Guests: body.Guests, EthanolG: figure.Round(f.EthanolG, figure.Grams), Servings: ServingsOf(f.EthanolG),
		Cautions: f.Cautions, Care: CautionsOf(house.CautionsOf(poured...)), CrossContact: crossContact(body.Avoid, body.Diet),
		Glasses: figure.List(f.Glasses, func(g evening.Glass) TonightGlass {
			return TonightGlass{tonightDrink(house, g.Drink), figure.Round(g.Mixed.ABV, figure.Pct), g.Make, figure.Round(g.MadeML, figure.Batch), figure.Round(g.LeftML, figure.Batch)}
		})}, nil
}
