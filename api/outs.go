package api

import (
	"context"
	"fmt"
	"slices"
	"strings"

	"counterpour/api/service"
	"counterpour/flavor"
	"counterpour/flavor/cover"
)

// OutsBody asks what becomes of a menu when bottles run out.
type OutsBody struct {
	Out      []string `json:"out" minItems:"1" maxItems:"200" nullable:"false" doc:"The bottles that ran out: names, aliases or ids"`
	Specs    []Spec   `json:"specs,omitempty" maxItems:"2000" doc:"The menu; left out, that of the house"`
	Avoid    []string `json:"avoid,omitempty" maxItems:"50" doc:"Allergens that the guest must not have; what may contain one counts as containing it"`
	Stock    []string `json:"stock,omitempty" maxItems:"10000" doc:"Ids of what may be poured; left out, the stock of the house"`
	Diet     []string `json:"diet,omitempty" maxItems:"20" doc:"What the guest keeps to: vegan, vegetarian, no egg, no dairy, no honey or alcohol-free"`
	MaxCost  float64  `json:"max_cost,omitempty" minimum:"0" doc:"Most that the substitutes of one drink may cost, by the prices of the house"`
	MaxParts int      `json:"max_parts,omitempty" minimum:"1" maximum:"3" default:"2" doc:"Most ingredients that one cover may be made of"`
}

// OutsAnswer is what becomes of the menu.
type OutsAnswer struct {
	House    string   `json:"house" doc:"Whose menu it is; empty for one that was sent"`
	Invented bool     `json:"invented" doc:"The house is made up, for demonstration"`
	Outs     []Out    `json:"outs" doc:"Every drink that the bottles touch: without a cover first, then the furthest first"`
	Fetch    []Fetch  `json:"fetch" doc:"The bottles out, the one that brings most drinks back first"`
	Opened   []Opened `json:"opened" doc:"What the chosen covers are made of, the one that serves most drinks first"`
	// Spared and GivenJND are the trade of choosing over the whole menu.
	Spared   int     `json:"spared" doc:"How many fewer substitutes the chosen covers need than each drink's own best"`
	GivenJND float64 `json:"given_jnd" doc:"How much further all the drinks move for it, in just-noticeable differences"`
}

// Out is one drink that lost a pour.
type Out struct {
	Spec       Spec         `json:"spec"`
	Missing    []Ingredient `json:"missing"`
	Covers     []Cover      `json:"covers" doc:"The best first"`
	Unbalanced bool         `json:"unbalanced" doc:"No cover keeps the drink in balance, and those listed do not"`
	Chosen     int          `json:"chosen" doc:"Which of the covers serves the whole menu best, counted from 0; -1 if there is none"`
}

// Fetch is a bottle and the drinks that it alone would bring back.
type Fetch struct {
	ID     string `json:"id"`
	Name   string `json:"name"`
	Drinks int    `json:"drinks" doc:"Drinks that are whole again with it alone"`
	Lost   int    `json:"lost" doc:"Of these, the ones without a cover"`
}

// Opened is a substitute and how many drinks it serves.
type Opened struct {
	ID     string `json:"id"`
	Name   string `json:"name"`
	Drinks int    `json:"drinks"`
}

