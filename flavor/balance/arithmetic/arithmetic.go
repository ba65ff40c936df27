// Package arithmetic tells how a score is worked out, line by line, so that a hand could work it
// out again.
package arithmetic

import (
	"math"

	"counterpour/flavor"
	"counterpour/flavor/balance/wording"
	"counterpour/flavor/ratio"
	"counterpour/flavor/weigh"
)

// Stage is a part of the arithmetic of a score.
type Stage string

// The stages, in the order in which a score is worked out.
const (
	Pour        Stage = "pour"        // what a pour counts as; mL of all equivalents
	Total       Stage = "total"       // an equivalent in the whole drink, mL
	Share       Stage = "share"       // of the whole, per cent
	Centre      Stage = "centre"      // the ratio that good drinks of a family have
	Ratio       Stage = "ratio"       // a log-ratio, in widths of the family's spread
	Excess      Stage = "excess"      // what a family lacks and the drink has, in edges
	Distance    Stage = "distance"    // squared, over the squared edge
	FamilyScore Stage = "family"      // points in one family
	Probability Stage = "probability" // of one family, per cent
	Other       Stage = "other"       // what a family that is hardly likely adds, points
	Mean        Stage = "mean"        // the score by the ratio, points
	Excused     Stage = "excused"     // the same, as far as precedents excuse it, points
	Habit       Stage = "habit"       // what a pour or a sense beyond habit leaves, points
	Uneven      Stage = "uneven"      // what is too much or too little to the rest leaves, points
	Bound       Stage = "bound"       // what a bound or a fault of method leaves, points
	Score       Stage = "score"       // of the mean, habit and what is uneven together, or the least bound, points
)

// Step is one line of the arithmetic of a score. Value is unrounded; the text
// rounds it.
type Step struct {
	Stage  Stage
	Family string // id of the family that the line is about; empty for the whole drink
	Text   string
	Value  float64
	Unit   string
}

// tellingChance is the probability from which a family's lines are told in
// full.
const tellingChance = 0.05

// Of works out the score of a drink line by line. Over the families that are told,
// probability ÷ 100 × score, and the points of the others, sum to the value of the mean; Score
// is that of the mean and of what habits and proportions leave together, or what the bounds or
// the method leave if that is less.
func Of(s *flavor.Spec, d weigh.Detail) []Step {
	w := working{spec: s, detail: d}
	w.drink()
	told := 0
	for told < len(d.Families) && (told == 0 || d.Families[told].Probability >= tellingChance) {
		w.family(&w.detail.Families[told])
		told++
	}
	w.mean(told, w.others(told))
	w.habits()
	return w.steps
}

// working gathers the lines.
type working struct {
	spec   *flavor.Spec
	detail weigh.Detail
	steps  []Step
}

func (w *working) add(stage Stage, family string, value float64, unit, text string) {
	w.steps = append(w.steps, Step{Stage: stage, Family: family, Text: text, Value: value, Unit: unit})
}

// drink tells the pours, the totals and the shares.
func (w *working) drink() {
	d := &w.detail
	for i := range w.spec.Pours {
		w.add(Pour, "", d.Pours[i].Total(), "ml", wording.Counts(&w.spec.Pours[i], &d.Pours[i]))
	}
	for _, a := range ratio.Axes() {
		if math.Abs(d.Sum[a]) >= wording.LeastTold {
			w.add(Total, "", d.Equivalents[a], "ml", wording.InAll(a, d.Sum[a]))
		}
	}
	w.add(Total, "", d.TotalML, "ml", wording.Together(d.TotalML))
	for _, a := range ratio.Axes() {
		if d.Equivalents[a] >= wording.LeastTold {
			w.add(Share, "", 100*d.Share[a], "%", wording.Share(a, d.Equivalents[a], d.TotalML, d.Share[a]))
		}
	}
}

// family tells how the drink sits in one family.
func (w *working) family(f *weigh.FamilyDetail) {
	w.add(Centre, f.ID, float64(f.Drinks), "drinks", wording.Centre(f))
	for i := range f.Coordinates {
		c := &f.Coordinates[i]
		w.add(Ratio, f.ID, c.Widths, "widths", wording.LogRatio(f, c))
	}
	for i := range f.Excess {
		x := &f.Excess[i]
		w.add(Excess, f.ID, x.Edges, "edges", wording.Excess(f, x))
	}
	w.add(Distance, f.ID, f.Edges, "edges²", wording.Distance(f))
	w.add(FamilyScore, f.ID, f.Score, "points", wording.FamilyScore(f))
	w.add(Probability, f.ID, 100*f.Probability, "%", wording.Likely(f))
}

// others tells what the families that are hardly likely add, those whose share
// does not show in one line, and returns the sum.
func (w *working) others(told int) float64 {
	var sum, unseen float64
	for i := range w.detail.Families[told:] {
		f := &w.detail.Families[told+i]
		points := f.Probability * f.Score
		sum += points
		if points < wording.LeastTold {
			unseen += points
			continue
		}
		w.add(Other, f.ID, points, "points", wording.Other(f, points))
	}
	w.add(Other, "", unseen, "points", wording.EveryOther(unseen))
	return sum
}

// mean tells how the scores of the families that were told come together.
func (w *working) mean(told int, others float64) {
	d := &w.detail
	w.add(Mean, "", d.Mean, "points", wording.Mean(d.Families[:told], others, d.Mean))
	if d.Ratio > d.Mean {
		w.add(Excused, "", d.Ratio, "points", wording.Excused(d.Ratio))
	}
}

// habits tells what is poured beyond habit and what else is wrong, and the score.
func (w *working) habits() {
	d := &w.detail
	leaves := func(stage Stage, what string, edges float64) {
		points := weigh.ScoreAt(edges)
		w.add(stage, "", points, "points", wording.Leaves(what, edges, points))
	}
	for i := range d.Beyond {
		leaves(Habit, wording.Habit(&d.Beyond[i]), d.Beyond[i].Edges)
	}
	switch x := &d.Uneven; {
	case x.Edges > x.Told:
		leaves(Uneven, wording.SugarToAcid, x.Edges)
	case x.Edges > 0 && x.Profile != nil:
		leaves(Uneven, wording.TimesAsMuch(math.Exp(-x.Change), x.Profile.Name), x.Edges)
	}
	for i := range d.Bounds {
		leaves(Bound, wording.Bound(&d.Bounds[i]), d.Bounds[i].Edges)
	}
	for i := range d.Method {
		leaves(Bound, wording.Method(w.spec.Method, &d.Method[i]), d.Method[i].Edges)
	}
	w.add(Score, "", d.Score, "points", wording.Score(d.Score, weigh.VerdictOf(d.Score)))
}
