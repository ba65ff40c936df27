package likeliest

import (
	"strings"

	"counterpour/flavor/measure"
	"counterpour/flavor/measure/draft/names/jargon"
	"counterpour/flavor/measure/draft/words/aside"
	"counterpour/flavor/measure/draft/words/entry"
	"counterpour/flavor/measure/draft/words/laid"
	"counterpour/flavor/measure/draft/words/parting"
	"counterpour/flavor/measure/draft/words/serving"
	"counterpour/flavor/measure/draft/words/token"
	"counterpour/flavor/measure/vocabulary"
)

// joins may stand between two stretches, and say nothing.
var joins = vocabulary.Words(`and then with also plus please pls plz n`)

// timesWords follow how often something is done.
var timesWords = vocabulary.Words(`x times turns lift lifts stirs revs secs sec seconds min mins minutes`)

// makingTerms are the words of making and serving that are mended if they are shortened or have
// a slip: every bar writes them daily.
var makingTerms = strings.Fields(`shake shaken stir stirred build built blend throw swizzle swizzled blender strain strained double fine dry hard wet reverse rocks crush crushed cubed coupe highball collins martini flute glass over into serve served neat straight large chilled frozen muddle muddled`)

// makingBones are the bones of each.
var makingBones = func() (out []string) {
	for _, m := range makingTerms {
		out = append(out, bones(m))
	}
	return out
}()

// leastMended is the fewest letters of a word of making that is mended.
const leastMended = 3

// made are the words of making that a word is at full length, and whether that had to be mended;
// none if the word is none of making.
func made(w string) (full []string, mended bool) {
	if serving.Known(w) || serving.Fillers[w] || serving.StepVerbs[w] || serving.DegreeWords[w] || plain(w) == "glass" {
		return []string{plain(w)}, false
	}
	if m := mend(w); m != "" {
		return []string{m}, true
	}
	for k := leastMended; k+leastHalf <= len(w); k++ { // "shkup"
		a, b := mendedWhole(w[:k]), mendedWhole(w[k:])
		if a != "" && b != "" {
			return []string{a, b}, true
		}
	}
	return nil, false
}

// mendedWhole is a word of making or serving that says something by itself, mended if it has to be.
func mendedWhole(w string) string {
	if serving.Known(w) {
		return plain(w)
	}
	return mend(w)
}

// mend is the word of making that another shortens, or is a slip of; empty if there is none, or
// more than one.
func mend(w string) string {
	if meant, ok := serving.Slip(w); ok {
		return meant
	}
	if len(w) < leastMended {
		return ""
	}
	full, own := "", bones(w)
	for i, m := range makingTerms {
		if len(w) < len(m) && own == makingBones[i] || len(w) > leastMended && measure.OneSlip(w, m) && len(m) > leastMended {
			if full != "" && plain(full) != plain(m) {
				return ""
			}
			full = m
		}
	}
	return plain(full)
}

// steps begin words of making that name neither method nor glass.
var steps = vocabulary.Words(`strain fine double pour serve served roll rolled churn heat warm charge chill press swirl dry hard discard all both`)

// fillers stand amid words of making, beside those of package serving.
var fillers = vocabulary.Words(`little some bit plenty full twice thrice`)

// plain is the form of a word that phrases of making are made of.
func plain(w string) string {
	switch w {
	case "shk", "shkn", "shaken", "shook":
		return "shake"
	case "dbl", "dble":
		return "double"
	case "gl", "gls":
		return "glass"
	case "crush":
		return "crushed"
	case "strn", "str", "strained":
		return "strain"
	case "stirred":
		return "stir"
	}
	return w
}

// bones is a word without the vowels behind its first letter, and with none doubled.
func bones(w string) string {
	out := w[:1]
	for _, c := range w[1:] {
		if !strings.ContainsRune("aeiou", c) && !strings.HasSuffix(out, string(c)) {
			out += string(c)
		}
	}
	return out
}

