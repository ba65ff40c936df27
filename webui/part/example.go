package part

import (
	"counterpour/data/house"
	"counterpour/webui/behind"
)

// Example is a draft to start from, such as a drink of the house's menu.
type Example struct{ Name, Text string }

// mostExamples is the length of the list of examples. The page of specs finds all others.
const mostExamples = 200

// ExamplesOf returns the first drinks of the menu as drafts in the units of the house.
func ExamplesOf(bar behind.Bar, said house.Settings) []Example {
	var out []Example
	all := bar.Examples()
	for _, s := range all[:min(mostExamples, len(all))] {
		out = append(out, Example{Name: s.Name, Text: DraftInUnits(said, &s)})
	}
	return out
}
