package riff

import (
	"fmt"
	"math"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/riff/station"
	"counterpour/flavor/template"
)

// describe turns a settled drink into a riff.
func (w *work) describe(s *station.Settled) (Riff, error) {
	listed, err := w.List(s)
	if err != nil {
		return Riff{}, err
	}
	r := Riff{Listed: listed, Distance: s.At.Distance(&w.FromAt), Changes: station.Changes(w.From, &listed.Spec)}
	before, err := w.Station.Judge.Score(w.From)
	if err != nil {
		return Riff{}, err
	}
	r.Text = w.text(&r, before.Judgement.Fits[0].ID)
	return r, nil
}

// text says the riff in one line: what to do, then what it does.
func (w *work) text(r *Riff, familyBefore string) string {
	text := station.Recipe(r.Changes)
	if r.Spec.Method != w.From.Method || r.Spec.Service != w.From.Service {
		text = append(text, station.WayOf(&r.Spec))
	}
	head := strings.Join(text, ", ")
	if head == "" {
		head = "the same pours"
	}
	if r.FamilyID != familyBefore {
		head += ", which reads as " + strings.ToLower(r.Family)
	}
	return station.Capital(head) + ": " + w.effect(r)
}

// mostNamed is how many aroma families are named each way.
const mostNamed = 3

// effect says what the guest will notice.
func (w *work) effect(r *Riff) string {
	var words []string
	if d := r.Drink.ABV - w.FromDrink.ABV; math.Abs(r.At[station.RowStrong]-w.FromAt[station.RowStrong]) >= station.LeastStep {
		words = append(words, fmt.Sprintf("%s at %.0f %% vol, not %.0f", direction(d, "stronger", "lighter"), r.Drink.ABV, w.FromDrink.ABV))
	}
	for _, a := range []struct {
		axis     template.Axis
		up, down string
	}{{template.Sweet, "sweeter", "drier"}, {template.Sour, "sharper", "rounder"}, {template.Bitter, "more bitter", "less bitter"}, {template.Long, "longer", "shorter"}} {
		if d := r.At[station.RowOf(a.axis)] - w.FromAt[station.RowOf(a.axis)]; math.Abs(d) >= station.LeastStep {
			words = append(words, direction(d, a.up, a.down))
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
	return strings.Join(names, " and ")
}

func direction(x float64, up, down string) string {
	if x > 0 {
		return up
	}
	return down
}