// making are words of making and serving that start at i: "dry shk", "stir up", "shake 10 sec".
func (s *script) making(i int) []stretch {
	if s.toks[i].Kind == token.Mark {
		return nil
	}
	var out []stretch
	m := makingWords{}
	for k := i; k < len(s.toks) && k-i < mostMaking; k++ {
		t := s.toks[k]
		switch {
		case t.Kind == token.Word && k > i && (fillers.Has(t.Text) || s.plainly(k) && !serving.Known(t.Text) && !serving.Fillers[t.Text]):
			continue
		case k > i && s.word(k, "without", "except"): // what is left out stands behind it
			return out
		case s.phraseAt(k) > 1: // "nick & nora"
			n := s.phraseAt(k)
			m.words = append(m.words, s.toks[k:k+n]...)
			k += n - 1
		case t.Kind == token.Word:
			if !s.allowsMaking(k) || !m.take(t) {
				return out
			}
		case t.Kind == token.Numeral && len(out) > 0 && s.word(k+1) && timesWords.Has(s.toks[k+1].Text): // "stir 30 turns"
			k++
			out[len(out)-1].goesOn(k+1, s.written(k-1, k+1))
			continue
		case t.Kind == token.Numeral && k > i && s.word(k+1) && serving.DegreeWords[s.toks[k+1].Text] || t.Kind == token.Numeral && entry.IceFollows(s.line(k+1)):
			m.words = append(m.words, t)
		default:
			return out
		}
		out = append(out, s.madeBy(i, k, &m)...)
	}
	return out
}

// goesOn adds how long or how often something is done, which ends at to.
func (t *stretch) goesOn(to int, said string) {
	t.to = to
	if last := len(t.lines) - 1; last >= 0 {
		t.lines[last] += " " + said
	}
}

// makingWords are words of making at full length, and how many of them had to be mended.
type makingWords struct {
	words []token.Token
	mends int
}

// take takes a word at full length; false if it is none of making.
func (m *makingWords) take(t token.Token) bool {
	full, mended := made(t.Text)
	if full == nil {
		return false
	}
	if mended {
		m.mends++
	}
	last := len(full) - 1
	for _, w := range full[:last] {
		m.words = append(m.words, token.Token{Kind: token.Word, Start: t.Start, End: t.Start, Text: w})
	}
	t.Text = full[last]
	m.words = append(m.words, t)
	return true
}

// madeBy is what the words from i to k say of making and serving, if they say anything by
// themselves.
func (s *script) madeBy(i, k int, m *makingWords) []stretch {
	last := m.words[len(m.words)-1]
	said := serving.Read(m.words)
	switch {
	case len(said.Unknown) > 0 || said.Conflict != nil || last.Kind == token.Numeral:
		return nil
	case k == i && joins.Has(last.Text):
		return []stretch{{kind: aSign, from: i, to: k + 1, cost: costJoin}}
	case !said.States() && !said.Muddle && !said.Iced && !steps.Has(m.words[0].Text):
		return nil
	case s.word(k, "with", "without") || s.word(k, "serve", "served") && s.word(k+1, "with"): // "served with a shot of tequila"
		return nil
	}
	t := stretch{kind: aMaking, from: i, to: k + 1, cost: costMaking + costMended*float64(m.mends), lines: []string{text(m.words)}}
	if m.mends > 0 {
		t.said = "“" + s.written(i, k+1) + "” is read as " + t.lines[0]
	}
	return []stretch{t}
}

// phraseAt returns how many tokens at k are a phrase of making or serving as it stands, 0 if
// none are.
func (s *script) phraseAt(k int) int {
	var words []string
	for i := k; i < len(s.toks) && (s.word(i) || s.sign(i, "&")) && len(words) < serving.LongestTerm; i++ {
		words = append(words, s.toks[i].Text)
	}
	if len(words) == 0 {
		return 0
	}
	_, n := serving.TermAt(words)
	return n
}

// allowsMaking reports whether the word at k may speak of making, and is none that begins a pour.
func (s *script) allowsMaking(k int) bool {
	w := s.toks[k].Text
	if (w == "top" || w == "float" || w == "rinse" || w == "add") && s.word(k+1) && !serving.Starts(s.line(k+1)) {
		return false
	}
	return !thoughts.Has(w) || s.word(k+1) && serving.Known(w)
}

