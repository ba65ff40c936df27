package overlooked

import (
	"slices"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/measure"
	"counterpour/flavor/measure/pattern"
)

// goesWith is what a drink is said to go well with, behind an article: "nice with a small beer".
var goesWith = pattern.Of(`(?i)\b(?:nice|nicely|great|good|lovely|best|perfect|well|pairs)[ \t]+(?:with|beside|alongside)[ \t]+an?[ \t]+([^,.;:!?()\n]+)`)

// setBeside is the fault of something that a line says the drink goes well with, which was poured.
func setBeside(line string, pours []flavor.Pour) *flavor.DataFault {
	said := goesWith.FindStringSubmatch(line)
	if said == nil {
		return nil
	}
	words := " " + flavor.NormaliseName(said[1]) + " "
	if !slices.ContainsFunc(pours, func(p flavor.Pour) bool {
		return strings.Contains(words, " "+flavor.NormaliseName(p.Match.Asked)+" ")
	}) {
		return nil
	}
	return measure.Invalid("text", said[0], "%q may be poured, or stand beside the drink; write its amount if it goes in, or a # before it", said[0])
}
