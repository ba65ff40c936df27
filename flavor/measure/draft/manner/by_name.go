package manner

import (
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/measure/draft/words/serving"
	"counterpour/flavor/measure/pattern"
)

// nameHints are words in the names of drinks that say how such a drink is made or
// served, where the draft does not; common practice.
var nameHints = []struct {
	word    string
	method  flavor.Method
	service flavor.Service
}{
	{"swizzle", flavor.Swizzle, ""}, {"swiz", flavor.Swizzle, ""}, {"frozen", flavor.Blend, ""},
	{"julep", "", flavor.Crushed}, {"toddy", "", flavor.Hot}, {"mulled", "", flavor.Hot},
	{"on rocks", "", flavor.Rocks}, {"on the rocks", "", flavor.Rocks}, {"rocks", "", flavor.Rocks}, {"rox", "", flavor.Rocks}, {"highball", "", flavor.Long}, {"collins", "", flavor.Long},
}

// servedFrozen says of the drink, and not of its glass, that it is frozen.
var servedFrozen = pattern.Of(`(?i)\b(?:served?|serving)[ \t]+(?:it[ \t]+)?frozen\b(?:[ \t]*(?:[.,;:/|)\n]|$)|[ \t]+(?:in|into|over|up|style|as)\b)`)

// lastCube is a cube that a draft ends in, on a line or in a sentence of its own: one of sugar is crushed before.
var lastCube = pattern.Of(`(?i)(?:\n|[.;][ \t])[ \t]*cube[ \t]*\.?\s*$`)

// byName takes method and service from the name of a drink where nothing else says them.
func (w *words) byName(s *flavor.Spec) {
	if s.Method == "" && servedFrozen.MatchString(w.draft.String()) {
		s.Method = flavor.Blend
		w.note("no method stated: blend, since it is served frozen")
	}
	name := " " + strings.Trim(strings.ToLower(s.Name), " .,:;!?") + " "
	for _, h := range nameHints {
		if !strings.Contains(name, " "+h.word+" ") {
			continue
		}
		if h.method != "" && s.Method == "" {
			s.Method = h.method
			w.note("no method stated: " + string(h.method) + ", since the name says “" + h.word + "”")
		}
		hinted := w.draft.Hinted && s.Service == flavor.Rocks && h.service == flavor.Long // "clear ice" under a highball
		if h.service == flavor.Hot && (w.draft.Iced || w.draft.Cold || strings.Contains(name, " cold ") || strings.Contains(name, " iced ")) {
			continue
		}
		if h.service != "" && (s.Service == "" || hinted) && s.Glass == "" {
			s.Service = h.service
			w.note("no service stated: " + string(h.service) + ", since the name says “" + h.word + "”")
		}
	}
	w.byWordsOfService(s)
	if s.Service == "" && s.Glass == "" && lastCube.MatchString(w.draft.String()) {
		s.Service = flavor.Rocks
		w.note("no service stated: rocks, since “cube” is read as one of ice; write “sugar cube” if it is one of sugar")
	}
}

// byWordsOfService takes method and service from a name that is nothing but words for them, as a first line
// "crushed ice" is, or that ends in the ice of the drink: "Low Tide big rock". One word at the end may be of the
// name, and so may a glass.
func (w *words) byWordsOfService(s *flavor.Spec) {
	name := strings.Fields(strings.Trim(s.Name, " .,:;!?"))
	for i := range name {
		said := strings.Join(name[i:], " ")
		of := serving.Of(said)
		if len(of.Unknown) > 0 || of.Conflict != nil || of.Glass != "" || i > 0 && (!of.Iced || i+1 == len(name)) {
			continue
		}
		if of.Method != "" && s.Method == "" && i == 0 {
			s.Method = of.Method
			w.note("no method stated: " + string(of.Method) + ", since the name says “" + said + "”")
		}
		if of.Service != "" && s.Service == "" && s.Glass == "" {
			s.Service = of.Service
			w.note("no service stated: " + string(of.Service) + ", since the name says “" + said + "”")
		}
		return
	}
}
