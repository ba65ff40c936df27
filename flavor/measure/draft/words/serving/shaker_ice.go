package serving

import (
	"counterpour/flavor"
	"counterpour/flavor/measure/vocabulary"
)

// Ice that a drink is shaken or stirred with stays behind where the drink is strained off it: "shake
// with crushed ice, strain over cubes". It tells how the drink is served only where nothing else does
// and nothing strains it.

var (
	// withWords stand between a way of mixing and the ice that it is done with.
	withWords = vocabulary.Words(`with w w/`)
	// onWords do where the ice is any: "stir over ice", but a drink that is stirred "on the block" is
	// served on it.
	onWords = vocabulary.Words(`over on`)
	// strainWords say that a drink leaves the ice that it was mixed with.
	strainWords = vocabulary.Words(`strain strained straining strn str strnd decant decanted`)
	// apartWords end what is said of mixing.
	apartWords = vocabulary.Words(`strain strained straining strn str strnd pour poured serve served dump dumped top fill into glass then`)
)

// withItsIce pour a drink together with the ice that it was mixed with.
var withItsIce = vocabulary.SetOf("open pour", "dirty dump", "dump")

// mostBeforeIce is the most words from a way of mixing to the ice.
const mostBeforeIce = 7

// withIce reports whether the ice before i is what a drink is shaken, stirred or thrown with; loosely, if
// it is any ice.
func withIce(words []string, i int, loosely bool) bool {
	with := false
	for k := i - 1; k >= 0 && i-k <= mostBeforeIce; k-- {
		with = with || withWords.Has(words[k]) || loosely && onWords.Has(words[k])
		if apartWords.Has(words[k]) {
			return false
		}
		if t, n := TermAt(words[k : k+1]); n > 0 && t.Method != "" {
			return with && (Mixes(t.Method) >= Mixes(flavor.Shake) && t.Method != flavor.Blend || t.Method == flavor.Stir || t.Method == flavor.Throw)
		}
	}
	return false
}

// shakers are what a drink is mixed in: "over ice in a mixing glass".
var shakers = vocabulary.Words(`mixing shaker tin tins`)

// inShaker reports whether words tell that the ice before them is in what the drink is mixed in.
func inShaker(words []string) bool {
	if len(words) == 0 || words[0] != "in" && words[0] != "into" {
		return false
	}
	words = words[1:]
	if len(words) > 0 && (words[0] == "a" || words[0] == "the" || words[0] == "your") {
		words = words[1:]
	}
	return len(words) > 0 && shakers.Has(words[0])
}

// filledThenMixed reports whether something is filled with the ice at i, and mixed on it by what follows right behind:
// "fill with shaved ice, shake well and strain".
func filledThenMixed(words []string, i, n int) bool {
	fills := false
	for k := max(0, i-mostBeforeIce); k < i; k++ {
		fills = fills || words[k] == "fill" || words[k] == "filled"
	}
	for k := i + n; fills && k < min(len(words), i+n+2); k++ {
		if t, m := TermAt(words[k : k+1]); m > 0 && (Mixes(t.Method) >= Mixes(flavor.Shake) && t.Method != flavor.Blend || t.Method == flavor.Stir) {
			return true
		}
	}
	return false
}

// leaves reports whether words say that a drink leaves its ice.
func leaves(words []string) bool {
	for i, w := range words {
		if strainWords.Has(w) {
			return true
		}
		if (w == "pour" || w == "poured") && i+1 < len(words) && words[i+1] != "over" && (i == 0 || words[i-1] != "open") {
			return true
		}
	}
	return false
}

// OffIce settles what the ice says that a drink was mixed with: how it is served, if nothing strains
// it off and no glass tells that it is served up.
func (s *Said) OffIce() {
	v := s.mixedOn
	if v == "" || s.Strained || s.Weak && s.Service == flavor.Up {
		return
	}
	s.mixedOn = ""
	if s.Service == "" || s.Weak || withItsIce.Has(s.ServiceAs) {
		s.addService(v, s.mixedAs, s.mixedWeak)
	}
}
