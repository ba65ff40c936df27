// Package lexicon knows which English words name nothing that is poured into a drink, laid on it or
// measured, and what they are.
//
// Its list is made of the files of WordNet 3.0 (its license stands beside it) by package generate. A
// word is in it if WordNet has it as a verb, an adjective or an adverb, or as a noun whose first sense,
// and nine tenths of whose uses in WordNet's tagged texts, are an act, an artifact, an attribute, a
// feeling, a group, a person, a place, a time, something said, thought, owned or the like. A word is not
// in it if a noun that nobody used there may be a food, a plant, a substance or a quantity, or, where the
// noun is hardly used there at all, an animal or a part of the body; nor if it is written with a capital,
// nor if an adjective is made of something that can be poured. Beside these stand some 5,300 words that those
// texts use four times or more and that a small American dictionary holds, without words that mean a food,
// a plant, an animal or a substance in more than a few of these uses, and without words of bars that
// measure, make, change or describe a pour: they are the common ones. What a catalogue calls its
// ingredients is for its reader to look up first: the list knows none of them.
//
// A second list is of some 2,300 words that are a plant in half of what they mean to WordNet, in their first
// sense or where the first list does not have them.
//
// The lists are text in order, and searched where they stand: they cost nothing before a word is looked up.
package lexicon

import (
	_ "embed" // the list of words
	"strings"
)

//go:generate sh -c "go run ./generate /usr/share/wordnet > words.new && mv words.new words.txt"
//go:generate sh -c "go run ./generate /usr/share/wordnet grown > words.new && mv words.new grown.txt"

// written are lines in order: a word, a blank, and the letters of its classes.
//
//go:embed words.txt
var written string

// growing are lines in order, a word each.
//
//go:embed grown.txt
var growing string

// Grown reports whether a word in lower case names a plant, one or several.
func Grown(w string) bool {
	for _, stem := range []string{w, strings.TrimSuffix(w, "s"), strings.TrimSuffix(w, "es"), strings.TrimSuffix(w, "ies") + "y"} {
		if inOrder(growing, stem) {
			return true
		}
	}
	return false
}

// inOrder reports whether a word is one of the lines of a text that stand in order.
func inOrder(text, w string) bool {
	from, to := 0, len(text)
	for from < to {
		mid := max(strings.LastIndexByte(text[:(from+to)/2], '\n')+1, from)
		end := mid + strings.IndexByte(text[mid:], '\n')
		switch line := text[mid:end]; {
		case line == w:
			return true
		case line < w:
			from = end + 1
		default:
			to = mid
		}
	}
	return false
}

// Class is what a word is; zero if it is not known.
type Class uint16

const (
	Person    Class = 1 << iota // "judge", "crew"
	Time                        // "week", "midnight"
	Thing                       // what is made or written, "napkin", "card"
	Notion                      // another noun: "balance", "garden"
	Verb                        // "simmer"
	Adjective                   // "vivid"
	Adverb                      // "barely"
	Common                      // it is one of the common words
	Plural                      // of a noun
)

// letters are those of the classes in the list. A word with none of them is none of the list, though the
// stem of it is: "liver" comes not from "live".
const letters = "ptonvarc"

// None is written behind a word that may be poured: of no class, and none the less written so.
const None = "-"

// Written reports whether a word in lower case is written so, and is no slip of another: it is in the
// list in whatever form, or a noun of four letters that may be poured, as coal may, and cola with a slip.
func Written(w string) bool {
	_, listed := find(w)
	return listed || Of(w) != 0
}

// Of returns what a word in lower case is, in whatever form.
func Of(w string) Class {
	if c, listed := find(w); listed {
		return c
	}
	return Formed(w, func(stem string) Class {
		c, _ := find(stem)
		return c
	})
}

// find looks a word up as it stands.
func find(w string) (c Class, listed bool) {
	if w == "" {
		return 0, false
	}
	from, to := 0, len(written)
	for from < to {
		mid := strings.LastIndexByte(written[:(from+to)/2], '\n') + 1
		if mid < from {
			mid = from
		}
		end := mid + strings.IndexByte(written[mid:], '\n')
		word, classes, _ := strings.Cut(written[mid:end], " ")
		switch {
		case word == w:
			return ClassOf(classes), true
		case word < w:
			from = end + 1
		default:
			to = mid
		}
	}
	return 0, false
}

// ClassOf returns the classes of some letters of the list.
func ClassOf(classes string) Class {
	var c Class
	for i := range len(classes) {
		if k := strings.IndexByte(letters, classes[i]); k >= 0 {
			c |= 1 << k
		}
	}
	return c
}

// Nouns are the classes of nouns.
const Nouns = Person | Time | Thing | Notion

// leastStem is the fewest letters of a word that endings stand behind.
const leastStem = 3

// endings are those of forms: what the stem has to be, and what the form is, beside a common word.
var endings = [...]struct {
	text       string
	of, become Class
	bends      bool // an e is left off before it, a y turned into an i, or a last letter doubled
}{
	{"s", Nouns | Verb, Plural, false},
	{"es", Nouns | Verb, Plural, false},
	{"ies", Nouns | Verb, Plural, true},
	{"ed", Verb, Verb, true},
	{"ing", Verb, Verb, true},
	{"er", Adjective, Adjective, true},
	{"er", Verb, Person, true},
	{"ers", Verb, Person | Plural, true},
	{"est", Adjective, Adjective, true},
	{"ness", Adjective, Notion, true},
	{"ly", Adjective, Adverb, true},
}

// Formed returns what a word is by its ending, if its stem is known.
func Formed(w string, known func(stem string) Class) Class {
	for _, e := range endings {
		stem, ok := strings.CutSuffix(w, e.text)
		if !ok || len(stem) < leastStem && e.text != "ies" || len(stem) == 0 {
			continue
		}
		c := known(stem)
		if e.bends && c&e.of == 0 {
			c = bent(stem, e.text, known)
		}
		switch {
		case c&e.of == 0:
		case e.become == Plural:
			return c | Plural
		default:
			return c&Common | e.become
		}
	}
	return 0
}

// bent is what a stem is with an e that its ending took, with a y that it made an i, or with one letter
// less that it doubled.
func bent(stem, ending string, known func(string) Class) Class {
	if ending == "ies" {
		return known(stem + "y")
	}
	if c := known(stem + "e"); c != 0 {
		return c
	}
	n := len(stem)
	if strings.HasSuffix(stem, "i") {
		return known(stem[:n-1] + "y")
	}
	if n > leastStem && stem[n-1] == stem[n-2] {
		return known(stem[:n-1])
	}
	return 0
}
