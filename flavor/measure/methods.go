package measure

import (
	"strings"
	"unicode"

	"counterpour/flavor"
)

// methodWords are the words for each method, in lower case.
var methodWords = map[string]flavor.Method{
	"shake": flavor.Shake, "shaken": flavor.Shake, "hard shake": flavor.Shake,
	"shake hard": flavor.Shake, "shaken hard": flavor.Shake,
	"dry shake": flavor.DryShake, "dry shaken": flavor.DryShake, "dryshake": flavor.DryShake,
	"shake without ice": flavor.DryShake, "dry shake then shake": flavor.DryShake, "dry shake then wet shake": flavor.DryShake,
	"stir": flavor.Stir, "stirred": flavor.Stir,
	"build": flavor.Build, "built": flavor.Build,
	"blend": flavor.Blend, "blended": flavor.Blend,
	"throw": flavor.Throw, "thrown": flavor.Throw,
	"swizzle": flavor.Swizzle, "swizzled": flavor.Swizzle,
}

// served is a service and how firmly it is stated: "over ice" may speak of the
// ice one shakes with, or of a long drink.
type served struct {
	service flavor.Service
	weak    bool
}

// serviceWords are the words for each service, in lower case.
var serviceWords = map[string]served{
	"up": {flavor.Up, false}, "straight up": {flavor.Up, false}, "coupe": {flavor.Up, false}, "flute": {flavor.Up, false},
	"cocktail glass": {flavor.Up, false}, "neat": {flavor.Neat, false}, "hot": {flavor.Hot, false}, "mug": {flavor.Hot, false},
	"rocks": {flavor.Rocks, false}, "on the rocks": {flavor.Rocks, false}, "rocks glass": {flavor.Rocks, false},
	"old fashioned glass": {flavor.Rocks, false}, "over ice": {flavor.Rocks, true}, "on ice": {flavor.Rocks, true},
	"over fresh ice": {flavor.Rocks, false}, "over cubed ice": {flavor.Rocks, false}, "large cube": {flavor.Rocks, false}, "big cube": {flavor.Rocks, false},
	"crushed": {flavor.Crushed, false}, "crushed ice": {flavor.Crushed, false},
	"long": {flavor.Long, false}, "tall": {flavor.Long, false}, "highball": {flavor.Long, false},
	"highball glass": {flavor.Long, false}, "collins": {flavor.Long, false}, "collins glass": {flavor.Long, false},
}

// fillers are words of a method line that change nothing.
var fillers = map[string]bool{
	"hard": true, "well": true, "gently": true, "briefly": true, "with": true, "ice": true, "strain": true, "strained": true,
	"double": true, "fine": true, "serve": true, "served": true, "then": true, "and": true, "over": true, "into": true,
	"in": true, "a": true, "an": true, "the": true, "glass": true, "chilled": true, "cold": true, "method": true, "service": true,
}

// longestPhrase is the most words that a phrase above has.
const longestPhrase = 5

// ParseMethod returns the method that a word or phrase names, case, hyphens and
// the words that change nothing ("hard") aside.
func ParseMethod(word string) (flavor.Method, bool) {
	l := readMethodLine(word)
	if len(l.unknown) > 0 || l.conflict != nil || l.service.service != "" {
		return "", false
	}
	return l.method, l.method != ""
}

// ParseService is the same for a service.
func ParseService(word string) (flavor.Service, bool) {
	l := readMethodLine(word)
	if len(l.unknown) > 0 || l.conflict != nil || l.method != "" {
		return "", false
	}
	return l.service.service, l.service.service != ""
}

// methodLine is what a line without an amount says.
type methodLine struct {
	method   flavor.Method
	service  served
	unknown  []string      // words that are neither, nor filler
	conflict *flavor.Fault // two methods or two services
	words    int

	methodAs, serviceAs string // as written
	notes               []string
}

// readMethodLine reads a line of methods and services in any order.
func readMethodLine(text string) methodLine {
	var l methodLine
	words := strings.FieldsFunc(text, func(r rune) bool { return !unicode.IsLetter(r) && !unicode.IsDigit(r) && r != '\'' && r != '’' })
	l.words = len(words)
	for i := 0; i < len(words); {
		i += l.take(words[i:])
	}
	return l
}

// take reads the longest phrase at the start of words and returns its length.
func (l *methodLine) take(words []string) int {
	for n := min(longestPhrase, len(words)); n > 0; n-- {
		phrase := strings.ToLower(strings.Join(words[:n], " "))
		if m, ok := methodWords[phrase]; ok {
			l.addMethod(m, strings.Join(words[:n], " "))
			return n
		}
		if s, ok := serviceWords[phrase]; ok {
			l.addService(s, strings.Join(words[:n], " "))
			return n
		}
	}
	if !fillers[strings.ToLower(words[0])] {
		l.unknown = append(l.unknown, words[0])
	}
	return 1
}

// addMethod adds m to what is stated already. Some pairs are one method:
// shaking dry comes before shaking, and a built drink gets a stir in its glass.
func (l *methodLine) addMethod(m flavor.Method, word string) {
	pair := func(a, b flavor.Method) bool { return l.method == a && m == b || l.method == b && m == a }
	switch {
	case l.method == "" || l.method == m:
		l.method, l.methodAs = m, word
	case pair(flavor.Shake, flavor.DryShake):
		l.method = flavor.DryShake
	case pair(flavor.Build, flavor.Stir):
		l.method = flavor.Build
		l.notes = append(l.notes, "build and stir: taken as build")
	default:
		l.conflict = invalid("method", word, "%q is a second method beside %q; keep one", word, string(l.method))
	}
}

// addService adds s. A weak one yields; long over crushed ice is crushed.
func (l *methodLine) addService(s served, word string) {
	old := l.service
	either := func(a flavor.Service) bool { return old.service == a || s.service == a }
	switch {
	case old.service == "" || old.weak:
		l.service, l.serviceAs = s, word
	case s.weak || old.service == s.service:
	case either(flavor.Up):
		l.conflict = invalid("service", word, "%q is a second service beside %q; keep one", word, string(old.service))
	case either(flavor.Crushed):
		l.service = served{flavor.Crushed, false}
	default: // long and rocks
		l.service = served{flavor.Long, false}
	}
}

// merge adds what another line says.
func (l *methodLine) merge(o methodLine) {
	if o.method != "" {
		l.addMethod(o.method, o.methodAs)
	}
	if o.service.service != "" {
		l.addService(o.service, o.serviceAs)
	}
	l.notes = append(l.notes, o.notes...)
}
