package wording

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/measure"
	"counterpour/flavor/ratio"
	"counterpour/flavor/template"
	"counterpour/flavor/weigh"
)

// LeastTold is the mL of an equivalent below which it is not told.
const LeastTold = 0.05

// Counts says how large a pour is and what it counts as.
func Counts(p *flavor.Pour, as *ratio.Equivalents) string {
	return fmt.Sprintf("%s %s is %.1f ml and counts as %s", measure.FormatAmount(p.Amount, p.Unit), p.Profile.Name, p.ML, amountsText(as))
}

// InAll says how much there is of an axis, in mL of its measure.
func InAll(a ratio.Axis, ml float64) string {
	text := fmt.Sprintf("%s in all: %.1f ml of %s", a, ml, a.Measure())
	if ml < 0 {
		text += ", which counts as none: the spirits and syrups are stronger than the measure"
	}
	return text
}

// Together says what all equivalents come to.
func Together(ml float64) string { return fmt.Sprintf("together: %.1f ml", ml) }

// Share says which share of all mL an axis has.
func Share(a ratio.Axis, ml, of, share float64) string {
	return fmt.Sprintf("%s: %.1f of %.1f ml is %.1f %%", a, ml, of, 100*share)
}

// Centre says which ratio good drinks of a family have, and which one this is.
func Centre(f *weigh.FamilyDetail) string {
	return fmt.Sprintf("%s: good drinks of this make-up are %s; this one is %s. It rests on the published ratio and %d proven drinks, those made of the same things counting most; every share counts %.1f %% more, and that of length %.0f %%, so that none at all is very little",
		f.Name, ratioText(f.Axes, f.Centre), ratioText(f.Axes, lifted(f)), f.Drinks, 100*f.Floor[ratio.Strong], 100*f.Floor[ratio.Long])
}

// LogRatio says how far one log-ratio of a drink is from that of a family.
func LogRatio(f *weigh.FamilyDetail, c *template.Coordinate) string {
	parts := lifted(f)
	var names, numbers []string
	for i := range c.Of {
		names = append(names, c.Of[i].String())
		numbers = append(numbers, fmt.Sprintf("%.1f", 100*parts[i]))
	}
	n := len(c.Of)
	over := numbers[0]
	if n > 1 {
		over = rootWord(n) + "(" + strings.Join(numbers, " × ") + ")"
	}
	text := fmt.Sprintf("%s: %s against %s is √(%d/%d) × ln(%s ÷ %.1f) = %.2f; the centre has %.2f",
		f.Name, flavor.JoinAnd(names), c.Against, n, n+1, over, 100*parts[n], c.Value, c.Centre)
	if math.Abs(c.Carried) >= 0.005 {
		text += fmt.Sprintf(", and %+.2f follows from the lines before", c.Carried)
	}
	return text + fmt.Sprintf("; the rest, %+.2f, is %+.2f times the usual stray of %.2f", c.Value-c.Centre-c.Carried, c.Widths, c.Width)
}

// Excess says how much a drink has of what a family lacks.
func Excess(f *weigh.FamilyDetail, x *weigh.Excess) string {
	return fmt.Sprintf("%s: %s is %.1f %% of the drink, and such drinks carry up to %.1f %%; the rest is %.2f of %.0f %%, each of which is as bad as the family's edge",
		f.Name, x.Axis, 100*x.Share, 100*x.Allowance, x.Edges, 100*x.Unit)
}

// Distance says how far from the middle of a family a drink lies.
func Distance(f *weigh.FamilyDetail) string {
	return fmt.Sprintf("%s: squared distance %s = %.2f; almost no good drink of it lies beyond %.2f, so that is %.2f of the edge. A slip of %s alone would explain %.2f of it, and hardly any good drink has more than %.2f of that: %.2f of the edge; the larger of the two counts",
		f.Name, squaresText(f), f.SquaredAway, f.SquaredEdge, f.SquaredAway/f.SquaredEdge, f.Slip, f.SlipAway, f.SlipEdge, f.SlipEdges())
}

// FamilyScore says what a drink scores in a family.
func FamilyScore(f *weigh.FamilyDetail) string {
	return fmt.Sprintf("%s: 100 × 0.7^%.2f = %.1f points", f.Name, f.Edges, f.Score)
}

// Likely says how probable a family is, and why.
func Likely(f *weigh.FamilyDetail) string {
	return fmt.Sprintf("%s: what is in it and how it is served speak %+.2f for it, the ratio %+.2f; so it is %.1f %% likely",
		f.Name, f.MakeUp, f.Ratio, 100*f.Probability)
}

