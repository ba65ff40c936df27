package template

import (
	"errors"
	"fmt"
	"math"
	"slices"
	"strings"

	"counterpour/flavor"
)

// Set is the families of drinks, ready to judge. It is safe for concurrent use.
type Set struct {
	models    []*model
	relatives [][]relative // of each family
	tuning    Tuning
}

// NewSet joins families with what was fitted to them and the proven drinks
// they were fitted on. The two lists must be of the same families in the same
// order; proven may be empty, and then every family keeps its own centre.
func NewSet(families []Family, fitted []Fitted, proven []Labelled, t Tuning) (*Set, error) {
	if len(families) == 0 || len(families) != len(fitted) {
		return nil, fmt.Errorf("template: %d families and %d fitted ones; fit the families again", len(families), len(fitted))
	}
	s := &Set{tuning: t}
	for i := range families {
		m, err := newModel(families[i], fitted[i])
		if err != nil {
			return nil, err
		}
		r, _, err := relativesOf(&m.Family, m.basis, proven)
		if err != nil {
			return nil, err
		}
		s.models = append(s.models, m)
		s.relatives = append(s.relatives, r)
	}
	return s, nil
}

// Families returns the families with what was fitted to them.
func (s *Set) Families() ([]Family, []Fitted) {
	families := make([]Family, len(s.models))
	fitted := make([]Fitted, len(s.models))
	for i, m := range s.models {
		families[i], fitted[i] = m.Family, m.fitted
	}
	return families, fitted
}

// Centre returns a family's fitted ratio, summing to 1, over its axes.
func (s *Set) Centre(id string) ([]float64, error) {
	for _, m := range s.models {
		if m.ID == id {
			return m.basis.Composition(m.fitted.Centre)
		}
	}
	return nil, fmt.Errorf("template: family %q is not known", id)
}

// Fit is how a drink sits in one family.
type Fit struct {
	ID, Name string
	// Probability that the drink belongs to the family, 0 to 1.
	Probability float64
	// Score is 100 at the family's centre and 70 at the edge of its central
	// nine in ten.
	Score float64
	// Tail is the share of the family's good drinks that sit further out, 0 to 1.
	Tail float64
}

// Verdict is a score in a word.
type Verdict string

// A drink is balanced from 70, near from 50, and otherwise off.
const (
	Balanced Verdict = "balanced"
	Near     Verdict = "near"
	Off      Verdict = "off"

	BalancedFrom = 70.0
	NearFrom     = 50.0
)

// VerdictOf returns the word for a score of 0 to 100.
func VerdictOf(score float64) Verdict {
	switch {
	case score >= BalancedFrom:
		return Balanced
	case score >= NearFrom:
		return Near
	}
	return Off
}

// scoreOf turns a distance, in units of the family's edge, into a score: 100 at
// the centre, 70 at the edge, falling to 0.
func scoreOf(edges float64) float64 {
	return 100 * math.Exp(edges*math.Log(BalancedFrom/100))
}

// leastCompat keeps a drink that is far out in every family in the one that
// its make-up names.
const leastCompat = 0.01

// Build is a spec made ready to be judged with other amounts: what does not
// depend on the amounts is worked out once. Copy it no further than one
// goroutine.
type Build struct {
	set     *Set
	spec    *flavor.Spec
	parts   []part
	ml      []float64
	// The families that the make-up leaves possible, and for each its local
	// centre and where the drink lies in it.
	active  []int
	centres [][]float64
	logits  []float64
	fits    []placed
}

// leastLogit is how far below the likeliest family's log-odds a family may
// lie, by its make-up, and still be weighed: beyond it its share is below one
// in ten thousand whatever the amounts.
const leastLogit = 11

// placed is where a drink lies in one family.
type placed struct {
	d2     float64   // squared distance with the excess of absent axes
	z      []float64 // from the local centre
	excess Equivalents
}

// Prepare makes a spec ready. It fails if the spec has no pours, a pour has no
// ingredient, or there is nothing in it to weigh.
func (s *Set) Prepare(spec *flavor.Spec) (*Build, error) {
	if len(spec.Pours) == 0 {
		return nil, errors.New("template: the spec has no pours")
	}
	for i := range spec.Pours {
		if spec.Pours[i].Profile == nil {
			return nil, fmt.Errorf("template: pour %d has no ingredient", i+1)
		}
	}
	b := &Build{set: s, spec: spec}
	b.parts, b.ml = partsIn(spec), amountsOf(spec)
	if !(b.weight(b.ml) > 0) {
		return nil, errors.New("template: the drink has no strength, sweetness, acid, bitterness or length to weigh; add a pour that has")
	}
	kin := kinshipOf(spec)
	signals := signalsOf(spec, b.parts, b.ml)
	logits := make([]float64, len(s.models))
	for i, m := range s.models {
		logits[i] = m.logit(&signals)
	}
	top := slices.Max(logits)
	for i, m := range s.models {
		if logits[i] < top-leastLogit {
			continue
		}
		b.active = append(b.active, i)
		b.centres = append(b.centres, localCentre(m.fitted.Centre, s.relatives[i], kin, -1, &s.tuning))
		b.fits = append(b.fits, placed{z: make([]float64, len(m.fitted.Centre))})
	}
	b.logits = make([]float64, len(b.active))
	return b, nil
}

// logit returns the log-odds of the family by the make-up alone.
func (m *model) logit(signals *Signals) float64 {
	v := m.fitted.Bias
	for j, s := range signals {
		v += m.fitted.Weights[j] * s
	}
	return v
}

// Amounts returns a copy of the spec's amounts in mL.
func (b *Build) Amounts() []float64 { return slices.Clone(b.ml) }

func (b *Build) weight(ml []float64) float64 {
	e := b.Equivalents(ml)
	var t float64
	for _, v := range e {
		t += v
	}
	return t
}

