package habit

import (
	"math"
	"slices"

	"counterpour/flavor"
)

// shelf is what proven drinks pour of one class, in ascending order of the amount.
type shelf struct {
	read     []sample // until it is closed
	samples  columns
	profile  []int32           // of each sample
	lead     []float64         // the same: how surely the drink is made of it first
	profiles []*flavor.Profile // each once
	smells   []flavor.Aroma    // of each profile, and those below; none on a shelf of doses, which has the same profiles
	alike    [][]float64       // the likeness of the others to it
	accents  []float64         // see accent
}

// likenessTo returns how alike each profile of the shelf smells to one, in a list that room
// lends if it is not on the shelf, and the place of that, -1 if it has none.
func (s *shelf) likenessTo(p *flavor.Profile, room func(int) []float64) (likeness []float64, at int) {
	if at = slices.Index(s.profiles, p); at >= 0 {
		return s.alike[at], at
	}
	likeness = room(len(s.profiles))
	s.compareWith(smellOf(p), likeness)
	return likeness, at
}

// compareWith fills out with how alike each profile of the shelf is to a smell.
func (s *shelf) compareWith(smell flavor.Aroma, out []float64) {
	for i := range s.smells {
		other := &s.smells[i]
		var cos float64
		for f := range smell {
			cos += smell[f] * other[f]
		}
		out[i] = math.Exp((cos - 1) / smellWidth)
	}
}

// own marks the ingredient itself.
const own = -1.0

// add puts an amount of a part, be it a share or a dose, on the shelf.
func (s *shelf) add(p Part, amount float64, drink int) {
	at := -1
	for i, o := range s.profiles {
		if o == p.Profile {
			at = i
		}
	}
	if at < 0 {
		at = len(s.profiles)
		s.profiles = append(s.profiles, p.Profile)
	}
	reach := habitOf(p.Profile).reach
	x := sampleOf(amount*Strength(p.Profile), drink, reach)
	x.profile, x.lead = at, p.Lead
	s.read = append(s.read, x)
}

// close ends the reading of drinks.
func (s *shelf) close() {
	sortSamples(s.read)
	s.samples = columnsOf(s.read)
	for _, x := range s.read {
		s.profile, s.lead = append(s.profile, int32(x.profile)), append(s.lead, x.lead)
	}
	s.read = nil
}

// compare compares what is on a shelf that was closed.
func (s *shelf) compare() {
	for _, p := range s.profiles {
		s.smells = append(s.smells, smellOf(p))
	}
	for i := range s.profiles {
		alike := make([]float64, len(s.profiles))
		s.compareWith(s.smells[i], alike)
		alike[i] = own
		s.alike, s.accents = append(s.alike, alike), append(s.accents, s.accent(alike))
	}
}

// smellOf returns the direction of an aroma.
func smellOf(p *flavor.Profile) flavor.Aroma {
	a := p.Aroma
	var norm float64
	for _, v := range a {
		norm += v * v
	}
	if norm <= 0 {
		return flavor.Aroma{}
	}
	norm = math.Sqrt(norm)
	for f := range a {
		a[f] /= norm
	}
	return a
}

// How much of what proven drinks say of other ingredients and other make-ups is
// believed; chosen by leaving out each proven drink in turn, see the trial.
const (
	smellWidth  = 0.15 // of the likeness of smells, in 1 − cosine
	otherMakeUp = 0.05 // weight of a proven drink that is made of quite other things
	ownMakeUp   = 0.15 // the same, of one that pours the ingredient itself
	// How many drinks each voice counts for against the one before it: ingredients that
	// smell alike against the ingredient itself, the class against those, and common
	// practice against the class.
	alikeDrinks  = 0.30
	classDrinks  = 0.30
	commonDrinks = 0.30
)

