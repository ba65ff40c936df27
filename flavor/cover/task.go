package cover

import (
	"cmp"
	"math"
	"slices"

	"gonum.org/v1/gonum/floats"

	"counterpour/flavor"
	"counterpour/flavor/cover/portion"
	"counterpour/flavor/cover/role"
	"counterpour/flavor/cover/search"
	"counterpour/flavor/mix"
	"counterpour/flavor/ratio"
	"counterpour/flavor/sense"
)

// task is one request being worked on.
type task struct {
	finder      *Finder
	req         *Request
	labels      bool // what only a label would have to clear may be poured
	parts       int
	drink       *mix.Drink
	glass       *sense.Glass
	near        *sense.Near
	scoreBefore float64
	mix         ratio.Equivalents // of the drink as it is written
	dry         bool              // the guest must have less alcohol than went, whatever is poured
	removed     []*flavor.Profile
	gone        []departed // for each of removed
	keep        []int      // indices of the pours that stay
	bare        bool       // nothing that stays can be weighed
	gap         sense.Row  // what went out with the removed pours
	gapML       float64
	base        portion.Spirits // that went with other things
	brewed      float64         // mL of what went that is brewed
	moves       []move
	cands       []candidate
	entries     []search.Part
	scored      map[search.Key]float64         // scores of fillings with the moves of now, as far as known
	serves      map[search.Key]bool            // whether they may be served, as far as known
	known       map[search.Combination]float64 // standing of what the trade or the house knows
	customAt    map[search.Combination]int     // places of what the trade pours for the only thing that went
	habits      [][]int                        // the same, as places among the candidates, the first choice first
	customFor   [][]bool                       // by what went and by candidate: poured alone for it by custom
	custom      []bool                         // by candidate: the same, of the only thing that went
	obvious     []bool                         // by candidate: of the class of what went, or poured for it by custom
	cameBack    map[search.Combination]bool    // sent back in this house more often than kept
	oneByOne    map[search.Combination]bool    // what covers each thing alone that went, taken together
	strict      bool                           // only covers that keep the balance
	leftOut     float64                        // how far the glass moves if nothing is poured instead
	effort      int                            // that its searches took
	tooStrong   float64                        // see strongest; only if the guest has a limit
}

// usualParts is the most substitutes if nobody says.
const usualParts = 2

// departed is what is known of something that had to go.
type departed struct {
	*role.Bottle
	smells bool    // of more than next to nothing
	told   bool    // its aroma is told in the drink
	weight float64 // how much of the gap it left, against the others: 1 for the most
}

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
	glass := f.space.Glass(r.Spec, drink)
	t := &task{finder: f, req: r, labels: labels, drink: drink, glass: glass, near: f.space.Near(glass), scoreBefore: score}
	for i := range r.Spec.Pours {
		if p := r.Spec.Pours[i].Profile; r.missing(p) || !t.accepts(p) {
			if !slices.Contains(t.removed, p) {
				t.removed = append(t.removed, p)
			}
			continue
		}
		t.keep = append(t.keep, i)
	}
	t.mix = ratio.EquivalentsOf(r.Spec)
	t.dry = t.wantsLess()
	t.bare = !weighs(t.specOf(&search.Filling{}))
	t.base = t.baseGone()
	t.measureGap()
	if t.leftOut, err = t.distanceLeftOut(); err != nil {
		return nil, err
	}
	t.parts = min(MaxParts, cmp.Or(r.Parts, usualParts)+len(t.removed)-1)
	if r.Guest.MaxABV > 0 {
		if t.tooStrong, err = t.strongest(r.Guest.MaxABV); err != nil {
			return nil, err
		}
	}
	return t, nil
}

// wantsLess reports whether the guest cannot have the alcohol of what went. Then
// nothing keeps the balance of the drink as it was, and the nearest glass is what
// the guest is served.
func (t *task) wantsLess() bool {
	g := &t.req.Guest
	if g.TooStrong(t.drink.ABV) {
		return true
	}
	return (g.NoAlcohol || g.NoTrace) && slices.ContainsFunc(t.removed, func(p *flavor.Profile) bool { return p.ABV.Value > flavor.NoAlcoholABV })
}

