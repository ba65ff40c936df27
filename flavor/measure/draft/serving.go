package draft

import (
	"slices"
	"strings"

	"counterpour/flavor"
)

// serving is what a text says of how a drink is made and served.
type serving struct {
	method    flavor.Method
	methodAs  string // as written
	service   flavor.Service
	serviceAs string
	weak      bool // the service yields to one that is stated outright
	glass     string
	hotC      float64
	noIce     bool
	iced      bool // ice is named, and not to say that there is none
	onIce     bool // and it is what the drink is served on
	cold      bool // it is said to be served cold
	all       bool // everything is named
	but       bool // something is left out of that
	together  bool // everything is shaken or blended at once
	muddle    bool

	unknown  []token // words that say nothing known
	words    int
	keep     bool // says more than method, service and glass
	begins   bool // its first word is one that such a text begins with
	notes    []string
	conflict *flavor.Fault // two methods or two services
	most     flavor.Method // of further methods, the one that takes most work
}

// states reports whether it says anything that a spec has a place for.
func (s *serving) states() bool { return s.method != "" || s.service != "" || s.glass != "" }

// longestTerm is the most words that a phrase of terms has.
const longestTerm = 5

// readServing reads methods, services, ice and glasses in any order.
func readServing(toks []token) serving {
	var s serving
	var words []string
	var of []int // the token of each word
	for i := range toks {
		switch t := &toks[i]; {
		case t.kind == word || t.is("&") && i > 0:
			before := len(words)
			words = hyphens(words, t.text)
			for range len(words) - before {
				of = append(of, i)
			}
		case t.kind == numeral:
			if c, ok := temperature(toks[i:]); ok {
				s.hotC = c
				continue
			}
			s.keep = true
		}
	}
	s.words = len(words)
	for i := 0; i < len(words); {
		iced := s.iced
		n := s.take(words[i:min(len(words), i+longestTerm)])
		if s.iced && !iced && s.service == "" && over(words[max(0, i-overWords):i]) { // "serve over one big ice"
			s.addService(flavor.Rocks, "over ice", true)
			s.onIce = true
		}
		if n == 0 {
			s.unknown = append(s.unknown, toks[of[i]])
			n = 1
		}
		i += n
	}
	if len(words) > 0 {
		_, n := termAt(words[:min(len(words), longestTerm)])
		s.begins = n > 0 || stepVerbs[words[0]]
	}
	s.keep = s.keep || len(s.unknown) > 0
	s.together = s.all && !s.but && mixes(s.method) >= mixes(flavor.Shake)
	return s
}

// overWords is the most words from "over" to the ice.
const overWords = 3

func over(words []string) bool { return slices.Contains(words, "over") || slices.Contains(words, "on") }

// exceptWords leave something out of everything: "shake all but the soda".
var exceptWords = set(`except but besides minus save without excluding`)

// take reads the phrase at the start of words and returns its length, 0 if the
// first word is not known.
func (s *serving) take(words []string) int {
	t, n := termAt(words)
	if n == 0 {
		w := words[0]
		s.cold = s.cold || w == "cold"
		s.all = s.all || w == "all" || w == "everything"
		s.but = s.but || exceptWords[w]
		switch {
		case degreeWords[w] || otherMeasures[w] || w == "&":
		case stepVerbs[w] && !fillers[w]:
			s.keep = true
		case !fillers[w]:
			return 0
		case !plainFillers[w]:
			s.keep = true
		}
		return 1
	}
	as := strings.Join(words[:n], " ")
	if t.method != "" {
		s.addMethod(t.method, as)
	}
	if t.glass != "" && s.glass == "" {
		s.glass = t.glass
	}
	if t.service != "" {
		s.addService(t.service, as, t.weak)
	}
	if t.note != "" {
		s.notes = append(s.notes, t.note)
	}
	s.keep = s.keep || t.keep
	none := as == "no ice" || as == "without ice"
	s.noIce = s.noIce || none
	s.iced = s.iced || t.ice && !none
	s.onIce = s.onIce || t.ice && t.service != ""
	s.muddle = s.muddle || strings.HasPrefix(as, "muddle")
	return n
}

var degreeWords = set(`° °c °f c f celsius fahrenheit degrees degree deg centigrade seconds second sec secs s minutes minute min mins times
revolutions rotations turns strokes beats count counts rounds straws straw`)

// temperature reads "70 °C", "160 F" or "70 degrees" at the start of toks, as that
// of a hot drink: between freezing and boiling.
func temperature(toks []token) (celsius float64, ok bool) {
	c, ok := degrees(toks)
	return c, ok && c > 0 && c <= 100
}

// degrees reads a number with its scale, Celsius where none is named.
func degrees(toks []token) (celsius float64, ok bool) {
	v := toks[0].value
	for _, t := range toks[1:min(len(toks), 3)] {
		switch t.text {
		case "°c", "c", "celsius", "centigrade":
			return v, true
		case "°f", "f", "fahrenheit":
			return (v - 32) / 1.8, true
		case "°", "degrees", "degree", "deg":
			ok = true
		default:
			return v, ok
		}
	}
	return v, ok
}

