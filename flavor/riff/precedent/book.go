package precedent

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/makeup"
	"counterpour/flavor/ratio"
	"counterpour/flavor/template"
)

// MakeUp is what a drink is made of, whatever the amounts: each ingredient's
// class, and its aroma as a direction.
type MakeUp []float64

// numClasses is how many classes of ingredients there are.
var numClasses = len(flavor.Classes())

// MakeUpOf returns what one ingredient adds to a make-up.
func MakeUpOf(p *flavor.Profile) MakeUp {
	m := empty()
	w := makeup.PartWeight(p.Class.Part())
	if i := p.Class.Place(); i >= 0 {
		m[i] = w * makeup.ClassShare
	}
	smell := norm(p.Aroma[:])
	if smell <= 0 {
		return m
	}
	for f, v := range p.Aroma {
		m[numClasses+f] = w * (1 - makeup.ClassShare) * v / smell
	}
	return m
}

// empty is the make-up of nothing.
func empty() MakeUp { return make(MakeUp, numClasses+flavor.NumAromaFamilies) }

// Add adds another make-up so many times.
func (m MakeUp) Add(o MakeUp, times float64) {
	for i := range m {
		m[i] += times * o[i]
	}
}

// Book is the proven drinks, ready to be compared with.
type Book struct {
	proven []template.Labelled
	made   []MakeUp // of length 1
	ratios [][]float64
	smells []flavor.Aroma
}

// NewBook returns the proven drinks ready to be compared with; it fails if one has nothing
// to weigh.
func NewBook(proven []template.Labelled) (*Book, error) {
	b := &Book{proven: proven}
	for i := range proven {
		s := &proven[i].Spec
		ratio, smell, err := positionOf(s)
		if err != nil {
			return nil, fmt.Errorf("precedent: proven drink %q: %w", s.Name, err)
		}
		b.made = append(b.made, b.MadeOf(s).direction())
		b.ratios = append(b.ratios, ratio)
		b.smells = append(b.smells, smell)
	}
	return b, nil
}

func (m MakeUp) scale(by float64) {
	for i := range m {
		m[i] *= by
	}
}

// PouredBefore reports whether the ingredient of a pour stands higher up too.
func PouredBefore(s *flavor.Spec, at int) bool {
	for i := range at {
		if s.Pours[i].Profile.ID == s.Pours[at].Profile.ID {
			return true
		}
	}
	return false
}

// Products returns the product of a make-up with every proven one.
func (b *Book) Products(m MakeUp) []float64 {
	var at []int // most of a make-up is empty
	for j, v := range m {
		if v != 0 {
			at = append(at, j)
		}
	}
	out := make([]float64, len(b.made))
	for i, p := range b.made {
		for _, j := range at {
			out[i] += m[j] * p[j]
		}
	}
	return out
}

// cosines are how much each proven drink is made as a drink is, 0 to 1.
func (b *Book) cosines(s *flavor.Spec) []float64 {
	return b.Products(b.MadeOf(s).direction())
}

// MadeOf is the make-up of a drink: of each of its ingredients once.
func (b *Book) MadeOf(s *flavor.Spec) MakeUp {
	m := empty()
	for i := range s.Pours {
		if !PouredBefore(s, i) {
			m.Add(MakeUpOf(s.Pours[i].Profile), 1)
		}
	}
	return m
}

// direction is a make-up of length 1.
func (m MakeUp) direction() MakeUp {
	m.scale(1 / max(norm(m), tiny))
	return m
}

// Likely is how much a make-up looks like a proven drink: the greatest cosine
// with one, 0 to 1; 0.5 if no drink is proven. The products of a make-up are
// the sums of those of its parts.
func Likely(m MakeUp, products []float64) float64 {
	if len(products) == 0 {
		return 0.5
	}
	norm := norm(m)
	if norm <= 0 {
		return 0
	}
	return max(0, slices.Max(products)) / norm
}

