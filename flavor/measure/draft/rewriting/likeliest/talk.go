package likeliest

import (
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"counterpour/flavor"
	"counterpour/flavor/measure/draft/words/aside"
	"counterpour/flavor/measure/draft/words/entry"
	"counterpour/flavor/measure/draft/words/label"
	"counterpour/flavor/measure/draft/words/title"
	"counterpour/flavor/measure/draft/words/token"
	"counterpour/flavor/measure/pattern"
	"counterpour/flavor/measure/vocabulary"
)

// thoughts are words of choice, of denial and of second thoughts. Who passes over one of them
// passes over what it changes: no remark holds one.
var thoughts = vocabulary.Words(`no not none never sorry instead or sub subs was were without hang wait actually maybe optional opt split double doubled halve half was per except minus skip less more mean meant rather
either neither both again oh oops correction correct changed change replace replaced swap swapped cut drop dropped scrap scratch nah nope only unless if`)

var (
	clock  = pattern.Of(`^\d{1,2}:\d\d$`)
	hourly = pattern.Of(`^\d{1,2}(am|pm|h)$`)
	// cardWords say what a text stands on; common practice.
	cardWords = vocabulary.Words(`bar card sheet page menu draft rev revision version spec specs station list test ticket order batch tape label board section machine programme program part vol recipe training week table no nr memo transcript note notes`)
	// counted are what a number counts that pours nothing.
	counted  = vocabulary.Words(`pax ppl people guests covers portions portion servings serving serves drinks min mins minutes sec secs seconds hours hrs days weeks am pm`)
	ordinals = vocabulary.Words(`st nd rd th am pm h x`)
	// smallTalk is what is said around the pours and changes nothing about them.
	smallTalk = vocabulary.Words(`ok okay so its it's it is a an the and then with we i you he she they do did does made make making try trying go goes going get take took put use this that here here's for in on to of at
hey hi hiya hello yo right well just tonight today please pls thanks thx cheers ta mate chef guys team all boss lads yeah yes yep ye yea yup np um uh er like but too sweet sour strong weak bitter boozy now new spec drink recipe one my our ur lol haha good great nice lovely think reckon`)
)

// numbering reports whether the number behind a word is one of a card, a sheet or a version.
func numbering(w string) bool { return cardWords.Has(w) || title.Numbered(w) || w == "p" || w == "v" }

// labels are words before a colon that say what follows: "METHOD:", "Sam:".
func (s *script) labels(i int) []stretch {
	if !s.starts(i) && !s.sign(i-1, ",;/|•.[]-") || !s.word(i) {
		return nil
	}
	for k := i + 1; k < len(s.toks) && k-i <= 3; k++ {
		if s.sign(k, ":") {
			return s.labelled(i, k)
		}
		if s.toks[k].Kind != token.Word {
			break
		}
	}
	return nil
}

// labelled is the label between i and the colon at k, with what belongs to it.
func (s *script) labelled(i, k int) []stretch {
	end := s.end(k)
	said := label.Words[strings.ToLower(s.words(i, k))]
	switch {
	case said == label.Garnish && end > k+1:
		return []stretch{{kind: aLaid, from: i, to: end, cost: costLabel, lines: []string{"garnish: " + s.written(k+1, end)}}}
	case said == label.Name && end > k+1 && s.starts(i) && s.unmeasured(k+1, end):
		return []stretch{{kind: aTitle, from: i, to: end, cost: costLabel, lines: []string{s.written(k+1, end)}}}
	case said != label.None:
		return []stretch{{kind: aLabel, from: i, to: k + 1, cost: costLabel}}
	case s.starts(i) && k == i+1 && s.capital(i) && len(s.resolver.Mentioned(s.words(i, k))) == 0 && !thoughts.Has(s.toks[i].Text):
		return []stretch{{kind: aRemark, from: i, to: k + 1, cost: costSpeaker}}
	}
	return nil
}