// distanceLeftOut returns how far the glass moves if what went is left out: without
// bound if nothing is left to be told a drink by.
func (t *task) distanceLeftOut() (float64, error) {
	if t.bare || len(t.keep) == 0 {
		return math.Inf(1), nil
	}
	x, err := t.mixed(&search.Filling{})
	if err != nil {
		return 0, err
	}
	return x.distance, nil
}

// rowOf returns what a millilitre brings, in steps: for a guest who must have less
// alcohol, that apart.
func (t *task) rowOf(holds *sense.Vector) sense.Row {
	row := t.near.RowOf(holds)
	if t.dry {
		row[sense.Ethanol] = 0
	}
	return row
}

// between returns how far apart two glasses are: for a guest who must have less
// alcohol, that apart.
func (t *task) between(a, b *sense.Glass) float64 {
	steps := sense.Between(a, b)
	if t.dry {
		steps[sense.Ethanol] = 0
	}
	return steps.Total()
}

// accepts reports whether an ingredient may be in the glass.
func (t *task) accepts(p *flavor.Profile) bool {
	if t.labels {
		return t.req.Guest.IfCleared(p)
	}
	return t.req.Guest.Accepts(p)
}

// measureGap works out what the removed pours took with them.
func (t *task) measureGap() {
	var most float64
	for _, p := range t.removed {
		d := departed{Bottle: t.finder.cellar.Of(p)}
		per := t.rowOf(&d.Holds)
		var own sense.Row
		for i := range t.req.Spec.Pours {
			if q := &t.req.Spec.Pours[i]; q.Profile == p {
				addTo(&own, &per, q.ML)
				t.gapML += q.ML
				if p.Class.Brewed() {
					t.brewed += q.ML
				}
			}
		}
		addTo(&t.gap, &own, 1)
		d.weight = floats.Norm(own[:], 2)
		d.smells = !d.Smell.Plain()
		d.told = d.smells && floats.Norm(own[firstAroma:lastAroma], 2) >= toldAroma
		most = max(most, d.weight)
		t.gone = append(t.gone, d)
	}
	for i := range t.gone {
		if most > 0 {
			t.gone[i].weight /= most
		}
	}
}

// toldAroma is how many steps of a drink's aroma something brings that is told in it.
const toldAroma = 1.0

// Places of the aroma in a row.
const (
	firstAroma = sense.Dims - sense.AromaDims
	lastAroma  = sense.Dims
)

// problem states the task as one of numbers: to list so many fillings, as far as they rank
// within reach of the best, in steps. Directions in which nothing takes
// away are those of each sense that is one number or a colour: a pour adds to it
// once what it adds to the volume is allowed for.
func (t *task) problem(limit int, reach float64) *search.Problem {
	w := &t.finder.weights
	p := &search.Problem{Gap: t.gap, Parts: t.entries, Known: t.known,
		Costs: search.Costs{Part: w.Part, Move: w.Move, Earn: w.Earn, Unlike: w.Unlike},
		Most:  t.parts, Limit: limit, PerKind: len(t.removed), Tail: reach + blur,
		Allows: t.allows, Choose: t.choose}
	for i := range t.moves {
		p.Moves = append(p.Moves, search.Move{Pour: t.moves[i].pour, By: t.moves[i].by})
	}
	var nothing sense.Vector
	still := t.near.RowOf(&nothing) // what a millilitre of nothing thins, and the volume that it adds
	for i := range firstAroma {
		if t.dry && i == int(sense.Ethanol) {
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

func addTo(v, o *sense.Row, times float64) {
	for i := range v {
		v[i] += times * o[i]
	}
}

// unstated returns what had to go, without being missing, though its label may clear it.
func (t *task) unstated() (out []*flavor.Profile) {
	for _, p := range t.removed {
		if !t.req.missing(p) && t.req.Guest.IfCleared(p) {
			out = append(out, p)
		}
	}
	return out
}

// cost returns the price of the substitutes of a filling.
func (t *task) cost(x *search.Filling) float64 {
	var sum float64
	for k, i := range x.Parts {
		sum += t.req.Guest.Prices[t.cands[i].Profile.ID] * t.cands[i].amounts[x.Amounts[k]].ML
	}
	return sum
}
