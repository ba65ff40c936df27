package balance

import (
	"fmt"
	"math"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/measure"
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

func (w *working) add(stage Stage, family string, value float64, unit, format string, args ...any) {
	w.steps = append(w.steps, Step{Stage: stage, Family: family, Text: fmt.Sprintf(format, args...), Value: value, Unit: unit})
}

// drink tells the pours, the totals and the shares.
func (w *working) drink() {
	d := &w.detail
	for i := range w.spec.Pours {
		p := &w.spec.Pours[i]
		w.add(StagePour, "", d.Pours[i].Total(), "ml", "%s %s is %.1f ml and counts as %s",
			measure.FormatAmount(p.Amount, p.Unit), p.Profile.Name, p.ML, amountsText(&d.Pours[i]))
	}
	for _, a := range ratio.Axes() {
		if math.Abs(d.Sum[a]) < leastTold {
			continue
		}
		note := ""
		if d.Sum[a] < 0 {
			note = ", which counts as none: the spirits and syrups are stronger than the measure"
		}
		w.add(StageTotal, "", d.Equivalents[a], "ml", "%s in all: %.1f ml of %s%s", a, d.Sum[a], a.Measure(), note)
	}
	w.add(StageTotal, "", d.TotalML, "ml", "together: %.1f ml", d.TotalML)
	for _, a := range ratio.Axes() {
		if d.Equivalents[a] >= leastTold {
			w.add(StageShare, "", 100*d.Share[a], "%", "%s: %.1f of %.1f ml is %.1f %%", a, d.Equivalents[a], d.TotalML, 100*d.Share[a])
		}
	}
}

// leastTold is the mL of an equivalent below which it is not told.
const leastTold = 0.05

// family tells how the drink sits in one family.
func (w *working) family(f *weigh.FamilyDetail) {
	w.add(StageCentre, f.ID, float64(f.Drinks), "drinks", "%s: good drinks of this make-up are %s; this one is %s. It rests on the published ratio and %d proven drinks, those made of the same things counting most; every share counts %.1f %% more, and that of length %.0f %%, so that none at all is very little",
		f.Name, ratioText(f.Axes, f.Centre), ratioText(f.Axes, lifted(f)), f.Drinks, 100*f.Floor[ratio.Strong], 100*f.Floor[ratio.Long])
	for i := range f.Coordinates {
		c := &f.Coordinates[i]
		w.add(StageRatio, f.ID, c.Widths, "widths", "%s: %s", f.Name, coordinateText(f, c))
	}
	for _, x := range f.Excess {
		w.add(StageExcess, f.ID, x.Edges, "edges", "%s: %s is %.1f %% of the drink, and such drinks carry up to %.1f %%; the rest is %.2f of %.0f %%, each of which is as bad as the family's edge",
			f.Name, x.Axis, 100*x.Share, 100*x.Allowance, x.Edges, 100*x.Unit)
	}
	w.add(StageDistance, f.ID, f.Edges, "edges²", "%s: squared distance %s = %.2f; almost no good drink of it lies beyond %.2f, so that is %.2f of the edge. A slip of %s alone would explain %.2f of it, and hardly any good drink has more than %.2f of that: %.2f of the edge; the larger of the two counts",
		f.Name, squaresText(f), f.SquaredAway, f.SquaredEdge, f.SquaredAway/f.SquaredEdge, f.Slip, f.SlipAway, f.SlipEdge, f.SlipEdges())
	w.add(StageFamilyScore, f.ID, f.Score, "points", "%s: 100 × 0.7^%.2f = %.1f points", f.Name, f.Edges, f.Score)
	w.add(StageProbability, f.ID, 100*f.Probability, "%", "%s: what is in it and how it is served speak %+.2f for it, the ratio %+.2f; so it is %.1f %% likely",
		f.Name, f.MakeUp, f.Ratio, 100*f.Probability)
}

// others tells what the families that are hardly likely add, those whose share
// does not show in one line, and returns the sum.
func (w *working) others(told int) float64 {
	var sum, unseen float64
	for _, f := range w.detail.Families[told:] {
		points := f.Probability * f.Score
		sum += points
		if points < leastTold {
			unseen += points
			continue
		}
		w.add(StageOther, f.ID, points, "points", "%s: %.1f %% likely, × %.1f points = %.2f", f.Name, 100*f.Probability, f.Score, points)
	}
	w.add(StageOther, "", unseen, "points", "every other family: %.2f points together", unseen)
	return sum
}

// mean tells how the scores of the families that were told come together.
func (w *working) mean(told int, others float64) {
	var parts []string
	for _, f := range w.detail.Families[:told] {
		parts = append(parts, fmt.Sprintf("%.1f %% × %.1f", 100*f.Probability, f.Score))
	}
	d := &w.detail
	w.add(StageMean, "", d.Mean, "points", "by its ratio: %s + %.2f from the others = %.1f points",
		strings.Join(parts, " + "), others, d.Mean)
	if d.Ratio > d.Mean {
		w.add(StageExcused, "", d.Ratio, "points", "drinks made of the same have every part to every other as this one has: that leaves %.1f points", d.Ratio)
	}
}

// habits tells what is poured beyond habit, and the score.
func (w *working) habits() {
	d := &w.detail
	for i := range d.Beyond {
		x := &d.Beyond[i]
		points := weigh.ScoreAt(x.Edges)
		w.add(StageHabit, "", points, "points", "%s: 100 × 0.7^%.2f leaves %.1f points", habitText(x), x.Edges, points)
	}
	switch x := &d.Uneven; {
	case x.Edges > x.Told:
		points := weigh.ScoreAt(x.Edges)
		w.add(StageUneven, "", points, "points", "no drink like this has its sugar to its acid: 100 × 0.7^%.2f leaves %.1f points", x.Edges, points)
	case x.Edges > 0 && x.Profile != nil:
		points := weigh.ScoreAt(x.Edges)
		w.add(StageUneven, "", points, "points", "there is %.1f times as much %s as goes with the rest in drinks like this: 100 × 0.7^%.2f leaves %.1f points", math.Exp(-x.Change), x.Profile.Name, x.Edges, points)
	}
	for i := range d.Bounds {
		x := &d.Bounds[i]
		points := weigh.ScoreAt(x.Edges)
		w.add(StageBound, "", points, "points", "%s: 100 × 0.7^%.2f leaves %.1f points", boundText(x), x.Edges, points)
	}
	for i := range d.Method {
		x := &d.Method[i]
		points := weigh.ScoreAt(x.Edges)
		w.add(StageBound, "", points, "points", "%s: 100 × 0.7^%.2f leaves %.1f points", methodText(w.spec, x), x.Edges, points)
	}
	w.add(StageScore, "", d.Score, "points", "score: %.1f points, the ratio, the worst pour and what is uneven together, or what else leaves less: %s", d.Score, weigh.VerdictOf(d.Score))
}
