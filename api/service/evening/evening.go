// Package evening says what can be poured of a menu now, and for whom: one answer for
// every page that asks. What has run out, what the house never kept and what a guest must
// not have are told apart, and a drink that only a label keeps from a guest says so. How
// it is shown is not known here.
package evening

import (
	"context"
	"fmt"
	"slices"

	"counterpour/flavor"
	"counterpour/flavor/balance"
	"counterpour/flavor/cover"
	"counterpour/flavor/cover/outs"
	"counterpour/flavor/guest"
	"counterpour/flavor/sense"
)

// Kitchen does the work: it searches covers for a menu, and scores a drink.
type Kitchen interface {
	Outs(ctx context.Context, r outs.Request) (*outs.Result, error)
	Judge(s *flavor.Spec) (*balance.Result, error)
}

// Request is a menu, what the house has, and who drinks.
type Request struct {
	Menu     []*flavor.Spec
	Stock    []*flavor.Profile // all that the house keeps, also what has run out; empty if it keeps no list
	Out      []*flavor.Profile // has run out
	Guest    guest.Guest
	Tastings []cover.Tasting
	Parts    int // most substitutes in one cover, as of a [outs.Request]
}

// State is what can be made of a drink now, the most urgent first.
type State int

// The states of a drink. A drink is NotFor a guest for what its pours hold, also where a
// bottle is missing beside; one that is Missing would do for the guest.
const (
	Missing State = iota // a bottle is missing, and nothing keeps the drink
	Covered              // a bottle is missing, or not for the guest, and the drink is kept by a cover or without it
	Ready                // poured as it is written
	NotFor               // the guest must not have it as it can be poured now
)

// Drink is a drink of the menu as it can be poured now.
type Drink struct {
	Spec    *flavor.Spec
	State   State
	Touched *outs.Touched // nil if the house has all that it pours
	// Because says why it is not for the guest, such as "orgeat contains tree nuts", and names
	// every pour that is in the guest's way, what is certain first; empty in any other state.
	Because string
	Barred  *flavor.Profile // the pour that most surely is not for the guest; nil if it is the whole drink
	// Unread are pours that the guest must not have until their labels are read, where
	// nothing else about the drink is in the guest's way; what is missing aside.
	Unread []*flavor.Profile
}

// Waits reports whether the drink can be poured for the guest once its labels are read, and
// not before.
func (d *Drink) Waits() bool { return d.State == NotFor && len(d.Unread) > 0 }

// Spares reports whether the drink leaves out, for the guest, what a label may allow.
func (d *Drink) Spares() bool { return d.State == Covered && len(d.Unread) > 0 }

// Answer is the whole menu.
type Answer struct {
	Drinks  []Drink           // in the order of the menu
	NotKept []*flavor.Profile // what the menu pours and the house never kept
	Result  *outs.Result      // the covers; nil if no bottle is missing
}

// Of returns the drink of a spec; nil if the menu does not have it.
func (a *Answer) Of(s *flavor.Spec) *Drink {
	for i := range a.Drinks {
		if a.Drinks[i].Spec == s {
			return &a.Drinks[i]
		}
	}
	return nil
}

// Of says what can be poured of a menu.
func Of(ctx context.Context, bar Kitchen, r Request) (*Answer, error) {
	a := &Answer{NotKept: notKept(&r)}
	touched := map[*flavor.Spec]*outs.Touched{}
	if lacking := slices.Concat(r.Out, a.NotKept); len(lacking) > 0 {
		var err error
		a.Result, err = bar.Outs(ctx, outs.Request{Specs: r.Menu, Out: lacking, Stock: r.Stock, Guest: r.Guest, Tastings: r.Tastings, Parts: r.Parts})
		if err != nil {
			return nil, err
		}
		for i := range a.Result.Touched {
			touched[a.Result.Touched[i].Spec] = &a.Result.Touched[i]
		}
	}
	for _, s := range r.Menu {
		d, err := drinkOf(bar, s, touched[s], &r.Guest)
		if err != nil {
			return nil, err
		}
		a.Drinks = append(a.Drinks, d)
	}
	return a, coverForGuest(ctx, bar, &r, a)
}

// notKept lists what the menu pours and the house does not keep, each once. A house that
// keeps no stock list is taken to keep everything, and water is always there.
func notKept(r *Request) []*flavor.Profile {
	if len(r.Stock) == 0 {
		return nil
	}
	var out []*flavor.Profile
	for _, s := range r.Menu {
		for i := range s.Pours {
			p := s.Pours[i].Profile
			if !p.Class.Free() && !slices.Contains(r.Stock, p) && !slices.Contains(out, p) {
				out = append(out, p)
			}
		}
	}
	return out
}

