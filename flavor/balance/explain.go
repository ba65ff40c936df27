package balance

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
	StagePour        Stage = "pour"        // what a pour counts as; mL of all equivalents
	StageTotal       Stage = "total"       // an equivalent in the whole drink, mL
	StageShare       Stage = "share"       // of the whole, per cent
	StageCentre      Stage = "centre"      // the ratio that good drinks of a family have
	StageRatio       Stage = "ratio"       // a log-ratio, in widths of the family's spread
	StageExcess      Stage = "excess"      // what a family lacks and the drink has, in edges
	StageDistance    Stage = "distance"    // squared, over the squared edge
	StageFamilyScore Stage = "family"      // points in one family
	StageProbability Stage = "probability" // of one family, per cent
	StageOther       Stage = "other"       // what a family that is hardly likely adds, points
	StageMean        Stage = "mean"        // the score by the ratio, points
	StageExcused     Stage = "excused"     // the same, as far as precedents excuse it, points
	StageHabit       Stage = "habit"       // what a pour or a sense beyond habit leaves, points
	StageUneven      Stage = "uneven"      // what is too much or too little to the rest leaves, points
	StageBound       Stage = "bound"       // what a bound or a fault of method leaves, points
	StageScore       Stage = "score"       // of the mean, habit and what is uneven together, or the least bound, points
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

// Explain works out one score line by line. Over the families that are told,
// probability ÷ 100 × score, and the points of the others, sum to the value of
// the mean; Score is that of the mean and of what habits and proportions leave
// together, or what the bounds or the method leave if that is less.
func (j *Judge) Explain(s *flavor.Spec) ([]Step, error) {
	build, err := j.set.Prepare(s)
	if err != nil {
		return nil, err
	}
	w := working{spec: s, detail: build.Detail(build.Amounts())}
	w.drink()
	told := 0
	for told < len(w.detail.Families) && (told == 0 || w.detail.Families[told].Probability >= tellingChance) {
		w.family(&w.detail.Families[told])
		told++
	}
	w.mean(told, w.others(told))
	w.habits()
	return w.steps, nil
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
		w.add(StagePour, "", d.Pours[i].Total(), "ml", wording.Counts(&w.spec.Pours[i], &d.Pours[i]))
	}
	for _, a := range ratio.Axes() {
		if math.Abs(d.Sum[a]) >= wording.LeastTold {
			w.add(StageTotal, "", d.Equivalents[a], "ml", wording.InAll(a, d.Sum[a]))
		}
	}
	w.add(StageTotal, "", d.TotalML, "ml", wording.Together(d.TotalML))
	for _, a := range ratio.Axes() {
		if d.Equivalents[a] >= wording.LeastTold {
			w.add(StageShare, "", 100*d.Share[a], "%", wording.Share(a, d.Equivalents[a], d.TotalML, d.Share[a]))
		}
	}
}

// family tells how the drink sits in one family.
func (w *working) family(f *weigh.FamilyDetail) {
	w.add(StageCentre, f.ID, float64(f.Drinks), "drinks", wording.Centre(f))
	for i := range f.Coordinates {
		c := &f.Coordinates[i]
		w.add(StageRatio, f.ID, c.Widths, "widths", wording.LogRatio(f, c))
	}
	for i := range f.Excess {
		x := &f.Excess[i]
		w.add(StageExcess, f.ID, x.Edges, "edges", wording.Excess(f, x))
	}
	w.add(StageDistance, f.ID, f.Edges, "edges²", wording.Distance(f))
	w.add(StageFamilyScore, f.ID, f.Score, "points", wording.FamilyScore(f))
	w.add(StageProbability, f.ID, 100*f.Probability, "%", wording.Likely(f))
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
		w.add(StageOther, f.ID, points, "points", wording.Other(f, points))
	}
	w.add(StageOther, "", unseen, "points", wording.EveryOther(unseen))
	return sum
}

// mean tells how the scores of the families that were told come together.
func (w *working) mean(told int, others float64) {
	d := &w.detail
	w.add(StageMean, "", d.Mean, "points", wording.Mean(d.Families[:told], others, d.Mean))
	if d.Ratio > d.Mean {
		w.add(StageExcused, "", d.Ratio, "points", wording.Excused(d.Ratio))
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
		leaves(StageHabit, wording.Habit(&d.Beyond[i]), d.Beyond[i].Edges)
	}
	switch x := &d.Uneven; {
	case x.Edges > x.Told:
		leaves(StageUneven, wording.SugarToAcid, x.Edges)
	case x.Edges > 0 && x.Profile != nil:
		leaves(StageUneven, wording.TimesAsMuch(math.Exp(-x.Change), x.Profile.Name), x.Edges)
	}
	for i := range d.Bounds {
		leaves(StageBound, wording.Bound(&d.Bounds[i]), d.Bounds[i].Edges)
	}
	for i := range d.Method {
		leaves(StageBound, wording.Method(w.spec.Method, &d.Method[i]), d.Method[i].Edges)
	}
	w.add(StageScore, "", d.Score, "points", wording.Score(d.Score, weigh.VerdictOf(d.Score)))
}
