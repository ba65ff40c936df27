package forgotten

import (
	"counterpour/flavor"
	"counterpour/flavor/makeup"
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
	specs       []*flavor.Spec    // themselves
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

// Add takes in what the next proven drink teaches.
func (b *Book) Add(l *Lesson) {
	b.joints.add(len(b.based), l.joined)
	b.specs = append(b.specs, l.spec)
	b.Served.Add(l.spec.Service)
	b.mixed = append(b.mixed, mixes(l.spec.Method))
	b.bases, b.based = append(b.bases, l.base), append(b.based, l.base != nil)
	b.sours, b.soured = append(b.sours, l.sour), append(b.soured, l.sour != nil)
	b.lengths = append(b.lengths, l.length)
	b.strong = append(b.strong, l.strong)
	b.sharp = append(b.sharp, l.sharp)
	b.sweet = append(b.sweet, l.sweet)
	b.seasoned = append(b.seasoned, l.seasoned)
	b.milky = append(b.milky, l.milky)
	b.unbased.Add(&l.unbased)
	b.unsweetened.Add(&l.unsweetened)
	b.unseasoned.Add(&l.unseasoned)
	b.unturned.Add(&l.unturned)
	b.unsoured.Add(&l.unsoured)
	b.unlengthed.Add(&l.unlengthed)
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