// text writes tokens as words.
func text(toks []token.Token) string {
	var out []string
	for i := range toks {
		out = append(out, toks[i].Text)
	}
	return strings.Join(out, " ")
}

// laidBegins begin what is laid on the drink.
var laidBegins = vocabulary.Words(`garnish garnished express with`)

// dresses begin a sentence on what is laid on the drink: "finish with a ribbon of cucumber".
var dresses = vocabulary.Words(`garnish finish decorate dress drop lay perch hang tuck slide express twist expressed grate sprinkle dust`)

// dressed are such sentences: they end in what is laid on a drink, or begin with a form of it.
func (s *script) dressed(i int) []stretch {
	if !s.word(i) || !dresses.Has(s.toks[i].Text) || !s.starts(i) && !s.sign(i-1, partingSigns) {
		return nil
	}
	from := i + 1
	for s.word(from, "with", "in", "on", "over", "a", "an", "the", "some", "off", "by", "it") {
		from++
	}
	end := from
	for s.word(end) && !thoughts.Has(s.toks[end].Text) {
		end++
	}
	if end == from || end-from > mostTitle || !s.ends(end) && !s.sign(end, ".;,/") || s.pourWord(from, end) || s.juiced(end-1, end) && !s.word(from-1, "a", "an") && !laid.Ends(s.toks[from:end]) {
		return nil
	}
	name := s.written(from, end)
	p, _, known := s.resolver.Named(name)
	if !laid.Ends(s.toks[from:end]) && !laid.Ends(s.toks[from:from+1]) && (!known || !p.Class.Solid()) && !(s.word(from-1, "a", "an") && end == from+1 && s.juiced(from, end)) {
		return nil
	}
	return []stretch{{kind: aLaid, from: i, to: end, cost: costLabel, lines: []string{"garnish: " + name}}}
}

// ifThere say that what is laid on a drink is not missed where there is none.
var ifThere = [][]string{{"if", "you've", "got", "one"}, {"if", "you've", "got", "it"}, {"if", "you", "have", "one"}, {"if", "you", "have", "it"}, {"if", "you", "have", "any"}, {"if", "you", "like"}, {"if", "we", "have", "one"}, {"if", "we", "have", "any"}, {"optional"}, {"to", "garnish"}, {"as", "garnish"}, {"for", "garnish"}}

// formsOnly are forms of what is laid on a drink that alone do not say of what: in "moon dust"
// the word is part of a name.
var formsOnly = vocabulary.Words(`dust powder shavings crumbs crumb petal petals leaf leaves sprig sprigs stick sticks ribbon ribbons chip chips crisp brittle flake flakes`)

// laid are stretches of what is laid on the drink, or dresses its rim: "w/ lemon twist".
func (s *script) laid(i int) []stretch {
	if !s.word(i) && s.rimmed(i) == i {
		return nil
	}
	var out []stretch
	from := i
	for s.word(from) && laidBegins.Has(s.toks[from].Text) {
		from++
	}
	if r := s.rimmed(from); r > from {
		return append(out, stretch{kind: aLaid, from: i, to: r, cost: costLaid, lines: []string{"half " + s.written(from+1, r)}})
	}
	for k := from; k < len(s.toks) && k-from < mostLaid; k++ {
		if s.toks[k].Kind != token.Word || thoughts.Has(s.toks[k].Text) || serving.Known(s.toks[k].Text) && !s.word(k, "garnish") {
			break
		}
		toks := s.toks[from : k+1]
		if parting.Measured(&s.toks[k]) && !laid.Ends(toks) || token.BiasWords[s.toks[k].Text] { // "scant oz lemon"
			break
		}
		t := stretch{kind: aLaid, from: i, to: k + 1, cost: costLaid + 0.1*float64(k-from), runsOn: s.endsUnknown(i)}
		switch {
		case s.word(k, "garnish") && k > from:
			t.lines = []string{"garnish: " + s.written(from, k)}
		case s.word(k, "rim") && k > from && parting.DressesRim(s.toks[k-1].Text):
			t.lines = []string{s.written(from, k+1)}
		case laid.Ends(toks) && !s.pourWord(from, k+1):
			if s.juiced(from, k+1) || s.mixedIn(k+1) || k == from && formsOnly.Has(s.toks[k].Text) {
				continue
			}
			t.lines = []string{"garnish: " + s.written(from, k+1)}
			t.to = s.behind(k+1, ifThere)
		default:
			continue
		}
		out = append(out, t)
	}
	return append(out, s.dressed(i)...)
}

