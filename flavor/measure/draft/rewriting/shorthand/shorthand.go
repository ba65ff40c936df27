package shorthand

import (
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"counterpour/flavor"
	"counterpour/flavor/measure"
	"counterpour/flavor/measure/draft/names/lexicon"
	"counterpour/flavor/measure/draft/names/naming"
	"counterpour/flavor/measure/draft/words/entry"
	"counterpour/flavor/measure/draft/words/gauge"
	"counterpour/flavor/measure/draft/words/label"
	"counterpour/flavor/measure/draft/words/laid"
	"counterpour/flavor/measure/draft/words/pouring"
	"counterpour/flavor/measure/draft/words/serving"
	"counterpour/flavor/measure/draft/words/token"
)

// Limits on what is looked at: who writes in shorthand writes little.
const (
	mostText  = 1500 // bytes
	mostWords = 40   // words that are not known
)

// writer writes a text out.
type writer struct {
	resolver *naming.Resolver
	read     map[string]string // what each word was found to be, itself where it stays
	changes  []string
}

// WrittenOut returns a text with its clipped and run-together words written out, and what was
// changed, in sentences; it is false if nothing was. Lines without a number stay as they are.
func WrittenOut(text string, b *naming.Resolver) (out string, changes []string, ok bool) {
	if len(text) > mostText {
		return "", nil, false
	}
	w := writer{resolver: b, read: map[string]string{}}
	lines := strings.Split(text, "\n")
	for i, line := range lines {
		if strings.ContainsFunc(line, amountSign) {
			lines[i] = w.line(line)
		}
	}
	return strings.Join(lines, "\n"), w.changes, len(w.changes) > 0 && b.Err() == nil
}

// amountSign reports whether a character is one of a number.
func amountSign(c rune) bool {
	return c < utf8.RuneSelf && unicode.IsDigit(c) || unicode.Is(unicode.No, c)
}

// inWord reports whether a character stands in words.
func inWord(c rune) bool {
	return unicode.IsLetter(c) || unicode.Is(unicode.Mn, c) || c == '\'' || c == '’' || c == '-'
}

// line writes a line out.
func (w *writer) line(line string) string {
	var out []string
	for part := range strings.SplitSeq(line, " ") {
		if full := w.stretch(part); full != part {
			w.changes = append(w.changes, "“"+strings.Trim(part, ",;.")+"” is read as “"+strings.Trim(full, ",;.")+"”")
			part = full
		}
		out = append(out, part)
	}
	return strings.Join(out, " ")
}

// run is a stretch of letters or of what a number is written with.
type run struct {
	text  string
	start int
	kind  byte // 'w' for a word, 'n' for a number, 's' for signs
}

// runs parts what is written without a blank.
func runs(part string) []run {
	var out []run
	for i := 0; i < len(part); {
		c, n := utf8.DecodeRuneInString(part[i:])
		kind := byte('s')
		switch {
		case inWord(c) && !(c == '-' && (i == 0 || i+n == len(part))):
			kind = 'w'
		case amountSign(c), (c == '.' || c == ',' || c == '/' || c == '⁄') && nextIs(part[i+n:], amountSign):
			kind = 'n'
		}
		if last := len(out) - 1; last >= 0 && out[last].kind == kind && kind != 's' && !(kind == 'w' && c == '-' && nextIs(part[i+n:], amountSign)) {
			out[last].text += part[i : i+n]
		} else {
			out = append(out, run{part[i : i+n], i, kind})
		}
		i += n
	}
	return out
}

// nextIs reports whether a text begins with a character of some kind.
func nextIs(text string, is func(rune) bool) bool {
	c, n := utf8.DecodeRuneInString(text)
	return n > 0 && is(c)
}

// stretch writes out what stands between two blanks. Amounts and names that run into each
// other are parted where every word of it is one that is known.
func (w *writer) stretch(part string) string {
	in := runs(part)
	var out strings.Builder
	for i, r := range in {
		text := r.text
		if r.kind == 'w' {
			full, known := w.word(r.text)
			if !known && i > 0 && in[i-1].kind == 'n' {
				full, known = w.measured(r.text)
			}
			if known {
				text = full
			}
			if known && i > 0 && in[i-1].kind == 'n' && !isMeasure(r.text) && !strings.HasPrefix(r.text, "-") { // "1peach"
				out.WriteString(" ")
			}
		}
		if r.kind == 'n' && i > 0 && in[i-1].kind == 'w' && len(in[i-1].text) > 1 && w.knows(in[i-1].text) { // "gin60"
			out.WriteString(" ")
			text = behindSign(in[i:])
		}
		out.WriteString(text)
	}
	return out.String()
}

