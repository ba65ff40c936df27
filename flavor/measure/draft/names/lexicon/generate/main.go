// Command generate writes the list of words of package lexicon from the files of WordNet 3.0, which
// Debian has in its package wordnet-base:
//
//	go run ./generate /usr/share/wordnet > words.txt
//	go run ./generate /usr/share/wordnet grown > grown.txt
//
// The second list is of the nouns that are a plant in half of their senses at least, the first among them or none
// of the first list, and never a name.
//
// The rule is that of package lexicon: see there. Words whose class tells already what they come from,
// "vividly", are left out; words that endings would make of others, and which may be poured, are marked:
// "liver -". So are the shortest nouns that may be, since a slip makes one of the other: "coal -".
package main

import (
	"bufio"
	_ "embed" // the common words
	"fmt"
	"maps"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"

	"counterpour/flavor/measure/draft/names/lexicon"
	"counterpour/flavor/measure/vocabulary"
)

// written are the common words, a line each.
//
//go:embed common.txt
var written string

var common = vocabulary.Words(written)

// The lexicographer files of WordNet by number, of nouns that can be poured, laid on a drink or
// measured, and of those that say who, when and what thing is meant.
var (
	pourable = map[int]bool{3: true, 5: true, 8: true, 13: true, 17: true, 20: true, 23: true, 27: true} // tops, animal, body, food, object, plant, quantity, substance
	people   = map[int]bool{14: true, 18: true}                                                          // group, person
	times    = map[int]bool{28: true}                                                                    // time
	things   = map[int]bool{6: true, 10: true}                                                           // artifact, communication
)

// plant is the file of nouns of plants.
const plant = 20

// mostPourable is the largest share of the uses of a noun in WordNet's tagged texts in which it may
// be something that can be poured.
const mostPourable = 0.1

// leastLetters is the fewest letters of a word of the list: shorter ones are clippings of bars as often.
const leastLetters = 4

// medicines is how antibiotics end: nobody tells of one at a bar, and drinks are named after some.
const medicines = "cillin"

// word is what the senses of a word come to.
type word struct {
	uses      map[int]int // of its nouns in tagged texts, by lexicographer file
	noun      bool
	first     int  // file of the first noun
	senses    int  // of its nouns
	grown     int  // how many of them are a plant
	proper    bool // it is written with a capital
	taints    bool // it is made of something pourable, or one of its nouns without uses is
	verb, adj bool
	adverb    bool
}

func main() {
	if n := len(os.Args); n != 2 && !(n == 3 && os.Args[2] == "grown") {
		fatal(fmt.Errorf("name the folder of WordNet's files, such as /usr/share/wordnet, and behind it nothing or the word grown"))
	}
	w, err := read(os.Args[1])
	if err != nil {
		fatal(err)
	}
	write := (*wordnet).listed
	if len(os.Args) == 3 {
		write = (*wordnet).grown
	}
	out := bufio.NewWriter(os.Stdout)
	write(w, out)
	if err := out.Flush(); err != nil {
		fatal(err)
	}
}

// leastGrown is the fewest letters of a plant: "yam".
const leastGrown = 3

// grown writes the words of letters alone that are a plant in their first sense and in half of all, or in half of
// all while they are in no class; no names, and nothing of which only the bark is meant.
func (w *wordnet) grown(out *bufio.Writer) {
	for _, lemma := range slices.Sorted(maps.Keys(w.words)) {
		o := w.words[lemma]
		if 2*o.grown >= o.senses && o.grown > 0 && (o.first == plant || w.classes(lemma) == "") && !o.proper && w.words[lemma+"_bark"] == nil && len(lemma) >= leastGrown && strings.Trim(lemma, "abcdefghijklmnopqrstuvwxyz") == "" {
			fmt.Fprintln(out, lemma)
		}
	}
}

