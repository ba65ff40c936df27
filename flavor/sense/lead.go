package sense

import (
	"cmp"
	"maps"
	"slices"

	"counterpour/flavor"
)

// Lead is a material that characterises an ingredient.
type Lead struct {
	Name  string
	Share float64 // of the whole, 0 to 1
}

// leadShare is the share of an ingredient's aroma from which a material leads
// it, and leadOfFirst what it must have of the first one.
const (
	leadShare   = 0.2
	leadOfFirst = 0.5
	// tellingOdorants is how many odorants characterise a material.
	tellingOdorants = 3
	// keptShare: a lead is lost if less than this share of its characteristic odorants is
	// left.
	keptShare = 0.35
)

// Leads returns the materials that lead an ingredient, the first one first: those
// with at least a fifth of its aroma, and half as much as the first. None leads what
// smells of nothing.
func (s *Space) Leads(p *flavor.Profile) []Lead {
	var out []Lead
	total := 0.0
	for _, m := range p.Materials {
		total += m.Intensity
	}
	if total <= 0 {
		return nil
	}
	for _, m := range p.Materials {
		out = append(out, Lead{m.Material, m.Intensity / total})
	}
	sortLeads(out)
	for i, l := range out {
		if l.Share < leadShare || l.Share < leadOfFirst*out[0].Share {
			return out[:i]
		}
	}
	return out
}

// Carried is an odorant of a material.
type Carried struct {
	Odorant
	Importance float64 // for the smell of the material, 0 to 1
}

// Odorants returns up to n odorants that characterise a material, sorted by importance
// times rarity, the highest first. It is empty if the material is unknown or has none.
func (s *Space) Odorants(material string, n int) []Carried {
	m, ok := s.materials[material]
	if !ok {
		return nil
	}
	var out []Carried
	for _, p := range m.parts[:min(n, len(m.parts))] {
		out = append(out, Carried{s.odorants[p.odorant], p.weight})
	}
	return out
}

func sortLeads(list []Lead) {
	slices.SortStableFunc(list, func(a, b Lead) int {
		return cmp.Or(cmp.Compare(b.Share, a.Share), cmp.Compare(a.Name, b.Name))
	})
}

// Lost is a lead of an ingredient that one glass has and another lacks.
type Lost struct {
	Material string // or what it was poured for, such as "salt"
	// Odorants that characterised the material and are gone with it, the most
	// characteristic first: "no citral, so no lemon".
	Odorants []string
	Kept     float64 // share of its characteristic odorants that is still there, 0 to 1
}

// Lost returns what of an ingredient's leads is in the glass before and not in
// the glass after: first the taste or the feel that it is poured for, then its
// leading materials in their order. A lead that the first glass hardly has cannot
// be lost; one that comes from something else is not lost.
func (s *Space) Lost(p *flavor.Profile, before, after *Percept) []Lost {
	out := s.lostSense(p, before, after)
	for _, lead := range s.Leads(p) {
		if before.intensity(lead.Name) < laws[Aroma].threshold {
			continue
		}
		if l, gone := s.lostMaterial(lead.Name, before, after); gone {
			out = append(out, l)
		}
	}
	return out
}

// leastSense is the least amount of a sense in a glass that can be lost, in steps. A few
// drops of saline are less than a step, and still the reason for the pour.
const leastSense = 0.3

// senseWords name what an ingredient may be poured for.
var senseWords = [...]string{Ethanol: "strength", Sweet: "sweetness", Sour: "acid", Salty: "salt", Bitter: "bitterness", Umami: "savour",
	Pungent: "bite", Cooling: "cool", Astringent: "dryness", Carbonation: "fizz", Body: "body", Fat: "richness", Foam: "foam"}

// Lead returns what a pour is for that is there for the sense, such as "strength";
// empty if there is no word.
func (s Sense) Lead() string {
	if int(s) < len(senseWords) {
		return senseWords[s]
	}
	return ""
}

// LeadSense returns the sense that an ingredient by itself has most of, counted in
// steps from nothing, cloud and colour left out; false if it has none.
func (s *Space) LeadSense(p *flavor.Profile) (Sense, bool) {
	v := s.PerML(p)
	lead, most := Ethanol, 0.0
	for i := range senseWords {
		if steps := laws[i].at(v[i]); steps > most {
			lead, most = Sense(i), steps
		}
	}
	return lead, most > 0
}

func (s *Space) lostSense(p *flavor.Profile, before, after *Percept) []Lost {
	lead, ok := s.LeadSense(p)
	if !ok || laws[lead].at(before.Holds[lead]) < leastSense {
		return nil
	}
	if kept := after.Holds[lead] / before.Holds[lead]; kept < keptShare {
		return []Lost{{Material: senseWords[lead], Kept: kept}}
	}
	return nil
}

func (g *Percept) intensity(name string) float64 {
	for _, m := range g.Materials {
		if m.Material == name {
			return m.Intensity
		}
	}
	return 0
}

func (s *Space) lostMaterial(name string, before, after *Percept) (Lost, bool) {
	l := Lost{Material: name}
	m, ok := s.materials[name]
	if !ok || len(m.parts) == 0 {
		l.Kept = min(1, after.intensity(name)/before.intensity(name))
		return l, l.Kept < keptShare
	}
	var kept, all float64
	for _, p := range m.parts[:min(tellingOdorants, len(m.parts))] {
		w := p.weight * s.idf[p.odorant]
		left := min(1, s.odorantIn(after, p.odorant)/s.odorantIn(before, p.odorant))
		all += w
		kept += w * left
		if left < keptShare {
			l.Odorants = append(l.Odorants, s.odorants[p.odorant].Name)
		}
	}
	l.Kept = kept / all
	l.Odorants = s.called(l.Odorants)
	return l, l.Kept < keptShare
}

// called replaces odorants that go by one name, where all of them are there.
func (s *Space) called(odorants []string) []string {
	for _, name := range slices.Sorted(maps.Keys(s.together)) {
		group := s.together[name]
		missing := func(o string) bool { return !slices.Contains(odorants, o) }
		first := slices.IndexFunc(odorants, func(o string) bool { return slices.Contains(group, o) })
		if first < 0 || slices.ContainsFunc(group, missing) {
			continue
		}
		rest := slices.DeleteFunc(slices.Clone(odorants), func(o string) bool { return slices.Contains(group, o) })
		odorants = slices.Insert(rest, min(first, len(rest)), name)
	}
	return odorants
}

// odorantIn is how much of an odorant a glass has: intensity times importance.
func (s *Space) odorantIn(g *Percept, odorant int) float64 {
	var sum float64
	for _, x := range g.Materials {
		m, ok := s.materials[x.Material]
		if !ok {
			continue
		}
		for _, p := range m.parts {
			if p.odorant == odorant {
				sum += x.Intensity * p.weight
			}
		}
	}
	return sum
}
