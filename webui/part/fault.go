package part

import (
	"strings"

	"counterpour/flavor"
	"counterpour/webui/words"
)

// LineFault is a fault of a draft, as shown beside its text.
type LineFault struct {
	Line    int    // from 1; 0 if it is not about a line
	Quote   string // the line as written
	Message string
}

// LineFaultsOf returns the faults of a draft, each with its line.
func LineFaultsOf(text string, faults flavor.DataFaults) []LineFault {
	lines := strings.Split(text, "\n")
	var out []LineFault
	for _, f := range faults {
		v := LineFault{Message: words.Sentence(f.Message)}
		if n := f.Place().Line; n >= 1 && n <= len(lines) {
			v.Line, v.Quote = n, strings.TrimSpace(lines[n-1])
		}
		out = append(out, v)
	}
	return out
}