// AnswerOuts finds covers for a whole menu.
func AnswerOuts(ctx context.Context, k *service.Kitchen, body OutsBody) (*OutsAnswer, error) {
	request, house, err := outsRequest(ctx, k, body)
	if err != nil {
		return nil, err
	}
	asked := slices.Clone(request.Out)
	if house != "" {
		// Whatever was asked for, a drink is short of everything that has run out.
		request.Specs = slices.DeleteFunc(request.Specs, func(s *flavor.Spec) bool { return !pours(s, asked) })
		request.Out = withEach(request.Out, k.House.Out)
	}
	r, err := k.Finder.Outs(ctx, *request, nil)
	if err != nil {
		return nil, err
	}
	r.Fetch = slices.DeleteFunc(r.Fetch, func(f cover.Fetch) bool { return !slices.Contains(asked, f.Profile) })
	return &OutsAnswer{
		House: house, Invented: house != "" && k.House.Invented,
		Outs:  list(r.Touched, func(t cover.Touched) Out { return outOf(&t) }),
		Fetch: list(r.Fetch, func(f cover.Fetch) Fetch { return Fetch{f.Profile.ID, f.Profile.Name, f.Drinks, f.Lost} }),
		Opened: list(r.Opened, func(o cover.Opened) Opened {
			return Opened{o.Profile.ID, o.Profile.Name, o.Drinks}
		}),
		Spared: r.Spared, GivenJND: round(r.Given, digitsJND),
	}, nil
}

// withEach adds what is not in a list yet.
func withEach(list, more []*flavor.Profile) []*flavor.Profile {
	for _, p := range more {
		if !slices.Contains(list, p) {
			list = append(list, p)
		}
	}
	return list
}

// pours reports whether one of the bottles goes into a drink.
func pours(s *flavor.Spec, bottles []*flavor.Profile) bool {
	return slices.ContainsFunc(s.Pours, func(p flavor.Pour) bool { return slices.Contains(bottles, p.Profile) })
}

func outOf(t *cover.Touched) Out {
	return Out{Spec: specOf(t.Spec), Missing: list(t.Missing, ingredientOf), Unbalanced: t.Unbalanced, Chosen: t.Chosen,
		Covers: list(t.Covers, func(c cover.Cover) Cover { return coverOf(&c, t.ScoreBefore) })}
}

// outsRequest reads what was asked; what was left out is the house's.
func outsRequest(ctx context.Context, k *service.Kitchen, body OutsBody) (*cover.MenuRequest, string, error) {
	r := &cover.MenuRequest{Parts: body.MaxParts}
	var faults flavor.Faults
	if f := inRange("max_parts", body.MaxParts, 1, cover.MaxParts); f != nil {
		faults = append(faults, f)
	}
	for i, name := range body.Out {
		p, _, err := k.Index.Resolve(name)
		if err != nil {
			faults = append(faults, faultsOf(at(fmt.Sprintf("out[%d]", i), err))...)
			continue
		}
		r.Out = append(r.Out, p)
	}
	avoid, err := avoided(body.Avoid)
	faults = append(faults, faultsOf(err)...)
	r.Guest = cover.Guest{Avoid: avoid, MaxCost: body.MaxCost, Prices: k.Prices}
	r.Tastings = k.Tastings
	faults = append(faults, keep(&r.Guest, body.Diet)...)
	if body.MaxCost > 0 && len(k.Prices) == 0 {
		faults = append(faults, invalid("max_cost", fmt.Sprint(body.MaxCost), "the house keeps no prices, so nothing could be poured; leave the limit out"))
	}
	house, menuFaults := menuOf(k, body.Specs, r)
	faults = append(faults, menuFaults...)
	if len(faults) > 0 {
		return nil, "", faults
	}
	r.Stock, err = stockOf(ctx, k, house, body.Stock, avoid)
	return r, house, err
}

// menuOf fills in the drinks: those sent, or the house's.
func menuOf(k *service.Kitchen, sent []Spec, r *cover.MenuRequest) (house string, faults flavor.Faults) {
	if sent == nil {
		for i := range k.House.Specs {
			r.Specs = append(r.Specs, &k.House.Specs[i].Spec)
		}
		return k.House.Name, nil
	}
	for i := range sent {
		s, err := read(k, Draft{Spec: &sent[i]})
		if err != nil {
			for _, f := range faultsOf(err) {
				own := *f
				own.Location = fmt.Sprintf("specs[%d]%s", i, strings.TrimPrefix(f.Location, "spec"))
				faults = append(faults, &own)
			}
			continue
		}
		r.Specs = append(r.Specs, &s)
	}
	return "", faults
}
