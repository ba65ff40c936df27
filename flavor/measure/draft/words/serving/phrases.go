package serving

import (
	"cmp"
	"slices"
	"strings"
)

// phrase is a term with the words that follow the first.
type phrase struct {
	rest  string // with a space between words
	words int    // how many those are
	term  *term
}

// phrases are what words mean, each parted from the next by one space.
type phrases struct {
	known map[string]*term
	terms map[term]*term // each once: phrases are many, terms few
}

// put adds a phrase. Of two meanings the one that says how a drink is served stays, else the last.
func (p *phrases) put(words string, t term) {
	if was := p.known[words]; was != nil && was.Service != "" && t.Service == "" {
		return
	}
	one := p.terms[t]
	if one == nil {
		one = &t
		p.terms[t] = one
	}
	p.known[words] = one
}

// byFirst returns the phrases by their first word, the longest first, and of those the last in
// order.
func (p *phrases) byFirst() map[string][]phrase {
	out := make(map[string][]phrase, len(p.known))
	for words, t := range p.known {
		first, rest, _ := strings.Cut(words, " ")
		out[first] = append(out[first], phrase{rest, wordsIn(rest), t})
	}
	for _, list := range out {
		slices.SortFunc(list, phrase.compare)
	}
	return out
}

// followedBy returns a list of phrases with some more that may follow the same first word, both
// in order. What is in both means what [phrases.put] makes of it, more being put last.
func followedBy(list, more []phrase) []phrase {
	out := make([]phrase, len(more), len(more)+len(list))
	copy(out, more)
	for _, p := range list {
		switch at, both := slices.BinarySearchFunc(out, p, phrase.compare); {
		case !both:
			out = slices.Insert(out, at, p)
		case p.term.Service != "" && out[at].term.Service == "":
			out[at] = p
		}
	}
	return out
}

// compare orders the phrases that a word begins, the longest first.
func (p phrase) compare(o phrase) int {
	return cmp.Or(cmp.Compare(o.words, p.words), strings.Compare(o.rest, p.rest))
}

// wordsIn counts the words of a text with a space between words.
func wordsIn(text string) int {
	if text == "" {
		return 0
	}
	return 1 + strings.Count(text, " ")
}

// follows reports whether the phrase goes on as words do, of which there are enough, and
// whether it is written out: none of them is clipped.
func (p *phrase) follows(words []string) (whole, ok bool) {
	rest, whole := p.rest, true
	for _, w := range words[:p.words] {
		var is string
		is, rest, _ = strings.Cut(rest, " ")
		if is != w {
			if clipped.Get(w) != is {
				return false, false
			}
			whole = false
		}
	}
	return whole, true
}
