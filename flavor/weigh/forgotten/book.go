package forgotten

import (
	"slices"

	"counterpour/flavor"
	"counterpour/flavor/makeup"
	"counterpour/flavor/ratio"
	"counterpour/flavor/technique"
)

// Book is the proven drinks, whole and each without one of its parts. It is read-only once
// all are added, and then safe for concurrent use.
type Book struct {
	Served      makeup.Services   // how each is served
	strong      []bool            // of each: it has alcohol, or what stands for it
	bases       []*flavor.Profile // nil if it has none
	based       []bool            // it has one
	sours       []*flavor.Profile // what it is mostly made sour with
	soured      []bool            // it has that
	sharp       []bool            // it has a sour part
	sweet       []bool            // it has a syrup or sugar
	lengths     []*flavor.Profile // what it is mostly lengthened with; nil if nothing
	seasoned    []bool            // it has bitters
	milky       []bool            // it has milk or cream that acid turns
	mixed       []bool            // it is shaken, blended or swizzled
	joints      joints            // their ingredients
	titled      titled            // their names
	unbased     Rests             // without its bases
	unsweetened Rests             // without syrups and sugar
	unturned    Rests             // without what is sour and what that turns
	unsoured    Rests             // without what is sour
	unlengthed  Rests             // without what lengthens
	unseasoned  Rests             // without bitters
}

// Grow makes room for n drinks.
func (b *Book) Grow(n int) {
	for _, r := range []*Rests{&b.unbased, &b.unsweetened, &b.unseasoned, &b.unturned, &b.unsoured, &b.unlengthed} {
		r.kin.Grow(n)
	}
}

// Add takes in the next proven drink, given its parts, the mL of its pours, and what those
// are in all.
func (b *Book) Add(spec *flavor.Spec, parts []makeup.Part, ml []float64, e *ratio.Equivalents) {
	b.joints.add(len(b.based), parts, ml)
	b.titled.add(spec)
	b.Served.Add(spec.Service)
	b.mixed = append(b.mixed, mixes(spec.Method))
	base, sour, length := largestOf(spec, flavor.PartBase), largestOf(spec, flavor.PartSour), largestOf(spec, flavor.PartLength)
	b.bases, b.based = append(b.bases, base), append(b.based, base != nil)
	b.sours, b.soured = append(b.sours, sour), append(b.soured, sour != nil)
	b.lengths = append(b.lengths, length)
	b.strong = append(b.strong, base != nil || makeup.Presence(e[ratio.Strong], e.Total(), makeup.HalfWine) > 0.5)
	b.sharp = append(b.sharp, makeup.Presence(souring(parts, ml, tastedAcid), e.Total(), halfSharp) > 0.5)
	b.sweet = append(b.sweet, largestOf(spec, flavor.PartSweetener) != nil)
	b.seasoned = append(b.seasoned, slices.ContainsFunc(parts, func(p makeup.Part) bool { return isBitters(&p) }))
	b.milky = append(b.milky, slices.ContainsFunc(parts, func(p makeup.Part) bool { return technique.Turns(p.Profile) }))
	b.unbased.Add(parts, ml, makeup.IsBase)
	b.unsweetened.Add(parts, ml, makeup.IsSweetener)
	b.unseasoned.Add(parts, ml, isBitters)
	b.unturned.Add(parts, ml, isSharpOrTurns)
	b.unsoured.Add(parts, ml, makeup.IsSharp)
	b.unlengthed.Add(parts, ml, lengthens)
}

// largestOf returns the largest ingredient of a part in a spec, nil if it has none.
func largestOf(s *flavor.Spec, part flavor.Part) *flavor.Profile {
	var best *flavor.Profile
	var most float64
	for i := range s.Pours {
		if p := &s.Pours[i]; p.Profile.Class.Part() == part && p.ML > most {
			best, most = p.Profile, p.ML
		}
	}
	return best
}

// mixes reports whether a method mixes thoroughly, as juice wants.
func mixes(m flavor.Method) bool { return m.Aerates() || m == flavor.Swizzle }
