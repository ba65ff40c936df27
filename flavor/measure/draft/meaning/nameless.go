package meaning

import (
	"cmp"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"counterpour/flavor"
	"counterpour/flavor/measure"
	"counterpour/flavor/measure/draft"
	"counterpour/flavor/measure/draft/names/jargon"
	"counterpour/flavor/measure/draft/names/naming"
	"counterpour/flavor/measure/draft/rewriting/layout"
	"counterpour/flavor/measure/draft/words/aside"
	"counterpour/flavor/measure/draft/words/entry"
	"counterpour/flavor/measure/draft/words/parting"
	"counterpour/flavor/measure/draft/words/serving"
	"counterpour/flavor/measure/draft/words/token"
	"counterpour/flavor/measure/pattern"
)

// A first line without an amount is the name of the drink, unless it more likely pours something.

// measureless are words before a name that state no amount.
var measureless = token.Words(`double single dbl sgl large small big treble triple half`)

// nameless asks where the first line, which has no amount, is the name of an
// ingredient and more likely a pour than the name of a drink: it is not written
// like a name, or it is a spirit.
func (r *resolver) nameless() {
	d := r.draft
	if r.name == "" || r.name != d.Name || d.Labelled {
		return
	}
	line := 1 + strings.Count(d.String()[:d.NameAt.Start], "\n")
	if ofGuest.MatchString(r.name) && !layout.Called(r.name, r.resolver) {
		r.note(measure.LineLocation(line) + ": “" + r.name + "” tells of a guest and is kept as a step; what a guest avoids is chosen beside the draft")
		r.steps, r.name = append(r.steps, r.name), ""
		return
	}
	if r.poursIn(r.name) || layout.Spells(r.name) && r.resolver.Mentions(r.name) {
		r.askName(line, "%q holds a pour; write it on a line of its own, or \"%s %s\" if it is the name of the drink")
		return
	}
	if r.talksOfPours() {
		r.askName(line, "%q tells of more than a name; write what is poured with its amount on a line of its own, or \"%s %s\" if it is the name of the drink")
		return
	}
	if d.Titled || layout.Called(r.name, r.resolver) && !r.unmeasured() {
		return
	}
	if d.Led && r.endsInBase() {
		r.askName(line, "%q ends in the name of an ingredient, and the amounts may stand before the names or behind them; put a comma behind each pour, or write \"%s %s\" if it is the name of the drink")
		return
	}
	first, _ := utf8.DecodeRuneInString(r.name)
	lowly := unicode.IsLower(first) || d.Led
	if r.measuredName() {
		r.askName(line, "%q names an ingredient beside an amount that cannot be read; write it such as \"2 oz London dry gin\", or \"%s %s\" if it is the name of the drink")
		return
	}
	if (r.unmeasured() || r.vaguelyPours()) && r.resolver.Mentions(r.name) {
		r.askName(line, "%q names an ingredient and has no amount; write one before it, such as \"2 oz\", or \"%s %s\" if it is the name of the drink")
		return
	}
	for part := range strings.SplitSeq(r.name, ",") {
		p := r.measureless(part, lowly)
		counted := r.countedIn(part)
		if p = cmp.Or(counted, p); p == nil {
			continue
		}
		if !lowly && counted == nil && !p.Base() {
			r.note(measure.LineLocation(line) + ": “" + r.name + "” is read as the name of the drink; write an amount before it to have it poured")
			return
		}
		r.askName(line, "%q names an ingredient and has no amount; write one before it, such as \"2 oz\", or \"%s %s\" if it is the name of the drink")
		return
	}
}

// ofGuest is a line that tells of a guest who must not have something, and is no name of a drink.
var ofGuest = pattern.Of(`(?i)^\W*(?:[\pL'’]+[ \t]+){0,4}allerg(?:y|ies|ic)\b`)

// leastOfOwn is how many pours a drink has that needs no other to be told by.
const leastOfOwn = 3

// toldByAnother asks for the whole of a drink of which no more is told than how it differs from
// another.
func (r *resolver) toldByAnother() {
	if len(r.tasks) < leastOfOwn && goesBy.MatchString(r.name) {
		r.several = true // no other way to read it finds what that drink pours
		r.askName(1, "%q goes by another drink, which is not known here; write all that is poured, or \"%s %s\" if it is the name of the drink")
	}
}

// goesBy is a line that tells how a drink differs from another: "same as the house sour but".
var goesBy = pattern.Of(`(?i)^\W*(?:(?:the )?same (?:drink |thing |spec )?(?:as|again)|like|as) .*\b(?:but|only|except|with|w/)\b`)

// endsInBase reports whether the name ends in a spirit of which no line pours the like: "my way gin
// 50 lemon 25" has its amounts behind the names.
func (r *resolver) endsInBase() bool {
	words := strings.Fields(r.name)
	for n := 1; n < len(words) && n <= naming.LongestName; n++ {
		p, _, ok := r.resolver.Named(strings.Join(words[len(words)-n:], " "))
		if !ok || !p.Base() {
			continue
		}
		return !slices.ContainsFunc(r.draft.Lines, func(l entry.Line) bool {
			f := r.resolver.Find(l.Name, naming.PlaceOf(cmp.Or(l.Unit, flavor.Millilitre), l.Amount, l.After))
			return f.Profile != nil && f.Profile.Base()
		})
	}
	return false
}

