package jargon

import (
	"maps"

	"counterpour/flavor/measure/draft/names/tongue"
)

// Tables returns what bars write for names, by what the tables are called, for whoever holds
// them against a catalogue. They are to be read only.
func Tables() map[string]map[string]string {
	return map[string]map[string]string{"shorthand": shorthand, "tongues": maps.Collect(tongue.Names()), "usual": usual,
		"turns": turns, "byVolume": byVolume, "byDash": byDash, "spooned": spooned}
}
