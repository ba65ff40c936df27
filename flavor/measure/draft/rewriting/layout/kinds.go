package layout

import (
	"fmt"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/measure/draft/names/naming"
	"counterpour/flavor/measure/draft/words/token"
	"counterpour/flavor/measure/pattern"
)

// A line may tell once of which kind all of its pours are: "rums: white 1 oz, dark 1 oz".

var (
	// kindFirst is such a kind with the sign behind it, where a line or a sentence begins.
	kindFirst = pattern.Of(`(?i)(?:^|[\n;])[ \t•*-]*(rums?|bourbons?|whisk(?:e?ys|ies)|gins|vodkas?|tequilas?|mezcals|brandies|vermouths?|sherr(?:y|ies)|ports|liqueurs|syrups|juices|cordials|pur[eé]es|bitters|amari|shrubs|teas)[ \t]*(?:[:=]|[-–—]+[ \t])[ \t]*`)
	// ofKind is a pour of the list behind it, its amount before or behind its name.
	ofKind = pattern.Of(`(?i)^[ \t]*(?:` + amount + `[ \t]*)?(\pL[\pL’' -]*?\pL)(?:[ \t]*` + amount + `)?[ \t]*$`)
	// listSign parts the pours of the list.
	listSign = pattern.Of(`,[ \t]|,$|[ \t]+[+&/][ \t]+|[ \t]+and[ \t]+|\.(?:[ \t]|$)|[;\n]`)
)

// singular is one of the kinds that several of are told by another word than with an s behind it.
var singular = map[string]string{"whiskies": "whisky", "brandies": "brandy", "sherries": "sherry", "bitters": "bitters", "amari": "amaro"}

// shades tell one of a kind from another, and are no pour by themselves.
var shades = token.Words(`white dark gold golden aged light spiced black overproof sweet dry blanc bianco blanco rosso red reposado anejo añejo young old navy`)

// Kinds writes out in full the names behind the kind that they are of, and says so of each; false if none
// is. One name of a kind, "rum: white 1 oz", is written out by what tells it from others alone: the drink
// may be called so.
func Kinds(text string, b *naming.Resolver) (string, []string, bool) {
	var notes []string
	all := kindFirst.FindAllStringSubmatchIndex(text, -1)
	for i := len(all) - 1; i >= 0; i-- {
		list, told := ofOneKind(text[all[i][1]:], text[all[i][2]:all[i][3]], b)
		if len(told) > 0 {
			text = text[:all[i][2]] + list
			notes = append(told, notes...)
		}
	}
	return text, notes, len(notes) > 0
}

// ofOneKind writes out the names of a list up to its end, and says so of each.
func ofOneKind(list, word string, b *naming.Resolver) (string, []string) {
	kind := singular[strings.ToLower(word)]
	if kind == "" {
		kind = strings.TrimSuffix(strings.ToLower(word), "s")
	}
	several := kind != strings.ToLower(word) || kind == "bitters"
	var told []string
	for from, last := 0, false; from < len(list) && !last; {
		to, next := len(list), len(list)
		if at := listSign.FindStringIndex(list[from:]); at != nil {
			to, next = from+at[0], from+at[1]
			last = strings.ContainsAny(list[to:next], ".;\n")
		}
		if m := ofKind.FindStringSubmatchIndex(list[from:to]); m != nil {
			name, end := list[from+m[2]:from+m[3]], from+m[3]
			p, _, ok := b.Named(name + " " + kind)
			if ok && (several || shades[flavor.NormaliseName(name)]) && !strings.HasSuffix(strings.ToLower(name), kind) {
				told = append(told, fmt.Sprintf("“%s” under “%s” is read as %s", name, word, p.Name))
				list = list[:end] + " " + kind + list[end:]
				next += len(kind) + 1
			}
		}
		from = next
	}
	return list, told
}
