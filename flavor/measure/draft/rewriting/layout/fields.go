package layout

import (
	"slices"
	"strings"

	"counterpour/flavor/measure/draft/words/label"
	"counterpour/flavor/measure/pattern"
)

// A line may hold a drink as fields, each behind its key: "name=Low Tide, base=white rum 50 ml,
// glass=coupe".

// field is a key with the sign behind it, where an entry begins.
var field = pattern.Of(`(?i)(^|(?:[,;|{\n]|\.[ \t])[ \t]*)"?(\pL[\pL \t_-]{0,24}\pL)"?[ \t]*([=:])[ \t]*`)

// leastFields is from how many keys on a text is one of fields.
const leastFields = 2

// task is what a key says that a pour does in the drink, and no more.
var task = pattern.Of(`(?i)^(?:base|spirit|strong|liquor|citrus|acid|sour|sweet|sweetener|syrup|sugar|bitter|bitters|weak|modifier|mod|liqueur|length|lengthener|mixer|juice|wine|accent|split|spice|fruit|extra|other)[ \t_-]*\d*$`)

// Fielded reports whether a line of a text holds several fields.
func Fielded(text string) bool {
	for line := range strings.SplitSeq(text, "\n") {
		if len(fieldsOf(line)) >= leastFields {
			return true
		}
	}
	return false
}

// fieldsOf lists the fields of a text: a colon is behind the keys only that are known.
func fieldsOf(text string) [][]int {
	return slices.DeleteFunc(field.FindAllStringSubmatchIndex(text, -1), func(at []int) bool {
		key := strings.ToLower(text[at[4]:at[5]])
		return text[at[6]] == ':' && label.Words[key] == label.None && !task.MatchString(key)
	})
}

// fields sets each field on a line of its own, with its label where it says what its value is.
func (s *Set) fields() {
	if !Fielded(s.Text) {
		return
	}
	all := fieldsOf(s.Text)
	text := []byte(s.Text)
	for _, at := range all {
		key := strings.ToLower(strings.TrimSpace(s.Text[at[4]:at[5]]))
		if at[2] < at[3] && text[at[2]] != '\n' {
			text[at[2]] = '\n'
		}
		switch {
		case task.MatchString(key):
			for i := at[4]; i < at[7]; i++ {
				text[i] = ' '
			}
		case label.Words[key] != label.None:
			text[at[6]] = ':'
		default: // "gin=45 ml", "top=soda"
			text[at[6]] = ' '
		}
	}
	s.Text = strings.NewReplacer("{", " ", "}", " ").Replace(string(text))
}

// leader is a key with dots that lead to its value: "BASE....... 1.5 oz dry vermouth".
var leader = pattern.Of(`(?m)^[ \t]*(\pL[\pL \t]{0,20}?)[ \t]*((?:\.{3,}|…+|_{3,}|·{3,})[.…_· \t]*)`)

// Dotted reports whether dots lead from a key to its value in a text.
func Dotted(text string) bool { return leader.MatchString(text) }

// leaders sets aside what a pour does in the drink, before the dots that lead to it, and writes other labels with a
// colon. Dots behind a name lead to its amount.
func (s *Set) leaders() {
	text := []byte(s.Text)
	for _, at := range leader.FindAllStringSubmatchIndex(s.Text, -1) {
		key := strings.ToLower(s.Text[at[2]:at[3]])
		amounts := at[5] < len(s.Text) && amounted.MatchString(s.Text[at[5]:])
		from := at[4]
		switch {
		case task.MatchString(key) && amounts:
			from = at[2]
		case label.Words[key] != label.None && !amounts:
			text[from] = ':'
			from++
		default:
			continue
		}
		for i := from; i < at[5]; i++ {
			text[i] = ' '
		}
	}
	s.Text = string(text)
}
