package cover

import (
	"cmp"
	"math"
	"slices"

	"counterpour/flavor/cover/gap"
	"counterpour/flavor/cover/practice"
	"counterpour/flavor/cover/search"
	"counterpour/flavor/cover/soft"
	"counterpour/flavor/mix"
	"counterpour/flavor/ratio"
	"counterpour/flavor/sense"
)

// task is one request being worked on.
type task struct {
	finder      *Finder
	req         *Request
	parts       int
	drink       *mix.Drink
	glass       *sense.Percept
	near        *sense.Near
	scoreBefore float64
	mix         ratio.Equivalents // of the drink as it is written
	gap         *gap.Gap
	whole       *whole // the drink that was ordered, where this is what is left of it
	bare        bool   // nothing that stays can be weighed
	moves       []move
	desk        *desk // of the next two
	cands       []candidate
	entries     []search.Part
	scored      map[search.Key]float64 // scores of fillings with the moves of now, as far as known
	serves      map[search.Key]bool    // whether they may be served, as far as known
	practice    practice.Practice
	strict      bool    // only covers that keep the balance
	leftOut     float64 // how far the glass moves if nothing is poured instead
	effort      int     // that its searches took
	strayed     int     // how far what is listed is from being like what went: 0 for what is taken for it
	tooStrong   float64 // before ice, in % vol; only if the guest has a limit

	sweetAsOrdered bool // the drink as it is written has sugar for its lemon or lime
}

// usualParts is the most substitutes if nobody says.
const usualParts = 2

// newTask measures the drink and what leaves it.
func (f *Finder) newTask(r *Request, labels bool) (*task, error) {
	drink, err := f.mixer.Mix(r.Spec)
	if err != nil {
		return nil, err
	}
	score, err := f.judge.ScoreOnly(r.Spec)
	if err != nil {
		return nil, err
	}
	glass := f.space.Percept(r.Spec, drink)
	t := &task{finder: f, req: r, drink: drink, glass: glass, near: f.space.Near(glass), scoreBefore: score,
		scored: map[search.Key]float64{}, serves: map[search.Key]bool{}}
	t.gap = gap.New(&f.trade, gap.Asked{Spec: r.Spec, ABV: drink.ABV, Missing: r.Missing, Candidates: r.Candidates,
		Guest: &r.Guest, Labels: labels}, t.near)
	t.mix = ratio.EquivalentsOf(r.Spec)
	t.sweetAsOrdered = soft.Sugared(slices.Values(r.Spec.Pours))
	t.bare = !weighs(t.specOf(&search.Filling{}))
	if t.leftOut, err = t.distanceLeftOut(); err != nil {
		return nil, err
	}
	t.parts = min(MaxParts, cmp.Or(r.Parts, usualParts)+len(t.gap.Gone)-1)
	if r.Guest.MaxABV > 0 {
		if t.tooStrong, err = f.mixer.StrongestPoured(r.Spec, r.Guest.MaxABV); err != nil {
			return nil, err
		}
	}
	return t, nil
}

// distanceLeftOut returns how far the glass moves if what went is left out: without
// bound if nothing is left to be told a drink by.
func (t *task) distanceLeftOut() (float64, error) {
	if t.bare || len(t.gap.Keep) == 0 {
		return math.Inf(1), nil
	}
	x, err := t.mixed(&search.Filling{})
	if err != nil {
		return 0, err
	}
	return x.distance, nil
}

// between returns how far apart two glasses are: for a guest who must have less
// alcohol, that apart.
func (t *task) between(a, b *sense.Percept) float64 {
	steps := sense.Between(a, b)
	if t.gap.Less {
		steps[sense.Ethanol] = 0
	}
	return steps.Total()
}

// problem states the task as one of numbers: to list so many fillings, as far as they rank
// within reach of the best, in steps. Directions in which nothing takes
// away are those of each sense that is one number or a colour: a pour adds to it
// once what it adds to the volume is allowed for.
func (t *task) problem(limit int, reach float64) *search.Problem {
	w := &t.finder.weights
	p := &search.Problem{Gap: t.gap.Row, Parts: t.entries, Known: t.practice.Known(),
		Costs: search.Costs{Part: w.Part, Move: w.Move, Earn: w.Earn, Unlike: w.Unlike},
		Most:  t.parts, Limit: limit, PerKind: len(t.gap.Gone), Tail: reach + blur,
		Allows: t.allows, Choose: t.choose}
	for i := range t.moves {
		p.Moves = append(p.Moves, search.Move{Pour: t.moves[i].pour, By: t.moves[i].by})
	}
	var nothing sense.Vector
	still := t.near.RowOf(&nothing) // what a millilitre of nothing thins, and the volume that it adds
	for i := range gap.FirstAroma {
		if t.gap.Less && i == int(sense.Ethanol) {
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

// cost returns the price of the substitutes of a filling.
func (t *task) cost(x *search.Filling) float64 {
	var sum float64
	for k, i := range x.Parts {
		sum += t.req.Guest.Prices[t.cands[i].Profile.ID] * t.cands[i].amounts[x.Amounts[k]].ML
	}
	return sum
}
