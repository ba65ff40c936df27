package service

import (
	"context"
	"fmt"
	"slices"

	"counterpour/api/service/fault"
	"counterpour/api/service/outage"
	"counterpour/flavor"
	"counterpour/flavor/cover"
	"counterpour/flavor/cover/barred"
	"counterpour/flavor/cover/instead"
	"counterpour/flavor/guest"
	"counterpour/flavor/lookup"
	"counterpour/flavor/riff"
	"counterpour/flavor/riff/station"
	"counterpour/flavor/weigh"
)

// Defaults of a request for covers.
const (
	DefaultCovers   = 10
	DefaultMaxParts = 2
)

// coverEffort limits the work of one search for covers, in the units of
// [cover.Request.Effort]. The limit takes one to two seconds.
const coverEffort = 50_000_000

// CoverRequest asks what to pour in place of what ran out.
type CoverRequest struct {
	Draft
	Missing []string // names, aliases or ids; the wording may differ from the draft's
	Guest   Guest
	Stock   []string // ids of what may be poured; nil for the whole catalogue
	// Everywhere treats an ingredient that few bars stock like a common one, and also
	// lists covers that rank far behind the best. It has no effect together with Stock on
	// what is at hand: all of Stock is.
	Everywhere bool
	Parts      int // most substitutes in one cover, 1 to cover.MaxParts
	Limit      int // most covers, 1 to cover.MaxLimit
}

// CoverAnswer is the covers found.
type CoverAnswer struct {
	Missing []*flavor.Profile // in the order of the request
	Result  *cover.Result
	Instead *Instead // what to offer if no cover keeps the drink; otherwise nil
	// Barred is what the trade would pour and why nobody does now, if nothing that is known to
	// be safe keeps the drink.
	Barred  []barred.Way
	Refused lookup.Refused
	Notes   []string // how the draft was read
}

// Instead is what to offer a guest if no cover keeps the drink.
type Instead struct {
	Menu *instead.Offered // the nearest drink of the menu that can be poured; nil if none
	Riff *riff.Riff       // the nearest riff made of the stock; nil if none
}

// Cover finds what to pour in place of what ran out. Its faults name the line of a text
// or the field.
func (s *Snapshot) Cover(ctx context.Context, r CoverRequest) (*CoverAnswer, error) {
	var faults flavor.DataFaults
	fault.InRange(&faults, "limit", r.Limit, 1, cover.MaxLimit)
	fault.InRange(&faults, "max_parts", r.Parts, 1, cover.MaxParts)
	spec, err := s.Read(r.Draft)
	if err := fault.Collect(&faults, err); err != nil {
		return nil, err
	}
	g, found := s.guest(s.priced(r.Guest, r.Stock))
	faults = append(faults, found...)
	if len(faults) > 0 {
		return nil, faults
	}
	missing, err := s.missing(&spec, r.Missing)
	if err != nil {
		return nil, err
	}
	inside, leave, err := s.Searches.Enter(ctx)
	if err != nil {
		return nil, err
	}
	defer leave()
	a := &CoverAnswer{Missing: missing, Notes: spec.Notes}
	shelf, err := s.shelfOf(ctx, &spec, g, &r, a)
	if err != nil {
		return nil, err
	}
	if a.Result, err = s.Finder.Find(inside, s.searchFor(&spec, missing, shelf, g, &r)); err != nil {
		return nil, fault.At("missing", err)
	}
	if !a.Result.Near || len(a.Result.Covers) == 0 {
		a.Barred = s.barred(&shortOf{spec: &spec, missing: poured(&spec, missing), guest: &g, atHand: atHand(shelf, &g, r.Stock),
			listed: slices.Concat(a.Result.Covers, a.Result.IfLabelClears)})
	}
	readFirst := a.Result.LabelsLead && a.Result.IfLabelClears[0].Keeps
	if balanced := slices.ContainsFunc(a.Result.Covers, inBalance); !a.Result.Near && !(readFirst && balanced) || a.Result.LabelFirst && !balanced {
		a.Instead, err = s.instead(ctx, &spec, a.Result, shelf, g, &r)
	}
	return a, err
}

