package riff

import (
	"math"
	"strings"

	"counterpour/flavor/riff/aim"
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
	r.Spec.Name = wording.WorkingName(w.From, &r.Spec, r.Changes)
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
	if off := r.Spec.LeaveOff(); off != "" {
		text = append(text, off)
	}
	head := strings.Join(text, ", ")
	if head == "" {
		head = wording.SamePours
	}
	if r.FamilyID != familyBefore {
		head += wording.ReadsAs(r.Family)
	}
	return wording.Capital(head)
}

// told are the senses that are told beside strength.
var told = []sense.Sense{sense.Sweet, sense.Sour, sense.Bitter, sense.Salty, sense.Umami, sense.Pungent, sense.Cooling, sense.Astringent,
	sense.Carbonation, sense.Fat, sense.Foam, sense.Volume}

// effect says what the guest will notice.
func (w *work) effect(r *Riff) string {
	var words []string
	steps := sense.Between(w.FromGlass, r.Glass)
	if d := steps[sense.Ethanol]; math.Abs(d) >= aim.LeastStep && math.Round(r.Drink.ABV) != math.Round(w.FromDrink.ABV) {
		words = append(words, wording.Strength(d, r.Drink.ABV, w.FromDrink.ABV))
	} else if w.Limits.Stronger() && r.Drink.Before.Ethanol > w.FromDrink.Before.Ethanol {
		words = append(words, wording.MoreAlcohol(r.Drink.Before.Ethanol, w.FromDrink.Before.Ethanol))
	}
	for _, a := range told {
		if d := steps[a]; math.Abs(d) >= aim.LeastStep {
			words = append(words, a.Direction(d))
		}
	}
	more, less := w.Told(r.Drink)
	return wording.Effect(words, more, less)
}
