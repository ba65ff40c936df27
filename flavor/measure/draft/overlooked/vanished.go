package overlooked

import (
	"slices"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/measure"
	"counterpour/flavor/measure/draft"
	"counterpour/flavor/measure/draft/names/jargon"
	"counterpour/flavor/measure/draft/names/naming"
	"counterpour/flavor/measure/draft/words/drinks"
	"counterpour/flavor/measure/draft/words/entry"
	"counterpour/flavor/measure/draft/words/speech"
	"counterpour/flavor/measure/draft/words/token"
	"counterpour/flavor/measure/vocabulary"
)

// What a text names beside the pours. A title, a remark or a step may hold pours in words that nobody
// here reads as amounts; they are asked for, whatever the stretch was taken for.

// between stand between an amount and the name of what it measures, in the same tongues.
var between = vocabulary.Words(`of the de du des d di del della dello da do von vom van le la les l el los las il lo i den der das die het en`)

// speaks are words before a name that is spoken of and not poured.
var speaks = vocabulary.Words(`no not without w/o instead than like never don't dont sans ohne senza sin sem utan uden zonder bez was were for replaces replacing swap swapped sub subbed out if when unless or vs`)

// struck say with an "out" behind them that what follows is poured no more.
var struck = vocabulary.Words(`crossed struck scratched scored ruled left`)

// Open returns a fault for each line of a text that names something poured beside a word that may be an
// amount, or several bottles, of which nothing is among the pours; that pours something under a
// condition, or takes it back; and that claims of the drink what the pours contradict.
func Open(text string, pours []flavor.Pour, b *naming.Resolver) flavor.DataFaults {
	var out flavor.DataFaults
	known := slices.Concat(pours, swapped(text, b))
	from := 0
	for n, line := range strings.Split(text, "\n") {
		toks := token.Lex(nil, text, from, from+len(line))
		all := toks
		toks, _ = speech.SecondThoughts(text, toks)
		var f *flavor.DataFault
		if !strings.HasPrefix(strings.TrimSpace(line), draft.NamePrefix) { // who writes that has said what the line is
			if f = garnishPours(text, toks); f == nil {
				f = vanished(text, toks[titleEnd(text, toks, n):], known, b)
			}
			if f == nil {
				f = unlisted(text, all, known, b)
			}
		}
		if f == nil {
			f = conditional(line, !strings.ContainsFunc(text[:from], numbered), pours)
		}
		if f == nil {
			f = addedInChat(line, pours, b)
		}
		if f == nil {
			f = retracted(line, pours)
		}
		if f == nil {
			f = claimed(line, n == 0, pours)
		}
		if f == nil {
			f = foamed(line, pours)
		}
		if f != nil {
			f.Location = measure.LineLocation(n + 1)
			out = append(out, f)
		}
		from += len(line) + 1
	}
	return out
}

// swapped are the two of each change that puts one ingredient in the place of another, as if they were
// poured: what is listed by one of the names is poured by the other.
func swapped(text string, b *naming.Resolver) []flavor.Pour {
	var out []flavor.Pour
	for clause := range strings.FieldsFuncSeq(text, func(c rune) bool { return strings.ContainsRune(",.;:!?()\n", c) }) {
		toks := token.Lex(nil, clause, 0, len(clause))
		if len(toks) < 3 || !slices.ContainsFunc(toks, func(t token.Token) bool { return speech.Swaps(t.Text) || t.Text == "instead" }) {
			continue
		}
		one, other := speech.Swapped(toks)
		for _, name := range [...][]token.Token{one, other} {
			if p, n := b.MentionAt(wordsFrom(clause, name)); n > 0 {
				out = append(out, flavor.Pour{Profile: p})
			}
		}
	}
	return out
}

// titleEnd is how many tokens that begin the first line are the name of a drink of several words: a "Yacht
// Club" pours no soda.
func titleEnd(text string, toks []token.Token, line int) int {
	if line > 0 {
		return 0
	}
	for end := min(len(toks), drinks.MostWords); end > 1; end-- {
		if said := text[toks[0].Start:toks[end-1].End]; drinks.Known(said) || drinks.Numbered(said) {
			return end
		}
	}
	return 0
}

// besideIt are words of what is laid on a drink, drunk beside it or put on its rim.
var besideIt = vocabulary.Words(`rim rimmed rims garnish garnished side beside alongside chaser back glass`)

// leastListed is how many bottles a line names, and nothing pours, that is a list of them.
const leastListed = 2

