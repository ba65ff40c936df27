package weigh

import (
	"counterpour/flavor"
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
	says := b.room(b.set.kin.Drinks())
	for i, kind := range b.ofKind() {
		near := b.habits.near[i]
		says[i] = otherKind*near*near + (1-otherKind)*kind
		if b.set.served[i] != b.spec.Service {
			says[i] *= servedElse
		}
	}
	own := proportion.TasksOf(b.parts, b.ml)
	b.desk.proportion = proportion.Learn(&own, b.set.tasks, says)
	b.proportion = &b.desk.proportion
	return b.proportion
}

// unevenEdges returns how far out the drink with other amounts is by the proportion of
// any two tasks.
func (b *Build) unevenEdges(ml []float64) float64 {
	tasks := proportion.TasksOf(b.parts, ml)
	return b.proportions().Edges(&tasks)
}

// Uneven is what does one task of a drink, and is too much or too little to what does the
// others.
type Uneven struct {
	Profile *flavor.Profile // the largest pour that does it
	Change  float64         // logarithm of the factor that would bring it back, negative if there is too much
	Edges   float64         // how far out the drink is by its proportions, as a square, 1 at the edge
}

// uneven returns the task that explains best, if it alone went wrong, why the drink is as
// uneven as it is.
func (b *Build) uneven(ml []float64) (out Uneven) {
	out.Profile, out.Change = b.proportions().Slip(b.parts, ml)
	out.Edges = b.unevenEdges(ml)
	return out
}
