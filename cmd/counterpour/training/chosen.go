package training

import (
	"slices"
	"strconv"
	"strings"

	"counterpour/flavor"
)

// leastTyped is how many letters of an answer must be typed to choose it by its words.
const leastTyped = 3

// spoken are words around an answer as it is said aloud that choose nothing.
var spoken = []string{"a", "an", "and", "be", "bit", "far", "i", "is", "it", "its", "just", "of", "quite", "so", "taste", "the", "this", "tin", "too", "very", "was", "way", "would"}

// chosenIn reads which of a list is meant: by its number from 1, or by words of one of them
// and of no other. Whole names come before parts of them, and these before words that stand
// anywhere in one.
func chosenIn(typed string, n int, namesOf func(int) []string) (int, error) {
	if at, err := strconv.Atoi(strings.TrimSpace(typed)); err == nil && at >= 1 && at <= n {
		return at - 1, nil
	}
	said := asSaid(typed)
	bare := strings.Join(slices.DeleteFunc(strings.Fields(said), func(w string) bool { return slices.Contains(spoken, w) }), " ")
	words := strings.Fields(bare)
	whole := func(name string) bool { return name == said || name == bare }
	part := func(name string) bool { return len(bare) >= leastTyped && strings.Contains(name, bare) }
	apart := func(name string) bool {
		in := strings.Fields(name)
		return len(bare) >= leastTyped && !slices.ContainsFunc(words, func(w string) bool { return !slices.Contains(in, w) })
	}
	for _, is := range []func(string) bool{whole, part, apart} {
		var found []int
		for i := range n {
			if slices.ContainsFunc(namesOf(i), func(name string) bool { return is(asSaid(name)) }) {
				found = append(found, i)
			}
		}
		switch {
		case len(found) == 1:
			return found[0], nil
		case len(found) > 1:
			return 0, unread("%q may be %d or %d; write its number", strings.TrimSpace(typed), found[0]+1, found[1]+1)
		}
	}
	return 0, unread("%q is none of these; write a number from 1 to %d, or words of one", strings.TrimSpace(typed), n)
}

// asSaid folds what is typed and what may be chosen to the same words.
func asSaid(text string) string {
	words := strings.Fields(flavor.NormaliseName(text))
	for i, w := range words {
		if w == "no" {
			words[i] = "without"
		}
	}
	return strings.Join(words, " ")
}