// talksOfPours reports whether the name is a sentence that tells to pour something, or names
// something that no line pours: "guys, don't forget the egg white".
func (r *resolver) talksOfPours() bool {
	toks := token.Lex(nil, r.name, 0, len(r.name))
	if !aside.Talks(toks) {
		return false
	}
	kept, _ := aside.Denials(r.name)
	if aside.Reminds(toks) {
		kept = r.name
	}
	return entry.TellsToPour(toks) || r.unpouredIn(kept)
}

// unpouredIn reports whether words name something that no line pours the like of.
func (r *resolver) unpouredIn(words string) bool {
	return slices.ContainsFunc(r.resolver.Mentioned(words), func(p *flavor.Profile) bool {
		return !slices.ContainsFunc(r.draft.Lines, func(l entry.Line) bool {
			f := r.resolver.Find(l.Name, naming.PlaceOf(cmp.Or(l.Unit, flavor.Millilitre), l.Amount, l.After))
			return f.Profile != nil && f.Profile.Class == p.Class
		})
	})
}

var (
	// vaguely is how much of something without a measure, before its name: "a healthy pour of gin", "enough gin to cover".
	vaguely = pattern.Of(`\b(?:pours?|glugs?|slosh|slugs?|bit|drop|touch|hint|kiss|lick|lots?|plenty|loads?|heaps?|swig|tot|nip|trickle|squirt|bucket)[ \t]+of[ \t]+(.+)|^[ \t]*(?i:enough|plenty)[ \t]+(?:of[ \t]+)?(.+?)[ \t]+(?:to|for)\b`)
	// largely is the same behind it: "gin - big".
	largely = pattern.Of(`^([^\d]+?)[ \t]*[-–—:(][ \t]*(?i:a[ \t]+)?(?i:big|large|lots?|loads|plenty|generous|heavy|light|some|bit|little|healthy|good)(?i:[ \t]+(?:pour|glug|splash|one|lot))?[ \t]*\)?$`)
)

// vaguelyPours reports whether the name tells of much or little of something that no line pours, in small letters: a
// name of a drink is written in large ones.
func (r *resolver) vaguelyPours() bool {
	for _, p := range []*pattern.Pattern{vaguely, largely} {
		if m := p.FindStringSubmatch(r.name); m != nil && r.unpouredIn(strings.Join(m[1:], " ")) {
			return true
		}
	}
	return false
}

// unmeasured reports whether a draft has pours, and states the amount of none.
func (r *resolver) unmeasured() bool {
	lines := r.draft.Lines
	return len(lines) > 0 && !slices.ContainsFunc(lines, func(l entry.Line) bool { return !l.AmountAt.Empty() })
}

// askName asks whether the first line is a name, in words that quote it, the word for
// a name, and it once more.
func (r *resolver) askName(line int, ask string) {
	f := measure.Invalid("amount", r.name, ask, r.name, draft.NamePrefix, r.name)
	f.Location = measure.LineLocation(line)
	r.found = append(r.found, f)
}

// measuredName reports whether a name begins with a number, or holds a measure, and
// then names an ingredient: it is a pour whose amount cannot be read, such as "6Oml
// gin" or "a good measure of cream".
func (r *resolver) measuredName() bool {
	toks := token.Lex(nil, r.name, 0, len(r.name))
	for i := range toks[:max(0, len(toks)-1)] {
		t := &toks[i]
		amount := i == 0 && (t.Kind == token.Numeral || t.Kind == token.Ratio) || t.Kind == token.Word && unicode.IsLower(rune(r.name[t.Start])) && (parting.Measured(t) || serving.OtherMeasures[t.Text])
		if amount && r.resolver.Mentions(r.name[toks[i+1].Start:]) {
			return true
		}
	}
	if len(toks) < 2 { // "rum fyrtiosju ml": a number that is not known
		return false
	}
	unit, _ := measure.ParseUnit(toks[len(toks)-1].Text)
	return (unit == flavor.Millilitre || unit == flavor.Centilitre) && r.resolver.Mentions(r.name[:toks[len(toks)-1].Start])
}

// countedIn returns the ingredient that a number stands before in a name, as in
// "peel of 1 orange"; nil if there is none.
func (r *resolver) countedIn(name string) *flavor.Profile {
	toks := token.Lex(nil, name, 0, len(name))
	for i := 1; i+1 < len(toks); i++ {
		if toks[i].Kind == token.Numeral && toks[i].Wrong == "" && toks[i+1].Kind == token.Word {
			return r.measureless(name[toks[i+1].Start:], false)
		}
	}
	return nil
}

// measureless returns the ingredient of a name that says no more than it and a word
// that is no amount, shortened too if asked; nil if there is none.
func (r *resolver) measureless(name string, shortened bool) *flavor.Profile {
	if p := entry.Read(name, token.Lex(nil, name, 0, len(name))); p.Shape == entry.ShapeName { // "lager in a pint"
		name = p.Name
	}
	words := strings.Fields(name)
	for len(words) > 1 && (measureless[strings.ToLower(words[0])] || serving.OtherMeasures[strings.ToLower(words[0])]) {
		words = words[1:]
	}
	whole := strings.Join(words, " ")
	for _, n := range jargon.Strip(whole) {
		if !strings.HasSuffix(whole, n) { // "Rum OF" is no rum
			continue
		}
		if p, _, ok := r.resolver.Named(n); ok {
			return p
		}
		if f, ok := r.resolver.Short(flavor.NormaliseName(n), naming.Place{}, false); ok && shortened && f.Profile != nil {
			return f.Profile
		}
	}
	return nil
}
