package precedent

import (
	"cmp"
	"math"
	"slices"

	"counterpour/flavor"
	"counterpour/flavor/template"
)

// Practice is how much proven drinks pour of a thing.
type Practice struct {
	pours  map[flavor.Class][]sample
	counts map[string]float64 // proven pours of an ingredient, by id
	beside float64            // see MostBesideBase
}

// sample is one pour of a proven drink.
type sample struct {
	profile *flavor.Profile
	ml      float64
}

// NewPractice returns how much proven drinks pour of each thing.
func NewPractice(proven []template.Labelled) *Practice {
	p := &Practice{pours: map[flavor.Class][]sample{}, counts: map[string]float64{}}
	for i := range proven {
		s := &proven[i].Spec
		for j := range s.Pours {
			x := &s.Pours[j]
			p.counts[x.Profile.ID]++
			p.pours[x.Profile.Class] = append(p.pours[x.Profile.Class], sample{x.Profile, x.ML})
		}
	}
	p.beside = mostBesideBase(proven)
	return p
}

// A liqueur beside a base: from so much sugar, in g/L, it sweetens, and from so much
// base, in mL, it is not what the drink stands on. Common practice, no source.
const (
	sweetLiqueur = 100.0
	leastBaseML  = 29.0
)

// SweetBesideBase reports whether a sweet liqueur is poured beside a base, cream aside.
func SweetBesideBase(s *flavor.Spec, liqueur *flavor.Profile) bool {
	if liqueur.Class.Kin() != flavor.KinLiqueur || liqueur.Sugar.Value < sweetLiqueur {
		return false
	}
	base := 0.0
	for i := range s.Pours {
		p := &s.Pours[i]
		if p.Profile.Base() {
			base += p.ML
		}
		if p.Profile.Class.Kin() == flavor.KinMilk {
			return false
		}
	}
	return base >= leastBaseML
}

// Cloying reports whether sweet liqueurs outweigh the base that they are poured beside,
// with nothing sour and nothing long to answer them. Common practice, no source.
func Cloying(s *flavor.Spec) bool {
	var base, sweet float64
	for i := range s.Pours {
		p := &s.Pours[i]
		switch part := p.Profile.Class.Part(); {
		case part == flavor.PartSour, part == flavor.PartLength:
			return false
		case part == flavor.PartBase:
			base += p.ML
		case SweetBesideBase(s, p.Profile):
			sweet += p.ML
		}
	}
	return base > 0 && sweet > base
}

// mostBesideBase is a little more than nineteen in twenty of the sweet liqueurs that
// proven drinks pour beside a base; without end if none does.
func mostBesideBase(proven []template.Labelled) float64 {
	var mls []float64
	for i := range proven {
		s := &proven[i].Spec
		for j := range s.Pours {
			if SweetBesideBase(s, s.Pours[j].Profile) {
				mls = append(mls, s.Pours[j].ML)
			}
		}
	}
	if len(mls) == 0 {
		return math.Inf(1)
	}
	slices.Sort(mls)
	return beyondMost * mls[len(mls)-1-len(mls)/20]
}

// MostBesideBase is the most of a sweet liqueur, in mL, that is poured beside a base.
func (p *Practice) MostBesideBase() float64 { return p.beside }

// LeadOf returns the aroma family that leads an ingredient; false if it smells
// of nothing.
func LeadOf(p *flavor.Profile) (flavor.AromaFamily, bool) {
	lead := 0
	for f, v := range p.Aroma {
		if v > p.Aroma[lead] {
			lead = f
		}
	}
	return flavor.AromaFamily(lead), p.Aroma[lead] > 0
}

// Rules of the most that is poured, see [Practice.MostML].
const (
	ownSamples  = 3    // proven pours of an ingredient from which they alone speak
	beyondMost  = 1.15 // a little beyond what anybody pours is nobody's fault
	mostShare   = 0.90 // of the weight of all samples, what is poured stays below
	classWeight = 0.5  // of another ingredient of the class that smells the same
	smellWidth  = 0.10 // of the likeness of smells, in 1 − cosine
	commonPours = 0.5  // pours that common practice counts for
)

