package bench

import (
	"context"
	"fmt"
	"slices"

	"counterpour/api/service"
	"counterpour/api/service/evening"
	"counterpour/data/house"
	"counterpour/flavor"
	"counterpour/flavor/cover"
	"counterpour/flavor/cover/barred"
	"counterpour/webui/behind"
	"counterpour/webui/form"
	"counterpour/webui/part"
	"counterpour/webui/words"
)

// coverLimit is how many covers are shown, and coversFirst how many of them before a tap.
const (
	coverLimit  = 6
	coversFirst = 3
)

// coversView is what may be poured for what ran out.
type coversView struct {
	ID, Missing string
	Guest       string   // who drinks it
	Left        []string // other pours that had to go, for the guest
	Unbalanced  bool
	Stocked     bool // from what the house has
	Anywhere    bool // from the whole catalogue, though the house has a stock
	Covers      []part.Cover
	LeftOut     *leftOutView // with nothing poured instead; nil if that does not keep the drink
	Menu        *part.Offer  // the nearest drink of the menu, if nothing keeps this one
	Riff        *part.Offer  // a riff that comes near, if nothing keeps it
	Far         bool         // nothing keeps the drink
	Barred      []string     // what a bar would pour, and why it does not now
	Labels      []string     // covers that wait for a label
	Trouble     string       // why there can be no cover
}

// First are the covers that are shown, and More those behind a tap, which begin at MoreFrom.
func (v *coversView) First() []part.Cover { return v.Covers[:min(coversFirst, len(v.Covers))] }

// More are the covers behind a tap.
func (v *coversView) More() []part.Cover { return v.Covers[min(coversFirst, len(v.Covers)):] }

// MoreFrom is the number of the first of them.
func (v *coversView) MoreFrom() int { return coversFirst + 1 }

// leftOutView is the drink with nothing poured instead.
type leftOutView struct{ Line, Draft string }

// covers finds covers for what the form says is missing. A name that is no pour
// of the drink is told in the panel, so that the rest of the answer stands.
func (p *pages) covers(ctx context.Context, text string, s *flavor.Spec, f benchForm) (*coversView, error) {
	shift, err := behind.ShiftOf(ctx, p.house)
	if err != nil {
		return nil, err
	}
	stock := inStock(shift)
	request := behind.CoverRequest{Spec: s, Missing: []string{f.Missing}, Guest: guestOf(&f.Guest), Parts: part.MostParts, Limit: coverLimit}
	if !f.Anywhere {
		// Whatever else ran out goes with it, as on the pages of the menu.
		request.Stock, request.Missing = stock, append(request.Missing, shift.LackedBy(s)...)
	}
	answer, err := p.bar.Cover(ctx, request)
	if faults := flavor.DataFaultsOf(err); len(faults) > 0 {
		return &coversView{Missing: f.Missing, Trouble: words.Sentence(faults[0].Message)}, nil
	}
	if err != nil {
		return nil, err
	}
	found := answer.Result
	v := &coversView{Far: !found.Near && evening.Without(found.LeftOut, firstOf(found.Covers)) == nil, ID: answer.Missing[0].ID, Missing: words.List(part.NamesOf(answer.Missing)),
		Guest: f.Guest.Line(), Unbalanced: found.Unbalanced, Stocked: request.Stock != nil, Anywhere: f.Anywhere && stock != nil}
	v.Left = part.AlsoGone(found.Removed, answer.Missing)
	if c := found.LeftOut; c != nil {
		v.LeftOut = &leftOutView{part.LeftOutLine(p.house.Settings(), found.Removed, c, nil, len(found.Covers) == 0), rewrite(text, s, &c.Spec)}
	}
	if x := answer.Instead; x != nil {
		v.Menu, v.Riff = part.OfferOf(p.house.Settings(), shift.Menu, x.Menu, &f.Guest), part.RiffOf(p.house.Settings(), x.Riff, &f.Guest)
	}
	for _, l := range barred.Lines(answer.Barred) {
		v.Barred = append(v.Barred, words.Sentence(l.String()))
	}
	if v.Far || found.LabelFirst {
		for i := range found.IfLabelClears[:min(coversFirst, len(found.IfLabelClears))] {
			v.Labels = append(v.Labels, part.LabelWay(house.Settings{}, &found.IfLabelClears[i]))
		}
	}
	costs, err := part.TariffOf(ctx, p.house)
	if err != nil {
		return nil, err
	}
	for i := range found.Covers {
		c := &found.Covers[i]
		// The draft keeps its own units, whatever the house measures in.
		one := part.CoverOf(house.Settings{}, s, c, found.ScoreBefore, f.Guest.Limits().Avoid)
		one.Cost = costs.Difference(s, &c.Spec)
		one.Draft = rewrite(text, s, &c.Spec)
		if one.Moved, err = part.DifferenceOf(p.bar, fmt.Sprintf("moved-%d", i+1), s, &c.Spec); err != nil {
			return nil, err
		}
		v.Covers = append(v.Covers, one)
	}
	return v, nil
}

// firstOf returns the nearest cover; nil if there is none.
func firstOf(covers []cover.Cover) *cover.Cover {
	if len(covers) == 0 {
		return nil
	}
	return &covers[0]
}

// guestOf is a guest as the centre is asked for one.
func guestOf(d *form.Guest) service.Guest {
	limits := d.Limits()
	g := service.Guest{Avoid: words.Of(limits.Avoid), Diet: slices.Clone(d.Diet), MaxABV: limits.MaxABV}
	if limits.NoAlcohol {
		g.Diet = append(g.Diet, "alcohol-free")
	}
	return g
}

// inStock lists the ids of what the house has, nil if it keeps nothing yet.
func inStock(s *behind.Shift) []string {
	if len(s.Stock) == 0 {
		return nil
	}
	ids := []string{}
	for _, b := range s.Stock {
		if !s.IsOut(b) {
			ids = append(ids, b.ID)
		}
	}
	return ids
}