// vanished is the fault of one line.
func vanished(text string, toks []token.Token, pours []flavor.Pour, b *naming.Resolver) *flavor.DataFault {
	var listed []*flavor.Profile
	spoken := false // of what is not poured, in this clause
	for i := 0; i < len(toks); {
		t := &toks[i]
		if i == 0 || parts(&toks[i-1]) {
			spoken = laidBeside(toks[i:]) || halfRim(toks[i:]) || i > 0 && toks[i-1].Is(":") && besideIt.Has(toks[0].Text) || i > 2 && toks[i-1].Is(":") && struck.Has(toks[i-3].Text) // "crossed out: cranberry 20 ml"
		}
		if t.Kind != token.Word {
			i++
			continue
		}
		p, n := b.MentionAt(wordsFrom(text, toks[i:]))
		spoken = spoken || n == 0 && speaks.Has(t.Text)
		end := i + max(n, 1)
		written := text[t.Start:toks[end-1].End]
		if n == 0 {
			if p, n = ofSeveral(t.Text, b); n > 0 && akin(p, pours) {
				n = 0
			}
		}
		if n == 0 {
			p, n = numberedAlone(text, toks, i, b)
			end = i + max(n, 1)
			written = text[t.Start:toks[end-1].End]
		}
		if n == 0 && i > 0 && entry.IsUnit(&toks[i-1]) { // "dash OB"
			if f := b.Find(written, naming.Place{Unit: flavor.Dash, Amount: 1}); f.Firm() && f.Dropped == "" && f.Profile.Class == flavor.ClassCocktailBitters {
				p, n = f.Profile, 1
			}
		}
		if n == 0 || spoken || written == "bit" || !drunk(p) && !pressed(toks, i) || drinks.Known(written) || named(p, written, pours) {
			i = end
			continue
		}
		if from, to, ok := amountBeside(toks, i, end); ok && !takenBackBehind(toks, end) && !takenAway.MatchString(text[toks[end-1].End:toks[len(toks)-1].End]) && !laidOn(text, toks, from, to) {
			said := token.OneLine(text[toks[from].Start:toks[to-1].End])
			return measure.Invalid("amount", said, "%q may pour %s, which is not among the pours; write it on a line of its own with its amount in figures, or leave it out", said, p.Name)
		}
		if bottled(p) && !akin(p, pours) && !slices.Contains(listed, p) {
			listed = append(listed, p)
		}
		i = end
	}
	if len(listed) < leastListed {
		return nil
	}
	said := token.OneLine(text[toks[0].Start:toks[len(toks)-1].End])
	return measure.Invalid("amount", said, "%q names %s and %s, which are not among the pours; write each on a line of its own with its amount, or leave them out", said, listed[0].Name, listed[1].Name)
}

// akin reports whether a pour is of the kind of an ingredient.
func akin(p *flavor.Profile, pours []flavor.Pour) bool {
	return slices.ContainsFunc(pours, func(q flavor.Pour) bool { return naming.Akin(p, q.Profile) })
}

// numberedAlone returns the ingredient, and how many words name it, that fills a clause with a number in
// words behind it, however short it is written: "ang one". It is nil and 0 if none does.
func numberedAlone(text string, toks []token.Token, i int, b *naming.Resolver) (*flavor.Profile, int) {
	end := i
	for end < len(toks) && toks[end].Kind == token.Word {
		end++
	}
	last := end - 1
	if toks[last].Text == "one" && points.Has(toks[i].Text) { // "the bitter one"
		return nil, 0
	}
	if i > 0 && !parts(&toks[i-1]) || end < len(toks) && !parts(&toks[end]) || last == i || last-i > mostWords || token.NumberWords[toks[last].Text] == 0 && !speech.NumberWord(toks[last].Text) {
		return nil, 0
	}
	for _, pl := range places[:2] {
		if f := b.Find(token.OneLine(text[toks[i].Start:toks[last-1].End]), pl); f.Firm() {
			return f.Profile, last - i
		}
	}
	return nil, 0
}

// ofSeveral returns the first bottle that a word may mean which means several, all of them bottles, and 1;
// nil and 0 for another word.
func ofSeveral(word string, b *naming.Resolver) (*flavor.Profile, int) {
	var first *flavor.Profile
	for _, name := range jargon.SeveralByVolume(flavor.NormaliseName(word)) {
		p, _, ok := b.Named(name)
		if ok && !bottled(p) && p.Class != flavor.ClassWine {
			return nil, 0
		}
		if ok && first == nil {
			first = p
		}
	}
	if first == nil {
		return nil, 0
	}
	return first, 1
}

// laidBeside reports whether the clause that tokens begin with tells what is laid on the drink, or stands
// beside it.
func laidBeside(toks []token.Token) bool {
	for i := range toks {
		if parts(&toks[i]) && !toks[i].Is("(") { // "3 dashes bitters (garnish)"
			return false
		}
		if besideIt.Has(toks[i].Text) {
			return true
		}
	}
	return false
}

// halfRim reports whether a clause says that half the rim has salt or sugar: "HALF SALT".
func halfRim(toks []token.Token) bool {
	return len(toks) > 1 && token.FractionWords[toks[0].Text] == 0.5 && (toks[1].Text == "salt" || toks[1].Text == "sugar") && (len(toks) == 2 || parts(&toks[2]))
}

