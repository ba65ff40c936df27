package station

import (
	"cmp"
	"slices"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/riff/wording"
	"counterpour/flavor/sense"
)

// Why says why a drink is worth a try: what it rests on in proven drinks, and
// what joins what came in to what was there. It claims nothing of the taste, which
// the text does.
func (j *Job) Why(s *flavor.Spec) string {
	came, stays := j.news(s)
	var words []string
	if p := j.precedent(s, came); p != "" {
		words = append(words, p)
	}
	if b := j.bond(came, stays); b != "" {
		words = append(words, b)
	}
	return wording.Capital(strings.Join(words, "; "))
}

// news divides what a drink pours into what came in and what was there, the
// larger first.
func (j *Job) news(s *flavor.Spec) (came, stays []*flavor.Profile) {
	for _, p := range wording.ByVolume(s) {
		if j.From == nil && j.Must[p.Profile.ID] || j.From != nil && !j.From.HasProfile(p.Profile) {
			came = append(came, p.Profile)
		} else {
			stays = append(stays, p.Profile)
		}
	}
	return came, stays
}

// precedent tells how many proven drinks pour what came in beside what leads, or
// something of its class if none does, and the one that is most like the drink.
func (j *Job) precedent(s *flavor.Spec, came []*flavor.Profile) string {
	x := j.ParentOf(s, "", 0)
	if len(x.products) == 0 {
		return ""
	}
	// Of drinks that are made of the same the one that is poured alike comes first.
	for i, apart := range j.Station.book.RatiosFrom(s) {
		x.products[i] -= apartCost * apart
	}
	if len(came) == 0 {
		if best := mostLike(x.products, func(i int) bool { return pouredAs(&j.Station.Proven()[i].Spec, s) }); best >= 0 {
			return wording.AsPoured(j.provenName(best))
		}
		return wording.Nearest(j.provenName(mostLike(x.products, func(int) bool { return true })))
	}
	lead := wording.LeadsOf(s)[0]
	if came[0].Class == lead.Class && lead != came[0] {
		lead = came[0] // of two spirits of a class, the one that came in is told
	}
	for _, of := range []struct {
		name string
		is   func(p *flavor.Profile) bool
	}{
		{came[0].Name, func(p *flavor.Profile) bool { return p.ID == came[0].ID }},
		{string(came[0].Class), func(p *flavor.Profile) bool { return p.Class == came[0].Class }},
	} {
		count := 0
		best := mostLike(x.products, func(i int) bool {
			proven := &j.Station.Proven()[i].Spec
			if tooMany(proven) || !proven.Has(of.is) || lead != came[0] && !proven.HasClass(lead.Class) {
				return false
			}
			count++
			return true
		})
		switch {
		case count == 0 || of.name == string(lead.Class) && lead == came[0]:
		case lead == came[0]:
			return wording.PouredIn(of.name, count, j.provenName(best))
		default:
			return wording.PouredWith(of.name, string(lead.Class), count, j.provenName(best))
		}
	}
	best := j.provenName(mostLike(x.products, func(int) bool { return true }))
	if lead == came[0] {
		return wording.Nearest(best)
	}
	return wording.NeverWith(came[0].Name, string(lead.Class), best)
}

// mostBases is the number of bases beyond which a drink says nothing of any two.
const mostBases = 2

func tooMany(s *flavor.Spec) bool { return bases(s) > mostBases }

func bases(s *flavor.Spec) (n int) {
	for i := range s.Pours {
		if s.Pours[i].Profile.Base() {
			n++
		}
	}
	return n
}

// apartCost is what the distance of two ratios takes off the likeness of two drinks: it tells
// drinks apart that are made of the same, and hardly any others.
const apartCost = 1e-3

// How a drink must be poured for it to be told as a proven one is: each class in the same share
// of the drink, to so many times, and none more than another that the proven one pours more of,
// by so many times either. A dash more or less is a larger share of a seasoning, which has more room.
// Common practice, no source.
const (
	sameShare     = 1.5
	sameSeasoning = 2.0
	sameOrder     = 1.1
)

// pouredAs reports whether a drink pours the classes that a proven one does, in its ratio, and as
// hot or as cold.
func pouredAs(proven, s *flavor.Spec) bool {
	if !sameKinds(proven, s) || (proven.Service == flavor.Hot) != (s.Service == flavor.Hot) {
		return false
	}
	var is, was []float64
	for _, c := range flavor.Classes() {
		of := func(p *flavor.Profile) bool { return p.Class == c }
		if !s.Has(of) {
			continue
		}
		a, b, most := s.MLOf(of)/s.VolumeML(), proven.MLOf(of)/proven.VolumeML(), sameShare
		if c.Part() == flavor.PartSeasoning {
			most = sameSeasoning
		}
		if a > most*b || b > most*a {
			return false
		}
		is, was = append(is, a), append(was, b)
	}
	for i := range is {
		for k := range i {
			if is[i] > sameOrder*is[k] && was[k] > sameOrder*was[i] || is[k] > sameOrder*is[i] && was[i] > sameOrder*was[k] {
				return false
			}
		}
	}
	return true
}

// sameKinds reports whether two drinks pour the same classes of things.
func sameKinds(a, b *flavor.Spec) bool {
	for i := range a.Pours {
		if !b.HasClass(a.Pours[i].Profile.Class) {
			return false
		}
	}
	for i := range b.Pours {
		if !a.HasClass(b.Pours[i].Profile.Class) {
			return false
		}
	}
	return true
}

func (j *Job) provenName(i int) string { return j.Station.Proven()[i].Spec.Name }

// mostLike returns the proven drink that is made most like a drink, of those that
// count; −1 if none does.
func mostLike(products []float64, counts func(i int) bool) int {
	best := -1
	for i, v := range products {
		if counts(i) && (best < 0 || v > products[best]) {
			best = i
		}
	}
	return best
}

// tellingOdorants is how many odorants of a material are looked at.
const tellingOdorants = 3

// bond names what the bases and modifiers that were there smell of as what came in does: the
// note that leads an odorant which both hold, since nobody knows the molecule by its name.
func (j *Job) bond(came, stays []*flavor.Profile) string {
	for _, c := range came {
		mine := j.odorants(c)
		for _, s := range stays {
			if part := s.Class.Part(); part != flavor.PartBase && part != flavor.PartModifier {
				continue // every citrus shares something with everything
			}
			for _, o := range j.odorants(s) {
				if holds(mine, o) {
					return wording.Share(c.Name, s.Name, leading(o))
				}
			}
		}
	}
	return ""
}

// odorants lists what leads the smell of an ingredient, molecule by molecule.
func (j *Job) odorants(p *flavor.Profile) (out []sense.Odorant) {
	for _, lead := range j.Station.Space.Leads(p) {
		for _, o := range j.Station.Space.Odorants(lead.Name, tellingOdorants) {
			if len(o.Character) > 0 {
				out = append(out, o.Odorant)
			}
		}
	}
	return out
}

// leading is the note that an odorant smells of most, of as much the one named first.
func leading(o sense.Odorant) string {
	return slices.MaxFunc(o.Character, func(a, b sense.Share) int { return cmp.Compare(a.Weight, b.Weight) }).Name
}

func holds(list []sense.Odorant, o sense.Odorant) bool {
	return slices.ContainsFunc(list, func(x sense.Odorant) bool { return x.Name == o.Name })
}
