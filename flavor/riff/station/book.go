package station

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/cover"
	"counterpour/flavor/ratio"
	"counterpour/flavor/template"
)

// makeUp is what a drink is made of, whatever the amounts: each ingredient's
// class, and its aroma as a direction.
type makeUp []float64

// How much a pour says about what a drink is, and the share of that which its
// class says and not its aroma. The families use the same weights to find a
// drink's relatives.
var partWeight = map[flavor.Part]float64{
	flavor.PartBase: 1, flavor.PartModifier: 1, flavor.PartSweetener: 0.9, flavor.PartSour: 0.6,
	flavor.PartLength: 0.8, flavor.PartTexture: 0.5, flavor.PartSeasoning: 0.25,
}

const classShare = 0.7

// classIndex numbers the classes.
func classIndex() map[flavor.Class]int {
	out := map[flavor.Class]int{}
	for i, c := range flavor.Classes() {
		out[c] = i
	}
	return out
}

// makeUpOf returns what one ingredient adds to a make-up.
func makeUpOf(p *flavor.Profile, classes map[flavor.Class]int) makeUp {
	m := make(makeUp, len(classes)+flavor.NumFamilies)
	w := partWeight[p.Class.Part()]
	if i, ok := classes[p.Class]; ok {
		m[i] = w * classShare
	}
	norm := length(p.Aroma[:])
	if norm <= 0 {
		return m
	}
	for f, v := range p.Aroma {
		m[len(classes)+f] = w * (1 - classShare) * v / norm
	}
	return m
}

func length(v []float64) float64 {
	var sum float64
	for _, x := range v {
		sum += x * x
	}
	return math.Sqrt(sum)
}

func (m makeUp) add(o makeUp, times float64) {
	for i := range m {
		m[i] += times * o[i]
	}
}

// book is the proven drinks, ready to be compared with.
type book struct {
	proven  []template.Labelled
	classes map[flavor.Class]int
	made    []makeUp // of length 1
	ratios  [][]float64
	smells  []flavor.Aroma
}

func newBook(proven []template.Labelled) (*book, error) {
	b := &book{proven: proven, classes: classIndex()}
	for i := range proven {
		s := &proven[i].Spec
		ratio, smell, err := positionOf(s)
		if err != nil {
			return nil, fmt.Errorf("riff: proven drink %q: %w", s.Name, err)
		}
		b.made = append(b.made, b.madeOf(s))
		b.ratios = append(b.ratios, ratio)
		b.smells = append(b.smells, smell)
	}
	return b, nil
}

func (m makeUp) scale(by float64) {
	for i := range m {
		m[i] *= by
	}
}

// pouredBefore reports whether the ingredient of a pour stands higher up too.
func pouredBefore(s *flavor.Spec, at int) bool {
	for i := range at {
		if s.Pours[i].Profile.ID == s.Pours[at].Profile.ID {
			return true
		}
	}
	return false
}

// products returns the product of a make-up with every proven one.
func (b *book) products(m makeUp) []float64 {
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
func (b *book) cosines(s *flavor.Spec) []float64 {
	return b.products(b.madeOf(s))
}

// madeOf is the make-up of a drink, of length 1.
func (b *book) madeOf(s *flavor.Spec) makeUp {
	m := make(makeUp, len(b.classes)+flavor.NumFamilies)
	for i := range s.Pours {
		if !pouredBefore(s, i) {
			m.add(makeUpOf(s.Pours[i].Profile, b.classes), 1)
		}
	}
	m.scale(1 / max(length(m), tiny))
	return m
}

// likely is how much a make-up looks like a proven drink: the greatest cosine
// with one, 0 to 1; 0.5 if no drink is proven. The products of a make-up are
// the sums of those of its parts.
func likely(m makeUp, products []float64) float64 {
	if len(products) == 0 {
		return 0.5
	}
	norm := length(m)
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
	return slices.ContainsFunc(s.Pours, func(p flavor.Pour) bool {
		kin := p.Profile.Class.Kin()
		return kin == flavor.KinMilk || kin == flavor.KinCream
	})
}

// rounding is what the cosine of a make-up and itself may differ from 1 by.
const rounding = 1e-9

// Relatives returns up to n proven drinks nearest to a spec in log-ratio, aroma and
// make-up, so that a drink of cream is no relative of a stirred one that is as sweet, the nearest first and of two equally near the first by name: its
// closest proven relatives. A drink that is itself proven is its own nearest.
// One that holds what the guest must not have is left out, and so
// is one of another kind; strength and cost are
// not looked at. It fails if n is below 1 or there is nothing in the spec to
// weigh.
func (s *Station) Relatives(d *flavor.Spec, n int, guest cover.Guest) ([]Relative, error) {
	if n < 1 {
		return nil, flavor.Invalid("n", n, "%d is out of range; ask for at least one relative", n)
	}
	if err := CheckSpec(d); err != nil {
		return nil, err
	}
	parts, smell, err := positionOf(d)
	if err != nil {
		return nil, err
	}
	out := make([]Relative, 0, len(s.book.proven))
	made := s.book.cosines(d)
	guest.MaxCost = 0 // nobody pours these now
	may := Limits{Guest: guest}
	for i, p := range s.book.proven {
		if !may.AcceptsAll(&s.book.proven[i].Spec) {
			continue
		}
		apart, err := ratio.AitchisonDistance(parts, s.book.ratios[i])
		if err != nil {
			return nil, err
		}
		var sum float64
		for f, v := range smell {
			sum += (v - s.book.smells[i][f]) * (v - s.book.smells[i][f])
		}
		h := math.Sqrt(sum / 2)
		unlike := 1 - made[i]
		if unlike < rounding {
			unlike = 0
		}
		if unlike > anotherKind || milky(d) != milky(&s.book.proven[i].Spec) {
			continue
		}
		out = append(out, Relative{Proven: p, Distance: math.Hypot(math.Hypot(apart, h), unlike), Ratio: apart, Smell: h, Made: unlike})
	}
	slices.SortStableFunc(out, func(a, b Relative) int {
		return cmp.Or(cmp.Compare(a.Distance, b.Distance), strings.Compare(a.Proven.Spec.Name, b.Proven.Spec.Name))
	})
	return out[:min(n, len(out))], nil
}

// Likeness is how much an item is in kind and smell what an ingredient is, 0 to 1.
func (j *Job) Likeness(it *Item, p *flavor.Profile) float64 {
	was := makeUpOf(p, j.Station.book.classes)
	var v float64
	for i := range was {
		v += was[i] * it.made[i]
	}
	return v / max(length(was)*length(it.made), tiny)
}
