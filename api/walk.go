package api

import (
	"context"
	"fmt"
	"math"

	"counterpour/api/service"
	"counterpour/flavor"
	"counterpour/flavor/mix"
	"counterpour/flavor/riff/walk"
)

// A walk is tasted in small pours: common practice, no source.
const (
	DefaultSmallPourML = 60.0
	MinSmallPourML     = 10.0
	MaxSmallPourML     = 200.0
)

// WalkBody asks for a path from one drink to another.
type WalkBody struct {
	From   WalkEnd  `json:"from" doc:"The drink that the walk begins with"`
	To     WalkEnd  `json:"to" doc:"The drink that it ends with"`
	Steps  int      `json:"steps,omitempty" minimum:"1" maximum:"8" default:"3" doc:"Balanced drinks between the two"`
	PourML float64  `json:"pour_ml,omitempty" minimum:"10" maximum:"200" default:"60" doc:"How much of each drink is poured, in mL of the finished drink"`
	Avoid  []string `json:"avoid,omitempty" maxItems:"50" doc:"Allergens that the guest must not have; neither end may hold one"`
	Diet   []string `json:"diet,omitempty" maxItems:"20" doc:"What the guest keeps to: vegan, vegetarian, no egg, no dairy, no honey or alcohol-free"`
}

// WalkEnd is one end of a walk: a text, a spec in fields, or a drink of the
// house by its name.
type WalkEnd struct {
	Draft
	Drink *string `json:"drink,omitempty" maxLength:"200" doc:"The name of a drink of the house, in place of text and spec"`
}

// WalkAnswer is the path found.
type WalkAnswer struct {
	Stops    []Stop    `json:"stops" doc:"The first drink, those between, and the last"`
	PourML   float64   `json:"pour_ml" doc:"Of each drink, or all of one that is smaller"`
	VolumeML float64   `json:"volume_ml" doc:"Of all small pours together"`
	EthanolG float64   `json:"ethanol_g" doc:"In all small pours together"`
	Servings []Serving `json:"servings" doc:"That alcohol in the standard drinks of each country"`
	Cautions []Caution `json:"cautions"`
}

// Stop is one drink of a walk.
type Stop struct {
	Spec         Spec       `json:"spec" doc:"As a spec that can be sent back"`
	Score        float64    `json:"score"`
	HopJND       float64    `json:"hop_jnd" doc:"From the drink before, in just-noticeable differences; 0 for the first"`
	Changes      []Change   `json:"changes" doc:"From the drink before"`
	ABVPct       float64    `json:"abv_pct" doc:"Finished"`
	VolumeML     float64    `json:"volume_ml" doc:"Of the whole drink, finished"`
	EthanolG     float64    `json:"ethanol_g" doc:"In its small pour"`
	Allergens    []Allergen `json:"allergens"`
	NewAllergens []string   `json:"new_allergens" doc:"Those that the drink before does not have"`
	Text         string     `json:"text" doc:"What changes"`
}

// AnswerWalk finds a path from one drink to another.
func AnswerWalk(ctx context.Context, k *service.Kitchen, body WalkBody) (*WalkAnswer, error) {
	request, err := walkRequest(k, &body)
	if err != nil {
		return nil, err
	}
	stops, err := walk.Find(ctx, k.Station, *request)
	if err != nil {
		return nil, stepsFault(err)
	}
	a := &WalkAnswer{PourML: body.PourML, Stops: make([]Stop, len(stops))}
	poured := make([]*flavor.Spec, len(stops))
	var ethanol float64
	for i := range stops {
		s := &stops[i]
		poured[i] = &s.Spec
		before := &s.Spec
		if i > 0 {
			before = &stops[i-1].Spec
		}
		ml := math.Min(body.PourML, s.Drink.VolumeML)
		grams := mix.EthanolG(s.Drink.ABV, ml)
		ethanol += grams
		a.VolumeML += ml
		a.Stops[i] = Stop{Spec: specOf(&s.Spec), Score: roundScore(s.Score), HopJND: round(s.Hop, digitsJND), Changes: list(s.Changes, changeOf),
			ABVPct: round(s.Drink.ABV, digitsPct), VolumeML: round(s.Drink.VolumeML, digitsML), EthanolG: round(grams, digitsGrams),
			Allergens: allergensOf(&s.Spec), NewAllergens: newAllergens(before, &s.Spec), Text: s.Text}
	}
	a.VolumeML, a.EthanolG, a.Servings = round(a.VolumeML, digitsML), round(ethanol, digitsGrams), servingsOf(ethanol)
	a.Cautions = cautionsOf(k.AllCautions(ethanol > 0, poured...))
	return a, nil
}

func servingsOf(ethanolG float64) []Serving {
	return list(mix.StandardDrinks(ethanolG), func(s mix.Serving) Serving {
		return Serving{s.Country, s.Grams, round(s.Count, digitsServings)}
	})
}

// stepsFault names the field that package riff calls between.
func stepsFault(err error) error {
	faults := faultsOf(err)
	for i, f := range faults {
		if f.Location == "between" {
			own := *f
			own.Location = "steps"
			faults[i] = &own
		}
	}
	if faults == nil {
		return err
	}
	return faults
}

func walkRequest(k *service.Kitchen, body *WalkBody) (*walk.Request, error) {
	r := &walk.Request{Between: body.Steps}
	var faults flavor.Faults
	if f := inRange("steps", body.Steps, 1, walk.MaxSteps); f != nil {
		faults = append(faults, f)
	}
	if !(body.PourML >= MinSmallPourML && body.PourML <= MaxSmallPourML) {
		faults = append(faults, invalid("pour_ml", fmt.Sprint(body.PourML), "%g mL is out of range; pour %g to %g mL of each drink", body.PourML, MinSmallPourML, MaxSmallPourML))
	}
	for _, end := range []struct {
		name string
		of   *WalkEnd
		to   **flavor.Spec
	}{{"from", &body.From, &r.From}, {"to", &body.To, &r.To}} {
		s, err := walkEnd(k, end.of)
		if err != nil && !isFault(err) {
			return nil, err
		}
		for _, f := range faultsOf(err) {
			own := *f
			own.Location = end.name
			if f.Location != "" {
				own.Location += "." + f.Location
			}
			faults = append(faults, &own)
		}
		*end.to = s
	}
	guest, found := guest(k, body.Avoid, body.Diet, 0, nil, 0)
	faults = append(faults, found...)
	if len(faults) > 0 {
		return nil, faults
	}
	r.Guest = guest
	return r, nil
}

// walkEnd reads one end of a walk.
func walkEnd(k *service.Kitchen, e *WalkEnd) (*flavor.Spec, error) {
	if e.Drink == nil {
		s, err := read(k, e.Draft)
		return &s, err
	}
	if e.Text != nil || e.Spec != nil {
		return nil, invalid("", "", "a drink of the house and a draft are both given; send one of them")
	}
	s, ok := houseDrink(k.House, *e.Drink)
	if !ok {
		return nil, noSuchDrink(k.House, *e.Drink)
	}
	return s, nil
}