// addMethod adds m to what is stated already. Some pairs are one method:
// shaking dry comes before shaking, and a built drink gets a stir in its glass.
func (s *serving) addMethod(m flavor.Method, as string) {
	pair := func(a, b flavor.Method) bool { return s.method == a && m == b || s.method == b && m == a }
	switch {
	case s.method == "" || s.method == m:
		s.method, s.methodAs = m, as
	case pair(flavor.Shake, flavor.DryShake):
		s.method = flavor.DryShake
	case pair(flavor.Build, flavor.Stir):
		s.method = flavor.Build
		s.notes = append(s.notes, "build and stir: taken as build")
	case pair(flavor.Build, flavor.Swizzle):
		s.method = flavor.Swizzle
	case pair(flavor.Build, flavor.Throw), pair(flavor.Blend, flavor.Build):
		if s.method == flavor.Build {
			s.method, s.methodAs = m, as
		}
	default:
		if s.most == "" || mixes(m) > mixes(s.most) {
			s.most = m
		}
		s.conflict = invalid("method", as, "%q is a second method beside %q; keep one", as, s.methodAs)
	}
}

// addService adds a service. A weak one yields; long over crushed ice is crushed.
func (s *serving) addService(v flavor.Service, as string, weak bool) {
	either := func(a flavor.Service) bool { return s.service == a || v == a }
	switch {
	case s.service == "" || s.weak && !weak:
		s.service, s.serviceAs, s.weak = v, as, weak
	case weak || s.service == v:
		if s.weak && weak { // of two that are only suggested, a tall glass or crushed ice says more than ice
			s.service, s.serviceAs = stronger(s.service, v), as
		}
	case either(flavor.Hot) && either(flavor.Neat):
		s.service, s.serviceAs = flavor.Hot, as
	case either(flavor.Up) || either(flavor.Hot) || either(flavor.Neat):
		s.conflict = invalid("service", as, "%q is a second service beside %q; keep one", as, s.serviceAs)
	case either(flavor.Crushed):
		s.service, s.weak = flavor.Crushed, false
	default: // long and rocks
		s.service, s.weak = flavor.Long, false
	}
}

func stronger(a, b flavor.Service) flavor.Service {
	for _, v := range []flavor.Service{flavor.Crushed, flavor.Long, flavor.Hot, flavor.Up} {
		if a == v || b == v {
			return v
		}
	}
	return a
}

// prose settles a second method. Prose tells of one step after another, so that
// it is no contradiction: the one that takes most work mixes the drink.
func (s *serving) prose() {
	if s.conflict == nil || s.conflict.Field != "method" {
		return
	}
	s.conflict = nil
	both := string(s.method) + " and " + string(s.most)
	if mixes(s.most) > mixes(s.method) {
		s.method, s.methodAs = s.most, string(s.most)
	}
	s.most = ""
	s.notes = append(s.notes, both+": taken as "+string(s.method))
}

// merge adds what another text says, in prose or not.
func (s *serving) merge(o *serving, prose bool) {
	if o.method != "" {
		s.addMethod(o.method, o.methodAs)
		if prose {
			s.prose()
		}
	}
	if o.service != "" {
		s.addService(o.service, o.serviceAs, o.weak)
	}
	if s.glass == "" {
		s.glass = o.glass
	}
	if o.hotC > 0 {
		s.hotC = o.hotC
	}
	s.noIce = s.noIce || o.noIce
	s.iced, s.onIce = s.iced || o.iced, s.onIce || o.onIce
	s.cold = s.cold || o.cold
	s.together = s.together || o.together
	s.notes = append(s.notes, o.notes...)
}

// mixes says which of several methods in one text is the one that mixes the
// drink: the one that takes most work.
func mixes(m flavor.Method) int {
	for i, x := range []flavor.Method{flavor.Build, flavor.Stir, flavor.Throw, flavor.Swizzle, flavor.Shake, flavor.DryShake, flavor.Blend} {
		if x == m {
			return i + 1
		}
	}
	return 0
}

// ParseMethod returns the method that a word or phrase names, case, hyphens and
// the words that change nothing ("hard") aside.
func ParseMethod(text string) (flavor.Method, bool) {
	s := servingOf(text)
	if s.unknown != nil || s.conflict != nil || s.service != "" {
		return "", false
	}
	return s.method, s.method != ""
}

// ParseService is the same for a service.
func ParseService(text string) (flavor.Service, bool) {
	s := servingOf(text)
	if s.unknown != nil || s.conflict != nil || s.method != "" {
		return "", false
	}
	return s.service, s.service != ""
}

func servingOf(text string) serving {
	return readServing(lex(nil, text, 0, len(text)))
}