// Equivalents restates the drink with the given amounts in mL, one for each pour.
func (b *Build) Equivalents(ml []float64) Equivalents {
	var e Equivalents
	for i := range b.parts {
		e.add(&b.parts[i].per, b.parts[i].amount(ml))
	}
	e[Long] = max(0, e[Long])
	return e
}

// Score judges the drink with other amounts: the mean of its scores in the
// families, weighted by how surely it belongs to each.
func (b *Build) Score(ml []float64) float64 {
	b.place(ml)
	var score float64
	for i, p := range b.logits {
		score += p * scoreOf(b.fits[i].d2/b.set.models[b.active[i]].edge)
	}
	return score
}

// place fills logits with the probability of each family and fits with the
// place of the drink in it.
func (b *Build) place(ml []float64) {
	e := b.Equivalents(ml)
	var total float64
	for _, v := range e {
		total += v
	}
	signals := signalsOf(b.spec, b.parts, ml)
	for i, at := range b.active {
		m := b.set.models[at]
		m.place(&e, total, b.centres[i], &b.set.tuning, &b.fits[i])
		nu, k := m.fitted.Freedom, float64(len(m.fitted.Centre))
		compat := -(nu + k) / 2 * math.Log1p(b.fits[i].d2/nu)
		b.logits[i] = m.logit(&signals) + b.set.tuning.FitWeight*math.Max(compat, math.Log(leastCompat))
	}
	softmax(b.logits)
}

// place measures how far a drink lies from the centre, in the family's own
// spread; what it carries of axes that the family lacks, beyond what its good
// drinks do, counts as distance too.
func (m *model) place(e *Equivalents, total float64, centre []float64, t *Tuning, out *placed) {
	var logs [NumAxes]float64
	for i, a := range m.Axes {
		logs[i] = math.Log(e[a]/total + floorShare)
	}
	for j := range out.z {
		out.z[j] = -centre[j]
		for i := range m.Axes {
			out.z[j] += m.basis.v.At(i, j) * logs[i]
		}
	}
	out.d2 = 0
	for a := range out.z {
		for b := range out.z {
			out.d2 += out.z[a] * m.inverse.At(a, b) * out.z[b]
		}
	}
	for a := range e {
		out.excess[a] = 0
		if m.has[a] {
			continue
		}
		over := e[a]/total - m.fitted.Allowance[a]
		if over > 0 {
			out.excess[a] = over / t.ExcessWidth
			out.d2 += m.edge * out.excess[a] * out.excess[a]
		}
	}
}

// Judgement is how a drink sits among the families.
type Judgement struct {
	Score       float64
	Fits        []Fit // the most probable first
	Equivalents Equivalents
	Pulls       []Pull // of the most probable family, the strongest first
}

// Pull is an axis that draws a drink away from its family's centre.
type Pull struct {
	Axis Axis
	// Change is the natural logarithm of the factor that would bring the
	// axis back, all else kept: negative if there is too much of it.
	Change float64
	// Gain is how much of the squared distance that would take away.
	Gain float64
}

// Judge judges the drink with other amounts in full.
func (b *Build) Judge(ml []float64) Judgement {
	j := Judgement{Score: b.Score(ml), Equivalents: b.Equivalents(ml)}
	for i, at := range b.active {
		m, d2 := b.set.models[at], b.fits[i].d2
		j.Fits = append(j.Fits, Fit{ID: m.ID, Name: m.Name, Probability: b.logits[i],
			Score: scoreOf(d2 / m.edge), Tail: tailOf(d2, len(m.fitted.Centre), m.fitted.Freedom)})
	}
	best := 0
	for i := range b.logits {
		if b.logits[i] > b.logits[best] {
			best = i
		}
	}
	j.Pulls = b.set.models[b.active[best]].pulls(&b.fits[best], &j.Equivalents, &b.set.tuning)
	slices.SortStableFunc(j.Fits, func(x, y Fit) int {
		if x.Probability != y.Probability {
			return sign(y.Probability - x.Probability)
		}
		return strings.Compare(x.ID, y.ID)
	})
	return j
}

func sign(x float64) int {
	switch {
	case x > 0:
		return 1
	case x < 0:
		return -1
	}
	return 0
}

// pulls finds, for each axis, the one change of it alone that brings the drink
// nearest to the centre. Moving a part moves the coordinates along the part's
// row of the basis, on which the squared distance is a parabola.
func (m *model) pulls(p *placed, e *Equivalents, t *Tuning) []Pull {
	var total float64
	for _, v := range e {
		total += v
	}
	var out []Pull
	for i, axis := range m.Axes {
		var along, curve float64
		for a := range p.z {
			for b := range p.z {
				w := m.inverse.At(a, b)
				along += m.basis.v.At(i, a) * w * p.z[b]
				curve += m.basis.v.At(i, a) * w * m.basis.v.At(i, b)
			}
		}
		// A unit of the part's own logarithm moves the lifted one by less
		// when the part is near the floor.
		lifted := e[axis]/total + floorShare
		change := -along / curve
		if target := lifted*math.Exp(change) - floorShare; target > 0 && e[axis] > 0 {
			change = math.Log(target / (e[axis] / total))
		}
		out = append(out, Pull{Axis: axis, Change: change, Gain: along * along / curve})
	}
	for a := range p.excess {
		if p.excess[a] > 0 {
			share := e[a] / total
			out = append(out, Pull{Axis: Axis(a), Change: math.Log(m.fitted.Allowance[a] / share),
				Gain: m.edge * p.excess[a] * p.excess[a]})
		}
	}
	slices.SortStableFunc(out, func(x, y Pull) int { return sign(y.Gain - x.Gain) })
	return out
}