// limit pools what the ingredient that is asked of, its likes, its class and common practice say, the last
// being the most that it pours.
func (s *shelf) limit(a *Asked, common float64, first bool, near []float64) Limit {
	p, likeness := a.of, a.likeness
	usual := habitOf(p)
	rare, reach := usual.rare, usual.reach
	most := math.Log(common)
	x := pool{most: most, usual: most - commonReach}
	n := len(s.lead)
	numbers := a.rooms.take(4 * n)
	defer a.rooms.put(numbers)
	room := *numbers
	clear(room[:3*n])
	class, alike, itself, below := tail{weights: room[:n]}, tail{weights: room[n : 2*n]}, tail{weights: room[2*n : 3*n]}, room[3*n:]
	twins := 0.0                                      // of itself, the part that is said by what smells all but the same
	modifies := p.Class.Part() == flavor.PartModifier // and so does by its smell what it does
	known := false                                    // some drink pours it, leading or beside
	for i, w := range s.lead {
		if !first {
			w = 1 - w
		}
		l := likeness[s.profile[i]]
		known = known || l == own
		if w <= 0 {
			continue
		}
		at, nearness := s.samples.at[i], near[s.samples.drink[i]]
		class.add(i, at, w*(nearness+otherMakeUp))
		if l == own {
			itself.add(i, at, w*(nearness+ownMakeUp))
		} else {
			alike.add(i, at, w*(nearness+otherMakeUp)*l)
			if modifies {
				twin := w * (nearness + ownMakeUp) * twinOf(l)
				itself.add(i, at, twin)
				twins += twin
			}
		}
	}
	take := func(t *tail, others float64) {
		if t.total > 0 {
			x.take(t.total/(t.total+others), t.most(s.samples.lift, rare, reach, below), t.middle/t.total)
		}
	}
	take(&class, commonDrinks)
	x.most = math.Max(x.most, most)
	take(&alike, classDrinks)
	take(&itself, alikeDrinks)
	l := Limit{Own: known, Support: itself.total - twins + alike.total}
	strong := Strength(p)
	l.Most = math.Max(math.Exp(x.most)/strong, leastOf(p))
	l.Usual = math.Min(math.Exp(x.usual)/strong, l.Most)
	return l
}

// twinOf returns how far a modifier speaks for another that smells so alike: next to
// nothing but for what smells all but the same.
func twinOf(likeness float64) float64 { return likeness * likeness * likeness }

// What share of the drinks that pour an ingredient must pour it beside others: from
// accentFrom on it may be an accent, from accentTo on it is one. One drink that is made
// of it, or of its twin, weighs as much as leadingTimes others, and accentDrinks that
// nobody knows of may be. Chosen by the trial.
const (
	accentFrom, accentTo = 0.4, 0.7
	accentDrinks         = 2.0
	leadingTimes         = 10.0
)

// accent returns how surely an ingredient that so smells like those of the shelf is poured
// beside others only, 0 to 1.
func (s *shelf) accent(likeness []float64) float64 {
	var leads, besides float64
	for i, lead := range s.lead {
		if l := likeness[s.profile[i]]; l == own {
			leads, besides = leads+lead, besides+1-lead
		} else {
			leads += twinOf(l) * lead
		}
	}
	share := besides / (besides + leadingTimes*leads + accentDrinks)
	return math.Min(1, math.Max(0, (share-accentFrom)/(accentTo-accentFrom)))
}

// commonReach is how far, as a logarithm, the middle of a class lies below what
// common practice pours of it at most.
const commonReach = 0.7

// pool is what is known of a dose so far, as logarithms.
type pool struct{ most, usual float64 }

// take draws what is known a share of the way toward what some drinks say.
func (x *pool) take(share, most, usual float64) {
	x.most += share * (most - x.most)
	x.usual += share * (usual - x.usual)
}

// Strength returns how strong a seasoning or a modifier tastes: a seasoning in intensities of
// aroma, a modifier against an ordinary one. It is 1 for everything else, which the ratio tells
// of. Salt and bitterness are put on that scale by judgement: 3 g/L
// of salt, or 10 mg/L of quinine, count as an intensity of 1.
func Strength(p *flavor.Profile) float64 {
	const leastSeasoning, leastModifier, usualModifier = 3.0, 8.0, 20.0
	switch p.Class.Part() {
	case flavor.PartSeasoning:
		return math.Max(leastSeasoning, p.Aroma.Total()+p.Salt.Value/3+p.Bitter.Value/10)
	case flavor.PartModifier:
		return math.Max(leastModifier, p.Aroma.Total()+p.Bitter.Value/10) / usualModifier
	}
	return 1
}

// custom is the share of good drinks that may pour more than the most of an ingredient,
// and by what factor, as a logarithm, they go beyond one that is known.
type custom struct{ rare, reach float64 }

// customs are those of what overtakes a drink, by its part: the line is drawn closer there
// than for what is poured by the jigger, where the ratio tells more.
var customs = map[flavor.Part]custom{
	flavor.PartModifier: {0.04, closeReach}, flavor.PartSeasoning: {0.05, closeReach}, flavor.PartTexture: {0.05, closeReach},
}

// habitOf returns the custom of an ingredient.
func habitOf(p *flavor.Profile) custom {
	c, closer := customs[p.Class.Part()]
	switch {
	case p.Class.Mild():
		return custom{0.02, closeReach}
	case closer:
		return c
	}
	return custom{0.02, wideReach}
}

// leastOf returns the share of a small glass that the least a hand measures of a
// seasoning or an egg is: never too much.
func leastOf(p *flavor.Profile) float64 {
	const glassML, dashML = 90.0, 0.8
	if p.Class.Part() != flavor.PartSeasoning && p.Class.Spoils() != flavor.SpoilsRawEgg {
		return 0
	}
	if len(p.Yields) > 0 {
		return p.Yields[0].Amount.Value / glassML
	}
	return dashML / glassML
}
