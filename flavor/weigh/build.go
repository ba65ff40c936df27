package weigh

import (
	"errors"
	"fmt"
	"math"
	"slices"

	"gonum.org/v1/gonum/floats"

	"counterpour/flavor"
	"counterpour/flavor/makeup"
	"counterpour/flavor/ratio"
	"counterpour/flavor/template"
	"counterpour/flavor/weigh/forgotten"
	"counterpour/flavor/weigh/namesake"
	"counterpour/flavor/weigh/proportion"
)

// Build is a spec made ready to be judged with other amounts: what does not
// depend on the amounts is worked out once. It is for one goroutine at a time.
type Build struct {
	set    *Set
	spec   *flavor.Spec
	parts  []makeup.Part
	ml     []float64
	active []int // the families that the make-up leaves possible
	voices []voice
	limits []limit // see Ceiling
	// The local centre of each active family, see locate, and where the drink
	// was last placed in it.
	centres            []centre
	logits             []float64
	fits               []template.Placed
	habits             *habits                   // see habit
	cos                []float64                 // see cosines
	called             []int                     // the places of the proven drinks that it is called after
	forgotten          *forgotten.Draft          // see Forgotten
	nearServed         []float64                 // see ofService; nil until asked for
	foreign            [len(characters)]*float64 // see foreignness; nil until asked for
	proportion         *proportion.Usual         // see proportions
	precedents         *proportion.Precedents    // known once proportion is
	namesakes          namesake.Own              // the same
	volumeML, ethanolG upTo
	desk               *desk
}

// centre is the middle of the good drinks that one drink is held against.
type centre struct {
	template.Middle
	away [ratio.NumAxes - 1]float64 // the coordinates as independent deviations
}

// leastLogit is how far below the likeliest family's log-odds a family may
// lie, by its make-up, and still be weighed: beyond it its share is below one
// in ten thousand whatever the amounts.
const leastLogit = 11

// Prepare makes a spec ready. It fails if the spec has no pours, a pour has no
// ingredient, or there is nothing in it to weigh.
func (s *Set) Prepare(spec *flavor.Spec) (*Build, error) {
	if len(spec.Pours) == 0 {
		return nil, errors.New("weigh: the spec has no pours")
	}
	for i := range spec.Pours {
		if spec.Pours[i].Profile == nil {
			return nil, fmt.Errorf("weigh: pour %d has no ingredient", i+1)
		}
	}
	b := &Build{set: s, spec: spec, called: s.names.After(spec), parts: makeup.PartsIn(spec), ml: makeup.AmountsOf(spec), desk: s.rooms.desk()}
	e := b.Equivalents(b.ml)
	if !(e.Total() > 0) {
		return nil, errors.New("weigh: the drink has no strength, sweetness, acid, bitterness or length to weigh; add a pour that has")
	}
	b.enlist()
	return b, nil
}

// enlist picks the families that the make-up leaves possible.
func (b *Build) enlist() {
	signals := makeup.SignalsOf(b.spec, b.parts, b.ml)
	logits := sized(&b.desk.odds, len(b.set.models))
	for i, m := range b.set.models {
		logits[i] = m.Logit(&signals)
	}
	top := slices.Max(logits)
	b.active = sized(&b.desk.active, len(logits))[:0]
	for i := range b.set.models {
		if logits[i] < top-leastLogit {
			continue
		}
		b.active = append(b.active, i)
	}
	b.voices = b.listen()
}

// locate finds the local centres, which takes most of the time that a score
// does: a drink that its ceiling puts out of the question never needs them.
func (b *Build) locate() {
	if b.centres != nil {
		return
	}
	b.fits = sized(&b.desk.fits, len(b.active))
	b.logits = sized(&b.desk.logits, len(b.active))
	b.centres = sized(&b.desk.centres, len(b.active))
	cosines := b.cosines()
	weights := b.room(len(cosines))
	template.Weights(cosines, &b.set.tuning, weights)
	for i, family := range b.active {
		b.centres[i] = b.set.centreFor(family, func(r *template.Relative) float64 { return weights[r.At] })
	}
}

// cosines returns the cosine of the angle between the drink and each proven one,
// which a spec's Build works out once.
func (b *Build) cosines() []float64 {
	if b.cos == nil {
		b.desk.kin = makeup.KinshipOf(b.parts, b.ml)
		b.cos = b.set.kin.Cosines(&b.desk.kin, b.room(b.set.kin.Drinks()))
	}
	return b.cos
}

// Forgotten returns what is held against the rests of proven drinks, which a spec's Build works
// out once.
func (b *Build) Forgotten() *forgotten.Draft {
	if b.forgotten == nil {
		b.forgotten = &b.desk.forgotten
		b.forgotten.Hold(b.set.forgotten, b.spec, b.called, b.parts, b.ml, b.set.tuning.HabitWidth, b.room)
	}
	return b.forgotten
}

// centre returns the local centre of family i among the active ones.
func (b *Build) centre(i int) *centre {
	b.locate()
	return &b.centres[i]
}

// voice is what the make-up says for a family: what does not depend on the
// amounts, and the weights of the signals that do.
type voice struct {
	fixed   float64
	signals []makeup.Signal
	weights []float64
}

