package station

import (
	"cmp"
	"math"
	"slices"

	"counterpour/flavor"
	"counterpour/flavor/template"
)

// practice is what proven drinks do: how much they pour of a thing, and what
// they pour together.
type practice struct {
	drinks float64
	pours  map[flavor.Class][]sample
	kins   company[flavor.Kin]
	smells company[flavor.Family]
	splits company[flavor.Class] // of bases alone
	counts map[string]float64    // proven pours of an ingredient, by id
	things company[string]       // of kins, and of kins with the family that leads
}

// sample is one pour of a proven drink.
type sample struct {
	profile *flavor.Profile
	ml      float64
}

// company counts how many drinks keep things, alone and in pairs.
type company[K ~string | ~int] struct {
	alone map[K]float64
	pairs map[[2]K]float64
}

func newCompany[K ~string | ~int]() company[K] {
	return company[K]{alone: map[K]float64{}, pairs: map[[2]K]float64{}}
}

func (c *company[K]) add(things []K) {
	for i, a := range things {
		c.alone[a]++
		for _, b := range things[i+1:] {
			c.pairs[pairOf(a, b)]++
		}
	}
}

func pairOf[K ~string | ~int](a, b K) [2]K { return [2]K{min(a, b), max(a, b)} }

// strange is how much rarer a pair is than it would be by chance, as a
// logarithm, zero if it is not, and no less than unseen if nobody keeps it: ln((e+1)/(o+1)) with o the drinks that keep the
// pair and e = nₐ n_b / N those expected. The one added to each keeps a pair of
// rare things, of which nothing is known, from counting as strange.
func (c *company[K]) strange(a, b K, drinks float64) float64 {
	if a != b && drinks > 0 && c.pairs[pairOf(a, b)] == 0 {
		return max(unseen, c.rarer(a, b, drinks))
	}
	return c.rarer(a, b, drinks)
}

// rarer is the same without a least for what nobody keeps.
func (c *company[K]) rarer(a, b K, drinks float64) float64 {
	if a == b || drinks == 0 {
		return 0
	}
	expected := c.alone[a] * c.alone[b] / drinks
	return max(0, math.Log((expected+1)/(c.pairs[pairOf(a, b)]+1)))
}

// unseen is the strangeness of a pair that no proven drink keeps, be it ever so
// rare.
const unseen = 1.2

func newPractice(proven []template.Labelled) *practice {
	p := &practice{drinks: float64(len(proven)), pours: map[flavor.Class][]sample{}, kins: newCompany[flavor.Kin](), smells: newCompany[flavor.Family](),
		splits: newCompany[flavor.Class](), things: newCompany[string](), counts: map[string]float64{}}
	for i := range proven {
		s := &proven[i].Spec
		for j := range s.Pours {
			x := &s.Pours[j]
			p.counts[x.Profile.ID]++
			p.pours[x.Profile.Class] = append(p.pours[x.Profile.Class], sample{x.Profile, x.ML})
		}
		p.kins.add(kinsOf(s))
		p.smells.add(smellsOf(s))
		p.splits.add(basesOf(s))
		p.things.add(thingsOf(s))
	}
	return p
}

// kinsOf lists the kins that a drink pours, each once.
func kinsOf(s *flavor.Spec) []flavor.Kin {
	var out []flavor.Kin
	for i := range s.Pours {
		if k := s.Pours[i].Profile.Class.Kin(); !slices.Contains(out, k) {
			out = append(out, k)
		}
	}
	return out
}

// thingOf names what an ingredient is, finer than its kin: a liqueur of coffee is
// not poured where one of oranges is.
func thingOf(p *flavor.Profile) string {
	f, _ := LeadOf(p)
	return string(p.Class.Kin()) + "/" + f.String()
}

// thingsOf lists the kins of a drink and what its pours are, each once.
func thingsOf(s *flavor.Spec) []string {
	var out []string
	for i := range s.Pours {
		p := s.Pours[i].Profile
		for _, x := range []string{string(p.Class.Kin()), thingOf(p)} {
			if !slices.Contains(out, x) {
				out = append(out, x)
			}
		}
	}
	return out
}

// basesOf lists the classes of the bases of a drink, each once.
func basesOf(s *flavor.Spec) []flavor.Class {
	var out []flavor.Class
	for i := range s.Pours {
		if c := s.Pours[i].Profile.Class; c.Part() == flavor.PartBase && !slices.Contains(out, c) {
			out = append(out, c)
		}
	}
	return out
}

// smellsOf lists the aroma families that lead the pours of a drink, each once.
func smellsOf(s *flavor.Spec) []flavor.Family {
	var out []flavor.Family
	for i := range s.Pours {
		if f, ok := LeadOf(s.Pours[i].Profile); ok && !slices.Contains(out, f) {
			out = append(out, f)
		}
	}
	return out
}

