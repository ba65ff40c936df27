package serving

import (
	"slices"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/measure"
	"counterpour/flavor/measure/draft/words/token"
	"counterpour/flavor/measure/vocabulary"
)

// Said is what a text says of how a drink is made and served.
type Said struct {
	Method    flavor.Method
	MethodAs  string // as written
	Service   flavor.Service
	ServiceAs string
	Weak      bool // the service yields to one that is stated outright
	Glass     string
	HotC      float64
	NoIce     bool
	Iced      bool // ice is named, and not to say that there is none
	OnIce     bool // and it is what the drink is served on
	Cold      bool // it is said to be served cold
	all       bool // everything is named
	but       bool // something is left out of that
	Together  bool // everything is shaken or blended at once
	Touch     bool // it is stirred, and hardly: "stir once"
	Muddle    bool
	Strained  bool // it leaves the ice that it was mixed with

	mixedOn   flavor.Service // what the ice would say that it was mixed with
	mixedAs   string
	mixedWeak bool

	Unknown  []token.Token // words that say nothing known
	Words    int
	Keep     bool // says more than method, service and glass
	Begins   bool // its first word is one that such a text begins with
	Notes    []string
	Conflict *flavor.DataFault // two methods or two services
	most     flavor.Method     // of further methods, the one that takes most work
}

// States reports whether it says anything that a spec has a place for.
func (s *Said) States() bool {
	return s.Method != "" || s.Service != "" || s.Glass != "" || s.mixedOn != ""
}

// LongestTerm is the most words that a phrase of terms has.
const LongestTerm = 5

// How many words a line seldom has more of, and how many that say nothing known.
const (
	usualWords   = 12
	usualUnknown = 4
)

// Read reads methods, services, ice and glasses in any order.
func Read(toks []token.Token) Said {
	var s Said
	words := make([]string, 0, usualWords)
	of := make([]int, 0, usualWords) // the token of each word
	for i := 0; i < len(toks); i++ {
		switch t := &toks[i]; {
		case t.Kind == token.Word || t.Is("&") && i > 0:
			before := len(words)
			words = apart(words, t.Text)
			for range len(words) - before {
				of = append(of, i)
			}
		case t.Kind == token.Numeral:
			if c, ok := Temperature(toks[i:]); ok {
				s.HotC = c
				continue
			}
			s.Keep = true
			if i+1 < len(toks) && (timesWords.Has(toks[i+1].Text) || SizeOfGlass(toks[i:])) { // "shake 2x"
				i++
			}
		}
	}
	s.Words = len(words)
	for i := 0; i < len(words); {
		iced := s.Iced
		if n := s.mixedWith(words, i); n > 0 {
			i += n
			continue
		}
		if ofThing(words, i) {
			s.Unknown = append(s.Unknown, toks[of[i]])
			i++
			continue
		}
		n := s.take(words[i:min(len(words), i+LongestTerm)])
		if s.Iced && !iced && s.Service == "" && over(words[max(0, i-overWords):i]) { // "serve over one big ice"
			s.addService(flavor.Rocks, "over ice", true)
			s.OnIce = true
		}
		if n == 0 {
			if s.Unknown == nil {
				s.Unknown = make([]token.Token, 0, min(len(words)-i, usualUnknown))
			}
			s.Unknown = append(s.Unknown, toks[of[i]])
			n = 1
		}
		i += n
	}
	if s.Service != flavor.Up { // "down on a rock" has its ice
		s.Notes = slices.DeleteFunc(s.Notes, func(n string) bool { return n == downNote })
	}
	if len(words) > 0 {
		_, n := TermAt(words[:min(len(words), LongestTerm)])
		s.Begins = n > 0 || StepVerbs[words[0]]
	}
	s.Strained = leaves(words)
	s.Keep = s.Keep || len(s.Unknown) > 0
	s.Together = s.all && !s.but && Mixes(s.Method) >= Mixes(flavor.Shake)
	s.Touch = s.Method == flavor.Stir && slices.ContainsFunc(words, func(w string) bool { return touchWords.Has(w) })
	return s
}

// mixedWith takes the ice at i that a drink is mixed with, and returns how many words that is; 0 if none
// stands there.
func (s *Said) mixedWith(words []string, i int) int {
	t, n := TermAt(words[i:min(len(words), i+LongestTerm)])
	if n == 0 || !t.Ice || t.Service == "" || !withIce(words, i+1, t.weak) && !inShaker(words[i+n:]) && !filledThenMixed(words, i, n) {
		return 0
	}
	s.mixedOn, s.mixedAs, s.mixedWeak = t.Service, strings.Join(words[i:i+n], " "), t.weak
	s.Iced = true
	return n
}