// behindSign is a number that runs into the word before it, without a sign that parts the two: a comma does, and a
// stop where millilitres or centilitres are measured, of which nobody writes a fraction so.
func behindSign(in []run) string {
	text := in[0].text
	if len(text) > 1 && (text[0] == ',' || text[0] == '.' && len(in) > 1 && metric[strings.ToLower(in[1].text)]) {
		return text[1:]
	}
	return text
}

// metric are the units that are written behind whole numbers.
var metric = token.Words(`ml cl`)

// knows reports whether a word is known, as it stands or written out.
func (w *writer) knows(word string) bool {
	_, known := w.word(word)
	return known || isMeasure(word)
}

// isUnit reports whether a word is what something is poured by: a unit, or another measure.
func isUnit(key string) bool {
	_, unit := measure.ParseUnit(key)
	_, other := gauge.Measures[key]
	return unit || other
}

// isMeasure reports whether a word counts or measures anything, be it degrees or years.
func isMeasure(word string) bool {
	key := strings.ToLower(word)
	return isUnit(key) || serving.OtherMeasures[key] || serving.DegreeWords[key] || entry.AgeWords[key] || serving.Times(key)
}

// word writes out a word, and is false for one that is not known even then.
func (w *writer) word(word string) (string, bool) {
	key := strings.ToLower(word)
	if full, ok := w.read[key]; ok {
		return full, full != ""
	}
	if len(w.read) > mostWords {
		return "", false
	}
	full := w.written(word, key)
	w.read[key] = full
	return full, full != ""
}

// written is what a word is written out, itself where it is known, empty where it is not.
func (w *writer) written(word, key string) string {
	switch {
	case saysSomething(key), w.named(key):
		return word
	case utf8.RuneCountInString(key) < leastRunTogether, lexicon.Of(key)&lexicon.Common != 0, prepositions[key]: // "upon" is no "up on"
		return ""
	}
	if meant, ok := serving.Slip(key); ok {
		return meant
	}
	var found []string
	for at := range key {
		if at == 0 {
			continue
		}
		one, other := key[:at], key[at:]
		if full, ok := w.pair(one, other); ok && !slices.Contains(found, full) {
			found = append(found, full)
		}
	}
	if len(found) == 1 {
		return found[0]
	}
	return ""
}

// prepositions are words of two that no list of nouns and verbs has.
var prepositions = map[string]bool{"upon": true, "onto": true, "into": true, "within": true, "without": true}

// leastRunTogether is the fewest letters of two words that are run together.
const leastRunTogether = 4

// saysSomething reports whether a word is known that is no name of an ingredient.
func saysSomething(key string) bool {
	return serving.Known(key) || serving.StepVerbs[key] || serving.Fillers[key] || isMeasure(key) || token.Joins[key] || entry.LeavesOut(key) ||
		token.NumberWords[key] > 0 || token.FractionWords[key] > 0 || pouring.Verbs[key] != "" || laid.Noun(key) || label.Words[key] != label.None
}

// place is where a name of shorthand stands: by the jigger.
var place = naming.Place{Unit: flavor.Ounce, Amount: 1}

// named reports whether a word is the name of an ingredient, or leaves a choice of a few.
func (w *writer) named(key string) bool {
	f := w.resolver.Find(key, place)
	return f.Firm() || f.Fault != nil && f.Fault.Kind == flavor.ErrInvalid
}

// measured writes out a measure and what it is of that stand behind a number without a blank:
// "2dabsinth". Behind a blank such a word is a name that is not known: "1 goat" is no gram of oat.
func (w *writer) measured(word string) (string, bool) {
	key := strings.ToLower(word)
	for at := range key {
		if at > 0 && isUnit(key[:at]) && len(key[at:]) >= leastName && w.named(key[at:]) {
			return key[:at] + " " + key[at:], true
		}
	}
	return "", false
}

// pair writes two words out that were run together: two words of a name, or two words of making
// and serving.
func (w *writer) pair(one, other string) (string, bool) {
	if serving.Known(one) && serving.Known(other) && len(one) > 1 && len(other) > 1 {
		if s := serving.Read([]token.Token{{Kind: token.Word, Text: one}, {Kind: token.Word, Text: other}}); s.States() && s.Conflict == nil && len(s.Unknown) == 0 {
			return one + " " + other, true
		}
	}
	if len(one)+len(other) < leastName || len(other) < leastHalf || len(one) < 1 {
		return "", false
	}
	if f := w.resolver.Find(one+" "+other, place); f.Firm() && f.Dropped == "" && f.Infusion == "" {
		return one + " " + other, true
	}
	return "", false
}

// The fewest letters of a name, and of the second of two words run together.
const (
	leastName = 3
	leastHalf = 3
)
