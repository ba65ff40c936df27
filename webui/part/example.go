package part

import (
	"counterpour/flavor/measure/draft/edit"
	"counterpour/webui/behind"
)

// Example is a drink of the house's menu to start from.
type Example struct{ Name, Text string }

// ExamplesOf are the drinks of the menu as drafts.
func ExamplesOf(bar behind.Bar) []Example {
	var out []Example
	for _, s := range bar.Examples() {
		out = append(out, Example{Name: s.Name, Text: edit.Format(s)})
	}
	return out
}
