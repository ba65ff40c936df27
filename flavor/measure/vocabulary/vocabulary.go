// Package vocabulary holds the words that a reader knows, in sets and tables that tell
// quickly that a word is none of theirs: a word of a draft is looked for in dozens, and
// stands in one or two.
package vocabulary

import (
	"iter"
	"maps"
	"strings"
)

// Table maps words to what they mean. It does not change once it is made, so that it is
// safe for concurrent use.
type Table[V any] struct {
	shapes shapes
	of     map[string]V
}

// TableOf returns the table of a map, which it keeps. The empty word is not in it.
func TableOf[V any](of map[string]V) *Table[V] {
	t := &Table[V]{of: of}
	for w := range of {
		t.shapes.add(w)
	}
	return t
}

// Find returns what a word means, and whether it is in the table.
func (t *Table[V]) Find(word string) (V, bool) {
	if !t.shapes.perhaps(word) {
		var none V
		return none, false
	}
	v, ok := t.of[word]
	return v, ok
}

// Get returns what a word means, the zero value if it is not in the table.
func (t *Table[V]) Get(word string) V {
	v, _ := t.Find(word)
	return v
}

// All returns the words and what they mean, in no order.
func (t *Table[V]) All() iter.Seq2[string, V] { return maps.All(t.of) }

// Set is a set of words. It does not change once it is made, so that it is safe for
// concurrent use. Nil is the empty set.
type Set struct{ words Table[struct{}] }

// SetOf returns the set of some words. The empty word is not in it.
func SetOf(words ...string) *Set {
	of := make(map[string]struct{}, len(words))
	for _, w := range words {
		of[w] = struct{}{}
	}
	return &Set{*TableOf(of)}
}

// Words returns the set of the words of a text.
func Words(text string) *Set { return SetOf(strings.Fields(text)...) }

// Has reports whether a word is in the set.
func (s *Set) Has(word string) bool {
	if s == nil || !s.words.shapes.perhaps(word) {
		return false
	}
	_, ok := s.words.of[word]
	return ok
}

// longest is the length in bytes from which words are not told apart by it.
const longest = 16

// shapes are, for each length of a word, the letters that words of a list so long have first,
// in the middle and last, as bits. Nearly every word that is not in the list differs from all of
// them in one of the three.
type shapes [longest + 1]struct{ first, middle, last uint32 }

func (s *shapes) add(word string) {
	if n := len(word); n > 0 {
		of := &s[min(n, longest)]
		of.first |= 1 << (word[0] & 31) // bytes that are no English letters share bits with others
		of.middle |= 1 << (word[n/2] & 31)
		of.last |= 1 << (word[n-1] & 31)
	}
}

// perhaps reports whether a word may be one of those that were added.
func (s *shapes) perhaps(word string) bool {
	n := len(word)
	if n == 0 {
		return false
	}
	of := &s[min(n, longest)]
	return of.first>>(word[0]&31)&(of.middle>>(word[n/2]&31))&(of.last>>(word[n-1]&31))&1 != 0
}