// takenBackBehind reports whether words behind tokens take back what stands before them: "5 cl gin? no, 4".
func takenBackBehind(toks []token.Token, end int) bool {
	if end+1 < len(toks) && toks[end].Is("?") && (toks[end+1].Text == "no" || toks[end+1].Text == "nope") {
		return true
	}
	return end < len(toks) && speech.TakenBackAt(toks, end) > 0
}

// parts reports whether a sign ends a clause.
func parts(t *token.Token) bool {
	return t.Kind == token.Mark && strings.Contains(",.;:!?()[]|/–—", t.Text)
}

// wordsFrom are the words that tokens begin with, up to what is none, as many as a name has at most.
func wordsFrom(text string, toks []token.Token) []string {
	var out []string
	for i := range toks {
		if toks[i].Kind != token.Word || len(out) == naming.LongestName {
			break
		}
		out = append(out, text[toks[i].Start:toks[i].End])
	}
	return out
}

// drunk reports whether an ingredient goes into a drink by the measure, and is not laid on it.
func drunk(p *flavor.Profile) bool {
	return !p.Class.Solid() && p.Class != flavor.ClassWater
}

// styles are words of a name that say how something is, and of what many things are.
var styles = vocabulary.Words(`dry sweet light dark white red gold green yellow blanc extra old aged fresh rich wine`)

// named reports whether a pour is an ingredient, or has a word of its name as it is written.
func named(p *flavor.Profile, written string, pours []flavor.Pour) bool {
	if slices.ContainsFunc(pours, func(q flavor.Pour) bool { return q.Profile == p }) {
		return true
	}
	words := strings.Fields(flavor.NormaliseName(written))
	for _, w := range strings.Fields(flavor.NormaliseName(p.Name)) {
		if !styles.Has(w) { // dry vermouth is no dry gin
			words = append(words, w)
		}
	}
	return slices.ContainsFunc(pours, func(q flavor.Pour) bool {
		said := strings.Fields(flavor.NormaliseName(q.Profile.Name + " " + q.Match.Asked + " " + string(q.Profile.Class)))
		return slices.ContainsFunc(words, func(w string) bool { return slices.Contains(said, w) })
	})
}

// batchUnits measure what is made of many drinks: "sangria 4 l", above its pours.
var batchUnits = vocabulary.Words(`l litre litres liter liters gal gallon gallons`)

// points are words before a name and a "one" that is no number: "the bitter one".
var points = vocabulary.Words(`the this that these a an our my your their his her another other which last first next new old usual same more less`)

// pressed reports whether the name at i is that of a fruit whose juice is poured: "the juice of one lime".
func pressed(toks []token.Token, i int) bool {
	for i--; i > 0 && (mayMeasure(&toks[i]) || toks[i].Text == "a"); i-- {
	}
	return i > 0 && toks[i].Text == "of" && toks[i-1].Text == "juice"
}

// amountBeside returns the tokens from an amount to the name beside it that stands from i to end, in
// whichever order; false if there is no amount.
func amountBeside(toks []token.Token, i, end int) (from, to int, ok bool) {
	at := i - 1
	for at > 0 && toks[at].Kind == token.Word && between.Has(toks[at].Text) {
		at--
	}
	if at >= 0 && mayMeasure(&toks[at]) {
		return at, end, true
	}
	if end < len(toks) && toks[end].Text == "one" && (i > 0 && points.Has(toks[i-1].Text) || end+1 < len(toks) && toks[end+1].Is(":")) { // "French one: ..."
		return 0, 0, false
	}
	if end+1 < len(toks) && toks[end].Is("(") && entry.StartsMeasure(toks[end+1:]) { // "gin (60 ml)"
		return i, end + 2, true
	}
	if n := measureAlone(toks, end+1); end < len(toks) && toks[end].Is(",") && n > 0 { // "whisky, 45 ml, then ..."
		return i, end + 1 + n, true
	}
	if end < len(toks) && mayMeasure(&toks[end]) && !(end+1 < len(toks) && batchUnits.Has(toks[end+1].Text)) {
		return i, end + 1, true
	}
	return 0, 0, false
}

// measureAlone returns how many tokens from i on are an amount with its unit that fills its clause, 0 if none
// are.
func measureAlone(toks []token.Token, i int) int {
	if i >= len(toks) || toks[i].Kind != token.Numeral || toks[i].Wrong != "" {
		return 0
	}
	_, n := entry.UnitAt(toks[i+1:])
	if n == 0 || i+1+n < len(toks) && !parts(&toks[i+1+n]) {
		return 0
	}
	return 1 + n
}

// mayMeasure reports whether a token may be an amount, in figures or words of some tongue.
func mayMeasure(t *token.Token) bool {
	if t.Kind == token.Numeral {
		return true
	}
	return t.Kind == token.Word && (token.NumberWords[t.Text] > 0 || token.FractionWords[t.Text] > 0 || speech.NumberWord(t.Text) || entry.IsUnit(t))
}