// listen works out the voices. A signal that is nothing with a millilitre of
// everything is nothing with any amounts.
func (b *Build) listen() []voice {
	ones := sized(&b.desk.ones, len(b.ml))
	for i := range ones {
		ones[i] = 1
	}
	signals := makeup.SignalsOf(b.spec, b.parts, ones)
	moving := sized(&b.desk.moving, makeup.NumSignals)[:0]
	for i := range signals {
		if s := makeup.Signal(i); signals[i] != 0 && !s.Fixed() {
			moving = append(moving, s)
		}
	}
	out := sized(&b.desk.voices, len(b.active))
	weights := sized(&b.desk.weights, len(out)*len(moving))[:0]
	for i := range out {
		fitted := &b.model(i).Fitted
		v := &out[i]
		v.fixed, v.signals = fitted.Bias, moving
		for k, x := range signals {
			if makeup.Signal(k).Fixed() {
				v.fixed += fitted.Weights[k] * x
			}
		}
		first := len(weights)
		for _, s := range moving {
			weights = append(weights, fitted.Weights[s])
		}
		v.weights = weights[first:]
	}
	return out
}

// logit returns the log-odds of the family by the make-up alone.
func (v *voice) logit(signals *makeup.Signals) float64 {
	sum := v.fixed
	for i, s := range v.signals {
		sum += v.weights[i] * signals[s]
	}
	return sum
}

// Amounts returns a copy of the spec's amounts in mL.
func (b *Build) Amounts() []float64 { return slices.Clone(b.ml) }

// Equivalents restates the drink with the given amounts in mL, one for each pour.
func (b *Build) Equivalents(ml []float64) ratio.Equivalents {
	e := b.unfloored(ml)
	e[ratio.Long] = max(0, e[ratio.Long])
	return e
}

// unfloored is Equivalents before length that is below nothing is taken as none.
func (b *Build) unfloored(ml []float64) ratio.Equivalents {
	var e ratio.Equivalents
	for i := range b.parts {
		e.Add(&b.parts[i].Per, b.parts[i].Amount(ml))
	}
	return e
}

// Score judges the drink with other amounts: the mean of its scores in the
// families, weighted by how surely it belongs to each, and less where what it carries
// strays too, or its bounds or its method leave less.
func (b *Build) Score(ml []float64) float64 {
	e := b.Equivalents(ml)
	signals := makeup.SignalsOf(b.spec, b.parts, ml)
	b.place(&e, floats.Sum(ml), &signals)
	mean := b.mean()
	uneven, excused := b.unevenEdges(ml)
	return together(Excuse(mean, excused), b.habitEdges(ml), uneven, b.boundEdges(ml, &e))
}

// Reaches returns the score of the drink with other amounts and whether it is
// at least least. Where it is not, the score is no more than a bound: what may
// take the drink further down is worked out only while it might yet reach.
func (b *Build) Reaches(ml []float64, least float64) (score float64, ok bool) {
	if b.centres == nil && b.Ceiling(ml) < least {
		return 0, false
	}
	e := b.Equivalents(ml)
	signals := makeup.SignalsOf(b.spec, b.parts, ml)
	b.place(&e, floats.Sum(ml), &signals)
	mean := b.mean()
	most := Excuse(mean, 1)
	if most < least-reachSlack {
		return most, false
	}
	habit := b.habitEdges(ml)
	if s := together(most, habit, 0, 0); s < least-reachSlack {
		return s, false
	}
	bound := b.boundEdges(ml, &e)
	if s := together(most, habit, 0, bound); s < least-reachSlack {
		return s, false
	}
	uneven, excused := b.unevenEdges(ml)
	score = together(Excuse(mean, excused), habit, uneven, bound)
	return score, score >= least
}

// Reaches is Build.Reaches for a spec as it is. It fails as Prepare does.
func (s *Set) Reaches(spec *flavor.Spec, least float64) (score float64, ok bool, err error) {
	b, err := s.Prepare(spec)
	if err != nil {
		return 0, false, err
	}
	defer b.Done()
	score, ok = b.Reaches(b.Amounts(), least)
	return score, ok, nil
}

// reachSlack is more than rounding does to a score.
const reachSlack = 1e-9

// mean is the score of the drink as it was last placed.
func (b *Build) mean() float64 {
	var score float64
	for i, p := range b.logits {
		score += p * scoreOf(b.model(i).Edges(&b.fits[i]))
	}
	return score
}

func (b *Build) model(i int) *template.Model { return b.set.models[b.active[i]] }

// place fills logits with the probability of each family and fits with the
// place of the drink in it.
func (b *Build) place(e *ratio.Equivalents, size float64, signals *makeup.Signals) {
	b.locate()
	shares, logSize := ratio.SharesOf(e), math.Log(size)
	for i := range b.active {
		m := b.model(i)
		m.Place(&shares, &b.centres[i].away, &b.set.tuning, &b.fits[i])
		b.fits[i].Stretch(template.OverSize(logSize, b.centres[i].Size), template.Unknownness(b.centres[i].Near))
		b.logits[i] = b.voices[i].logit(signals) + b.set.tuning.FitWeight*m.Compat(b.fits[i].Squared)
	}
	ratio.Softmax(b.logits)
}

// likeliest returns the place of the most probable family among the active
// ones, the first of equals, as the drink was last placed.
func (b *Build) likeliest() int {
	best := 0
	for i := range b.logits {
		if b.logits[i] > b.logits[best] {
			best = i
		}
	}
	return best
}
