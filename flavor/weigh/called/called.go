// Package called finds which proven drinks a draft is called after: those whose name is in its title,
// where no other word there makes another drink of it.
package called

import (
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"counterpour/flavor"
)

// Names is the names of proven drinks, in the order in which those are added. It is read-only once built
// and safe for concurrent use.
type Names struct {
	at      map[string][]int  // places of the drinks, by the normalised name up to a comma
	whole   map[string]string // that, by the whole of it
	words   map[string]bool   // of all names
	longest int               // words of a name
	n       int
}

// Add takes in the name of the next proven drink. What stands behind a comma says which of several it
// is. A name in small letters tells what is in a drink that has none: nobody calls a draft after it.
func (n *Names) Add(name string) {
	if n.at == nil {
		n.at, n.whole, n.words = map[string][]int{}, map[string]string{}, map[string]bool{}
	}
	place := n.n
	n.n++
	whole := flavor.NormaliseName(name)
	for _, w := range strings.Fields(whole) {
		n.words[w] = true
	}
	name, _, _ = strings.Cut(name, ",")
	key := flavor.NormaliseName(name)
	if first, _ := utf8.DecodeRuneInString(name); key == "" || unicode.IsLower(first) {
		return
	}
	n.at[key], n.whole[whole] = append(n.at[key], place), key
	n.longest = max(n.longest, len(strings.Fields(key)))
}

// After returns the places of the proven drinks that a draft is called after, in their order; none if its
// title names none, or names something else as well. The longest name in a title is meant: an Espresso
// Martini is no Martini.
func (n *Names) After(s *flavor.Spec) []int {
	title := flavor.NormaliseName(s.Name)
	if key, ok := n.whole[title]; ok {
		return n.at[key]
	}
	words := strings.Fields(title)
	for length := min(n.longest, len(words)); length > 0; length-- {
		for from := 0; from+length <= len(words); from++ {
			places := n.at[strings.Join(words[from:from+length], " ")]
			if places == nil {
				continue
			}
			before, behind := words[:from], words[from+length:]
			if slices.ContainsFunc(before, func(w string) bool { return n.alters(w, s) }) ||
				slices.ContainsFunc(behind, func(w string) bool { return !mere[w] }) {
				return nil
			}
			return places
		}
	}
	return nil
}

// alters reports whether a word before the name of a drink makes another drink of it: a word that other
// names have, one that says in which way it is another, or one that names a pour. What the base is changes
// nothing. Of a word that nobody knows, it is the bar's own: behind a name it would rather be a kind of it.
func (n *Names) alters(word string, s *flavor.Spec) bool {
	if mere[word] || otherwise[word] {
		return otherwise[word]
	}
	other := n.words[word]
	for i := range s.Pours {
		p := s.Pours[i].Profile
		if !slices.Contains(strings.Fields(flavor.NormaliseName(p.Name)), word) {
			continue
		}
		if p.Base() {
			return false
		}
		other = true
	}
	return other
}

// mere words stand beside the name of a drink and change nothing of it, normalised: common practice, no
// source.
var mere = setOf(`a an the our my your their this house bar home classic classical standard original usual regular
	proper simple plain style way spec recipe version signature cocktail drink large small big little on of for in up
	down rock straight serve served`)

// otherwise are words by which a bar says that it pours a drink in another way than others, normalised:
// common practice, no source.
var otherwise = setOf(`dry wet sweet bitter extra bone reverse reversed inverted upside perfect split half double strong weak
	stiff light lighter skinny lean low virgin sober free soft hard tall long short frozen hot spicy smoky dirty`)

func setOf(words string) map[string]bool {
	out := map[string]bool{}
	for _, w := range strings.Fields(words) {
		out[w] = true
	}
	return out
}
