// Package proportion holds a drink against others task by task: how much there is of what
// does one task, as sweetening, to what does another.
//
// A ratio adds up what all pours bring of an axis: a liqueur poured twice is lost in the
// strength of the base, and a syrup in the breadth of its family. Which other drinks count,
// and how much each, is for the caller to say.
package proportion

import (
	"cmp"
	"math"
	"slices"

	"counterpour/flavor"
	"counterpour/flavor/habit"
	"counterpour/flavor/makeup"
	"counterpour/flavor/ratio"
)

// task is what a pour is there for, finer than its part: who pours twice the amaro does
// not pour twice the vermouth.
type task int

const (
	taskBase task = iota
	taskSweeten
	taskSour
	taskLength
	taskLiqueur
	taskBitter
	taskWine
	taskMilk
	taskWhole // the drink, which is no task but what all are a share of

	numTasks = int(taskWhole) + 1
)

// taskOf returns what a part is there for, and false for what seasons or binds.
func taskOf(p *makeup.Part) (task, bool) {
	switch p.Role {
	case flavor.PartBase:
		return taskBase, true
	case flavor.PartSweetener:
		return taskSweeten, true
	case flavor.PartSour:
		return taskSour, true
	case flavor.PartLength:
		return taskLength, true
	case flavor.PartModifier:
		switch p.Profile.Class.Kin() {
		case flavor.KinWine:
			return taskWine, true
		case flavor.KinBitter:
			return taskBitter, true
		}
		return taskLiqueur, true
	}
	return taskMilk, p.Profile.Class.Milky()
}

// halfOf is the share of a drink at which a task is half there: a dash of a liqueur does
// not do what liqueurs do. As for signals.
func (t task) halfOf() float64 {
	switch t {
	case taskLength:
		return makeup.HalfWater
	case taskLiqueur, taskBitter, taskWine:
		return 0.04
	}
	return 0.02
}

// Tasks is how much a drink has of each task. The zero value has nothing.
type Tasks struct {
	logs [numTasks]float64 // logarithms of mL, of a base, a sweetener or a sour in equivalents, of a liqueur or an amaro by its strength; 0 for none
	sure [numTasks]float64 // how surely it is there, 0 to 1
}

// TasksOf returns how much a drink has of each task, given its parts and the mL of each of
// its pours.
func TasksOf(parts []makeup.Part, ml []float64) Tasks {
	var poured, counted [numTasks]float64
	for i := range parts {
		p := &parts[i]
		x := p.Amount(ml)
		poured[taskWhole] += x
		t, ok := taskOf(p)
		if !ok {
			continue
		}
		poured[t] += x
		switch t {
		case taskBase:
			x *= p.Per[ratio.Strong]
		case taskSweeten:
			x *= p.Per[ratio.Sweet]
		case taskSour:
			x *= p.Per[ratio.Sour]
		case taskLiqueur, taskBitter:
			x *= habit.Strength(p.Profile)
		}
		counted[t] += x
	}
	counted[taskWhole] = poured[taskWhole]
	var out Tasks
	for t := range counted {
		if counted[t] > 0 {
			out.logs[t] = math.Log(counted[t])
			out.sure[t] = makeup.Certainty(poured[t], poured[taskWhole], task(t).halfOf())
		}
	}
	out.sure[taskBase] *= 1 - makeup.BackingOf(parts, ml)
	return out
}

// present returns the tasks that a drink has, which are few, in ascending order.
func (d *Tasks) present(room *[numTasks]int) []int {
	out := room[:0]
	for t, sure := range d.sure {
		if sure > 0 {
			out = append(out, t)
		}
	}
	return out
}

// What is known of a proportion is drawn toward the usual spread of one, a logarithm, as
// by usualProportions drinks, and is the less sure the fewer drinks it rests on. From
// proportionEdge squared widths on a proportion is out of balance. Chosen by the trial.
const (
	usualProportion  = 0.35
	usualProportions = 1.0
	fewProportions   = 0.4
	proportionEdge   = 11.0
	leastSay         = 1e-4
)

// pair is what proven drinks have of one task to another: the logarithm of the middle,
// and its variance; +Inf if none has both.
type pair struct{ middle, variance float64 }

// Usual is what drinks of a draft's make-up have of each task to each other, the first
// the greater; and of each task in mL, of which the whole is not told. It is read-only once
// learnt and safe for concurrent use.
type Usual struct {
	pairs [numTasks][numTasks]pair
	alone [numTasks]pair
}

// gathering adds up logarithms by weight.
type gathering struct{ weight, sum, squares float64 }

func (g *gathering) add(weight, x float64) {
	g.weight += weight
	g.sum += weight * x
	g.squares += weight * x * x
}

