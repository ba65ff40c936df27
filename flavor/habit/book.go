package habit

import (
	"math"

	"counterpour/flavor"
)

// Part is one ingredient of a drink and how much of the drink it is.
type Part struct {
	Profile *flavor.Profile
	Share   float64 // of the volume before ice, 0 to 1
}

// Limit is what good drinks pour of an ingredient, as shares of the drink before
// ice.
type Limit struct {
	Usual float64 // in the middle
	Most  float64 // all but a few stay below
	Own   bool    // some proven drink pours this very ingredient
}

// Book is what proven drinks pour. It is read-only once built and safe for
// concurrent use.
type Book struct {
	drinks  int
	classes map[flavor.Class]*shelf
	levels  [NumLevels][]sample
	high    [NumLevels]float64 // see High
}

// shelf is what proven drinks pour of one class, in ascending order.
type shelf struct {
	samples  []sample
	profiles []*flavor.Profile
	smells   []flavor.Aroma // of length 1, or nothing
}

// NewBook reads proven drinks, each given by its parts.
func NewBook(drinks [][]Part) *Book {
	b := &Book{drinks: len(drinks), classes: map[flavor.Class]*shelf{}}
	for i, parts := range drinks {
		for _, p := range parts {
			if p.Share > 0 {
				b.shelf(p.Profile.Class).add(p.Profile, sampleOf(dose(p), i, 0))
			}
		}
		b.addLevels(i, parts)
	}
	for _, s := range b.classes {
		sortSamples(s.samples)
	}
	b.sortLevels()
	return b
}

// shelf returns the shelf of a class, which starts with what common practice
// says of it.
func (b *Book) shelf(c flavor.Class) *shelf {
	s := b.classes[c]
	if s == nil {
		s = &shelf{}
		s.add(nil, sampleOf(commonMost(c), common, 0))
		b.classes[c] = s
	}
	return s
}

func (s *shelf) add(p *flavor.Profile, x sample) {
	x.pour = len(s.samples)
	s.samples = append(s.samples, x)
	s.profiles = append(s.profiles, p)
	var smell flavor.Aroma
	if p != nil {
		smell = smellOf(p)
	}
	s.smells = append(s.smells, smell)
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
	// What ingredients that smell alike say counts for so many drinks, against
	// those that pour the ingredient itself; what the class says counts for so
	// many against them; what common practice says, for so many against the class.
	alikeDrinks  = 0.10
	classDrinks  = 0.10
	commonDrinks = 0.50
)

// Limits returns, for each part of a drink, what good drinks pour of it. Near is
// how near each proven drink of the book is in make-up, 0 to 1, in the order of
// [NewBook]. An ingredient of a class that no proven drink pours goes by common
// practice alone.
func (b *Book) Limits(parts []Part, near []float64) []Limit {
	out := make([]Limit, len(parts))
	var weights []float64
	for i := range parts {
		p := parts[i].Profile
		s := b.classes[p.Class]
		if s == nil {
			s = &shelf{}
			s.add(nil, sampleOf(commonMost(p.Class), common, 0))
		}
		weights = s.weigh(weights[:0], p, near)
		out[i] = s.limit(weights, p)
	}
	return out
}

// weigh appends the weight of each sample for an ingredient: that of the proven
// drink it is of, and what the ingredient it is of says about the one in hand.
func (s *shelf) weigh(dst []float64, p *flavor.Profile, near []float64) []float64 {
	smell := smellOf(p)
	var alike, class float64 // sums of weights
	likeness := make([]float64, len(s.samples))
	for i := range s.samples {
		x := &s.samples[i]
		if x.drink == common {
			dst = append(dst, commonDrinks)
			class += commonDrinks
			continue
		}
		w := otherMakeUp + near[x.drink]
		dst = append(dst, w)
		class += w
		if s.profiles[x.pour] == p {
			likeness[i] = own
			continue
		}
		o := &s.smells[x.pour]
		var cos float64
		for f := range smell {
			cos += smell[f] * o[f]
		}
		likeness[i] = math.Exp((cos - 1) / smellWidth)
		alike += w * likeness[i]
	}
	// One drink of an upper level is worth this much on the level below.
	perAlike := alikeDrinks / (alike + classDrinks)
	perClass := perAlike * classDrinks / class
	for i := range dst {
		w := dst[i] * perClass
		switch {
		case likeness[i] == own:
			w += dst[i]
		default:
			w += dst[i] * likeness[i] * perAlike
		}
		dst[i] = w
	}
	return dst
}

// own marks a sample of the very ingredient.
const own = -1

// limit weighs the samples of a shelf.
func (s *shelf) limit(weights []float64, p *flavor.Profile) Limit {
	var middle, total float64
	l := Limit{}
	for i, w := range weights {
		middle += w * s.samples[i].at
		total += w
		l.Own = l.Own || s.profiles[s.samples[i].pour] == p
	}
	strong := strength(p)
	l.Most = math.Exp(mostOf(s.samples, weights, rareOf(p))) / strong
	l.Usual = math.Min(math.Exp(middle/total)/strong, l.Most)
	return l
}

// dose is how much a part makes itself felt: its share, and for what seasons a
// drink its share times how strong it tastes, so that a drop of one counts as a
// dash of another.
func dose(p Part) float64 { return p.Share * strength(p.Profile) }

// strength is how strong a seasoning tastes, in intensities of aroma; 1 for what
// is poured by the jigger. Salt and bitterness are put on that scale by judgement:
// 3 g/L of salt, or 10 mg/L of quinine, count as an intensity of 1.
func strength(p *flavor.Profile) float64 {
	if p.Class.Part() != flavor.PartSeasoning {
		return 1
	}
	return math.Max(leastStrength, p.Aroma.Total()+p.Salt.Value/3+p.Bitter.Value/10)
}

const leastStrength = 3.0

// rareOf returns the share of good drinks that may pour more than the most. What
// seasons or thickens a drink overtakes it, so there the line is drawn closer than
// for what is poured by the jigger, where the ratio tells more.
func rareOf(p *flavor.Profile) float64 {
	switch p.Class {
	case flavor.ClassFreshHerb, flavor.ClassFruit: // mild, and much of it goes with the strainer
		return 0.02
	}
	switch p.Class.Part() {
	case flavor.PartSeasoning, flavor.PartTexture:
		return 0.05
	case flavor.PartModifier:
		if p.Class == flavor.ClassAniseSpirit { // poured by the dash or the rinse
			return 0.05
		}
		return 0.03
	}
	return 0.02
}
