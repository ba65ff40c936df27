package flavor

import "strings"

// JoinAnd joins words as "a, b and c".
func JoinAnd(words []string) string { return joinLast(words, " and ") }

// JoinOr joins words as "a, b or c".
func JoinOr(words []string) string { return joinLast(words, " or ") }

func joinLast(words []string, link string) string {
	if len(words) < 2 {
		return strings.Join(words, "")
	}
	last := len(words) - 1
	return strings.Join(words[:last], ", ") + link + words[last]
}
