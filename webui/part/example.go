package part

import (
	"counterpour/flavor/measure/draft/edit"
	"counterpour/webui/behind"
)

// Example is a drink of the house's menu to start from.
type Example struct{ Name, Text string }

// mostExamples is how many drinks a list to choose from holds. The page of specs
// finds all others, and leads to the bench.
const mostExamples = 200

// ExamplesOf are the drinks of the menu as drafts, the first of them.
func ExamplesOf(bar behind.Bar) []Example {
	var out []Example
	all := bar.Examples()
	for _, s := range all[:min(mostExamples, len(all))] {
		out = append(out, Example{Name: s.Name, Text: edit.Format(s)})
	}
	return out
}
