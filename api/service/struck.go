package service

import (
	"fmt"
	"slices"
	"strings"

	"counterpour/flavor"
)

// struck is what is out with what is missing, since a name that was said means it too.
type struck struct {
	named   []*flavor.Profile // what a name means by itself, beside what the draft calls by it
	sisters []*flavor.Profile // what the name stands in the names of
}

// struckBy returns what the names of what is missing strike beside that, of what may be
// poured. Honey that a draft reads as its syrup is out as honey too. Nobody who is out of
// grapefruit juice has the pink one, and none who is out of honey its syrups: such
// sisters are out, unless a stock list says that they are there.
func (s *Snapshot) struckBy(spec *flavor.Spec, missing, shelf []*flavor.Profile, r *CoverRequest) struck {
	var out struck
	var called []string
	for _, p := range spec.Pours {
		if slices.Contains(missing, p.Profile) {
			called = append(called, p.Match.Asked)
		}
	}
	for _, name := range r.Missing {
		if slices.ContainsFunc(missing, func(m *flavor.Profile) bool { return m.ID == name }) {
			continue // it is no name that somebody says
		}
		called = append(called, name)
		if p, err := s.Named(name); err == nil && !slices.Contains(missing, p) {
			out.named = append(out.named, p)
		}
	}
	if r.Stock != nil {
		return out
	}
	for _, p := range shelf {
		if !slices.Contains(missing, p) && !slices.Contains(out.named, p) &&
			slices.ContainsFunc(missing, func(m *flavor.Profile) bool { return s.sisters(p, m, called) }) {
			out.sisters = append(out.sisters, p)
		}
	}
	return out
}

// sisters reports whether p is the same thing as what is missing, in another form: a
// juice or a syrup that smells of it first, and holds a name of it in its own. A bottle
// of a spirit or a liqueur is bought by a name of its own.
func (s *Snapshot) sisters(p, missing *flavor.Profile, names []string) bool {
	juices, sweeteners := isJuice(p) && isJuice(missing), isSweetener(p) && isSweetener(missing)
	if !juices && !sweeteners {
		return false
	}
	space := s.Catalogue.Space()
	of, is := space.Leads(missing), space.Leads(p)
	if len(of) == 0 || len(is) == 0 || of[0].Name != is[0].Name {
		return false
	}
	own := append([]string{p.Name}, p.Aliases...)
	return slices.ContainsFunc(names, func(name string) bool {
		return slices.ContainsFunc(own, func(o string) bool { return holdsWords(o, name) })
	})
}

func isJuice(p *flavor.Profile) bool {
	return p.Class.Kin() == flavor.KinJuice || p.Class.Kin() == flavor.KinSourJuice
}

func isSweetener(p *flavor.Profile) bool { return p.Class.Kin() == flavor.KinSweetener }

// holdsWords reports whether a name holds all words of another, one after the other.
func holdsWords(name, words string) bool {
	words = flavor.NormaliseName(words)
	return words != "" && strings.Contains(" "+flavor.NormaliseName(name)+" ", " "+words+" ")
}

// holds reports whether an ingredient is struck.
func (x struck) holds(p *flavor.Profile) bool {
	return slices.Contains(x.named, p) || slices.Contains(x.sisters, p)
}

// mostSisters is how many sisters are named.
const mostSisters = 4

// note says which sisters are taken to be out, empty if none is.
func (x struck) note() string {
	if len(x.sisters) == 0 {
		return ""
	}
	var names []string
	for _, p := range x.sisters[:min(len(x.sisters), mostSisters)] {
		names = append(names, p.Name)
	}
	if more := len(x.sisters) - len(names); more > 0 {
		names = append(names, fmt.Sprintf("%d more", more))
	}
	return "also taken as out, since it has that name too (list it in the stock to pour it): " + flavor.JoinAnd(names)
}
