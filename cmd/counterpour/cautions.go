package main

import (
	"fmt"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"counterpour/api"
	"counterpour/api/service"
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
func (l *cautionList) show(p *page, all bool) {
	if len(l.lines) == 0 {
		return
	}
	slices.SortStableFunc(l.lines, func(a, b cautionLine) int { return rankOf(&a.Caution) - rankOf(&b.Caution) })
	shown := l.lines
	if more := len(shown) - firstCautions; !all && more > 0 {
		shown = shown[:firstCautions]
		p.head("Cautions (%d more with --cautions)", more)
	} else {
		p.head("Cautions")
	}
	for _, c := range shown {
		of := ""
		if len(c.of) < l.drinks {
			of = strings.Join(c.of, ", ") + ": "
		}
		p.line("  %s%s (%s)", of, c.Text, c.Source)
	}
}

// rankOf puts what a pour may do to a guest first, then what goes with all
// alcohol, then what is only the practice of bars: how to keep a pour.
func rankOf(c *api.Caution) int {
	switch {
	case service.IsGeneralCaution(c.Key):
		return 1
	case c.Status == string(flavor.OriginPractice):
		return 2
	}
	return 0
}
