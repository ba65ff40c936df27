package printed

import (
	"fmt"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"counterpour/api/service/kitchen"
	"counterpour/api/shape"
	"counterpour/cmd/counterpour/terminal"
	"counterpour/flavor"
)

// FirstCautions is how many cautions a page lists by default.
const FirstCautions = 2

// AddCautionsFlag adds the flag for listing every caution.
func AddCautionsFlag(cmd *cobra.Command) *bool {
	return cmd.Flags().Bool("cautions", false, fmt.Sprintf("list every caution, not only the first %d", FirstCautions))
}

// Cautions collects the cautions of all drinks on a page, so that each is printed
// once, with the drinks to which it applies.
type Cautions struct {
	drinks int
	lines  []cautionLine
}

type cautionLine struct {
	shape.Caution
	of []string // labels of the drinks on the page
}

// Add adds the cautions of a drink; label is its label on the page.
func (l *Cautions) Add(label string, cautions []shape.Caution) {
	l.drinks++
	for _, c := range cautions {
		i := slices.IndexFunc(l.lines, func(x cautionLine) bool { return x.Key == c.Key })
		if i < 0 {
			i, l.lines = len(l.lines), append(l.lines, cautionLine{Caution: c})
		}
		l.lines[i].of = append(l.lines[i].of, label)
	}
}

// Show prints the cautions at the end of a page, the most serious first. The heading says
// how many are left out.
func (l *Cautions) Show(p *terminal.Page, all bool) {
	if len(l.lines) == 0 {
		return
	}
	slices.SortStableFunc(l.lines, func(a, b cautionLine) int { return rankOf(&a.Caution) - rankOf(&b.Caution) })
	shown := l.lines
	if !all {
		shown = firstOf(l.lines)
	}
	if more := len(l.lines) - len(shown); more > 0 {
		p.Head("Cautions (%d more with --cautions)", more)
	} else {
		p.Head("Cautions")
	}
	for _, c := range shown {
		of := ""
		if len(c.of) < l.drinks {
			of = strings.Join(c.of, ", ") + ": "
		}
		p.Line("  %s%s (%s)", of, c.Text, c.Source)
	}
}

// firstOf returns the first few cautions, and all of allergies. At most one of them is a general
// one about alcohol, so that those do not displace the drink's own.
func firstOf(lines []cautionLine) []cautionLine {
	var out []cautionLine
	general := 0
	for _, c := range lines {
		if kitchen.IsGeneralCaution(c.Key) {
			if general++; general > 1 {
				continue
			}
		}
		if len(out) < FirstCautions || len(c.Allergens) > 0 {
			out = append(out, c)
		}
	}
	return out
}

// rankOf orders cautions: a strong glass first, then allergies, dangers of an ingredient, then
// practice of bars, storage, and general cautions about alcohol last.
func rankOf(c *shape.Caution) int {
	switch {
	case c.Key == kitchen.StrengthCaution:
		return 0
	case len(c.Allergens) > 0:
		return 1
	case kitchen.IsGeneralCaution(c.Key):
		return 4
	case c.Status == string(flavor.OriginPractice):
		return 3
	}
	return 2
}

// Care says what to mind of what is poured, and what is read out before it is tasted.
func Care(p *terminal.Page, care []shape.Caution, said []string) {
	if len(care) > 0 {
		p.Head("For whoever pours")
	}
	for _, c := range care {
		p.Line("  %s (%s)", c.Text, c.Source)
	}
	p.Head("Before the first sip")
	p.Line("  Ask every taster about allergies.")
	for _, c := range said {
		p.Line("  %s", c)
	}
}