// positionOf returns a drink's ratio over the five axes, each lifted by the
// floor, and its aroma as square roots of shares.
func positionOf(s *flavor.Spec) (parts []float64, smell flavor.Aroma, err error) {
	e := ratio.EquivalentsOf(s)
	var total float64
	for _, v := range e {
		total += v
	}
	if !(total > 0) {
		return nil, smell, flavor.Invalid("spec", s.Name, "the drink has no strength, sweetness, acid, bitterness or length to weigh")
	}
	parts = make([]float64, len(e))
	for a, v := range e {
		parts[a] = v/total + ratio.FloorShare
	}
	for i := range s.Pours {
		p := &s.Pours[i]
		for f, v := range p.Profile.Aroma {
			smell[f] += v * p.ML
		}
	}
	if all := smell.Total(); all > 0 {
		for f := range smell {
			smell[f] = math.Sqrt(smell[f] / all)
		}
	}
	return parts, smell, nil
}

// Relative is a proven drink near another one.
type Relative struct {
	Proven   template.Labelled
	Distance float64 // √(Ratio² + Smell² + Made²)
	Ratio    float64 // Aitchison distance of the equivalents, all five axes
	Smell    float64 // Hellinger distance of the aromas, 0 to 1
	Made     float64 // of what the two are made of, 0 to 1: 1 less the cosine of their make-ups
}

// anotherKind is how much two drinks differ in make-up from which one is no relative of
// the other, however strong and sweet both are. Judged on drinks that guests who avoid
// something were told of.
const anotherKind = 0.6

// milky reports whether a drink is one of milk or cream, which is never kin to one without.
func milky(s *flavor.Spec) bool {
	return s.HasKin(flavor.KinMilk) || s.HasKin(flavor.KinCream)
}

// rounding is what the cosine of a make-up and itself may differ from 1 by.
const rounding = 1e-9

// Relatives returns up to n of the proven drinks that may be listed, the nearest to a
// drink first, by log-ratio, aroma and make-up; of two equally near the first by name.
// Make-up counts, so that a drink of cream is no relative of a stirred one that is as
// sweet. A drink that is itself proven is its own nearest; one of another kind is left
// out. It fails if there is nothing in the drink to weigh.
func (b *Book) Relatives(d *flavor.Spec, n int, may func(*flavor.Spec) bool) ([]Relative, error) {
	parts, smell, err := positionOf(d)
	if err != nil {
		return nil, err
	}
	out := make([]Relative, 0, len(b.proven))
	made := b.cosines(d)
	for i, p := range b.proven {
		if !may(&b.proven[i].Spec) {
			continue
		}
		apart, err := ratio.AitchisonDistance(parts, b.ratios[i])
		if err != nil {
			return nil, err
		}
		var sum float64
		for f, v := range smell {
			sum += (v - b.smells[i][f]) * (v - b.smells[i][f])
		}
		h := math.Sqrt(sum / 2)
		unlike := 1 - made[i]
		if unlike < rounding {
			unlike = 0
		}
		if unlike > anotherKind || milky(d) != milky(&b.proven[i].Spec) {
			continue
		}
		out = append(out, Relative{Proven: p, Distance: math.Hypot(math.Hypot(apart, h), unlike), Ratio: apart, Smell: h, Made: unlike})
	}
	slices.SortStableFunc(out, func(x, y Relative) int {
		return cmp.Or(cmp.Compare(x.Distance, y.Distance), strings.Compare(x.Proven.Spec.Name, y.Proven.Spec.Name))
	})
	return out[:min(n, len(out))], nil
}

// RatiosFrom returns how far each proven drink is from a drink in its ratio, the Aitchison
// distance of the equivalents; nil if there is nothing in the drink to weigh.
func (b *Book) RatiosFrom(d *flavor.Spec) []float64 {
	parts, _, err := positionOf(d)
	if err != nil {
		return nil
	}
	out := make([]float64, len(b.proven))
	for i := range b.proven {
		apart, err := ratio.AitchisonDistance(parts, b.ratios[i])
		if err != nil {
			return nil
		}
		out[i] = apart
	}
	return out
}

// Like is how much two make-ups are alike, 0 to 1.
func (m MakeUp) Like(o MakeUp) float64 {
	var v float64
	for i := range m {
		v += m[i] * o[i]
	}
	return v / max(norm(m)*norm(o), tiny)
}

// Proven returns the proven drinks; they are not to be changed.
func (b *Book) Proven() []template.Labelled { return b.proven }

// tiny keeps a ratio to nothing finite.
const tiny = 1e-12
