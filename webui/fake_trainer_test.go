package webui

import (
	"fmt"
	"sync"

	"counterpour/flavor"
	"counterpour/flavor/drill"
	"counterpour/flavor/template"
)

// fakeTrainer asks for one drink, which has too little acid; the first option
// is right. Its bitter rounds cannot be made.
type fakeTrainer struct {
	mu     sync.Mutex
	rounds int
	right  int
}

var _ Trainer = (*fakeTrainer)(nil)

func (f *fakeTrainer) Next(_ string, w RoundWish) (*drill.Round, error) {
	if w.Kind == "" {
		w.Kind = drill.KindFamily
	}
	if w.Size == 0 {
		w.Size = drill.StartSize
	}
	if w.Kind == drill.KindCover && w.Size == 12 {
		return nil, &flavor.Fault{Kind: flavor.ErrInvalid, Message: "nothing in this stock covers a proven drink; keep more bottles"}
	}
	return f.Again(drill.RoundRequest{Kind: w.Kind, Axis: w.Axis, Size: w.Size, Seed: 99})
}

func (f *fakeTrainer) Again(r drill.RoundRequest) (*drill.Round, error) {
	if r.Size > drill.MaxSize {
		return nil, &flavor.Fault{Kind: flavor.ErrInvalid, Message: "no size for a round"}
	}
	if r.Seed == 500 {
		return nil, errBroken
	}
	round := &drill.Round{Request: r, Size: r.Size, Question: "What of the " + string(r.Kind) + " & its <drink>?"}
	spec, err := fakeBar{}.Read(sweetDraft)
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

func (f *fakeTrainer) Grade(_ string, r *drill.Round, a drill.Answer) (*drill.Grade, error) {
	g := &drill.Grade{Text: "It carries 7 ml of lemon juice. That is too little.", Solution: "too little acid",
		Before: template.Equivalents{60, 23, 22}, After: template.Equivalents{60, 23, 7}}
	switch r.Request.Kind {
	case drill.KindFault:
		g.Right = a.Axis == template.Sour && !a.High
	case drill.KindMend:
		g.Right = a.Pour == 1 && a.Amount >= 0.7 && a.Amount <= 0.8
	case drill.KindOrder:
		g.Right = fmt.Sprint(a.Order) == "[1 0 2]"
	case drill.KindGuess:
		if a.ABV > 100 {
			return nil, &flavor.Fault{Kind: flavor.ErrInvalid, Message: "that is no strength; guess 0 to 100 % vol"}
		}
		g.Right = a.ABV == 14.5 && a.Volume == 160
	default:
		g.Right = a.Option == 0
	}
	f.mu.Lock()
	defer f.mu.Unlock()
	f.rounds++
	if g.Right {
		g.Points = 1
		f.right++
	}
	return g, nil
}

func (f *fakeTrainer) Learner(string) drill.Learner {
	f.mu.Lock()
	defer f.mu.Unlock()
	if f.rounds == 0 {
		return drill.Learner{}
	}
	return drill.Learner{Skills: []drill.Skill{{Kind: drill.KindFault, Axis: "strong", Right: f.right, Rounds: f.rounds,
		Stairs: drill.Staircase{Size: 4.5}}}}
}

func (b fakeBar) Trainer() Trainer { return &fakeTrainer{} }