// Other says what a family that is hardly likely adds.
func Other(f *weigh.FamilyDetail, points float64) string {
	return fmt.Sprintf("%s: %.1f %% likely, × %.1f points = %.2f", f.Name, 100*f.Probability, f.Score, points)
}

// EveryOther says what the families that are not told add.
func EveryOther(points float64) string {
	return fmt.Sprintf("every other family: %.2f points together", points)
}

// Mean says how the scores of families come together, and those of others with them.
func Mean(told []weigh.FamilyDetail, others, mean float64) string {
	var parts []string
	for i := range told {
		parts = append(parts, fmt.Sprintf("%.1f %% × %.1f", 100*told[i].Probability, told[i].Score))
	}
	return fmt.Sprintf("by its ratio: %s + %.2f from the others = %.1f points", strings.Join(parts, " + "), others, mean)
}

// Excused says what precedents leave of the points.
func Excused(points float64) string {
	return fmt.Sprintf("drinks made of the same have every part to every other as this one has: that leaves %.1f points", points)
}

// Leaves says what something that is wrong leaves of the points, being so many edges out.
func Leaves(what string, edges, points float64) string {
	return fmt.Sprintf("%s: 100 × 0.7^%.2f leaves %.1f points", what, edges, points)
}

// SugarToAcid says that a drink has its sugar to its acid as none has.
const SugarToAcid = "no drink like this has its sugar to its acid"

// TimesAsMuch says how many times as much of an ingredient there is as goes with the rest.
func TimesAsMuch(times float64, name string) string {
	return fmt.Sprintf("there is %.1f times as much %s as goes with the rest in drinks like this", times, name)
}

// Score says what all comes to.
func Score(points float64, v weigh.Verdict) string {
	return fmt.Sprintf("score: %.1f points, the ratio, the worst pour and what is uneven together, or what else leaves less: %s", points, v)
}

// Habit says how much good drinks carry of a pour or a sense.
func Habit(x *weigh.Beyond) string {
	if x.Sense {
		return fmt.Sprintf("%s brings %s to %.3g %s, where drinks like this usually carry %.2g and hardly any more than %.3g",
			x.Profile.Name, x.Level, x.Amount, x.Level.Unit(), max(0, x.Usual), x.Most)
	}
	return fmt.Sprintf("%s is %.2g %% of the pours, where drinks like this usually pour %.2g %% and hardly any more than %.2g %%",
		x.Profile.Name, 100*x.Amount, 100*x.Usual, 100*x.Most)
}

// amountsText lists what a pour counts as.
func amountsText(e *ratio.Equivalents) string {
	var parts []string
	for _, a := range ratio.Axes() {
		if math.Abs(e[a]) >= LeastTold {
			parts = append(parts, fmt.Sprintf("%.1f ml %s", e[a], a))
		}
	}
	if len(parts) == 0 {
		return "nothing to speak of"
	}
	return strings.Join(parts, ", ")
}

// ratioText says parts as a ratio whose largest part is 8, as bartenders do.
func ratioText(axes []ratio.Axis, parts []float64) string {
	top := slices.Max(parts)
	words := make([]string, len(parts))
	for i, p := range parts {
		words[i] = fmt.Sprintf("%.1f %s", 8*p/top, axes[i])
	}
	return strings.Join(words, " : ")
}

// lifted returns a drink's parts as their logarithms are taken.
func lifted(f *weigh.FamilyDetail) []float64 {
	out := slices.Clone(f.Part)
	for i := range out {
		out[i] += f.Floor[f.Axes[i]]
	}
	return out
}

// rootWord is the sign of the n-th root, for a geometric mean.
func rootWord(n int) string {
	return map[int]string{2: "√", 3: "∛", 4: "∜"}[n]
}

// squaresText sums the squares that a distance is made of.
func squaresText(f *weigh.FamilyDetail) string {
	var parts []string
	for i := range f.Coordinates {
		parts = append(parts, fmt.Sprintf("%.2f²", math.Abs(f.Coordinates[i].Widths)))
	}
	for _, x := range f.Excess {
		parts = append(parts, fmt.Sprintf("%.2f × %.2f²", f.SquaredEdge, x.Edges))
	}
	text := strings.Join(parts, " + ")
	if f.Size > 0 {
		text += fmt.Sprintf(" + %.2f for a large drink", f.Size)
	}
	switch {
	case f.Unknown >= 1.005:
		text = fmt.Sprintf("(%s) ÷ %.2f, since few proven drinks are like it,", text, f.Unknown)
	case f.Unknown < 0.995:
		text = fmt.Sprintf("(%s) ÷ %.2f, since many proven drinks are like it,", text, f.Unknown)
	}
	return text
}
