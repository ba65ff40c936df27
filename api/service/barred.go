package service

import (
	"fmt"
	"slices"

	"counterpour/flavor"
	"counterpour/flavor/cover"
	"counterpour/flavor/cover/barred"
	"counterpour/flavor/cover/outs"
	"counterpour/flavor/guest"
	"counterpour/flavor/sense"
	"counterpour/flavor/weigh"
)

// shortOf is what a search for covers found too little for.
type shortOf struct {
	spec    *flavor.Spec
	missing []*flavor.Profile
	guest   *guest.Guest
	atHand  func(*flavor.Profile) bool
	listed  []cover.Cover // safe or not
}

// barred says what the trade would pour and why nobody does, where nothing known to be safe keeps
// the drink.
func (s *Snapshot) barred(of *shortOf) []barred.Way {
	customs := s.Finder.Customary
	if of.guest.NoAlcohol {
		customs = s.Finder.CustomaryDry
	}
	byID := func(id string) *flavor.Profile {
		if p, ok := s.Shelf.ByID(id); ok {
			return p
		}
		return nil
	}
	listed := func(parts []*flavor.Profile) bool {
		return slices.ContainsFunc(of.listed, func(c cover.Cover) bool { return poursAll(&c, parts) })
	}
	ways := barred.Ways(&barred.Request{Spec: of.spec, Missing: of.missing, Guest: of.guest, Customs: customs, ByID: byID, AtHand: of.atHand,
		Listed: listed, Spoils: func(out, with *flavor.Profile) string { return s.spoils(of, out, with) }})
	if slices.ContainsFunc(of.listed, func(c cover.Cover) bool { return c.Keeps }) { // its label is the one to read
		ways = slices.DeleteFunc(ways, func(w barred.Way) bool { return w.Reason == barred.ByLabel || w.Reason == barred.ByDrink })
	}
	return ways
}

// BarredFrom says the same of a drink of a menu that lost a pour, made of what is on a shelf; nothing of
// one that something keeps, or that nobody looked at.
func (s *Snapshot) BarredFrom(t *outs.Touched, g *guest.Guest, shelf []*flavor.Profile) []barred.Way {
	if t.NotSearched || t.Near && len(t.Covers) > 0 {
		return nil
	}
	there := func(p *flavor.Profile) bool { return slices.Contains(shelf, p) }
	return s.barred(&shortOf{spec: g.Serve(t.Spec), missing: t.Missing, guest: g, atHand: there, listed: slices.Concat(t.Covers, t.IfLabelClears)})
}

// poursAll reports whether a cover pours each of some ingredients instead, maybe with others, or one
// that comes to the same glass does.
func poursAll(c *cover.Cover, parts []*flavor.Profile) bool {
	missing := func(p *flavor.Profile) bool {
		return !slices.ContainsFunc(c.Parts, func(x flavor.Pour) bool { return x.Profile.ID == p.ID })
	}
	if !slices.ContainsFunc(parts, missing) {
		return true
	}
	return slices.ContainsFunc(c.Also, func(also cover.Cover) bool { return poursAll(&also, parts) })
}

// spoils says what becomes of a drink with one thing in the measure of another, in words that go
// on from its name; empty if it stays the drink, in balance, and within the guest's strength.
func (s *Snapshot) spoils(of *shortOf, out, with *flavor.Profile) string {
	now := of.spec.Clone()
	for i := range now.Pours {
		p := &now.Pours[i]
		if p.Profile == out {
			p.Profile = with
		}
	}
	was, err := s.Mixer.Mix(of.spec)
	if err != nil {
		return ""
	}
	is, err := s.Mixer.Mix(&now)
	if err != nil {
		return ""
	}
	before, err := s.Judge.ScoreOnly(of.spec)
	if err != nil {
		return ""
	}
	after, err := s.Judge.ScoreOnly(&now)
	if err != nil {
		return ""
	}
	space := s.Finder.Space()
	steps := sense.Between(space.Percept(of.spec, was), space.Percept(&now, is))
	switch {
	case of.guest.TooStrong(is.ABV):
		return fmt.Sprintf("as much of it comes to %.3g %% vol", is.ABV)
	case weigh.VerdictOf(after) == weigh.Off && weigh.VerdictOf(before) != weigh.Off:
		return fmt.Sprintf("as much of it puts the drink out of balance, at %.0f of 100", after)
	case steps.Total() > cover.NearJND:
		return fmt.Sprintf("as much of it makes another drink, %.0f noticeable steps away", steps.Total())
	}
	return ""
}

// atHand tells what is there to be poured, though a guest must not have it: what is on the shelf
// that covers are made of, and what of a stock, or of the whole catalogue, the guest bars from it.
func atHand(shelf []*flavor.Profile, g *guest.Guest, stock []string) func(*flavor.Profile) bool {
	there := make(map[string]bool, len(shelf))
	for _, p := range shelf {
		there[p.ID] = true
	}
	return func(p *flavor.Profile) bool {
		return there[p.ID] || !g.MayHave(p) && (stock == nil || slices.Contains(stock, p.ID))
	}
}
