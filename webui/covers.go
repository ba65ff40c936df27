package webui

import (
	"context"
	"fmt"
	htmltemplate "html/template"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/cover"
	"counterpour/flavor/template"
	"counterpour/webui/draw"
	"counterpour/webui/form"
	"counterpour/webui/words"
)

// How many substitutes a cover may have, and how many covers are shown.
const (
	coverParts = 2
	coverLimit = 6
)

// coversView is what may be poured for what ran out.
type coversView struct {
	ID, Missing string
	Guest       string   // the allergens that the guest avoids
	Left        []string // other pours that had to go, for the guest's allergy
	Unbalanced  bool
	Stocked     bool // from what the house has
	Anywhere    bool // from the whole catalogue, though the house has a stock
	Covers      []coverView
	Trouble     string // why there can be no cover
}

// coverView is one cover.
type coverView struct {
	Text      string   // the cover in a line
	Instead   []string // the substitutes, with their amounts
	Moves     []string // the other pours that move
	Tell      string   // what a guest would notice
	Change    string   // of strength and volume
	New       []string // allergens that the drink did not carry
	Allergens allergensView
	Pours     []coverPour
	Score     string
	Verdict   string
	Before    string
	Steps     string // just-noticeable steps
	Near      string
	Draft     string
	Aromas    htmltemplate.HTML // drawn, before and after; empty if there are none
	Cost      string            // against the drink itself; empty if nothing is priced
}

// coverPour is one pour of the covered drink.
type coverPour struct {
	Amount, Name string
	Mark         string // "instead" or "moved", empty if it stays
}

// covers finds covers for what the form says is missing. A name that is no pour
// of the drink is told in the panel, so that the rest of the answer stands.
func (p *pages) covers(ctx context.Context, text string, s *flavor.Spec, f benchForm) (*coversView, error) {
	stock, err := p.inStock(ctx)
	if err != nil {
		return nil, err
	}
	request := CoverRequest{Spec: s, Missing: f.Missing, Avoid: f.Avoid, Parts: coverParts, Limit: coverLimit}
	if !f.Anywhere {
		request.Stock = stock
	}
	missing, found, err := p.bar.Cover(ctx, request)
	if faults := form.Faults(err); len(faults) > 0 {
		return &coversView{Missing: f.Missing, Trouble: words.Sentence(faults[0].Message)}, nil
	}
	if err != nil {
		return nil, err
	}
	v := &coversView{ID: missing.ID, Missing: missing.Name, Guest: words.List(words.Of(f.Avoid)), Unbalanced: found.Unbalanced,
		Stocked: request.Stock != nil, Anywhere: f.Anywhere && stock != nil}
	for _, r := range found.Removed {
		if r.ID != missing.ID {
			v.Left = append(v.Left, r.Name)
		}
	}
	was, err := p.bar.Judge(s)
	if err != nil {
		return nil, err
	}
	costs, err := p.tariff(ctx)
	if err != nil {
		return nil, err
	}
	for i := range found.Covers {
		c := &found.Covers[i]
		one := coverViewOf(s, c, found.ScoreBefore, f.Avoid)
		one.Cost = costs.difference(s, &c.Spec)
		one.Draft = rewrite(text, s, &c.Spec)
		is, err := p.bar.Judge(&c.Spec)
		if err != nil {
			return nil, err
		}
		if bars := draw.AromaBars(&was.Drink.Aroma, &is.Drink.Aroma); len(bars) > 0 {
			one.Aromas = draw.AromasSVG(fmt.Sprintf("aromas-%d", i+1), "Aromas before and after", bars)
		}
		v.Covers = append(v.Covers, one)
	}
	return v, nil
}

// inStock lists the ids of what the house has, nil if it keeps nothing yet.
func (p *pages) inStock(ctx context.Context) ([]string, error) {
	s, err := p.shift(ctx)
	if err != nil || len(s.stock) == 0 {
		return nil, err
	}
	ids := []string{}
	for _, b := range s.stock {
		if !s.isOut(b) {
			ids = append(ids, b.ID)
		}
	}
	return ids, nil
}

// coverViewOf says a cover of a drink that scored before.
func coverViewOf(from *flavor.Spec, c *cover.Cover, before float64, avoid []flavor.Allergen) coverView {
	return coverView{Text: words.Sentence(c.Text), Instead: instead(c), Moves: moves(c), Tell: tell(c), Change: change(c), New: words.Of(c.NewAllergens),
		Allergens: allergensOf(&c.Spec, avoid), Pours: coverPours(from, c), Score: words.Points(c.Score), Before: words.Points(before),
		Verdict: strings.ToLower(words.Verdict(template.VerdictOf(c.Score))), Steps: words.Figure(c.Distance, 1), Near: words.Nearness(c.Distance)}
}

// instead lists the substitutes with their amounts.
func instead(c *cover.Cover) []string {
	var out []string
	for i := range c.Parts {
		out = append(out, amountOf(&c.Parts[i])+" "+c.Parts[i].Profile.Name)
	}
	return out
}

// moves lists the other pours that move.
func moves(c *cover.Cover) []string {
	var out []string
	for _, m := range c.Changes {
		if m.To == 0 {
			out = append(out, "no "+m.Profile.Name)
			continue
		}
		to := flavor.Pour{Amount: m.To, Unit: m.Unit}
		out = append(out, m.Profile.Name+" to "+amountOf(&to))
	}
	return out
}

// coverPours lists the whole covered drink and marks what differs.
func coverPours(from *flavor.Spec, c *cover.Cover) []coverPour {
	var out []coverPour
	for i := range c.Spec.Pours {
		pour := &c.Spec.Pours[i]
		v := coverPour{Amount: amountOf(pour), Name: pour.Profile.Name}
		switch k := pourOf(from.Pours, pour.Profile); {
		case k < 0:
			v.Mark = "instead"
		case from.Pours[k].Amount != pour.Amount || from.Pours[k].Unit != pour.Unit:
			v.Mark = "moved"
		}
		out = append(out, v)
	}
	return out
}

// tell says what a guest would miss and meet.
func tell(c *cover.Cover) string {
	var parts []string
	for _, x := range []struct {
		word     string
		families []flavor.Family
	}{{"less", c.Lost}, {"more", c.Gained}} {
		var names []string
		for _, f := range x.families {
			names = append(names, f.String())
		}
		if len(names) > 0 {
			parts = append(parts, x.word+" "+words.List(names))
		}
	}
	if len(parts) == 0 {
		return "The same aromas."
	}
	return words.Sentence(strings.Join(parts, "; "))
}

// change says what happens to strength and volume.
func change(c *cover.Cover) string {
	abv, volume := words.Signed(c.ABVChange, 1), words.Signed(c.VolumeChange, 0)
	if abv == "0.0" && volume == "0" {
		return "As strong and as long as before."
	}
	return abv + "\u00a0% vol and " + volume + "\u00a0mL in the glass."
}