// endsUnknown reports whether the word at i stands behind one that nothing is called by, with no
// sign between them: "moon mint" is one name, whatever it is of.
func (s *script) endsUnknown(i int) bool {
	if !s.word(i - 1) {
		return false
	}
	w := s.toks[i-1].Text
	return !s.says(w) && !s.plainly(i-1) && !serving.Known(w) && !serving.Fillers[w] && !joins.Has(w) && !entry.UnitWordsAt(s.line(i-1))
}

// rimmed is where the note on half a rim ends that starts at i, "1/2 salt rim", and i if none does.
func (s *script) rimmed(i int) int {
	if i >= len(s.toks) || s.toks[i].Kind != token.Numeral || s.toks[i].Value != 0.5 {
		return i
	}
	for k := i + 1; s.word(k) && k-i <= mostLaid; k++ {
		if s.word(k, "rim") && parting.DressesRim(s.toks[k-1].Text) {
			return k + 1
		}
	}
	return i
}

// juiced reports whether the last of some words names what is poured as its juice: it may be a
// pour that lacks its amount.
func (s *script) juiced(from, to int) bool {
	return jargon.Pressed(s.words(to-1, to)) != "" || jargon.Pressed(s.words(from, to)) != ""
}

// mixedIn reports whether what stands behind a name says that it is mixed in: "mint, muddled".
func (s *script) mixedIn(i int) bool {
	for s.sign(i, ",") {
		i++
	}
	return s.word(i) && strings.HasPrefix(s.toks[i].Text, "muddle")
}

// pourWord reports whether words hold one that tells to pour, or a measure.
func (s *script) pourWord(from, to int) bool { return entry.TellsToPour(s.toks[from:to]) }

// noneOf are what a drink may have none of, beside what is laid on it.
var noneOf = vocabulary.Words(`salt sugar rim garnish garn straw egg ew foam ice fruit mint herbs`)

// forbidden is what colleagues are told not to do: "don't let Dave put tonic in it", "forget the
// egg in the sour". What it names must not be poured.
func (s *script) forbidden(i int) []stretch {
	forgets := s.word(i, "forget")
	if !forgets && !s.word(i, "don't", "dont", "never") || !s.starts(i) && !s.sign(i-1, partingSigns) {
		return nil
	}
	k := i + 1
	for s.word(k) && k-i < mostTitle+2 && !thoughts.Has(s.toks[k].Text) {
		k++
	}
	ends := s.ends(k) || s.sign(k, ".!;") || forgets && s.sign(k, ",:-")
	if k-i < 2 || !forgets && k-i < 3 || !ends || !forgets && (!aside.Forbids(s.toks[i:k]) || serving.Known(s.toks[i+1].Text)) {
		return nil
	}
	return []stretch{{kind: aNone, from: i, to: k, cost: costTalk, said: s.written(i+1, k), told: true}}
}

// none are stretches of what the drink has none of: "no salt".
func (s *script) none(i int) []stretch {
	if !s.word(i, "no", "without", "skip", "hold") || !s.word(i+1) {
		return nil
	}
	var out []stretch
	for k := i + 1; k < len(s.toks) && k-i <= 2 && s.toks[k].Kind == token.Word; k++ {
		w := s.toks[k].Text
		if noneOf.Has(w) || laid.Ends(s.toks[i+1:k+1]) {
			out = append(out, stretch{kind: aNone, from: i, to: k + 1, cost: costNone, said: s.written(i+1, k+1)})
		}
	}
	return out
}