func (g *gathering) pair() pair {
	if g.weight <= 0 {
		return pair{variance: math.Inf(1)}
	}
	middle := g.sum / g.weight
	own := max(0, g.squares-g.sum*middle)
	v := (own + usualProportions*usualProportion*usualProportion) / (g.weight + usualProportions)
	return pair{middle: middle, variance: v * (1 + fewProportions/g.weight)}
}

// Learn returns what drinks have of each task that the draft has; says is how much each of
// them counts, 0 to 1.
func Learn(draft *Tasks, drinks []Tasks, says []float64) Usual {
	var pairs [numTasks][numTasks]gathering
	var alone [numTasks]gathering
	var room [numTasks]int
	present := draft.present(&room)
	for i, say := range says {
		if say < leastSay {
			continue
		}
		o := &drinks[i]
		for k, t := range present {
			if o.sure[t] <= 0 {
				continue
			}
			alone[t].add(say*o.sure[t], o.logs[t])
			for _, u := range present[:k] {
				if o.sure[u] > 0 {
					pairs[t][u].add(say*o.sure[t]*o.sure[u], o.logs[t]-o.logs[u])
				}
			}
		}
	}
	var out Usual
	for t := range numTasks {
		out.alone[t] = alone[t].pair()
		for u := range t {
			out.pairs[t][u] = pairs[t][u].pair()
		}
	}
	return out
}

// away returns how far two tasks of a drink are from what is usual, as a logarithm, and
// the weight of a square of that, in edges. What there is less of than usual has to be
// there surely: a splash of water or a barspoon of syrup may be no more than that, and is
// not too little.
func (p *Usual) away(d *Tasks, t, u int) (away, weight float64) {
	x := &p.pairs[t][u]
	away, less := d.logs[t]-d.logs[u]-x.middle, u
	if away < 0 {
		less = t
	}
	return away, d.sure[t] * d.sure[u] * d.sure[less] / (x.variance * proportionEdge)
}

// Edges returns how far out a drink is by the proportion of any two of its tasks, as a
// square: 0 if all are as usual, 1 at the edge of good drinks.
func (p *Usual) Edges(d *Tasks) float64 {
	worst := 0.0
	var room [numTasks]int
	present := d.present(&room)
	for k, t := range present {
		for _, u := range present[:k] {
			away, weight := p.away(d, t, u)
			worst = max(worst, away*away*weight)
		}
	}
	return worst
}

// Slip finds the task that, had it alone gone wrong, explains best why a drink with such parts, in
// mL a pour, is as uneven as it is. It returns the largest ingredient that does this task, and
// the logarithm of the factor that would bring it back, negative if there is too much. The
// ingredient is nil if no task explains anything.
func (p *Usual) Slip(parts []makeup.Part, ml []float64) (by *flavor.Profile, change float64) {
	d, gained := TasksOf(parts, ml), 0.0
	for t := range int(taskWhole) {
		does := largestOf(task(t), parts, ml)
		if does == nil {
			continue
		}
		if gain, back := p.slip(&d, t); gain > gained {
			gained, by, change = gain, does, back
		}
	}
	return by, change
}

// slip returns how much of its unevenness a drink loses if one of its tasks is brought
// back alone, and the change that does it. What the task has in mL speaks too: of a base
// and a syrup that do not go together, the one is wrong that others have otherwise.
func (p *Usual) slip(d *Tasks, t int) (gain, change float64) {
	x := &p.alone[t]
	weights := d.sure[t] / (x.variance * proportionEdge)
	pull := weights * (d.logs[t] - x.middle)
	for u := range int(taskWhole) {
		if u == t {
			continue
		}
		away, weight := p.away(d, max(t, u), min(t, u))
		if u > t {
			away = -away
		}
		weights += weight
		pull += weight * away
	}
	if weights <= 0 {
		return 0, 0
	}
	return pull * pull / weights, -pull / weights
}

// largestOf returns the ingredient that does most of a task, the first of equals by
// its id; nil if none does it.
func largestOf(t task, parts []makeup.Part, ml []float64) *flavor.Profile {
	var of []*makeup.Part
	for i := range parts {
		if own, ok := taskOf(&parts[i]); ok && own == t && parts[i].Amount(ml) > 0 {
			of = append(of, &parts[i])
		}
	}
	if len(of) == 0 {
		return nil
	}
	return slices.MaxFunc(of, func(x, y *makeup.Part) int {
		return cmp.Or(cmp.Compare(x.Amount(ml), y.Amount(ml)), -cmp.Compare(x.Profile.ID, y.Profile.ID))
	}).Profile
}
