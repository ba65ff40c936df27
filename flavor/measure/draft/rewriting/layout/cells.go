package layout

import (
	"strings"
	"unicode"

	"counterpour/flavor/measure/pattern"
)

// leastCells is from how many cells with a pour in them a row is a list of pours.
const leastCells = 2

// cells sets each cell of a row on a line of its own, where a cell holds both the name and the
// amount: "Rob Roy⇥blended scotch 50⇥sweet vermouth 25", or in quotes, "gin, 45 ml".
func (s *Set) cells() {
	at := 0
	for line := range strings.SplitSeq(s.Text, "\n") {
		switch {
		case strings.Count(line, "\t") >= leastCells:
			s.cellsBetween(at, line, '\t')
		case quotedCells(line) >= leastCells:
			s.cellsBetween(at, line, ',')
		}
		at += len(line) + 1
	}
}

// quotedCell is a cell in quotes with a comma in it.
var quotedCell = pattern.Of(`(?:^|[,;])[ \t]*"[^"\n]*,[^"\n]*"`)

// quotedCells returns how many cells of a line stand in quotes and hold a comma.
func quotedCells(line string) int { return len(quotedCell.FindAllString(line, -1)) }

// cellsBetween parts the cells of a line that begins at a byte by a sign, those in quotes with what
// is in them.
func (s *Set) cellsBetween(at int, line string, sign byte) {
	text := []byte(line)
	quoted, from, pours := false, 0, 0
	end := func(to int) bool {
		figures, letters := strings.ContainsFunc(line[from:to], unicode.IsNumber), strings.ContainsFunc(line[from:to], unicode.IsLetter)
		if figures && letters {
			pours++
		}
		from = to + 1
		return figures && !letters // the amount stands in a cell of its own
	}
	for i := range text {
		switch {
		case text[i] == '"':
			quoted = !quoted
			text[i] = ' '
		case quoted && text[i] == ',' && !decimal(line, i):
			text[i] = ' '
		case !quoted && text[i] == sign:
			if end(i) {
				return
			}
			text[i] = '\n'
		}
	}
	if end(len(line)) || pours < leastCells {
		return
	}
	s.Text = s.Text[:at] + string(text) + s.Text[at+len(line):]
}

// decimal reports whether a comma stands between two figures.
func decimal(line string, i int) bool {
	return i > 0 && i+1 < len(line) && figure(line[i-1]) && figure(line[i+1])
}
