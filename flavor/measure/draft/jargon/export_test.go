package jargon

import (
	"maps"

	"counterpour/flavor/measure/draft/tongue"
)

// Tables are what bars write for names, by what the tables are called.
var Tables = map[string]map[string]string{"shorthand": shorthand, "tongues": maps.Collect(tongue.Names()), "usual": usual, "turns": turns, "byVolume": byVolume, "byDash": byDash, "spooned": spooned}

// Asks reports whether a word is asked for by volume.
func Asks(word string) bool { return len(askVolume[word]) > 1 }
