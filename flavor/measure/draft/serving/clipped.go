package serving

import (
	"maps"
	"slices"
	"strings"

	"counterpour/flavor/measure/vocabulary"
)

// clippings are what bars leave of the words of making and serving; common practice. A slip
// of the pen is none of them, since they are too short to be told apart.
var clippings = vocabulary.TableOf(map[string][]string{
	"shake": {"shk", "shke"}, "shaken": {"shkn", "shakn", "shken"}, "double": {"dbl", "dble", "doub", "dub"}, "dry": {"dr"}, "reverse": {"rev", "rvs"},
	"stir": {"stri", "stirr", "st"}, "stirred": {"stird", "strd", "stirrd"}, "strain": {"strn", "strain'd", "stran"}, "strained": {"strnd", "straind"}, "fine": {"fn"},
	"build": {"bld", "buld", "biuld"}, "built": {"blt"}, "muddle": {"mudl", "muddl", "mddl", "mdl", "mud", "muddel"}, "muddled": {"mudld", "mudled", "muddld"},
	"swizzle": {"swizl", "swiz", "swzl", "swizzl"}, "swizzled": {"swizld"}, "blend": {"blnd"}, "blended": {"blnded"}, "blender": {"blndr", "blendr"}, "throw": {"thrw"}, "whip": {"wip"},
	"rocks": {"rks", "rox", "rx", "rcks", "rock's"}, "rock": {"rk", "rck"}, "crushed": {"crsh", "crshd", "crushd", "crush", "crsd"}, "pebble": {"pebl", "pbl"},
	"coupe": {"cpe", "coup", "coop", "coupé"}, "highball": {"hb", "hball", "hiball", "highbll", "hghball"}, "collins": {"colins", "clns", "collns", "cllns"}, "flute": {"flt", "flut"},
	"martini": {"mrtni", "martni", "tini"}, "hurricane": {"hurr", "hurrcn"}, "glass": {"gls", "glss"}, "large": {"lg", "lrg", "lge"}, "tall": {"tal"}, "straight": {"str8"}, "frozen": {"frzn"},
})

// clippedOf are the ways to write a phrase with one or more of its words clipped, the phrase
// itself left out. A word that is one of another phrase stays that: "flt" floats.
func clippedOf(phrase string) []string {
	clips := false
	for w := range strings.FieldsSeq(phrase) {
		clips = clips || clippings.Get(w) != nil
	}
	if !clips {
		return nil
	}
	out := []string{""}
	for w := range strings.FieldsSeq(phrase) {
		ways := append([]string{w}, clippings.Get(w)...)
		next := make([]string, 0, len(out)*len(ways))
		for _, begun := range out {
			for _, way := range ways {
				next = append(next, strings.TrimLeft(begun+" "+way, " "))
			}
		}
		out = next
	}
	return out[1:]
}

// clip adds the clipped forms of the phrases, but for those that say something themselves. Of two
// phrases with one clipped form the last in order has it.
func (p *phrases) clip() {
	clipped := make(map[string]*term, manyPhrases)
	for _, phrase := range slices.Sorted(maps.Keys(p.known)) {
		for _, short := range clippedOf(phrase) {
			if p.known[short] == nil {
				clipped[short] = p.known[phrase]
			}
		}
	}
	maps.Copy(p.known, clipped)
}
