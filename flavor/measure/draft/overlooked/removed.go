package overlooked

import (
	"slices"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/measure"
	"counterpour/flavor/measure/pattern"
	"counterpour/flavor/measure/vocabulary"
)

// What a line leaves out of the drink, or takes out of it again.

// telling are words of which one stands in every line that leaves something out, takes something out or
// tells what goes well with the drink: most lines have none, and are not looked at any further.
var telling = vocabulary.Words(`leave skip omit lose hold forget ditch bin scrap nix axe exclude eliminate delete forgo has needs goes is took take taken left leaving pulled cut removed ditched scrapped nice nicely great good lovely best perfect well pairs`)

// tells reports whether a line has such a word.
func tells(line string) bool {
	for w := range strings.FieldsFuncSeq(strings.ToLower(line), notLetter) {
		if telling.Has(w) {
			return true
		}
	}
	return false
}

// leavesOut is a sentence that begins with words which leave something out, of the drink or of what is
// done with it so far, and leavesItOut one that says so around it; onlyNow are
// words of what is done so far, and of what is done for some guests alone.
var (
	leavesOut   = pattern.Of(`(?i)(?:^|[.,;:!\d)(–—-][ \t]+|\b(?:but|actually|please|just|so|then|maybe|we|to)[ \t]+)((?:leave out|leave off|skip|omit|lose|hold|forget|ditch|bin|scrap|nix|axe|exclude|eliminate|delete|forgo)[ \t]+(?:the[ \t]+|any[ \t]+|all[ \t]+)?([\pL' \t-]+))`)
	leavesItOut = pattern.Of(`(?i)\b(leave[ \t]+(?:the|any|all|that|our)[ \t]+([\pL' \t-]+?)[ \t]+(?:out|off)\b)`)
	onlyNow     = vocabulary.Words(`if for when until till back after while unless first now then step from in with and it`)
	// atThisTime end such a sentence: "hold the lemon this time".
	atThisTime = vocabulary.Words(`this time today tonight please pls entirely altogether completely guys team thanks`)
)

// leftOut is the fault of a line that leaves out what is poured: "skip the egg white".
func leftOut(line string, pours []flavor.Pour) *flavor.DataFault {
	m := leavesOut.FindStringSubmatch(line)
	if m == nil {
		m = leavesItOut.FindStringSubmatch(line)
	}
	if m == nil {
		return nil
	}
	words := strings.Fields(flavor.NormaliseName(m[2]))
	if slices.ContainsFunc(words, onlyNow.Has) {
		return nil
	}
	for len(words) > 0 && atThisTime.Has(words[len(words)-1]) {
		words = words[:len(words)-1]
	}
	for i := range pours {
		name := strings.Fields(flavor.NormaliseName(pours[i].Profile.Name))
		if len(words) > 0 && slices.Contains(name, words[len(words)-1]) {
			said := strings.TrimSpace(m[1])
			return measure.Invalid("text", said, "%q leaves out %s, which is poured; write only what is poured", said, pours[i].Profile.Name)
		}
	}
	return nil
}

// hasToGo says of what stands before it that it is to be left out.
var hasToGo = pattern.Of(`(?i)\b(?:the|our|that)[ \t]+([\pL' \t-]+?)[ \t]+(?:(?:has|needs)[ \t]+to[ \t]+go|is[ \t]+out|goes[ \t]+out|is[ \t]+(?:gone|banned|cut|off))[ \t]*(?:[.,;:!)]|$)`)

// toGo is the fault of a line that says of what is poured that it is to be left out: "the lime has to
// go".
func toGo(line string, pours []flavor.Pour) *flavor.DataFault {
	m := hasToGo.FindStringSubmatch(strings.TrimRight(line, "\r\n"))
	if m == nil {
		return nil
	}
	words := strings.Fields(flavor.NormaliseName(m[1]))
	for i := range pours {
		name := strings.Fields(flavor.NormaliseName(pours[i].Profile.Name))
		if len(words) > 0 && slices.Contains(name, words[len(words)-1]) {
			return measure.Invalid("text", m[0], "%q leaves out %s, which is poured; write only what is poured", strings.TrimSpace(m[0]), pours[i].Profile.Name)
		}
	}
	return nil
}

// Removes reports whether a text leaves something out of what is poured, or takes something out of it
// again.
func Removes(text string, pours []flavor.Pour) bool {
	for line := range strings.Lines(text) {
		if denied(line, pours) != nil || tells(line) && (leftOut(line, pours) != nil || toGo(line, pours) != nil || tookOut(line) != nil) {
			return true
		}
	}
	return false
}

// takenOut tells that something was taken out again; "out of the freezer" is none of it.
var takenOut = pattern.Of(`(?i)\b(?:(?:took|taken|left|leave|leaving|pulled|cut)[ \t]+(?:it|that|this|them|those|something|one|some)[ \t]+out|(?:removed|ditched|scrapped)[ \t]+(?:it|that|them))\b([ \t]+of\b)?`)

// tookOut is the fault of a line that takes something out of the drink again: what, its reader has to
// say.
func tookOut(line string) *flavor.DataFault {
	m := takenOut.FindStringSubmatch(line)
	if m == nil || m[1] != "" {
		return nil
	}
	return measure.Invalid("text", m[0], "%q takes something out again; write only what is poured", m[0])
}
