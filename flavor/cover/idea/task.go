// Package idea is a filling of a gap as it comes into the glass: its pours, how near it comes,
// whether it may be served, what it loses and what it ranks.
package idea

import (
	"math"
	"slices"

	"counterpour/flavor"
	"counterpour/flavor/balance"
	"counterpour/flavor/cover/asked"
	"counterpour/flavor/cover/gap"
	"counterpour/flavor/cover/search"
	"counterpour/flavor/cover/shelf"
	"counterpour/flavor/cover/soft"
	"counterpour/flavor/mix"
	"counterpour/flavor/ratio"
	"counterpour/flavor/sense"
)

// Tools are what every task works with.
type Tools struct {
	Mixer   *mix.Mixer
	Judge   *balance.Judge
	Space   *sense.Space
	Trade   gap.Trade
	Weights asked.Weights
	Desks   shelf.Desks
}

// Idea is one filling as it comes into the glass, and those that come to the same.
type Idea struct {
	Filling  search.Filling
	Spec     flavor.Spec
	Drink    *mix.Drink
	Glass    *sense.Percept
	Distance float64 // between the two glasses
	Score    float64
	Rank     float64
	Gone     []sense.Lost // what led what went and is gone
	Also     []Idea
}

// Task is one request being worked on: the drink as it was ordered, and the shelf from which its
// gap may be filled.
type Task struct {
	*Tools
	*shelf.Shelf
	Drink       *mix.Drink
	Glass       *sense.Percept
	ScoreBefore float64
	LeftOut     float64 // how far the glass moves if nothing is poured instead
	Moves       []Move
	Strict      bool // only covers that keep the balance

	near      *sense.Near
	mix       ratio.Equivalents      // of the drink as it is written
	bare      bool                   // nothing that stays can be weighed
	scored    map[search.Key]float64 // scores of fillings with the moves of now, as far as known
	serves    map[search.Key]bool    // whether they may be served, as far as known
	tooStrong float64                // before ice, in % vol; only if the guest has a limit

	sweetAsOrdered bool // the drink as it is written has sugar for its lemon or lime
}

// NewTask measures the drink of a request and what leaves it; with labels, what only some label
// would have to clear may be poured. Nothing is on its shelf yet.
func (u *Tools) NewTask(r *asked.Request, labels bool) (*Task, error) {
	drink, err := u.Mixer.Mix(r.Spec)
	if err != nil {
		return nil, err
	}
	score, err := u.Judge.ScoreOnly(r.Spec)
	if err != nil {
		return nil, err
	}
	glass := u.Space.Percept(r.Spec, drink)
	near := u.Space.Near(glass)
	left := gap.New(&u.Trade, gap.Asked{Spec: r.Spec, ABV: drink.ABV, Missing: r.Missing, Candidates: r.Candidates,
		Guest: &r.Guest, Labels: labels}, near)
	t := &Task{Tools: u, Shelf: shelf.New(r, left, &u.Trade, u.Weights, u.Mixer, &u.Desks), Drink: drink, Glass: glass, near: near, ScoreBefore: score,
		scored: map[search.Key]float64{}, serves: map[search.Key]bool{}}
	t.mix = ratio.EquivalentsOf(r.Spec)
	t.sweetAsOrdered = soft.Sugared(slices.Values(r.Spec.Pours))
	t.bare = !weighs(t.SpecOf(&search.Filling{}))
	if t.LeftOut, err = t.distanceLeftOut(); err != nil {
		return nil, err
	}
	if r.Guest.MaxABV > 0 {
		if t.tooStrong, err = u.Mixer.StrongestPoured(r.Spec, r.Guest.MaxABV); err != nil {
			return nil, err
		}
	}
	return t, nil
}

// distanceLeftOut returns how far the glass moves if what went is left out: without
// bound if nothing is left to be told a drink by.
func (t *Task) distanceLeftOut() (float64, error) {
	if t.bare || len(t.Gap.Keep) == 0 {
		return math.Inf(1), nil
	}
	x, err := t.Mixed(&search.Filling{})
	if err != nil {
		return 0, err
	}
	return x.Distance, nil
}

// Between returns how far apart two glasses are: for a guest who must have less
// alcohol, that apart.
func (t *Task) Between(a, b *sense.Percept) float64 {
	steps := sense.Between(a, b)
	if t.Gap.Less {
		steps[sense.Ethanol] = 0
	}
	return steps.Total()
}

// Problem states the task as one of numbers: to list so many fillings, as far as they rank
// within reach of the best, in steps. Directions in which nothing takes
// away are those of each sense that is one number or a colour: a pour adds to it
// once what it adds to the volume is allowed for.
func (t *Task) Problem(limit int, reach float64) *search.Problem {
	w := &t.Weights
	p := &search.Problem{Gap: t.Gap.Row, Parts: t.Entries, Known: t.Practice.Known(),
		Costs: search.Costs{Part: w.Part, Move: w.Move, Earn: w.Earn, Unlike: w.Unlike},
		Most:  t.MostParts, Limit: limit, PerKind: len(t.Gap.Gone), Tail: reach + blur,
		Allows: t.Allows, Choose: t.Choose}
	for i := range t.Moves {
		p.Moves = append(p.Moves, search.Move{Pour: t.Moves[i].Pour, By: t.Moves[i].By})
	}
	var nothing sense.Vector
	still := t.near.RowOf(&nothing) // what a millilitre of nothing thins, and the volume that it adds
	for i := range gap.FirstAroma {
		if t.Gap.Less && i == int(sense.Ethanol) {
			continue
		}
		var w search.Row
		w[i], w[sense.Dims] = 1, -still[i]/still[sense.Dims]
		p.Rising = append(p.Rising, w)
	}
	var volume search.Row
	volume[sense.Dims] = 1
	p.Rising = append(p.Rising, volume)
	return p
}

// blur is by how much the distance in the glass may differ from that in the space
// near the original, to be on the safe side when covers are searched for.
const blur = 3.0
