package overlooked

import (
	"cmp"
	"strings"
	"unicode"
	"unicode/utf8"

	"counterpour/flavor"
	"counterpour/flavor/measure"
	"counterpour/flavor/measure/draft/names/naming"
	"counterpour/flavor/measure/draft/words/speech"
	"counterpour/flavor/measure/draft/words/token"
	"counterpour/flavor/measure/pattern"
	"counterpour/flavor/measure/vocabulary"
)

// What is said around the pours and does not agree with them.

// Said returns a fault for each thing that a text says of the drink read from it which is not so.
func Said(text string, s *flavor.Spec) flavor.DataFaults {
	var out flavor.DataFaults
	for i, line := range strings.Split(text, "\n") {
		found := []*flavor.DataFault{unheld(line, s.Pours), undeclared(line, s.Pours), denied(line, s.Pours), doubted(line), ranOut(line, s.Pours)}
		if tells(line) {
			found = append(found, leftOut(line, s.Pours), toGo(line, s.Pours), tookOut(line), setBeside(line, s.Pours))
		}
		for _, f := range found {
			if f != nil {
				f.Location = measure.LineLocation(i + 1)
				out = append(out, f)
			}
		}
	}
	if f := laid(s.Garnish); f != nil {
		out = append(out, f)
	}
	if f := Negative(text); f != nil {
		out = append(out, f)
	}
	if f := tookBack(text, s.Pours); f != nil {
		out = append(out, f)
	}
	if f := namedOnALine(text, s.Name); f != nil {
		out = append(out, f)
	}
	if f := cmp.Or(rinsedName(text, s.Name), dissolvedName(text, s.Name), filledName(text, s.Name), measureNamed(text, s.Name)); f != nil {
		out = append(out, f)
	}
	if f := halfNamed(s.Name); f != nil {
		out = append(out, f)
	}
	if f := twoDrinks(s.Pours); f != nil && !oneList(text) {
		out = append(out, f)
	}
	return out
}

// saidMore is a line of a chat that adds something without an amount: "Bea: and orgeat".
var saidMore = pattern.Of(`(?i)^[ \t]*(?:\[[^\]\n]*\][ \t]*)?\pL[\pL' ]{0,15}:[ \t]*(?:(?:oh|ah|yes|ya|yeah|ok)[ \t,]+)*(?:and|plus|add|&|\+)[ \t]+(?:the[ \t]+|some[ \t]+|an?[ \t]+)?(\pL[^\d½¼¾⅓⅔\n]*)$`)

// addedInChat is the fault of such a line that names what is not poured.
func addedInChat(line string, pours []flavor.Pour, b *naming.Resolver) *flavor.DataFault {
	m := saidMore.FindStringSubmatch(strings.TrimRight(line, "\r\n"))
	if m == nil {
		return nil
	}
	words := strings.FieldsFunc(m[1], notLetter)
	p, n := b.MentionAt(words[:min(len(words), naming.LongestName)])
	if n == 0 || !drunk(p) || named(p, m[1], pours) {
		return nil
	}
	return lacks(strings.TrimSpace(m[1]))
}

// tookBack is the fault of words that take a pour back where every amount of the text is poured.
func tookBack(text string, pours []flavor.Pour) *flavor.DataFault {
	words, amounts := speech.Unsettled(text)
	if words == "" {
		return nil
	}
	for i := range pours {
		if u := pours[i].Unit; u != flavor.Top && u != flavor.Float && u != flavor.Splash && u != flavor.Rinse { // these may have no figure
			amounts--
		}
	}
	if amounts > 0 {
		return nil
	}
	return measure.Invalid("text", words, "%q takes back what stands before it, and all of it is poured; write only what is poured", words)
}

// oneList reports whether the pours of a text stand in one list, one to a line, with nothing
// between them that would end a drink and begin another.
func oneList(text string) bool {
	first, last, pours := -1, -1, 0
	for i, line := range strings.Split(text, "\n") {
		if beginsWithAmount(line) {
			if first < 0 {
				first = i
			}
			last = i
			pours++
		}
	}
	return pours > 1 && last-first+1 == pours
}

// beginsWithAmount reports whether a line begins with a figure, or with a unit that needs none,
// as "top soda" does.
func beginsWithAmount(line string) bool {
	word, _, _ := strings.Cut(strings.TrimSpace(line), " ")
	first, _ := utf8.DecodeRuneInString(word)
	_, unit := measure.ParseUnit(word)
	return first == '.' || unicode.IsNumber(first) || unit
}

// sentences are words that no garnish holds and a sentence does: "it needs salt".
var sentences = vocabulary.Words(`it it's its we we're you they i is are be was were needs need wants use uses used so out should because hundred easy less more instead same`)

// ofIts stand before "its" or "it" where what follows belongs to the garnish.
var ofIts = vocabulary.Words(`with on in into by from off and over across`)

// itsVerbs stand before "it" where that is the drink: "top it off with a dusting of cinnamon".
var itsVerbs = vocabulary.Words(`top finish garnish dress crown decorate`)

// laid is the fault of what was taken for what is laid on the drink and is a sentence, or a pour
// whose amount cannot be read: "abc oz lemon".
func laid(garnish string) *flavor.DataFault {
	number, before := false, ""
	for _, t := range token.Lex(nil, garnish, 0, len(garnish)) {
		own := t.Text == "its" && ofIts.Has(before) || t.Text == "it" && (ofIts.Has(before) || itsVerbs.Has(before)) // "pineapple wedge with its frond", "a sprig in it"
		before = t.Text
		number = number || t.Kind == token.Numeral
		if t.Kind != token.Word {
			continue
		}
		if u, ok := measure.ParseUnit(t.Text); ok && !number && u.Jigger() {
			return measure.Invalid("garnish", garnish, "%q is poured by the %s, and its amount cannot be read; write it as a number, such as \"1 %s\"", garnish, u, u)
		}
		if sentences.Has(t.Text) && !own {
			return measure.Invalid("garnish", garnish, "%q tells more than what is laid on the drink; write what it pours on a line of its own, or leave it out", garnish)
		}
	}
	return nil
}

// leastBase is a base in mL from which it is that of a drink of its own; common practice.
const leastBase = 40

// twoDrinks is the fault of pours that are two drinks one after the other: a base and what is
// sour beside it, then both once more.
func twoDrinks(pours []flavor.Pour) *flavor.DataFault {
	want := []bool{true, false, true, false} // base, sour, base, sour
	var bases []*flavor.Profile
	at := 0
	for i := range pours {
		p := &pours[i]
		switch {
		case at == len(want):
		case want[at] && p.Profile.Base() && p.ML >= leastBase && (len(bases) == 0 || bases[0] != p.Profile):
			bases = append(bases, p.Profile)
			at++
		case !want[at] && p.Profile.Class == flavor.ClassSourJuice:
			at++
		}
	}
	if at < len(want) {
		return nil
	}
	return measure.Invalid("", bases[1].Name, "two drinks seem to stand here, one with %s and one with %s; write one of them at a time", bases[0].Name, bases[1].Name)
}
