package jotted

import (
	"strings"

	"counterpour/data/house/exchange/column"
	"counterpour/data/house/exchange/numeral"
	"counterpour/flavor/measure/pattern"
)

// strengthInName matches a strength among the words of a name: "Hawse dry gin 70cl 40% vol".
var strengthInName = pattern.Of(`(?i)[\s,]+(\d{1,2}(?:[.,]\d+)?\s*%(?:\s*(?:vol|abv|alc)\b\.?)*)(?:[\s,]|$)`)

// InName parts a name from what else it says, by the field that it is of; nothing if it says neither how
// many there are, nor a price, nor how large a pack is, nor a strength beside what a full one holds.
func InName(written string) (name string, said map[column.Field]string) {
	said = map[column.Field]string{}
	rest := strings.TrimSpace(written)
	if m := strengthInName.FindStringSubmatchIndex(rest); m != nil {
		said[column.Strength] = rest[m[2]:m[3]]
		rest = strings.TrimSpace(rest[:m[0]] + " " + strings.TrimLeft(rest[m[3]:], " ,"))
	}
	m := Cells(rest)
	if m == nil || m[0]+m[3] == "" && !packed(m[2]) && (said[column.Strength] == "" || m[2] == "") {
		return written, nil
	}
	if n, pack := numeral.PackIn(rest); m[3] == "" && n > 1 && strings.HasPrefix(pack, m[0]) { // of what, and not how many there are
		m[0], m[2] = "", m[0]+" x "+m[2]
	}
	for i, f := range []column.Field{column.Stock, column.Name, column.Size, column.Price} {
		if m[i] != "" && f != column.Name {
			said[f] = m[i]
		}
	}
	return strings.TrimRight(m[1], " ,"), said
}

// packed reports whether a size is that of several bottles in a pack.
func packed(size string) bool {
	n, _, ok := numeral.Pack(size)
	return ok && n > 1
}
