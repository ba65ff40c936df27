package measure

import (
	"cmp"
	"slices"
	"strings"
)

const (
	maxSuggest  = 3
	maxNearWord = 20 // a longer word is no misspelling
)

// Spelling is one way to write a known word, and its meaning.
type Spelling struct{ Written, Means string }

// NearestUnits returns up to three units of whose spelling word may be a misspelling, the
// nearest first; nil if there are none.
func NearestUnits(word string) []string { return Nearest(word, unitSpellings) }

// SlippedUnits returns the units of which word is a slip, the nearest first: they begin
// with its letter, and differ by one edit, or by two from eight letters.
func SlippedUnits(word string) []string {
	word = strings.ToLower(word)
	var close []Spelling
	for _, s := range unitSpellings {
		if word != "" && s.Written[0] == word[0] && (len(s.Written) > 2 || strings.Trim(word, s.Written) == "") && (len(word) >= 8 || OneSlip(word, s.Written)) {
			close = append(close, s)
		}
	}
	return Nearest(word, close)
}

var unitSpellings = func() []Spelling {
	var out []Spelling
	for i := range units {
		for _, w := range append([]string{units[i].one, units[i].many}, units[i].also...) {
			out = append(out, Spelling{w, string(units[i].unit)})
		}
	}
	return sorted(out)
}()

func sorted(s []Spelling) []Spelling {
	slices.SortFunc(s, func(a, b Spelling) int {
		return cmp.Or(cmp.Compare(a.Means, b.Means), cmp.Compare(a.Written, b.Written))
	})
	return s
}

// Nearest returns up to three meanings of the spellings of which word may be a
// misspelling, the nearest first. One edit is allowed in a short word, two in a word of
// five letters or more.
func Nearest(word string, known []Spelling) []string {
	w := []rune(strings.ToLower(word))
	if len(w) < 2 || len(w) > maxNearWord {
		return nil
	}
	slips := 1
	if len(w) >= 5 {
		slips = 2
	}
	best := map[string]int{}
	for _, k := range known {
		d := distance(w, []rune(k.Written))
		if old, seen := best[k.Means]; d <= slips && (!seen || d < old) {
			best[k.Means] = d
		}
	}
	var out []string
	for means := range best {
		out = append(out, means)
	}
	slices.SortFunc(out, func(a, b string) int { return cmp.Or(cmp.Compare(best[a], best[b]), cmp.Compare(a, b)) })
	return out[:min(len(out), maxSuggest)]
}

// OneSlip reports whether two words differ by one edit: a letter added, dropped or
// changed, or two neighbours swapped, but not in the first letter.
func OneSlip(word, known string) bool {
	a, b := []rune(word), []rune(known)
	return len(a) > 0 && len(b) > 0 && a[0] == b[0] && max(len(a)-len(b), len(b)-len(a)) < 2 && distance(a, b) == 1
}

// distance is the Damerau-Levenshtein distance of a and b in its restricted form (optimal
// string alignment).
func distance(a, b []rune) int {
	n := len(b) + 1
	rows := make([]int, 3*n) // the current row and the two before it, in rotation
	before, last, row := rows[:n], rows[n:2*n], rows[2*n:]
	for j := range last {
		last[j] = j
	}
	for i := range a {
		row[0] = i + 1
		for j := range b {
			change := last[j]
			if a[i] != b[j] {
				change++
			}
			row[j+1] = min(change, last[j+1]+1, row[j]+1)
			if i > 0 && j > 0 && a[i] == b[j-1] && a[i-1] == b[j] {
				row[j+1] = min(row[j+1], before[j-1]+1)
			}
		}
		before, last, row = last, row, before
	}
	return last[len(b)]
}
