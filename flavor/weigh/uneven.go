package weigh

import (
	"gonum.org/v1/gonum/floats"

	"counterpour/flavor"
	"counterpour/flavor/weigh/namesake"
	"counterpour/flavor/weigh/proportion"
)

// What is left of a drink's say in what proportions are usual if it is of another family
// than the draft, and if it is served otherwise. Chosen by the trial.
const (
	otherKind  = 0.15
	servedElse = 0.5
)

// proportions returns what proven drinks of the draft's make-up have of each task to each
// other, which a spec's Build works out once.
func (b *Build) proportions() *proportion.Usual {
	if b.proportion != nil {
		return b.proportion
	}
	b.habit()
	kindly, says, rests := b.kindly(), b.room(b.set.kin.Drinks()), b.Forgotten()
	for i, x := range kindly {
		if !rests.ServedAlike(i) {
			x *= servedElse
		}
		says[i] = x
	}
	own := proportion.TasksOf(b.parts, b.ml)
	b.desk.proportion = proportion.Learn(&own, b.set.tasks, says)
	b.proportion = &b.desk.proportion
	poured := proportion.QuantitiesOf(b.parts, b.ml)
	b.desk.precedents = b.set.precedents.PrecedentsFor(&poured, kindly, b.spec.Method == flavor.Blend, b.room)
	b.precedents = &b.desk.precedents
	b.namesakes = b.set.namesakes.OwnOf(b.called, b.parts, b.ml)
	return b.proportion
}

// kindly returns how much each proven drink counts as a precedent: by its make-up and
// family, however it is served.
func (b *Build) kindly() []float64 {
	says := b.room(b.set.kin.Drinks())
	for i, kind := range b.ofKind() {
		near := b.habits.near[i]
		says[i] = otherKind*near*near + (1-otherKind)*kind
	}
	return says
}

// unevenEdges returns how far out the drink with other amounts is by its proportions and by
// precedent and by its name, and how surely nothing is near the edge of that, 0 to 1.
func (b *Build) unevenEdges(ml []float64) (edges, excused float64) {
	usual := b.proportions()
	tasks, poured := proportion.TasksOf(b.parts, ml), proportion.QuantitiesOf(b.parts, ml)
	edges, excused = b.precedents.Beyond(&poured)
	edges = proportion.Together(edges, usual.Edges(&tasks))
	named, _, _ := b.namesakes.Edges(ml)
	return proportion.Together(edges, namely(named, excused)), excused
}

// namely returns how far out a drink is by its name, given how surely precedents excuse it: what is
// well within all that is made of the same is another way to pour the drink, as a wet Martini is.
func namely(edges, excused float64) float64 { return edges * min(1, 2*(1-excused)) }

// Incomplete returns how far out the drink is by lacking the one thing that all proven drinks of its name have
// beside all of it, 1 at the edge; 0 if it lacks none.
func (b *Build) Incomplete() (edges float64) {
	for i, x := range b.Forgotten().Lacking() {
		if out := namesake.LeftOut(x.In.ML, floats.Sum(b.ml)); i == 0 || out < edges {
			edges = out
		}
	}
	return edges
}

// Uneven is what does one task of a drink, and is too much or too little to what does the
// others.
type Uneven struct {
	Profile *flavor.Profile // the largest pour that does it
	Change  float64         // logarithm of the factor that would bring it back, negative if there is too much
	Edges   float64         // how far out the drink is by its proportions, 1 at the edge
	// Told is how far out it is by what the ratio tells no better: how much there is of
	// sugar to acid has no precedent, but which of the two is wrong is for the ratio to say.
	Told float64
}

// uneven returns the task that explains best, if it alone went wrong, why the drink is as
// uneven as it is; or what modifies the drink, or is too little to that, if precedent says so.
func (b *Build) uneven(ml []float64) (out Uneven) {
	usual := b.proportions()
	tasks, poured := proportion.TasksOf(b.parts, ml), proportion.QuantitiesOf(b.parts, ml)
	out.Profile, out.Change = usual.Slip(b.parts, ml)
	beyond, excused := b.precedents.Beyond(&poured)
	out.Told = usual.Edges(&tasks)
	out.Edges = proportion.Together(out.Told, beyond)
	if by, change, edges := b.precedents.Worst(&poured, usual, &tasks); by != nil && edges >= out.Told {
		out.Profile, out.Change, out.Told = by, change, edges
	}
	named, by, change := b.namesakes.Edges(ml)
	named = namely(named, excused)
	if named > out.Edges {
		out.Profile, out.Change, out.Told = by, change, named
	}
	out.Edges = proportion.Together(out.Edges, named)
	if out.Profile != nil && out.Change < 0 && out.Profile.Base() {
		out.Profile = b.oddestBase(out.Profile, ml)
	}
	return out
}

// oddestBase returns which base there is too much of where bases are too much together: the one that
// is farthest beyond what proven drinks pour of it, else the one that is given.
func (b *Build) oddestBase(largest *flavor.Profile, ml []float64) *flavor.Profile {
	out, farthest := largest, 0.0
	b.beyond(ml, func(x *Beyond) {
		if x.Profile.Base() && x.Edges > farthest {
			out, farthest = x.Profile, x.Edges
		}
	})
	return out
}
