package cover

import (
	"context"
	"errors"
	"fmt"
	"slices"
	"sync"

	"counterpour/flavor"
	"counterpour/flavor/balance"
	"counterpour/flavor/mix"
)

// Finder finds covers. It is safe for concurrent use.
type Finder struct {
	mixer   *mix.Mixer
	judge   *balance.Judge
	weights Weights
	shelves sync.Pool // of *shelf
}

// NewFinder returns a finder that judges by weights.
func NewFinder(mixer *mix.Mixer, judge *balance.Judge, w Weights) *Finder {
	return &Finder{mixer: mixer, judge: judge, weights: w}
}

// Limits of a request.
const (
	MaxParts  = 3
	MaxLimit  = 100
	perLead   = 2 // covers that may share the same leading substitute
	maxMoved  = 2 // pours besides the substitutes that a cover may move, see addSets
	roundings = 6 // roundings of one combination that are tried for balance
)

// Request asks for covers.
type Request struct {
	Spec       *flavor.Spec
	Missing    []*flavor.Profile // what ran out; one or more pours of the spec
	Candidates []*flavor.Profile // what may be poured instead
	// Usual holds the ids of what most bars stock. Over a whole catalogue, what
	// is not among them must earn its place; nil if all candidates are at hand.
	Usual    map[string]bool
	Guest    Guest
	Tastings []Tasting // what the house has learnt of covers
	Parts    int       // most substitutes, 1 to MaxParts; 0 means 2
	Limit    int       // most covers, 1 to MaxLimit; 0 means 10
}

// Cover is one way to pour the drink without what is missing.
type Cover struct {
	Parts    []flavor.Pour
	Changes  []balance.Change // other pours that move
	Spec     flavor.Spec
	Distance float64 // just-noticeable differences
	// Ideal is how near any amounts of the same substitutes could come, with
	// the same freedom of the other pours: what the jigger costs is Distance
	// less Ideal.
	Ideal        float64
	Score        float64
	Lost, Gained []flavor.Family
	ABVChange    float64 // % vol, finished
	VolumeChange float64 // mL, finished
	Marks        []flavor.AllergenMark
	NewAllergens []flavor.Allergen
	Text         string

	rank float64
}

// Result is the covers found, the best first.
type Result struct {
	ScoreBefore float64
	// Removed are the pours that had to go: what is missing, and what the guest
	// must not have.
	Removed []*flavor.Profile
	Covers  []Cover
	// Unbalanced is true if no cover keeps the drink in balance, and those
	// listed do not.
	Unbalanced bool
}

// Find returns the best covers. It fails if the request is out of range, if
// what is missing is not in the spec, or if ctx ends.
func (f *Finder) Find(ctx context.Context, r Request) (*Result, error) {
	if err := r.check(); err != nil {
		return nil, err
	}
	task, err := f.newTask(&r)
	if err != nil {
		return nil, err
	}
	result := &Result{ScoreBefore: task.scoreBefore, Removed: task.removed}
	task.shelf = f.borrow()
	defer f.shelves.Put(task.shelf)
	task.addCandidates()
	// The base is what the guest ordered: it moves only if nothing else keeps
	// the drink in balance, and balance is given up only after that.
	for _, pass := range []struct{ base, strict bool }{{false, true}, {true, true}, {false, false}} {
		if pass.base && !task.baseMoves() {
			continue // it would be the same search again
		}
		task.strict = pass.strict
		task.addMoves(pass.base)
		found, err := task.search(ctx)
		if err != nil {
			return nil, err
		}
		for i := range found {
			c, err := task.describe(&found[i])
			if err != nil {
				return nil, err
			}
			result.Covers = append(result.Covers, c)
		}
		if len(found) > 0 {
			result.Unbalanced = !pass.strict
			break
		}
	}
	return result, nil
}

func (r *Request) check() error {
	if r.Parts == 0 {
		r.Parts = 2
	}
	if r.Limit == 0 {
		r.Limit = 10
	}
	switch {
	case r.Spec == nil || len(r.Missing) == 0:
		return errors.New("cover: a request needs a spec and what is missing")
	case r.Parts < 1 || r.Parts > MaxParts:
		return fmt.Errorf("cover: %d substitutes; ask for 1 to %d", r.Parts, MaxParts)
	case r.Limit < 1 || r.Limit > MaxLimit:
		return fmt.Errorf("cover: limit %d; ask for 1 to %d", r.Limit, MaxLimit)
	}
	for _, m := range r.Missing {
		if !slices.ContainsFunc(r.Spec.Pours, func(p flavor.Pour) bool { return p.Profile.ID == m.ID }) {
			return &flavor.Fault{Kind: flavor.ErrInvalid, Location: "missing", Value: m.Name,
				Message: fmt.Sprintf("%s is not a pour of this drink; name one that is", m.Name)}
		}
	}
	return r.Guest.Check()
}

// missing reports whether p is what ran out.
func (r *Request) missing(p *flavor.Profile) bool {
	return slices.ContainsFunc(r.Missing, func(m *flavor.Profile) bool { return m.ID == p.ID })
}

// task is one request being worked on.
type task struct {
	finder      *Finder
	req         *Request
	drink       *mix.Drink
	scoreBefore float64
	removed     []*flavor.Profile
	keep        []int // indices of the pours that stay
	space       space
	gap         vector // what went out with the removed pours
	gapML       float64
	moves       []move
	sets        []moveSet
	columns     []vector // see moveColumns
	*shelf
	tasted map[combination]float64 // what tastings add to the rank
	strict bool                    // only covers that keep the balance

	tooStrong float64 // see strongest; only if the guest has a limit
}

func (f *Finder) newTask(r *Request) (*task, error) {
	drink, err := f.mixer.Mix(r.Spec)
	if err != nil {
		return nil, err
	}
	score, err := f.judge.ScoreOnly(r.Spec)
	if err != nil {
		return nil, err
	}
	t := &task{finder: f, req: r, drink: drink, scoreBefore: score, space: newSpace(r.Spec, drink, &f.weights)}
	for i := range r.Spec.Pours {
		p := &r.Spec.Pours[i]
		if r.missing(p.Profile) || !r.Guest.Accepts(p.Profile) {
			v := t.space.perML(p.Profile)
			t.gap.add(&v, p.ML)
			t.gapML += p.ML
			if !slices.Contains(t.removed, p.Profile) {
				t.removed = append(t.removed, p.Profile)
			}
			continue
		}
		t.keep = append(t.keep, i)
	}
	if r.Guest.MaxABV > 0 {
		if t.tooStrong, err = t.strongest(r.Guest.MaxABV); err != nil {
			return nil, err
		}
	}
	return t, nil
}
