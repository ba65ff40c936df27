package riff

import (
	"fmt"
	"math"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/riff/station"
	"counterpour/flavor/riff/wording"
	"counterpour/flavor/sense"
)

// describe turns a settled drink into a riff.
func (w *work) describe(s *station.Settled) (Riff, error) {
	listed, err := w.List(s)
	if err != nil {
		return Riff{}, err
	}
	steps := station.Apart(w.FromGlass, s.Glass)
	r := Riff{Listed: listed, Distance: steps, Notice: sense.NoticeOf(steps, len(w.LostLeads(s.Glass)) > 0), Changes: wording.Changes(w.From, &listed.Spec)}
	before, err := w.Station.Judge.Score(w.From)
	if err != nil {
		return Riff{}, err
	}
	r.Recipe, r.Effect = w.recipe(&r, before.Judgement.Fits[0].ID), w.effect(&r)
	r.Text = r.Recipe + ": " + r.Effect
	return r, nil
}

// recipe says what to do: what to pour otherwise, how it is mixed and served if
// that changes, and what it reads as if that does.
func (w *work) recipe(r *Riff, familyBefore string) string {
	text := wording.Recipe(r.Changes)
	if r.Spec.Method != w.From.Method || r.Spec.Service != w.From.Service {
		text = append(text, wording.WayOf(&r.Spec))
	}
	if top := wording.Topped(&r.Spec); top != "" {
		text = append(text, top)
	}
	head := strings.Join(text, ", ")
	if head == "" {
		head = "the same pours"
	}
	if r.FamilyID != familyBefore {
		head += ", which reads as " + strings.ToLower(r.Family)
	}
	return wording.Capital(head)
}

// mostNamed is how many aroma families are named each way.
const mostNamed = 3

// told are the senses that are told beside strength.
var told = []sense.Sense{sense.Sweet, sense.Sour, sense.Bitter, sense.Salty, sense.Umami, sense.Pungent, sense.Cooling, sense.Astringent,
	sense.Carbonation, sense.Fat, sense.Foam, sense.Volume}

// effect says what the guest will notice.
func (w *work) effect(r *Riff) string {
	var words []string
	steps := sense.Between(w.FromGlass, r.Glass)
	if d := steps[sense.Ethanol]; math.Abs(d) >= station.LeastStep && math.Round(r.Drink.ABV) != math.Round(w.FromDrink.ABV) {
		words = append(words, fmt.Sprintf("%s at %.0f %% vol, not %.0f", sense.Ethanol.Direction(d), r.Drink.ABV, w.FromDrink.ABV))
	}
	for _, a := range told {
		if d := steps[a]; math.Abs(d) >= station.LeastStep {
			words = append(words, a.Direction(d))
		}
	}
	more, less := w.Told(r.Drink)
	if len(more) > 0 {
		words = append(words, "more "+families(more))
	}
	if len(less) > 0 {
		words = append(words, "less "+families(less))
	}
	if len(words) == 0 {
		return "much the same on the tongue"
	}
	return strings.Join(words, ", ")
}

func families(fs []flavor.Family) string {
	names := make([]string, 0, mostNamed)
	for _, f := range fs[:min(len(fs), mostNamed)] {
		names = append(names, f.String())
	}
	return flavor.JoinAnd(names)
}