// LeadOf returns the aroma family that leads an ingredient; false if it smells
// of nothing.
func LeadOf(p *flavor.Profile) (flavor.Family, bool) {
	lead := 0
	for f, v := range p.Aroma {
		if v > p.Aroma[lead] {
			lead = f
		}
	}
	return flavor.Family(lead), p.Aroma[lead] > 0
}

// Rules of the most that is poured, see [practice.mostML].
const (
	ownSamples  = 3    // proven pours of an ingredient from which they alone speak
	beyondMost  = 1.15 // a little beyond what anybody pours is nobody's fault
	mostShare   = 0.90 // of the weight of all samples, what is poured stays below
	classWeight = 0.5  // of another ingredient of the class that smells the same
	smellWidth  = 0.10 // of the likeness of smells, in 1 − cosine
	commonPours = 0.5  // pours that common practice counts for
)

// mostML returns the most of an ingredient, in mL, that reads as a bartender's:
// a little more than the largest of its pours in proven drinks, one in twenty
// left out, if there are three or more; else what nine in ten pours of its class
// stay below, those of the ingredient itself counting fully, those of others by
// the likeness of their smells, and common practice for half a pour. A base takes
// the place of any other, strength for strength.
func (p *practice) mostML(x *flavor.Profile) float64 {
	most := p.mostOfKind(x)
	if x.Class.Part() == flavor.PartSeasoning {
		most = min(most, mostSeasoning*x.Class.MostML())
	}
	if x.Class.Part() == flavor.PartBase {
		most = max(most, flavor.ClassOtherSpirit.MostML()*min(1, usualStrength/max(x.ABV.Value, tiny)))
	}
	return most
}

// mostSeasoning is how many times the most of its class what seasons is poured at
// most: a few proven drinks take bitters for a base.
const mostSeasoning = 1.5

// usualStrength is that of a base, % vol, beyond which less of it is poured.
const usualStrength = 47.0

func (p *practice) mostOfKind(x *flavor.Profile) float64 {
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
			weights[i] = classWeight * math.Exp((cosine(s.profile.Aroma[:], x.Aroma[:])-1)/smellWidth)
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

// common is how common an ingredient is in proven drinks, 0 to 1, by the logarithm
// of its pours.
func (p *practice) common(x *flavor.Profile) float64 {
	return min(1, math.Log1p(p.counts[x.ID])/math.Log1p(commonFrom))
}

// usualML is the middle one of the proven pours of an ingredient, in mL, and if
// there is none, a third of the most.
func (p *practice) usualML(x *flavor.Profile) float64 {
	var own []float64
	for _, s := range p.pours[x.Class] {
		if s.profile.ID == x.ID {
			own = append(own, s.ml)
		}
	}
	if len(own) == 0 {
		return p.mostML(x) / mostOverUsual
	}
	slices.Sort(own)
	return own[len(own)/2]
}

const mostOverUsual = 3

// cosine is the cosine of two aromas, 1 if both are nothing.
func cosine(a, b []float64) float64 {
	var ab float64
	for i := range a {
		ab += a[i] * b[i]
	}
	norm := length(a) * length(b)
	if norm <= 0 {
		if length(a) == length(b) {
			return 1
		}
		return 0
	}
	return ab / norm
}

// Strangeness from which a pair counts, and from which proven drinks keep it so
// seldom that nobody should be served it unasked.
const (
	oddFrom   = 0.7
	shunnedAt = 1.7
	unsplit   = 1.0 // of two bases that no proven drink pours together
)

// strangeness sums what is odd in the pairs that a drink keeps, those of given
// drinks aside, and says whether proven drinks shun one of them.
func (p *practice) strangeness(s *flavor.Spec, given []*flavor.Spec) (odd float64, shunned bool) {
	for i := range s.Pours {
		for k := range i {
			a, b := s.Pours[i].Profile, s.Pours[k].Profile
			if slices.ContainsFunc(given, func(g *flavor.Spec) bool { return Pours(g, a) && Pours(g, b) }) {
				continue
			}
			kins := p.kins.strange(a.Class.Kin(), b.Class.Kin(), p.drinks)
			things := max(p.things.rarer(thingOf(a), string(b.Class.Kin()), p.drinks), p.things.rarer(thingOf(b), string(a.Class.Kin()), p.drinks))
			shunned = shunned || max(kins, things) >= shunnedAt
			odd += max(0, max(kins, things)-oddFrom)
			if a.Class != b.Class && a.Class.Part() == flavor.PartBase && b.Class.Part() == flavor.PartBase && p.splits.pairs[pairOf(a.Class, b.Class)] == 0 {
				odd += unsplit
			}
			f, ok := LeadOf(a)
			g, both := LeadOf(b)
			if ok && both {
				odd += max(0, p.smells.strange(f, g, p.drinks)-oddFrom)
			}
		}
	}
	return odd, shunned
}
