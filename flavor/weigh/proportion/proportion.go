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
