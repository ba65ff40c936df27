package tongue

import (
	"embed"
	"fmt"
	"io/fs"
	"strings"
	"sync"

	"counterpour/flavor"
)

//go:embed words/*.txt
var files embed.FS

// lexicon is what the words of all tongues mean, by their keys.
type lexicon struct {
	names   map[string]string // whole names
	stems   map[string]string // what something is made of
	forms   map[string]string // what is made of it, where both are one word
	tastes  map[string]string // how a bottle is, and what kind of thing it holds
	linking map[string]bool   // words that bring nothing of their own
}

// known is read once, when a word is first looked up: most drafts are in English. What is wrong with
// the text is wrong with this program.
var known = sync.OnceValue(func() *lexicon {
	l, err := load(files)
	if err != nil {
		panic(err)
	}
	return l
})

// About how many names, stems and tastes there are, so that their tables need not grow.
const (
	manyNames  = 1000
	manyStems  = 3500
	manyTastes = 2500
)

// load reads every file of words.
func load(from fs.FS) (*lexicon, error) {
	l := &lexicon{names: make(map[string]string, manyNames), stems: make(map[string]string, manyStems), forms: map[string]string{}, tastes: make(map[string]string, manyTastes), linking: map[string]bool{}}
	paths, err := fs.Glob(from, "words/*.txt")
	if err != nil {
		return nil, err
	}
	for _, path := range paths {
		text, err := fs.ReadFile(from, path)
		if err != nil {
			return nil, err
		}
		var endings []string
		n := 0
		for line := range strings.Lines(string(text)) {
			n++
			line = strings.TrimSpace(line)
			if line == "" || line[0] == '#' {
				continue
			}
			if endings, err = l.parseLine(line, endings); err != nil {
				return nil, fmt.Errorf("tongue: %s:%d: %w", path, n, err)
			}
		}
	}
	return l, nil
}

// parseLine adds what a line of words says, and returns the endings that the lines behind it
// know. A line is one of
//
//	name MEANING = WORDS    a whole name, and what it is called in English
//	stem MEANING = WORDS    what something is made of
//	form MEANING = WORDS    what is made of it, at the end of one word: "Gurkensaft"
//	taste MEANING = WORDS   how something is, or what kind of thing it is
//	linking = WORDS         words that bring nothing of their own
//	endings = ENDINGS       what "~" at the end of a word below stands for, in turn
//
// with commas between words. A word has one meaning in each of these.
func (l *lexicon) parseLine(line string, endings []string) ([]string, error) {
	head, list, ok := strings.Cut(line, " = ")
	if !ok {
		return nil, fmt.Errorf("%q has no \" = \"", line)
	}
	kind, means, _ := strings.Cut(head, " ")
	if kind == "endings" {
		return parts(list), nil
	}
	table, ok := l.table(kind)
	if !ok || (means == "") != (table == nil) {
		return nil, fmt.Errorf("%q is no line of words", line)
	}
	for _, w := range parts(list) {
		for _, bent := range bend(w, endings) {
			key := flavor.NormaliseName(bent)
			if table == nil {
				l.linking[key] = true
				continue
			}
			if before := table[key]; before != "" && before != means {
				return nil, fmt.Errorf("%q means %q and %q", bent, before, means)
			}
			table[key] = means
		}
	}
	return endings, nil
}

// table returns the table of a kind of line, nil for the linking words; it is false for no
// such kind.
func (l *lexicon) table(kind string) (map[string]string, bool) {
	switch kind {
	case "name":
		return l.names, true
	case "stem":
		return l.stems, true
	case "form":
		return l.forms, true
	case "taste":
		return l.tastes, true
	}
	return nil, kind == "linking"
}

// parts are the parts of a list with commas; one of them may be empty.
func parts(list string) []string {
	var out []string
	for p := range strings.SplitSeq(list, ",") {
		out = append(out, strings.TrimSpace(p))
	}
	return out
}

// bend returns a word with each ending that it may have.
func bend(w string, endings []string) []string {
	if !strings.Contains(w, "~") {
		return []string{w}
	}
	out := make([]string, 0, len(endings))
	for _, e := range endings {
		out = append(out, strings.ReplaceAll(w, "~", e))
	}
	return out
}
