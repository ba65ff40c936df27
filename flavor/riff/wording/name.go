package wording

import (
	"cmp"
	"slices"
	"strings"

	"counterpour/flavor"
)

// mostAccents is how many things beside the base a name tells.
const mostAccents = 2

// NameOf names a drink in the form of the trade: what it is ordered by, what sets
// it apart, its family and how it is served, such as "Mezcal, gentian: sour, up".
// What a drink that it came from did not pour comes first among what sets it
// apart; from may be nil. The name is shorter than telling all, so two drinks may
// share it.
func NameOf(s, from *flavor.Spec, family string) string {
	lead := LeadsOf(s)
	words := make([]string, 0, len(lead)+mostAccents)
	for _, p := range lead {
		words = append(words, short(p.Name, s))
	}
	head := flavor.JoinAnd(words)
	if accents := accentsOf(s, from, lead); len(accents) > 0 {
		words = words[:0]
		for _, p := range accents {
			words = append(words, short(p.Name, s))
		}
		head += ", " + flavor.JoinAnd(words)
	}
	return Capital(head) + ": " + family + ", " + servedAs(s)
}

// LeadsOf returns what a drink is ordered by: its bases, the larger first, two at
// most; without any, the largest pour that is not plain length.
func LeadsOf(s *flavor.Spec) []*flavor.Profile {
	var out []*flavor.Profile
	pours := ByVolume(s)
	for _, p := range pours {
		if p.Profile.Base() && len(out) < 2 {
			out = append(out, p.Profile)
		}
	}
	for _, parts := range [][]flavor.Part{{flavor.PartModifier}, {flavor.PartLength, flavor.PartSour, flavor.PartTexture}} {
		for _, p := range pours {
			if len(out) == 0 && slices.Contains(parts, p.Profile.Class.Part()) && !p.Profile.Class.Free() && p.Profile.Aroma.Total() >= plainAroma {
				out = append(out, p.Profile)
			}
		}
	}
	if len(out) == 0 {
		out = append(out, pours[0].Profile)
	}
	return out
}

// ByVolume returns the pours of a drink, the largest first.
func ByVolume(s *flavor.Spec) []flavor.Pour {
	pours := slices.Clone(s.Pours)
	slices.SortStableFunc(pours, func(a, b flavor.Pour) int { return cmp.Compare(b.ML, a.ML) })
	return pours
}

// accentsOf returns what sets a drink apart, what came in first: neither plain
// sugar nor the sour juice that every drink of its kind has.
func accentsOf(s, from *flavor.Spec, lead []*flavor.Profile) []*flavor.Profile {
	type accent struct {
		profile *flavor.Profile
		weight  float64
	}
	var all []accent
	for i := range s.Pours {
		p := &s.Pours[i]
		if slices.Contains(lead, p.Profile) {
			continue
		}
		// How much it is smelt, lifted if it is new; what hardly smells is no accent
		// unless it is new.
		w := p.ML * p.Profile.Aroma.Total() * accentWeight[p.Profile.Class.Part()]
		if from != nil && !from.HasProfile(p.Profile) {
			w = w*newAccent + newAccent
		} else if p.Profile.Class.Kin() == flavor.KinSourJuice || p.Profile.Aroma.Total() < plainAroma {
			continue
		}
		all = append(all, accent{p.Profile, w})
	}
	slices.SortStableFunc(all, func(a, b accent) int { return cmp.Compare(b.weight, a.weight) })
	var out []*flavor.Profile
	for _, a := range all[:min(len(all), mostAccents)] {
		out = append(out, a.profile)
	}
	return out
}

// Weights of what sets a drink apart: common practice, no source.
const (
	newAccent  = 100.0
	plainAroma = 3.0 // intensities of all families below which an ingredient is plain
)

var accentWeight = map[flavor.Part]float64{
	flavor.PartBase: 1, flavor.PartModifier: 1, flavor.PartSweetener: 0.7, flavor.PartSour: 0.3,
	flavor.PartLength: 0.5, flavor.PartTexture: 0.5, flavor.PartSeasoning: 0.6,
}

// endings are words that a name does without where it stays plain what is meant.
var endings = []string{" syrup", " juice", " aperitif", " cordial", " purée", " puree"}

// short drops what a name says in brackets and its ending, unless another pour would
// then bear the same.
func short(name string, s *flavor.Spec) string {
	cut, _, _ := strings.Cut(name, " (")
	for _, e := range endings {
		cut = strings.TrimSuffix(cut, e)
	}
	same := 0
	for i := range s.Pours {
		if other := s.Pours[i].Profile.Name; strings.HasPrefix(other, cut) {
			same++
		}
	}
	if same > 1 || len(cut) < 3 {
		return name
	}
	return cut
}

func servedAs(s *flavor.Spec) string {
	switch s.Service {
	case flavor.Rocks:
		return "on the rocks"
	case flavor.Crushed:
		return "on crushed ice"
	}
	return string(s.Service)
}
