package service

import (
	"context"
	"fmt"
	"slices"

	"counterpour/flavor"
	"counterpour/flavor/cover"
	"counterpour/flavor/lookup"
)

// Defaults of a request for covers.
const (
	DefaultCovers   = 10
	DefaultMaxParts = 2
)

// coverEffort is how much work a search for covers may take: one to two seconds.
const coverEffort = 50_000_000

// CoverRequest asks what to pour in place of what ran out.
type CoverRequest struct {
	Draft
	Missing []string // names, aliases or ids, as the draft writes them or otherwise
	Guest   Guest
	Stock   []string // ids of what may be poured; nil for the whole catalogue
	// Everywhere takes what few bars stock for as good as what stands in most;
	// with a stock, everything in it is at hand anyway.
	Everywhere bool
	Parts      int // most ingredients of one cover, 1 to cover.MaxParts
	Limit      int // most covers, 1 to cover.MaxLimit
}

// CoverAnswer is the covers found.
type CoverAnswer struct {
	Missing []*flavor.Profile // in the order of the request
	Result  *cover.Result
	Refused lookup.Refused
}

// Cover finds what to pour in place of what ran out. Its faults name the line of
// a text or the place in the fields.
func (s *Snapshot) Cover(ctx context.Context, r CoverRequest) (*CoverAnswer, error) {
	var faults flavor.Faults
	inRange(&faults, "limit", r.Limit, 1, cover.MaxLimit)
	inRange(&faults, "max_parts", r.Parts, 1, cover.MaxParts)
	spec, err := s.Read(r.Draft)
	if err := collect(&faults, err); err != nil {
		return nil, err
	}
	guest, found := s.guest(r.Guest)
	faults = append(faults, found...)
	if len(faults) > 0 {
		return nil, faults
	}
	missing, err := s.missing(&spec, r.Missing)
	if err != nil {
		return nil, err
	}
	a := &CoverAnswer{Missing: missing}
	a.Result, a.Refused, err = s.coverSpec(ctx, &spec, missing, guest, &r)
	return a, at("missing", err)
}

func (s *Snapshot) coverSpec(ctx context.Context, spec *flavor.Spec, missing []*flavor.Profile, guest cover.Guest, r *CoverRequest) (*cover.Result, lookup.Refused, error) {
	// What an allergen keeps out is asked for too: a label may clear it.
	need := lookup.Need{Stock: r.Stock, NoAlcohol: guest.NoAlcohol, NoAnimal: guest.NoAnimal}
	for _, p := range missing {
		need.Exclude = append(need.Exclude, p.ID)
	}
	candidates, refused, err := s.Index.Candidates(ctx, need)
	if err != nil {
		return nil, refused, err
	}
	for _, p := range candidates {
		if !p.Avoids(guest.Avoid) {
			refused.ByAllergen++
		}
	}
	request := cover.Request{Spec: spec, Missing: missing, Candidates: candidates, Guest: guest,
		Tastings: s.Tastings, Parts: r.Parts, Limit: r.Limit, Effort: coverEffort}
	if r.Stock == nil && !r.Everywhere {
		request.Common = s.common.With(s.Stock)
	}
	result, err := s.Finder.Find(ctx, request)
	return result, refused, err
}

// missing finds what ran out, each once.
func (s *Snapshot) missing(spec *flavor.Spec, names []string) (out []*flavor.Profile, err error) {
	if len(names) == 0 {
		return nil, flavor.Invalid("missing", "", "nothing is missing; name what ran out")
	}
	var faults flavor.Faults
	for i, name := range names {
		location := "missing"
		if len(names) > 1 {
			location = fmt.Sprintf("missing[%d]", i)
		}
		p, _, err := s.Index.Resolve(pouredAs(spec, name))
		if err := collect(&faults, at(location, err)); err != nil {
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

// pouredAs returns the id of the pour that a spec calls by a name, and the name
// itself if there is none: "fresh lemon juice" is missing as it was written.
func pouredAs(spec *flavor.Spec, name string) string {
	key := flavor.NormaliseName(name)
	for _, p := range spec.Pours {
		if key != "" && flavor.NormaliseName(p.Match.Asked) == key {
			return p.Profile.ID
		}
	}
	return name
}