// unmeasured reports whether tokens hold no number.
func (s *script) unmeasured(from, to int) bool {
	for i := from; i < to; i++ {
		if s.toks[i].Kind != token.Word && s.toks[i].Kind != token.Mark {
			return false
		}
	}
	return true
}

// titles are what may be the name of the drink that starts at i.
func (s *script) titles(i int) []stretch {
	if !s.lettered(i) || !s.heads(i) && !s.sign(i-1, partingSigns) || s.word(i, "forget") {
		return nil
	}
	var out []stretch
	if k := s.oneOf(i); k > i {
		out = append(out, stretch{kind: aTitle, from: i, to: k, lines: []string{s.written(i, k-1)}, cost: costTalk})
	}
	for k := i; k < len(s.toks) && k-i < mostTitle; k++ {
		if !s.lettered(k) && !s.sign(k, "&'’-()") || s.word(k) && thoughts.Has(s.toks[k].Text) {
			break
		}
		if s.sign(k, "&'’-(") {
			continue
		}
		told := slices.DeleteFunc(slices.Clone(s.toks[i:k+1]), func(t token.Token) bool { return t.Text == "spritz" && t.Start > s.toks[i].Start }) // a kind of drink
		written := s.written(i, k+1)
		if s.word(k) && opens.Has(s.toks[k].Text) || strings.Count(written, "(") != strings.Count(written, ")") {
			continue
		}
		cost, ok := s.parts(i, k+1)
		card := cost == costOwnLine && s.capital(i) // "Kaffee am Abend" talks of nothing
		if !ok || entry.TellsToPour(told) || aside.Talks(told) && !card {
			continue
		}
		t := stretch{kind: aTitle, from: i, to: k + 1, lines: []string{written}, cost: cost + costTitleWord*float64(k-i)}
		if !s.capital(i) {
			t.cost += 2 * costTitleWord
		}
		if n := s.nameAt(i, k+1, flavor.Millilitre, mostWritten); n.ok && n.whole {
			t.cost += costIngredient
			t.named = true
		}
		if smallTalk.Has(s.toks[i].Text) {
			t.cost += costTalk
		}
		out = append(out, t)
	}
	return out
}

// oneOf is where a name ends that speaks of the drink as one of a kind, "almond 1: 1.5 amaretto",
// and i if none does.
func (s *script) oneOf(i int) int {
	k := i
	for s.word(k) && k-i < mostOneOf {
		k++
	}
	if i > 0 || k == i || k+1 >= len(s.toks) || s.toks[k].Kind != token.Numeral || s.toks[k].Value != 1 || !s.sign(k+1, ":=") {
		return i
	}
	return k + 1
}

// mostOneOf is the most words of such a name.
const mostOneOf = 3

// opens are words that no name of a drink ends in: something follows them.
var opens = vocabulary.Words(`of with and the a an to for in on into n plus per by from de di la el le some`)

// lettered reports whether a word stands at i, or a number in words.
func (s *script) lettered(i int) bool {
	t := &s.toks[i]
	c, _ := utf8.DecodeRuneInString(s.text[t.Start:])
	return t.Kind == token.Word || t.Kind == token.Numeral && unicode.IsLetter(c)
}

// mostWritten is an amount in mL by whose place a word is looked up that has none.
const mostWritten = 30

// parts is what it costs that the name of the drink stands between two tokens; false if nothing
// parts it from the pours. A sign that parts the pours as well does not: what stands before it
// is an entry as the others are.
func (s *script) parts(from, to int) (float64, bool) {
	switch {
	case s.aloneOnLine(from, to):
		return costOwnLine, true
	case s.sign(to, ":\"”»"):
		return costBeforeSign, true
	case s.sign(to, "-") && !s.later(to, "-"):
		return costBeforeSign, true
	case s.sign(from-1, ":>-/") && s.ends(to) && to < len(s.toks): // "Summer: Red Bicycle"
		return costBeforeSign, true
	case s.heads(from) && s.sign(to, "([") && s.closes(to): // "Pool Deck (0 %)"
		return costOwnLine, true
	case from == 0 && s.sign(to, ".") && s.capitals(from, to): // "Stone Fruit Sour. Pisco 2 oz."
		return costBeforeSign, true
	case to == len(s.toks) || s.sign(to, partingSigns):
		return 0, false
	case s.sign(from-1, "\"“„«"):
		return 0, false
	}
	if _, ok := s.amountAt(to); ok {
		return costLed, true
	}
	return costLed + costLed/2, !s.capital(to) || !s.capital(from)
}

