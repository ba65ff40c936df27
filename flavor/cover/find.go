package cover

import (
	"cmp"
	"context"
	"errors"
	"fmt"
	"math"
	"slices"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/balance"
	"counterpour/flavor/measure"
	"counterpour/flavor/mix"
	"counterpour/flavor/template"
)

// Finder finds covers. It is safe for concurrent use.
type Finder struct {
	mixer   *mix.Mixer
	judge   *balance.Judge
	weights Weights
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
	// The base is what the guest ordered: it moves only if nothing else keeps
	// the drink in balance, and balance is given up only after that.
	for _, pass := range []struct{ base, strict bool }{{false, true}, {true, true}, {false, false}} {
		task.strict = pass.strict
		task.addMoves(pass.base)
		task.addCandidates()
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
	return r.Guest.check()
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
	cands       []candidate
	tasted      map[combination]float64 // what tastings add to the rank
	strict      bool                    // only covers that keep the balance
}

// move is one step of one of the other pours.
type move struct {
	pour   int
	amount amount
	by     vector
}

// moveSet is a choice of moves, at most one for each pour.
type moveSet struct {
	moves  []int
	square float64 // squared length of the gap that is left for the parts
	cost   float64
}

// candidate is one ingredient that may be a part.
type candidate struct {
	profile *flavor.Profile
	amounts []amount
	per     vector    // a millilitre
	self    float64   // product with itself
	gap     float64   // and with the gap
	moves   []float64 // and with the moves
	odd     bool
	rare    float64 // what it must earn for being rare
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
		if r.missing(p.Profile) || !r.Guest.accepts(p.Profile) {
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
	return t, nil
}

// addMoves lists one step up and one down of every other pour, the base among
// them if it may move.
func (t *task) addMoves(base bool) {
	t.moves, t.sets = nil, nil
	for _, i := range t.keep {
		p := &t.req.Spec.Pours[i]
		if p.Profile.Class.Part() == flavor.PartBase && !base || p.Profile.Class.Solid() {
			continue
		}
		per, ok := measure.MLPerUnit(p.Unit, p.Profile)
		if !ok {
			continue
		}
		v := t.space.perML(p.Profile)
		for _, a := range measure.Neighbours(p.Amount, p.Unit, 1) {
			m := move{pour: i, amount: amount{a, p.Unit, a * per}}
			m.by.add(&v, m.amount.ml-p.ML)
			t.moves = append(t.moves, m)
		}
	}
	t.addSets()
}

// addSets lists the choices of at most maxMoved moves of different pours.
func (t *task) addSets() {
	t.addSet()
	for a := range t.moves {
		t.addSet(a)
	}
	for a := range t.moves {
		for b := a + 1; b < len(t.moves); b++ {
			if t.moves[a].pour != t.moves[b].pour {
				t.addSet(a, b)
			}
		}
	}
}

func (t *task) addSet(moves ...int) {
	left := t.gap
	for _, m := range moves {
		left.add(&t.moves[m].by, -1)
	}
	t.sets = append(t.sets, moveSet{moves: moves, square: dot(&left, &left),
		cost: t.finder.weights.MoveCost * float64(len(moves))})
}

// odd reports whether p is something that a bartender puts up with once in a
// cover.
func odd(c flavor.Class) bool {
	switch c {
	case flavor.ClassCocktailBitters, flavor.ClassTincture, flavor.ClassFreshHerb, flavor.ClassFruit,
		flavor.ClassCoffee, flavor.ClassTea:
		return true
	}
	return restricted(c) != ""
}

// restricted names the kind of a class that only replaces its own kind: the
// numbers of a brine or a foam may fit a gap, and the guest would not thank us.
func restricted(c flavor.Class) string {
	switch c {
	case flavor.ClassSavoury, flavor.ClassSaline, flavor.ClassSpice:
		return "savoury"
	case flavor.ClassEgg, flavor.ClassFoam:
		return "foam"
	case flavor.ClassDairy, flavor.ClassPlantMilk:
		return "cream"
	case flavor.ClassCreamLiqueur:
		return "cream"
	case flavor.ClassVinegar, flavor.ClassAcid, flavor.ClassShrub, flavor.ClassSourJuice:
		return "sour"
	case flavor.ClassBeer, flavor.ClassCider:
		return "beer"
	}
	return ""
}

func (t *task) addCandidates() {
	grid := newGrid(t.gapML, measure.SystemOf(t.req.Spec))
	t.cands = make([]candidate, 0, len(t.req.Candidates))
	products := make([]float64, len(t.moves)*len(t.req.Candidates))
	for _, p := range byID(t.req.Candidates) {
		if !t.allowed(p) {
			continue
		}
		c := candidate{profile: p, amounts: grid.amountsOf(p), per: t.space.perML(p), odd: odd(p.Class)}
		c.self = dot(&c.per, &c.per)
		if len(c.amounts) == 0 || c.self <= 0 {
			continue
		}
		if t.req.Usual != nil && !t.req.Usual[p.ID] {
			c.rare = t.finder.weights.RareCost
		}
		c.gap = dot(&c.per, &t.gap)
		c.moves, products = products[:len(t.moves):len(t.moves)], products[len(t.moves):]
		for m := range t.moves {
			c.moves[m] = dot(&c.per, &t.moves[m].by)
		}
		t.cands = append(t.cands, c)
	}
	t.addTastings()
}

// byID returns profiles in the order of their ids, which is that of the index.
func byID(profiles []*flavor.Profile) []*flavor.Profile {
	order := func(a, b *flavor.Profile) int { return strings.Compare(a.ID, b.ID) }
	if slices.IsSortedFunc(profiles, order) {
		return profiles
	}
	return slices.SortedFunc(slices.Values(profiles), order)
}

// allowed keeps out what the guest must not have, what only replaces its own kind, and
// what is in the drink already, the missing ones among it.
func (t *task) allowed(p *flavor.Profile) bool {
	if !t.req.Guest.accepts(p) {
		return false
	}
	if kind := restricted(p.Class); kind != "" &&
		!slices.ContainsFunc(t.removed, func(x *flavor.Profile) bool { return restricted(x.Class) == kind }) {
		return false
	}
	for i := range t.req.Spec.Pours {
		if t.req.Spec.Pours[i].Profile.ID == p.ID {
			return false
		}
	}
	return true
}

// found is one combination with its amounts.
type found struct {
	parts   []int // candidates, ascending
	amounts []int // index into each one's amounts
	moves   []int
	square  float64 // squared distance
	rank    float64
	score   float64 // of the whole drink; 0 if it was not worked out
}

// describe turns a combination into a cover.
func (t *task) describe(x *found) (Cover, error) {
	c := Cover{Distance: math.Sqrt(x.square), rank: x.rank, Spec: t.specOf(x)}
	var err error
	if c.Ideal, err = t.ideal(x.parts); err != nil {
		return Cover{}, err
	}
	for k, i := range x.parts {
		a := t.cands[i].amounts[x.amounts[k]]
		c.Parts = append(c.Parts, pourOf(t.cands[i].profile, a))
	}
	slices.SortStableFunc(c.Parts, func(a, b flavor.Pour) int { return cmp.Compare(b.ML, a.ML) })
	for _, m := range x.moves {
		from := t.req.Spec.Pours[t.moves[m].pour]
		to := t.moves[m].amount
		c.Changes = append(c.Changes, balance.Change{Pour: t.moves[m].pour, Profile: from.Profile, Unit: from.Unit,
			From: from.Amount, To: to.value, FromML: from.ML, ToML: to.ml})
	}
	drink, err := t.finder.mixer.Mix(&c.Spec)
	if err != nil {
		return Cover{}, err
	}
	if c.Score = x.score; c.Score == 0 {
		if c.Score, err = t.finder.judge.ScoreOnly(&c.Spec); err != nil {
			return Cover{}, err
		}
	}
	c.ABVChange, c.VolumeChange = drink.ABV-t.drink.ABV, drink.VolumeML-t.drink.VolumeML
	t.compareAromas(&c, drink)
	t.compareAllergens(&c)
	c.Text = t.text(&c)
	return c, nil
}

func pourOf(p *flavor.Profile, a amount) flavor.Pour {
	return flavor.Pour{Profile: p, Amount: a.value, Unit: a.unit, ML: a.ml,
		Match: flavor.Match{Asked: p.Name, How: flavor.MatchExact}}
}

// specOf returns the whole drink, the substitutes in the place of the first
// pour that went.
func (t *task) specOf(x *found) flavor.Spec {
	s := t.req.Spec.Clone()
	for _, m := range x.moves {
		p := &s.Pours[t.moves[m].pour]
		p.Amount, p.ML = t.moves[m].amount.value, t.moves[m].amount.ml
	}
	var parts []flavor.Pour
	for k, i := range x.parts {
		parts = append(parts, pourOf(t.cands[i].profile, t.cands[i].amounts[x.amounts[k]]))
	}
	var pours []flavor.Pour
	for i := range s.Pours {
		if slices.Contains(t.keep, i) {
			pours = append(pours, s.Pours[i])
			continue
		}
		pours = append(pours, parts...)
		parts = nil
	}
	s.Pours = pours
	return s
}

// leastScore is what a cover must score to keep the drink in balance: balanced
// if it was, and hardly worse if it was not.
func (t *task) leastScore() float64 {
	const slack = 5
	return math.Min(template.BalancedFrom, t.scoreBefore-slack)
}

// scorer returns a function that scores roundings of one combination.
func (t *task) scorer(first *found) (func(x *found) float64, error) {
	s := t.specOf(first)
	build, err := t.finder.judge.Prepare(&s)
	if err != nil {
		return nil, err
	}
	return func(x *found) float64 {
		s := t.specOf(x)
		ml := make([]float64, len(s.Pours))
		for i := range s.Pours {
			ml[i] = s.Pours[i].ML
		}
		return build.Score(ml)
	}, nil
}