// listed writes the words that name nothing that can be poured, with the letters of their classes.
func (w *wordnet) listed(out *bufio.Writer) {
	for _, lemma := range w.lemmas() {
		classes := w.classes(lemma)
		formed := lexicon.Formed(lemma, func(stem string) lexicon.Class { return lexicon.ClassOf(w.classes(stem)) })
		switch {
		case classes == "" && (formed != 0 && !w.words[lemma].properAlone() || w.shortNoun(lemma)):
			classes = lexicon.None
		case classes == "", formed != 0 && formed&^lexicon.Common == lexicon.ClassOf(classes):
			continue
		}
		fmt.Fprintf(out, "%s %s\n", lemma, classes)
	}
}

func fatal(err error) {
	fmt.Fprintln(os.Stderr, "generate:", err)
	os.Exit(1)
}

// wordnet is what is read of the files.
type wordnet struct {
	words map[string]*word
	forms map[string]string // irregular ones, and their lemmas
	files map[string]int    // lexicographer file of a noun, by its place in the file of nouns
	uses  map[string]int    // of a lemma with a sense number and a part of speech
}

func read(dir string) (*wordnet, error) {
	w := &wordnet{words: map[string]*word{}, forms: map[string]string{}, files: map[string]int{}, uses: map[string]int{}}
	steps := []struct {
		name string
		take func(fields []string)
	}{
		{"data.noun", w.file},
		{"cntlist.rev", w.count},
		{"index.noun", w.noun},
		{"index.verb", func(f []string) { w.of(f[0]).verb = true }},
		{"index.adj", func(f []string) { w.of(f[0]).adj = true }},
		{"index.adv", func(f []string) { w.of(f[0]).adverb = true }},
		{"data.adj", w.madeOf},
		{"noun.exc", w.form},
		{"verb.exc", w.form},
		{"adj.exc", w.form},
	}
	for _, s := range steps {
		if err := eachLine(filepath.Join(dir, s.name), s.take); err != nil {
			return nil, err
		}
	}
	return w, nil
}

// eachLine hands the fields of every line of a file on, but for those of its license.
func eachLine(name string, take func(fields []string)) error {
	f, err := os.Open(name)
	if err != nil {
		return err
	}
	defer f.Close()
	lines := bufio.NewScanner(f)
	lines.Buffer(nil, 1<<20)
	for lines.Scan() {
		if !strings.HasPrefix(lines.Text(), " ") {
			take(strings.Fields(lines.Text()))
		}
	}
	return lines.Err()
}

func number(s string) int {
	n, _ := strconv.Atoi(s)
	return n
}

func (w *wordnet) of(lemma string) *word {
	if w.words[lemma] == nil {
		w.words[lemma] = &word{uses: map[int]int{}}
	}
	return w.words[lemma]
}

// count takes a line of the uses of a sense in tagged texts: "tell%2:32:00:: 2 189".
func (w *wordnet) count(f []string) {
	lemma, key, ok := strings.Cut(f[0], "%")
	if ok && strings.HasPrefix(key, "1:") {
		w.uses[lemma+" "+f[1]] = number(f[2])
	}
}

// eaten are the files of what is poured or eaten, and of measures; a noun of the other files that can be
// poured is so by a part of an animal or of the body.
var eaten = map[int]bool{13: true, 20: true, 23: true, 27: true}

// leastUses is the fewest uses of a noun in tagged texts from which an animal or a part of the body is
// hardly meant by it, if it never is there: "coat".
const leastUses = 3

// noun takes a line of the index of nouns: the lemma, and at its end the places of its senses.
func (w *wordnet) noun(f []string) {
	o, senses := w.of(f[0]), number(f[2])
	o.noun = true
	all, animal := 0, false
	for i, at := range f[len(f)-senses:] {
		file, uses := w.files[at], w.uses[fmt.Sprintf("%s %d", f[0], i+1)]
		if i == 0 {
			o.first = file
		}
		o.uses[file] += uses
		if o.senses++; file == plant {
			o.grown++
		}
		all += uses
		o.taints = o.taints || uses == 0 && eaten[file]
		animal = animal || uses == 0 && (file == 5 || file == 8)
	}
	o.taints = o.taints || animal && all < leastUses
}