// MostML returns the most of an ingredient, in mL, that reads as a bartender's.
//
// If proven drinks pour it three times or more, that is a little more than the largest of these
// pours, the largest twentieth left out. Else it is what nine in ten pours of its class stay
// below: pours of the ingredient itself count fully, those of others by the likeness of their
// smells, and common practice counts for half a pour. A base takes the place of any other,
// strength for strength.
func (p *Practice) MostML(x *flavor.Profile) float64 {
	most := p.mostOfKind(x)
	if x.Class.Part() == flavor.PartSeasoning {
		most = min(most, mostSeasoning*x.Class.MostML())
	}
	if x.Base() {
		most = max(most, flavor.ClassOtherSpirit.MostML()*min(1, usualStrength/max(x.ABV.Value, leastStrength)))
	}
	return most
}

// mostSeasoning is how many times the most of its class what seasons is poured at
// most: a few proven drinks take bitters for a base.
const mostSeasoning = 1.5

// usualStrength is that of a base, % vol, beyond which less of it is poured.
const usualStrength = 47.0

// leastStrength keeps a ratio to nothing finite.
const leastStrength = 1e-12

func (p *Practice) mostOfKind(x *flavor.Profile) float64 {
	var own []float64
	samples := append([]sample{{ml: x.Class.MostML()}}, p.pours[x.Class]...)
	for _, s := range samples[1:] {
		if s.profile.ID == x.ID {
			own = append(own, s.ml)
		}
	}
	if n := len(own); n >= ownSamples {
		slices.Sort(own)
		return beyondMost * own[n-1-n/20]
	}
	slices.SortStableFunc(samples, func(a, b sample) int { return cmp.Compare(a.ml, b.ml) })
	weights, total := make([]float64, len(samples)), 0.0
	for i, s := range samples {
		switch {
		case s.profile == nil:
			weights[i] = commonPours
		case s.profile.ID == x.ID:
			weights[i] = 1
		default:
			weights[i] = classWeight * math.Exp((Cosine(s.profile.Aroma[:], x.Aroma[:])-1)/smellWidth)
		}
		total += weights[i]
	}
	var sum float64
	for i, s := range samples {
		if sum += weights[i]; sum >= mostShare*total {
			return beyondMost * s.ml
		}
	}
	return beyondMost * x.Class.MostML()
}

// commonFrom is the number of proven pours from which an ingredient is as common as
// any.
const commonFrom = 10

// Common is how common an ingredient is in proven drinks, 0 to 1, by the logarithm
// of its pours.
func (p *Practice) Common(x *flavor.Profile) float64 {
	return min(1, math.Log1p(p.counts[x.ID])/math.Log1p(commonFrom))
}

// UsualML is the middle one of the proven pours of an ingredient, in mL, and if
// there is none, a third of the most.
func (p *Practice) UsualML(x *flavor.Profile) float64 {
	var own []float64
	for _, s := range p.pours[x.Class] {
		if s.profile.ID == x.ID {
			own = append(own, s.ml)
		}
	}
	if len(own) == 0 {
		return p.MostML(x) / mostOverUsual
	}
	slices.Sort(own)
	return own[len(own)/2]
}

const mostOverUsual = 3

// Cosine is the cosine of two aromas, 1 if both are nothing.
func Cosine(a, b []float64) float64 {
	var ab float64
	for i := range a {
		ab += a[i] * b[i]
	}
	both := norm(a) * norm(b)
	if both <= 0 {
		if norm(a) == norm(b) {
			return 1
		}
		return 0
	}
	return ab / both
}

// norm is the Euclidean length of a vector.
func norm(v []float64) float64 {
	var sum float64
	for _, x := range v {
		sum += x * x
	}
	return math.Sqrt(sum)
}

// Carries reports whether an ingredient brings alcohol and is no seasoning.
func Carries(p *flavor.Profile) bool {
	return p.ABV.Value > flavor.NoAlcoholABV && p.Class.Part() != flavor.PartSeasoning
}

// Count is how many pours of an ingredient there are in proven drinks.
func (p *Practice) Count(id string) float64 { return p.counts[id] }
