package balance

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/ratio"
	"counterpour/flavor/template"
	"counterpour/flavor/weigh"
)

// amountsText lists what a pour counts as.
func amountsText(e *ratio.Equivalents) string {
	var parts []string
	for _, a := range ratio.Axes() {
		if math.Abs(e[a]) >= leastTold {
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

// coordinateText tells one log-ratio.
func coordinateText(f *weigh.FamilyDetail, c *template.Coordinate) string {
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
	text := fmt.Sprintf("%s against %s is √(%d/%d) × ln(%s ÷ %.1f) = %.2f; the centre has %.2f",
		flavor.JoinAnd(names), c.Against, n, n+1, over, 100*parts[n], c.Value, c.Centre)
	if math.Abs(c.Carried) >= 0.005 {
		text += fmt.Sprintf(", and %+.2f follows from the lines before", c.Carried)
	}
	return text + fmt.Sprintf("; the rest, %+.2f, is %+.2f times the usual stray of %.2f", c.Value-c.Centre-c.Carried, c.Widths, c.Width)
}

// rootWord is the sign of the n-th root, for a geometric mean.
func rootWord(n int) string {
	return map[int]string{2: "√", 3: "∛", 4: "∜"}[n]
}

// habitText tells how much good drinks carry of a pour or a sense.
func habitText(x *weigh.Beyond) string {
	if x.Sense {
		return fmt.Sprintf("%s brings %s to %.3g %s, where drinks like this usually carry %.2g and hardly any more than %.3g",
			x.Profile.Name, x.Level, x.Amount, x.Level.Unit(), max(0, x.Usual), x.Most)
	}
	return fmt.Sprintf("%s is %.2g %% of the pours, where drinks like this usually pour %.2g %% and hardly any more than %.2g %%",
		x.Profile.Name, 100*x.Amount, 100*x.Usual, 100*x.Most)
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