// ofThing reports whether "frozen" at i says how the thing behind it is, and not how the drink is made:
// "frozen grape".
func ofThing(words []string, i int) bool {
	if words[i] != "frozen" || i+1 == len(words) {
		return false
	}
	if _, n := TermAt(words[i:min(len(words), i+LongestTerm)]); n > 1 {
		return false
	}
	next := words[i+1]
	return !Known(next) && !Fillers[next] && !StepVerbs[next] && !DegreeWords[next] && next != "&" && !drinkWords.Has(next)
}

// drinkWords are what a frozen drink is called.
var drinkWords = vocabulary.Words(`style version method slush machine drinks cocktail`)

// SizeOfGlass reports whether toks begin with the size of a glass: "3.5 oz coupe".
func SizeOfGlass(toks []token.Token) bool {
	if len(toks) < 3 || toks[0].Kind != token.Numeral || toks[2].Kind != token.Word {
		return false
	}
	if u, ok := measure.ParseUnit(toks[1].Text); !ok || !u.Jigger() {
		return false
	}
	words := make([]string, 0, LongestTerm)
	for i := range toks[2:min(len(toks), 2+LongestTerm)] {
		words = append(words, toks[2+i].Text)
	}
	t, n := TermAt(words)
	return n > 0 && t.Glass != "" || words[0] == "glass"
}

// touchWords say that something is hardly stirred.
var touchWords = vocabulary.Words(`once gently briefly lightly quick quickly lazily barely combine gentle`)

// timesWords follow a number of times: "2x", "1st", "one lift".
var timesWords = vocabulary.Words(`x × st nd rd th lift lifts`)

// Times reports whether a word behind a number says how often something is done.
func Times(w string) bool { return timesWords.Has(w) }

// overWords is the most words from "over" to the ice.
const overWords = 3

func over(words []string) bool { return slices.Contains(words, "over") || slices.Contains(words, "on") }

// exceptWords leave something out of everything: "shake all but the soda".
var exceptWords = vocabulary.Words(`except but besides minus save without excluding`)

// take reads the phrase at the start of words and returns its length, 0 if the
// first word is not known.
func (s *Said) take(words []string) int {
	t, n := TermAt(words)
	if n == 0 {
		w := words[0]
		s.Cold = s.Cold || w == "cold"
		s.all = s.all || w == "all" || w == "everything"
		s.but = s.but || exceptWords.Has(w)
		switch {
		case DegreeWords[w] || OtherMeasures[w] || w == "&":
		case StepVerbs[w] && !Fillers[w]:
			s.Keep = true
		case !Fillers[w]:
			return 0
		case !plainFillers.Has(w):
			s.Keep = true
		}
		return 1
	}
	as := strings.Join(words[:n], " ")
	if t.Method != "" {
		s.addMethod(t.Method, as)
	}
	if t.Glass != "" && s.Glass == "" {
		s.Glass = t.Glass
	}
	if t.Service != "" {
		s.addService(t.Service, as, t.weak)
	}
	if t.note != "" {
		s.Notes = append(s.Notes, t.note)
	}
	s.Keep = s.Keep || t.keep
	none := as == "no ice" || as == "without ice" || as == "none ice"
	s.NoIce = s.NoIce || none
	s.Iced = s.Iced || t.Ice && !none
	s.OnIce = s.OnIce || t.Ice && t.Service != ""
	s.Muddle = s.Muddle || strings.HasPrefix(as, "muddle")
	return n
}

// DegreeWords follow a number that is no amount: degrees, seconds, turns.
var DegreeWords = token.Words(`° °c °f c f celsius fahrenheit degrees degree deg centigrade seconds second sec secs s minutes minute min mins times
h hr hrs hour hours day days week weeks
sek sekunde sekunden seg segundos secondi secondes seconden minuten minuti minutos h hr hrs hour hours revolutions rotations turns strokes beats count counts rounds straws straw`)

// Temperature reads "70 °C", "160 F" or "70 degrees" at the start of toks, as that
// of a hot drink: between freezing and boiling.
func Temperature(toks []token.Token) (celsius float64, ok bool) {
	c, ok := degrees(toks)
	return c, ok && c > 0 && c <= 100
}