// inBalance reports whether the drink with a cover is balanced.
func inBalance(c cover.Cover) bool { return weigh.VerdictOf(c.Score) == weigh.Balanced }

// searchFor is the request as the finder takes it.
func (s *Snapshot) searchFor(spec *flavor.Spec, missing, shelf []*flavor.Profile, g guest.Guest, r *CoverRequest) cover.Request {
	out := cover.Request{Spec: spec, Missing: poured(spec, missing), Candidates: shelf, Guest: g,
		Tastings: s.Tastings, Parts: r.Parts, Limit: r.Limit, Far: r.Everywhere, Effort: coverEffort}
	if r.Stock == nil && !r.Everywhere {
		out.Common = s.Common.With(s.Stock)
	}
	return out
}

// shelfOf returns what may be poured in place of what is missing, and tells the answer
// what may not. Allergens, and what may have been cleared with something from animals, are not part
// of the query, since a label may clear a bottle; the search for covers filters them.
func (s *Snapshot) shelfOf(ctx context.Context, spec *flavor.Spec, g guest.Guest, r *CoverRequest, to *CoverAnswer) ([]*flavor.Profile, error) {
	need := lookup.Need{Stock: r.Stock, NoAlcohol: g.NoAlcohol,
		NoAnimal: slices.DeleteFunc(slices.Clone(g.NoAnimal), func(a string) bool { return a == flavor.Finings })}
	for _, p := range to.Missing {
		need.Exclude = append(need.Exclude, p.ID)
	}
	shelf, refused, err := s.Index.Candidates(ctx, need)
	if err != nil {
		return nil, err
	}
	also := outage.Names{Named: s.Named, Space: s.Catalogue.Space()}.With(spec, r.Missing, to.Missing, shelf, r.Stock != nil)
	shelf = slices.DeleteFunc(shelf, also.Holds)
	for _, p := range shelf {
		if !p.Avoids(g.Avoid) {
			refused.ByAllergen++
		}
	}
	if note := also.Note(); note != "" {
		to.Notes = append(slices.Clone(to.Notes), note)
	}
	to.Refused = refused
	return shelf, nil
}

// insteadRiffs is how many riffs are compared to find the nearest.
const insteadRiffs = 3

// insteadWithin is how far a riff may lie from what was ordered, in noticeable steps, to be
// offered in its place: a sour on another spirit lies 13 to 14 out. Judged.
const insteadWithin = 14.0

// instead finds what to offer if no cover keeps the drink: the nearest drink of the menu,
// and the nearest riff. Both use the stock of the request; if it has none, that of the
// house; and if there is no house, what stands in most bars. What a cover pours is no riff.
func (s *Snapshot) instead(ctx context.Context, spec *flavor.Spec, covers *cover.Result, shelf []*flavor.Profile, g guest.Guest, r *CoverRequest) (*Instead, error) {
	out, removed := &Instead{}, covers.Removed
	told := func(riff *flavor.Spec) bool {
		made := station.MadeOf(riff)
		return covers.LeftOut != nil && station.MadeOf(&covers.LeftOut.Spec) == made ||
			slices.ContainsFunc(covers.Covers, func(c cover.Cover) bool { return station.MadeOf(&c.Spec) == made })
	}
	if r.Stock == nil {
		kept := func(p *flavor.Profile) bool { return s.Common.Usual(p.ID) }
		if stock := s.InStock(); len(s.Stock) > 0 {
			kept = func(p *flavor.Profile) bool { return slices.Contains(stock, p) }
		}
		shelf = slices.DeleteFunc(slices.Clone(shelf), func(p *flavor.Profile) bool { return !kept(p) })
	}
	var err error
	if !s.elsewhere(r.Stock) {
		if out.Menu, err = s.Nearest(spec, shelf, g); err != nil {
			return nil, err
		}
	}
	asks := func(p *flavor.Profile) bool { return g.Wonders(p, spec) || g.Startles(p, spec) }
	if shelf = slices.DeleteFunc(slices.Clone(shelf), asks); len(shelf) == 0 {
		return out, nil
	}
	found, err := riff.Vary(ctx, s.Station, riff.Request{Spec: spec, Stock: shelf, Out: s.Out, Guest: g, Limit: insteadRiffs})
	if err != nil {
		return out, err
	}
	for i := range found.Riffs {
		x := &found.Riffs[i]
		if x.Distance <= insteadWithin && keepsMost(spec, removed, &x.Spec) && (out.Riff == nil || x.Distance < out.Riff.Distance) {
			out.Riff = x
		}
	}
	if out.Riff != nil && told(&out.Riff.Spec) {
		out.Riff = nil // nor is one that lies further
	}
	return out, nil
}