// closes reports whether the bracket at i is the last thing on its line.
func (s *script) closes(i int) bool {
	end := s.end(i)
	return s.sign(end-1, ")]") && end-i <= mostBracket
}

// mostBracket is the most tokens of a bracket behind the name of a drink.
const mostBracket = 6

// aloneOnLine reports whether nothing but bullets stands on a line beside what it holds: "**Mole**".
func (s *script) aloneOnLine(from, to int) bool {
	for s.sign(from-1, "•_#") {
		from--
	}
	for s.sign(to, "•_#") {
		to++
	}
	return s.heads(from) && s.ends(to)
}

// spoken is the hour and who spoke then: "[22:41] Mo:".
func (s *script) spoken(i, at int) []stretch {
	for s.sign(at, "])") || at < i+6 && s.word(at) {
		at++
	}
	if s.sign(at, ":") {
		at++
	}
	return []stretch{{kind: aRemark, from: i, to: at, cost: costSpeaker}}
}

// perPortion says for how much of it the amounts are: "Per 150 ml portion".
func (s *script) perPortion(i int) []stretch {
	for k := i + 1; k < len(s.toks) && k-i < 5; k++ {
		if s.word(k) && counted.Has(s.toks[k].Text) {
			return []stretch{{kind: aHeading, from: i, to: k + 1, cost: costHeading}}
		}
	}
	return nil
}

// remarks are what is said to colleagues and pours nothing.
func (s *script) remarks(i int) []stretch {
	if s.toks[i].Kind == token.Mark {
		return nil
	}
	var out []stretch
	small, only := s.toks[i].Text != "of", true
	for k := i; k < len(s.toks) && k-i < mostTalk && s.wordsGoOn(k, talkSigns); k++ {
		t := &s.toks[k]
		only = only && t.Kind == token.Word
		small = small && t.Kind == token.Word && smallTalk.Has(t.Text)
		cost := costTalk + costTalkWord*float64(k-i)
		switch {
		case small && !(k == i && opens.Has(t.Text)):
			out = append(out, stretch{kind: aRemark, from: i, to: k + 1, cost: cost, open: !s.ends(k+1) && !s.sign(k+1, partingSigns)})
		case s.isRemark(i, k+1, only):
			out = append(out, stretch{kind: aRemark, from: i, to: k + 1, cost: cost + costTalk})
		}
	}
	return append(append(append(out, s.opinion(i)...), s.price(i)...), s.reference(i)...)
}

// isRemark reports whether the words from i up to end are a remark by their form, and stand apart
// from what pours; only is true if they are nothing but words.
func (s *script) isRemark(i, end int, only bool) bool {
	toks := s.toks[i:end]
	_, amount := s.amountAt(min(end, len(s.toks)-1))
	stops := s.ends(end) || s.sign(end, partingSigns+"?") || amount && end < len(s.toks) && aside.LeadsIn(toks)
	if !stops || entry.TellsToPour(toks) && !sheetTalk(toks) || !s.starts(i) && !s.sign(i-1, partingSigns) {
		return false
	}
	return sheetTalk(toks) || aside.Talks(toks) || only && aside.Said(toks) || aside.Greets(toks) || aside.Commentary(toks) || aside.Spoken(strings.Fields(s.words(i, end)))
}