// degrees reads a number with its scale, Celsius where none is named.
func degrees(toks []token.Token) (celsius float64, ok bool) {
	v := toks[0].Value
	for _, t := range toks[1:min(len(toks), 3)] {
		switch t.Text {
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
func (s *Said) addMethod(m flavor.Method, as string) {
	pair := func(a, b flavor.Method) bool { return s.Method == a && m == b || s.Method == b && m == a }
	switch {
	case s.Method == "" || s.Method == m:
		s.Method, s.MethodAs = m, as
	case pair(flavor.Shake, flavor.DryShake):
		s.Method = flavor.DryShake
	case pair(flavor.Build, flavor.Stir):
		s.Method = flavor.Build
		s.Notes = append(s.Notes, "build and stir: taken as build")
	case s.Method == flavor.Build && strings.HasPrefix(as, "churn"):
		s.Notes = append(s.Notes, "build and churn: taken as build")
	case pair(flavor.Build, flavor.Swizzle):
		s.Method = flavor.Swizzle
	case pair(flavor.Build, flavor.Throw), pair(flavor.Blend, flavor.Build):
		if s.Method == flavor.Build {
			s.Method, s.MethodAs = m, as
		}
	default:
		if s.most == "" || Mixes(m) > Mixes(s.most) {
			s.most = m
		}
		s.Conflict = measure.Invalid("method", as, "%q is a second method beside %q; keep one", as, s.MethodAs)
	}
}

// addService adds a service. A weak one yields; long over crushed ice is crushed.
func (s *Said) addService(v flavor.Service, as string, weak bool) {
	either := func(a flavor.Service) bool { return s.Service == a || v == a }
	switch {
	case s.Weak != weak && s.Service != v && either(flavor.Long) && either(flavor.Rocks): // ice in a tall glass
		s.Service, s.Weak = flavor.Long, false
	case s.Service == "" || s.Weak && !weak:
		s.Service, s.ServiceAs, s.Weak = v, as, weak
	case weak || s.Service == v:
		if s.Weak && weak { // of two that are only suggested, a tall glass or crushed ice says more than ice
			s.Service, s.ServiceAs = stronger(s.Service, v), as
		}
	case either(flavor.Hot) && either(flavor.Neat):
		s.Service, s.ServiceAs = flavor.Hot, as
	case either(flavor.Up) || either(flavor.Hot) || either(flavor.Neat):
		s.Conflict = measure.Invalid("service", as, "%q is a second service beside %q; keep one", as, s.ServiceAs)
	case either(flavor.Crushed):
		s.Service, s.Weak = flavor.Crushed, false
	default: // long and rocks
		s.Service, s.Weak = flavor.Long, false
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

// Prose settles a second method. Prose tells of one step after another, so that
// it is no contradiction: the one that takes most work mixes the drink.
func (s *Said) Prose() {
	if s.Conflict == nil || s.Conflict.Field != "method" {
		return
	}
	s.Conflict = nil
	both := string(s.Method) + " and " + string(s.most)
	if Mixes(s.most) > Mixes(s.Method) {
		s.Method, s.MethodAs = s.most, string(s.most)
	}
	s.most = ""
	s.Notes = append(s.Notes, both+": taken as "+string(s.Method))
}

// Merge adds what another text says, in prose or not.
func (s *Said) Merge(o *Said, prose bool) {
	if o.Method != "" {
		s.addMethod(o.Method, o.MethodAs)
		if prose {
			s.Prose()
		}
	}
	if o.Service != "" {
		s.addService(o.Service, o.ServiceAs, o.Weak)
	}
	if s.Glass == "" {
		s.Glass = o.Glass
	}
	if o.HotC > 0 {
		s.HotC = o.HotC
	}
	s.NoIce = s.NoIce || o.NoIce
	s.Iced, s.OnIce = s.Iced || o.Iced, s.OnIce || o.OnIce
	s.Cold = s.Cold || o.Cold
	s.Strained = s.Strained || o.Strained
	if s.mixedOn == "" {
		s.mixedOn, s.mixedAs, s.mixedWeak = o.mixedOn, o.mixedAs, o.mixedWeak
	}
	s.Together = s.Together || o.Together
	s.Touch = s.Touch || o.Touch
	if o.Method == flavor.Swizzle && s.Method == flavor.Build {
		return // what is churned is built, as is said already
	}
	s.Notes = append(s.Notes, o.Notes...)
}

// Mixes says which of several methods in one text is the one that mixes the
// drink: the one that takes most work.
func Mixes(m flavor.Method) int {
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
	s := Of(text)
	if s.Unknown != nil || s.Conflict != nil || s.Service != "" {
		return "", false
	}
	return s.Method, s.Method != ""
}

// ParseService is the same for a service.
func ParseService(text string) (flavor.Service, bool) {
	s := Of(text)
	if s.Unknown != nil || s.Conflict != nil || s.Method != "" {
		return "", false
	}
	return s.Service, s.Service != ""
}

// Of reads a text by itself.
func Of(text string) Said {
	return Read(token.Lex(nil, text, 0, len(text)))
}
