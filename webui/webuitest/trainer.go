package webuitest

import (
	"bytes"
	"fmt"

	"counterpour/api/service/coaching"
	"counterpour/flavor"
	"counterpour/flavor/drill"
	"counterpour/flavor/drill/tasting"
	"counterpour/flavor/mix"
	"counterpour/flavor/ratio"
	"counterpour/flavor/template"
	"counterpour/webui/behind"
)

// Trainer asks for one drink, which has too little acid; the first option
// is right. Its covers of 12 steps cannot be made, and its rounds of 1.5 steps
// break once they are answered.
type Trainer struct{}

const brokenSeed = 500

func (f Trainer) Next(l drill.Learner, w behind.RoundWish) (*drill.Round, error) {
	if w.Kind == "" {
		if w.Kind = drill.KindFamily; w.Not == w.Kind {
			w.Kind = drill.KindFault
		}
	}
	if w.Size == 0 {
		w.Size = drill.StartSize
		for i := range l.Skills {
			if l.Skills[i].Kind == w.Kind {
				w.Size = l.Skills[i].Stairs.Next()
			}
		}
	}
	if w.Kind == drill.KindCover && w.Size == 12 {
		return nil, &flavor.DataFault{Kind: flavor.ErrInvalid, Message: "nothing in this stock covers a proven drink; keep more bottles"}
	}
	r := drill.RoundRequest{Kind: w.Kind, Axis: ratio.Sour, Size: w.Size, Seed: 99}
	if w.HasAxis {
		r.Axis = w.Axis
	}
	if w.Size == 1.5 {
		r.Seed = brokenSeed
	}
	return fakeRound(r)
}

func (f Trainer) Again(r drill.RoundRequest, looked []byte) (*drill.Round, error) {
	if r.Seed == brokenSeed {
		return nil, ErrBroken
	}
	round, err := fakeRound(r)
	if err == nil && !bytes.Equal(looked, coaching.Looks(round)) {
		return nil, coaching.ErrChanged
	}
	return round, err
}

func fakeRound(r drill.RoundRequest) (*drill.Round, error) {
	round := &drill.Round{Request: r, Size: r.Size, Question: "What of the " + string(r.Kind) + " & its <drink>?"}
	spec, err := Bar{}.Read(SweetDraft)
	if err != nil {
		return nil, err
	}
	switch r.Kind {
	case drill.KindFamily:
		round.Options = []drill.Option{{Label: "Sour"}, {Label: "Flip"}}
	case drill.KindCover:
		round.Specs, round.Options = []flavor.Spec{spec}, []drill.Option{{Label: "½ oz clove syrup"}, {Label: "½ oz orgeat"}}
	case drill.KindOrder:
		round.Specs = []flavor.Spec{spec, spec, spec}
		for i := range round.Specs {
			round.Specs[i].Name = fmt.Sprintf("Drink %d", i+1)
		}
	default:
		round.Specs = []flavor.Spec{spec}
	}
	return round, nil
}

func (f Trainer) Grade(r *drill.Round, a drill.Answer) (*drill.Grade, error) {
	g := &drill.Grade{Text: "It carries 7 ml of lemon juice. That is too little.", Solution: "too little acid",
		Before: ratio.Equivalents{60, 23, 22}, After: ratio.Equivalents{60, 23, 7}}
	switch r.Request.Kind {
	case drill.KindFault:
		if g.Right = a.Axis == ratio.Sour && !a.High; !g.Right {
			g.Why = "Not too much acid: the other way round."
		}
		proper, err := Bar{}.Read(GoodDraft)
		if err != nil {
			return nil, err
		}
		g.Slip, g.Proper, g.Wrong = "¼ oz lemon juice in place of ¾ oz", &proper, []int{1}
	case drill.KindMend:
		g.Right = a.Pour == 1 && a.Amount >= 0.7 && a.Amount <= 0.8
	case drill.KindOrder:
		g.Right = fmt.Sprint(a.Order) == "[1 0 2]"
	case drill.KindGuess:
		if a.ABV > 100 {
			return nil, &flavor.DataFault{Kind: flavor.ErrInvalid, Message: "that is no strength; guess 0 to 100 % vol"}
		}
		g.Right = a.ABV == 14.5 && a.Volume == 160
	default:
		g.Right = a.Option == 0
	}
	if g.Right {
		g.Points = 1
	}
	return g, nil
}

// Flight pours builds of a drink whose syrup moves; five builds are too much.
func (f Trainer) Flight(r tasting.FlightRequest) (*tasting.Flight, error) {
	if r.Axis == ratio.Bitter {
		return nil, ErrBroken
	}
	if r.Builds*int(r.BuildML) > 200 {
		return nil, &flavor.DataFault{Kind: flavor.ErrInvalid, Message: "5 builds hold 41.0 g of ethanol for each taster, 2.9 standard drinks (United States); the limit is 2.0: pour 40 ml each"}
	}
	plan := &tasting.Flight{Axis: r.Axis, Unit: "g of sucrose per 100 ml", EthanolG: 20, Drinks: 1.4, Lesson: "More sugar hides the acid.", Foams: r.Axis == ratio.Sweet, Watered: r.Axis == ratio.Long, Cautions: []string{"Taste, then spit into the cup.", "Water before each glass."}}
	if r.Axis == ratio.Strong {
		plan.Stray = &tasting.Stray{Axis: ratio.Sweet, Steps: 2.4}
	}
	var codes []int
	for i := range r.Builds {
		b := tasting.Glass{Step: i - r.Builds/2, Code: 100 + int(r.Seed%700) + 11*i, Spec: r.Spec.Clone(), Drink: &mix.Drink{VolumeML: r.BuildML}, Value: 8 + float64(i)}
		b.JND = float64(b.Step) * r.Step
		if i == 0 {
			b.Drift, b.DriftOf = 0.4, ratio.Sour
		}
		n := float64(r.Tasters + 1)
		b.Sheet = tasting.BatchSheet{Servings: n, Pours: r.Spec.Clone().Pours, WaterML: 10 * n, TotalML: r.BuildML * n, PourML: r.BuildML}
		plan.Builds = append(plan.Builds, b)
		codes = append(codes, b.Code)
	}
	for range r.Tasters {
		plan.Orders = append(plan.Orders, codes)
	}
	return plan, nil
}

// Card knows the sour.
func (f Trainer) Card(family string, specs []template.Labelled) (*drill.Card, error) {
	if family != "sour" {
		return nil, &flavor.DataFault{Kind: flavor.ErrUnknown, Value: family, Message: "\"" + family + "\" is not a family known here"}
	}
	c := &drill.Card{ID: "sour", Name: "Sour", Source: "8 : 3 : 3, common practice", Ratio: "8.0 strong : 2.6 sweet : 2.8 sour", Usual: "Too much syrup tastes flat; too much juice is sharp.",
		Parts: []drill.CardPart{{Axis: ratio.Strong, Handed: 0.57, Fitted: 0.6, Low: 0.9, High: 1.1}, {Axis: ratio.Sweet, Handed: 0.215, Fitted: 0.2, Low: 0.7, High: 1.4}, {Axis: ratio.Sour, Handed: 0.215, Fitted: 0.2, Low: 0.8, High: 1.3}}}
	for _, s := range specs {
		if s.Family == family {
			c.Examples = append(c.Examples, drill.Example{Spec: s.Spec, Score: 90})
		}
	}
	proven, err := Bar{}.Read(GoodDraft)
	proven.Name = "Proven Sour"
	c.Examples = append(c.Examples, drill.Example{Spec: proven, Score: 95, Proven: true})
	return c, err
}
