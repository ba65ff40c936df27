package serving

import "counterpour/flavor/measure/vocabulary"

// clippings are what bars leave of the words of making and serving; common practice. A slip
// of the pen is none of them, since they are too short to be told apart. A clipping stands for
// one word.
var clippings = map[string][]string{
	"shake": {"shk", "shke"}, "shaken": {"shkn", "shakn", "shken"}, "double": {"dbl", "dble", "doub", "dub"}, "dry": {"dr"}, "reverse": {"rev", "rvs"},
	"stir": {"stri", "stirr", "st"}, "stirred": {"stird", "strd", "stirrd"}, "strain": {"strn", "strain'd", "stran"}, "strained": {"strnd", "straind"}, "fine": {"fn"},
	"build": {"bld", "buld", "biuld"}, "built": {"blt"}, "muddle": {"mudl", "muddl", "mddl", "mdl", "mud", "muddel"}, "muddled": {"mudld", "mudled", "muddld"},
	"swizzle": {"swizl", "swiz", "swz", "swzl", "swizzl"}, "swizzled": {"swizld"}, "blend": {"blnd"}, "blended": {"blnded"}, "blender": {"blndr", "blendr"}, "throw": {"thrw"}, "whip": {"wip"},
	"rocks": {"rks", "rox", "rx", "rcks", "rock's"}, "rock": {"rk", "rck"}, "crushed": {"crsh", "crshd", "crushd", "crush", "crsd"}, "pebble": {"pebl", "pbl"},
	"coupe": {"cpe", "coup", "coop", "coupé"}, "highball": {"hb", "hball", "hiball", "highbll", "hghball"}, "collins": {"colins", "clns", "collns", "cllns"}, "flute": {"flt", "flut"},
	"martini": {"mtini", "mrtni", "martni", "tini"}, "hurricane": {"hurr", "hurrcn"}, "glass": {"gls", "glss", "glas"}, "large": {"lg", "lrg", "lge"}, "tall": {"tal"}, "straight": {"str8"}, "frozen": {"frzn"},
}

// clipped are the words that clippings stand for.
var clipped = func() *vocabulary.Table[string] {
	of := map[string]string{}
	for full, clips := range clippings {
		for _, c := range clips {
			of[c] = full
		}
	}
	return vocabulary.TableOf(of)
}()
