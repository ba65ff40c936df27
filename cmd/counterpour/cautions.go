package main

import (
	"fmt"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"counterpour/api"
	"counterpour/api/service/kitchen"
	"counterpour/cmd/counterpour/terminal"
	"counterpour/flavor"
)

// firstCautions is how many cautions a page lists unless all are asked for.
const firstCautions = 2

// addCautions adds the flag that lists every caution.
func addCautions(cmd *cobra.Command) *bool {
	return cmd.Flags().Bool("cautions", false, fmt.Sprintf("list every caution, not only the first %d", firstCautions))
}

// cautionList gathers the cautions of all the drinks on a page, so that each is
// said once, with the drinks that it goes for.
type cautionList struct {
	drinks int
	lines  []cautionLine
}

type cautionLine struct {
	api.Caution
	of []string // the drinks, as the page calls them
}

// add adds the cautions of a drink that the page calls by a label.
func (l *cautionList) add(label string, cautions []api.Caution) {
	l.drinks++
	for _, c := range cautions {
		i := slices.IndexFunc(l.lines, func(x cautionLine) bool { return x.Key == c.Key })
		if i < 0 {
			i, l.lines = len(l.lines), append(l.lines, cautionLine{Caution: c})
		}
		l.lines[i].of = append(l.lines[i].of, label)
	}
}

// show ends a page with the cautions, the gravest kind first. The heading says
// how many are held back.
func (l *cautionList) show(p *terminal.Page, all bool) {
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

// firstOf takes the first few cautions; of those that go with all alcohol one at
// most, so that they never stand in place of what this drink brings.
func firstOf(lines []cautionLine) []cautionLine {
	var out []cautionLine
	general := 0
	for _, c := range lines {
		if kitchen.IsGeneralCaution(c.Key) {
			if general++; general > 1 {
				continue
			}
		}
		if len(out) < firstCautions {
			out = append(out, c)
		}
	}
	return out
}

// rankOf puts a strong glass first, then what a pour may do to a guest, then what is
// only the practice of bars, how to keep a pour, then what goes with all alcohol.
func rankOf(c *api.Caution) int {
	switch {
	case c.Key == kitchen.StrengthCaution:
		return 0
	case kitchen.IsGeneralCaution(c.Key):
		return 3
	case c.Status == string(flavor.OriginPractice):
		return 2
	}
	return 1
}
