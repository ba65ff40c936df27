package tongue

import (
	"cmp"
	"slices"
	"strings"
	"sync"
	"unicode"
)

// longestPhrase is the most words that are one word in English: "flor de saúco".
const longestPhrase = 4

// elided are words that lose their vowel and run into the next: "sirop d'amande".
var elided = []string{"dell", "all", "d", "l"}

// English returns a key in English where words of it, or the parts that its words are put
// together of, are known in another tongue; the words stand in the order of the key.
func English(key string) (string, bool) {
	meant, changed := translated(key)
	return strings.Join(meant, " "), changed
}

// Readings returns what a key may be called in English, the likeliest first: other tongues
// write what something is like behind it. None if no word of it is known.
func Readings(key string) []string {
	meant, changed := translated(key)
	if !changed || strings.Join(meant, " ") == key {
		return nil
	}
	return orders(meant)
}

// translated returns what the parts of a key mean, each a word or several, and whether any
// of them is known in another tongue.
func translated(key string) ([]string, bool) {
	words := unjoined(key)
	out := make([]string, 0, len(words))
	changed := false
	for i := 0; i < len(words); {
		means, n := inEnglish(words[i:])
		switch {
		case n == 0 && known().linking[words[i]] && len(out) > 0:
			changed, n = true, 1
		case n == 0:
			out, n = append(out, words[i]), 1
		default:
			changed = changed || means != words[i]
			if means != "fresh" {
				out = append(out, means)
			}
		}
		i += n
	}
	return out, changed && len(out) > 0
}

// inEnglish returns what words begin with in English, and how many of them it takes; 0
// if that is not known.
func inEnglish(words []string) (string, int) {
	for n := min(longestPhrase, len(words)); n > 0; n-- {
		w := words[0]
		if n > 1 {
			w = strings.Join(words[:n], " ")
		}
		if means := cmp.Or(known().stems[w], known().tastes[w]); means != "" {
			return means, n
		}
	}
	if means, ok := compound(words[0]); ok {
		return means, 1
	}
	for _, e := range elided {
		if rest, ok := strings.CutPrefix(words[0], e); ok {
			if means, n := inEnglish(append([]string{rest}, words[1:]...)); n > 0 && rest != "" {
				return means, n
			}
			if whole()[rest] {
				return rest, 1
			}
		}
	}
	return "", 0
}

// whole are the words that stems translate into, which are themselves in some tongue:
// "liqueur d'orange".
var whole = sync.OnceValue(func() map[string]bool {
	out := map[string]bool{}
	for _, means := range known().stems {
		out[means] = true
	}
	return out
})

// formWords are the words of forms, the longest first, in one order.
var formWords = sync.OnceValue(func() []string {
	var out []string
	for w := range known().forms {
		out = append(out, w)
	}
	slices.SortFunc(out, func(a, b string) int {
		return cmp.Or(len(b)-len(a), strings.Compare(a, b))
	})
	return out
})

// binding are the letters that bind the parts of one word: "Zwetschgenwasser".
var binding = []string{"", "s", "n", "en", "er", "e", "es"}

// leastStem is the letters of the first part of a word that is put together.
const leastStem = 3

// compound translates one word that is put together of two.
func compound(w string) (string, bool) {
	for _, form := range formWords() {
		first, ok := strings.CutSuffix(w, form)
		if !ok {
			continue
		}
		for _, b := range binding {
			stem, ok := strings.CutSuffix(first, b)
			if !ok || len(stem) < leastStem {
				continue
			}
			if means := cmp.Or(known().stems[stem], known().tastes[stem]); means != "" {
				return means + " " + known().forms[form], true
			}
			if whole()[stem] {
				return stem + " " + known().forms[form], true
			}
		}
	}
	return "", false
}

// unjoined are the words of a key. Japanese writes none apart, and Korean few: there they are the
// fewest known words that the key is made of, or it stays whole.
func unjoined(key string) []string {
	words := strings.Fields(key)
	if !strings.ContainsFunc(key, unparted) {
		return words
	}
	var out []string
	for _, w := range words {
		if split := wordsOf([]rune(w)); split != nil {
			out = append(out, split...)
			continue
		}
		out = append(out, w)
	}
	return out
}

// unparted reports whether a letter is one that Japanese or Korean is written in.
func unparted(c rune) bool {
	return unicode.In(c, unicode.Katakana, unicode.Hiragana, unicode.Han, unicode.Hangul)
}

// wordsOf returns the fewest known words that letters are made of, the longer first; nil if
// they are made of none.
func wordsOf(letters []rune) []string {
	best := make([][]string, len(letters)+1) // by where the words start
	best[len(letters)] = []string{}
	for i := len(letters) - 1; i >= 0; i-- {
		for end := len(letters); end > i; end-- {
			w := string(letters[i:end])
			if best[end] == nil || known().stems[w] == "" && known().tastes[w] == "" && !known().linking[w] {
				continue
			}
			if best[i] == nil || len(best[end])+1 < len(best[i]) {
				best[i] = append([]string{w}, best[end]...)
			}
		}
	}
	return best[0]
}

// orders are parts of a name as they stand, with the first one behind the others, with the
// last one first, and from the last to the first.
func orders(meant []string) []string {
	if len(meant) < 2 {
		return meant
	}
	if meant[0] == "bitters" { // which is no bitter lemon
		return []string{strings.Join(append(slices.Clone(meant[1:]), meant[0]), " ")}
	}
	last := len(meant) - 1
	var out []string
	for _, order := range [][]string{
		meant,
		append([]string{meant[last]}, meant[:last]...),
		append(slices.Clone(meant[1:]), meant[0]),
	} {
		out = append(out, strings.Join(order, " "))
	}
	back := slices.Clone(meant)
	slices.Reverse(back)
	return append(out, strings.Join(back, " "))
}