// drinkOf says what can be made of a drink. t is nil if the house has all that it pours.
func drinkOf(bar Kitchen, s *flavor.Spec, t *outs.Touched, g *guest.Guest) (Drink, error) {
	d := Drink{Spec: s, Touched: t, State: Ready}
	tooStrong, err := strength(bar, s, g)
	if err != nil {
		return d, err
	}
	served := g.Serve(s)
	stuck := g.BarredLaid(served) // what cannot be left off
	if tooStrong == "" && stuck == nil {
		d.Unread = unread(s, t, g)
	}
	if t != nil {
		if d.State = Missing; keeps(t) {
			d.State = Covered
		}
		// What the guest must not have anyway is not for want of a bottle, be it the bottle itself.
		barred := slices.ContainsFunc(t.Missing, func(p *flavor.Profile) bool { return !g.Accepts(p) })
		if d.State == Covered || len(t.Removed) <= len(t.Missing) && !barred && tooStrong == "" && stuck == nil {
			return d, nil
		}
	}
	if barred := barredOf(s, t, g); len(barred) > 0 {
		d.State, d.Barred, d.Because = NotFor, barred[0].Profile, because(barred, served, t, g)
		return d, nil
	}
	switch {
	case tooStrong != "":
		d.State, d.Because = NotFor, tooStrong
	case stuck != nil:
		d.State, d.Because = NotFor, stuck.Name+" "+g.Objection(stuck)
	case served != s && t == nil:
		return withoutLaid(bar, d, served, g)
	}
	return d, nil
}

// withoutLaid says how a drink is served of which only the garnish is in the guest's way.
func withoutLaid(bar Kitchen, d Drink, served *flavor.Spec, g *guest.Guest) (Drink, error) {
	r, err := bar.Judge(served)
	if err != nil && len(flavor.DataFaultsOf(err)) == 0 {
		return d, err
	}
	off := &cover.Cover{Spec: *served, Keeps: true, Notice: sense.WontNotice, Marks: served.Allergens(), Ask: served.Ask(g.Avoid), Text: served.LeaveOff()}
	t := &outs.Touched{Spec: d.Spec, LeftOut: off, Near: true, Proven: true, Chosen: -1}
	if err == nil {
		off.Score, off.ABV, t.ScoreBefore = r.Judgement.Score, r.Drink.ABV, r.Judgement.Score
	}
	for i := range d.Spec.Dressings {
		if p := d.Spec.Dressings[i].Profile; !g.MayHave(p) {
			t.Removed, off.Without = append(t.Removed, p), append(off.Without, p)
		}
	}
	d.Touched, d.State = t, Covered
	return d, nil
}

// Chosen returns the cover that serves the whole menu; nil if there is none.
func Chosen(t *outs.Touched) *cover.Cover {
	if t.Chosen < 0 {
		return nil
	}
	return &t.Covers[t.Chosen]
}

// Without returns a drink without everything that had to go, if it is worth telling: nil
// where a guest will notice and the chosen cover is nearer.
func Without(leftOut, chosen *cover.Cover) *cover.Cover {
	if leftOut != nil && chosen != nil && leftOut.Notice == sense.WillNotice && chosen.Distance <= leftOut.Distance {
		return nil
	}
	return leftOut
}

// strength says that a drink is too strong for a guest with a limit; empty if it is not.
func strength(bar Kitchen, s *flavor.Spec, g *guest.Guest) (string, error) {
	if g.MaxABV == 0 {
		return "", nil
	}
	r, err := bar.Judge(s)
	switch {
	case len(flavor.DataFaultsOf(err)) > 0:
		return "its strength cannot be worked out", nil
	case err != nil:
		return "", err
	case g.TooStrong(r.Drink.ABV):
		return fmt.Sprintf("%.1f\u00a0%% vol", r.Drink.ABV), nil
	}
	return "", nil
}

// unread lists the pours of a drink, those that are missing aside, that a guest must not
// have until their labels are read; none if anything else is in the guest's way.
func unread(s *flavor.Spec, t *outs.Touched, g *guest.Guest) (out []*flavor.Profile) {
	for i := range s.Pours {
		p := s.Pours[i].Profile
		switch {
		case t != nil && slices.Contains(t.Missing, p), slices.Contains(out, p), g.Accepts(p):
		case g.LabelDecides(p):
			out = append(out, p)
		default:
			return nil
		}
	}
	return out
}