// keepsMost reports whether a drink pours more than half of what is left of another, and half of
// all of it: a guest sees a riff on what was ordered in nothing else.
func keepsMost(spec *flavor.Spec, removed []*flavor.Profile, riff *flavor.Spec) bool {
	var left, kept int
	for i := range spec.Pours {
		p := spec.Pours[i].Profile
		if slices.Contains(removed, p) {
			continue
		}
		left++
		if slices.ContainsFunc(riff.Pours, func(q flavor.Pour) bool { return q.Profile == p }) {
			kept++
		}
	}
	return 2*kept > left && 2*kept >= len(spec.Pours)
}

// Nearest returns the drink of the menu nearest to spec, among those that the stock can
// pour and the guest may have; nil if there is none.
func (s *Snapshot) Nearest(spec *flavor.Spec, stock []*flavor.Profile, g guest.Guest) (*instead.Offered, error) {
	there := make(map[*flavor.Profile]bool, len(stock))
	for _, p := range stock {
		there[p] = true
	}
	return s.mixed().Nearest(spec, &g, func(p *flavor.Profile) bool { return there[p] })
}

// poured returns those of what is missing that the spec pours; the rest is only off
// the shelf. If it pours none of them, all are returned, for the fault to name.
func poured(spec *flavor.Spec, missing []*flavor.Profile) []*flavor.Profile {
	in := slices.DeleteFunc(slices.Clone(missing), func(m *flavor.Profile) bool {
		return !spec.HasProfile(m)
	})
	if len(in) == 0 {
		return missing
	}
	return in
}

// missing returns the ingredients that ran out, without duplicates.
func (s *Snapshot) missing(spec *flavor.Spec, names []string) (out []*flavor.Profile, err error) {
	if len(names) == 0 {
		return nil, flavor.Invalid("missing", "", "nothing is missing; name what ran out")
	}
	var faults flavor.DataFaults
	for i, name := range names {
		location := "missing"
		if len(names) > 1 {
			location = fmt.Sprintf("missing[%d]", i)
		}
		p, err := s.Named(pouredAs(spec, name))
		if err := fault.Collect(&faults, fault.At(location, err)); err != nil {
			return nil, err
		}
		if p != nil && !slices.Contains(out, p) {
			out = append(out, p)
		}
	}
	if len(faults) > 0 {
		return nil, faults
	}
	return out, nil
}

// pouredAs returns the id of the pour that the draft wrote as name, or name itself if
// there is none. So "fresh lemon juice" can be reported missing as the draft wrote it.
func pouredAs(spec *flavor.Spec, name string) string {
	key := flavor.NormaliseName(name)
	for _, p := range spec.Pours {
		if key != "" && flavor.NormaliseName(p.Match.Asked) == key {
			return p.Profile.ID
		}
	}
	return name
}