// reference speaks of the drink before its pours, "lol the bitter one", or asks whether it is cold,
// which how it is served answers.
func (s *script) reference(i int) []stretch {
	if s.word(i, "cold", "chilled", "iced") && s.sign(i+1, "?") && s.ends(i+2) && (s.starts(i) || s.sign(i-1, ":")) {
		return []stretch{{kind: aRemark, from: i, to: i + 2, cost: costTalk}}
	}
	if !s.starts(i) {
		return nil
	}
	for k := i; s.lettered(k) && k-i < mostTitle && !thoughts.Has(s.toks[k].Text); k++ {
		if k > i+1 && strings.EqualFold(s.written(k, k+1), "one") && s.sign(k+1, ".:!\n") && (s.word(i, "the", "that") || s.word(i+1, "the", "that")) {
			return []stretch{{kind: aRemark, from: i, to: k + 1, cost: costTalk}}
		}
		if k+1 == len(s.toks) {
			break
		}
	}
	return nil
}

// sheetTalk reports whether words speak of the text itself: "use the metric column".
func sheetTalk(toks []token.Token) bool {
	return slices.ContainsFunc(toks, func(t token.Token) bool { return sheetWords.Has(t.Text) })
}

var sheetWords = vocabulary.Words(`column columns laminate laminated print printed transcript memo typo handwriting photo`)

// opinion is what somebody thinks of an amount: "3/4 orgeat is too much". It must not be the only
// amount of it.
func (s *script) opinion(i int) []stretch {
	var out []stretch
	for _, p := range s.poured(i) {
		if at := p.to; s.word(at, "is", "was", "were", "seems") && s.word(at+1, "too", "way") && s.word(at+2) && p.pours[0] != nil {
			out = append(out, stretch{kind: aRemark, from: i, to: at + 3, cost: costBack, about: p.pours[0]})
		}
	}
	return out
}

// price is what the drink costs, at the end of the text or behind the name: "9,50".
func (s *script) price(i int) []stretch {
	t := &s.toks[i]
	if t.Kind != token.Numeral {
		return nil
	}
	if s.sign(i-1, "€$£") || s.sign(i+1, "€$£") || priced.MatchString(t.Text) && s.sign(i-1, partingSigns) && i+1 == len(s.toks) {
		return []stretch{{kind: aRemark, from: i, to: i + 1, cost: costTalk}}
	}
	return nil
}

// priced is a number as prices are written.
var priced = pattern.Of(`^\d+[.,]\d0$`)

// fields are what a card says above the pours of who made it and when: "Bartender: Ines".
func (s *script) fields(i int) []stretch {
	if !s.word(i) || !s.sign(i+1, ":") || !s.noted(i) || !s.starts(i) && !s.apart(i) || len(s.resolver.Mentioned(s.words(i, i+1))) > 0 && !dateWords.Has(s.toks[i].Text) {
		return nil
	}
	to := i + 2
	for !s.ends(to) && !s.apart(to) {
		to++
	}
	for k := i + 2; k < to; k++ {
		if s.toks[k].Kind != token.Word && s.toks[k].Kind != token.Mark && !dateWords.Has(s.toks[i].Text) || s.word(k) && thoughts.Has(s.toks[k].Text) {
			return nil
		}
	}
	if to == i+2 || to-i > mostTitle || !s.ends(to) && !s.word(to) {
		return nil
	}
	return []stretch{{kind: aHeading, from: i, to: to, cost: costHeading, named: s.nameAt(i+2, to, flavor.Millilitre, mostWritten).ok}}
}

// noted reports whether the label at i is of something that is noted beside the drink: no label
// of what is poured, or how.
func (s *script) noted(i int) bool {
	l := label.Words[s.toks[i].Text]
	return l == label.None || l == label.Remark || dateWords.Has(s.toks[i].Text)
}

// dateWords are labels of a day.
var dateWords = vocabulary.Words(`date dated datum fecha day`)

// apart reports whether a gap stands before a token.
func (s *script) apart(i int) bool {
	return i > 0 && i < len(s.toks) && (s.toks[i].Start-s.toks[i-1].End > 1 || strings.Contains(s.text[s.toks[i-1].End:s.toks[i].Start], "\t"))
}