// file takes the file of the nouns of a line.
func (w *wordnet) file(f []string) {
	w.files[f[0]] = number(f[1])
	w.proper(f)
}

// proper marks the words of a line that are written with a capital, as those of places and peoples are:
// they say of many a bottle where it is from. It returns where the words of the line end.
func (w *wordnet) proper(f []string) (end int) {
	words, _ := strconv.ParseInt(f[3], 16, 0)
	for k := range words {
		if lemma := f[4+2*k]; strings.ToLower(lemma) != lemma {
			w.of(strings.ToLower(lemma)).proper = true
		}
	}
	return 4 + 2*int(words)
}

// madeOf marks the adjectives of a line that are derived from what can be poured.
func (w *wordnet) madeOf(f []string) {
	at := w.proper(f)
	for i := at + 1; i+3 < len(f) && i < at+1+4*number(f[at]); i += 4 {
		if f[i+2] == "n" && (f[i] == "+" || f[i] == "\\") && pourable[w.files[f[i+1]]] {
			for k := 4; k < at; k += 2 {
				lemma, _, _ := strings.Cut(f[k], "(")
				w.of(lemma).taints = true
			}
		}
	}
}

// form takes an irregular form, which is what its lemma is.
func (w *wordnet) form(f []string) {
	if w.words[f[1]] != nil && w.words[f[0]] == nil {
		w.forms[f[0]] = f[1]
	}
}

// lemmas are the words of letters alone, and the common ones, in order.
func (w *wordnet) lemmas() []string {
	for lemma := range strings.FieldsSeq(written) {
		w.of(lemma)
	}
	var out []string
	for _, lemma := range slices.Concat(slices.Collect(maps.Keys(w.words)), slices.Collect(maps.Keys(w.forms))) {
		if strings.Trim(lemma, "abcdefghijklmnopqrstuvwxyz") == "" || common.Has(lemma) {
			out = append(out, lemma)
		}
	}
	slices.Sort(out)
	return slices.Compact(out)
}

// classes are the letters of what a word is; empty if it may be poured.
func (w *wordnet) classes(lemma string) string {
	if of, irregular := w.forms[lemma]; irregular {
		lemma = of
	}
	o := w.words[lemma]
	switch {
	case o == nil:
		return ""
	case common.Has(lemma):
		return o.letters() + "c"
	case len(lemma) < leastLetters || strings.HasSuffix(lemma, medicines) || o.proper || o.taints || o.noun && (pourable[o.first] || o.pouredOften()):
		return ""
	}
	return o.letters()
}

// letters are those of the parts of speech of a word.
func (o *word) letters() string {
	out := ""
	if o.noun {
		out += o.nounClass()
	}
	for _, c := range []struct {
		is     bool
		letter string
	}{{o.verb, "v"}, {o.adj, "a"}, {o.adverb, "r"}} {
		if c.is {
			out += c.letter
		}
	}
	return out
}

// shortNoun reports whether a lemma is one of the shortest nouns of the list, and no name.
func (w *wordnet) shortNoun(lemma string) bool {
	o := w.words[lemma]
	return len(lemma) == leastLetters && o != nil && o.noun && !o.proper
}

// properAlone reports whether a word is in WordNet only as a name, so that it may be a form of another.
func (o *word) properAlone() bool { return o != nil && o.proper && !o.taints && !pourable[o.first] }

func (o *word) pouredOften() bool {
	all, poured := 0, 0
	for file, n := range o.uses {
		all += n
		if pourable[file] {
			poured += n
		}
	}
	return float64(poured) > mostPourable*float64(all)
}

// nounClass is the letter of what the first sense of a noun is.
func (o *word) nounClass() string {
	switch {
	case people[o.first]:
		return "p"
	case times[o.first]:
		return "t"
	case things[o.first]:
		return "o"
	}
	return "n"
}
