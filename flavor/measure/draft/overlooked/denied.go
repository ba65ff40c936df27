package overlooked

import (
	"slices"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/measure"
	"counterpour/flavor/measure/pattern"
	"counterpour/flavor/measure/vocabulary"
)

// saysNo is what a line says that there is none of, up to the sign behind it; "shake without the stout" says
// no more than when it goes in.
var saysNo = pattern.Of(`(?i)(?:\bno|(?:^|[.,;:!(–—-])[ \t]*(?:without|w/o))[ \t]+((?:the|any|more)[ \t]+)?(\pL[\pL' \t-]*)`)

// goesOn are words behind the name of what there is none of: "no orgeat for table 6". Before any other
// word it is less than the pour: "no lime wheel".
var goesOn = vocabulary.Words(`for in today tonight please pls this here at ever if allergy allergic because as since now though thanks anymore`)

// denied is the fault of a line that says there is none of what is poured: somebody may not be allowed it.
func denied(line string, pours []flavor.Pour) *flavor.DataFault {
	for _, m := range saysNo.FindAllStringSubmatch(line, -1) {
		said := strings.Fields(flavor.NormaliseName(m[2]))
		for i := range pours {
			if n := leads(said, &pours[i]); n > 0 && (n == len(said) || goesOn.Has(said[n])) {
				return measure.Invalid("text", m[0], "%q denies %s, which is poured; write only what is poured", strings.TrimSpace(m[0]), pours[i].Profile.Name)
			}
		}
	}
	return nil
}

// leads returns how many of the first words name a pour: as it was written, in full, or by its class: "no egg".
func leads(said []string, p *flavor.Pour) int {
	for _, name := range [...]string{p.Match.Asked, p.Profile.Name, string(p.Profile.Class)} {
		words := strings.Fields(flavor.NormaliseName(name))
		if len(words) > 0 && len(words) <= len(said) && slices.Equal(said[:len(words)], words) {
			return len(words)
		}
	}
	return 0
}
