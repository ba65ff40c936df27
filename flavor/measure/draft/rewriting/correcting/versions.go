package correcting

import (
	"strings"

	"counterpour/flavor/measure/draft/words/entry"
	"counterpour/flavor/measure/draft/words/token"
	"counterpour/flavor/measure/pattern"
)

// A text may tell of several versions of one drink and say which of them counts: "v1: ... v2: ... go with
// v2". Common practice, no source.
var (
	// marker begins a version.
	marker = pattern.Of(`(?i)(?:^|[\s(])((v|t|ver|version|test|trial|take|round|try|attempt|iteration|rev)[ \t]?[.#]?[ \t]?(\d)|([a-c])(?:\)|:))(?:[ \t]*[:).–—=-])?[ \t]+`)
	// chooses names the version that counts.
	chooses = pattern.Of(`(?i)(?:\b(?:go(?:ing)?|went|run(?:ning)?|stick(?:ing)?|stay(?:ing)?)[ \t]+with|\b(?:use|keep|pick|choose|prefer|final(?:[ \t]+is)?[ \t]*:?))[ \t]+(?:the[ \t]+)?((?:v|t|ver|version|test|trial|take|round|try|attempt|iteration|rev)[ \t]?[.#]?[ \t]?(\d)|\b([a-c])\b)[.!]*|\b((?:v|t|ver|version|test|trial|take|round|try|attempt|iteration|rev)[ \t]?[.#]?[ \t]?(\d)|\b([a-c]))[ \t]+(?:wins|it is|is (?:it|the one|better|best|final|the keeper)|for the win)\b[.!]*`)
	// liked says of a version that it counts, behind its pours.
	liked = pattern.Of(`(?i)(?:[ \t]*(?:->|→|=>|[–—-]|[,;:.(]))+[ \t]*((?:(?:yes|yep|ok|and)[ \t,!.-]+)*(?:yes|final|winner|wins|keep(?:er)?|keep (?:it|this)|this one|nailed it|bang on|perfect|approved|that'?s it|that'?s the one|spot on|the one))[.!)]*(?:[ \t]*(?:$|\n|[.;]))`)
)

// version is one of several, from its marker to that of the next.
type version struct {
	at      entry.Span
	from    int    // behind its marker
	written string // its marker
	key     string
}

// versionsOf lists the versions that a text marks, each with at least two amounts; nil if there are none or
// two are marked alike.
func versionsOf(text string) []version {
	var out []version
	seen := map[string]bool{}
	for _, m := range marker.FindAllStringSubmatchIndex(text, -1) {
		v := version{at: entry.Span{Start: m[2], End: len(text)}, from: m[1], written: strings.TrimRight(text[m[2]:m[3]], "):")}
		v.key = key(text, m[4:])
		if seen[v.key] || len(out) > 0 && kindOf(out[0].key) != kindOf(v.key) { // "go with v2"
			continue
		}
		seen[v.key] = true
		if len(out) > 0 {
			out[len(out)-1].at.End = v.at.Start
		}
		out = append(out, v)
	}
	for _, v := range out {
		if len(amountsIn(token.Lex(nil, text, v.from, v.at.End))) < leastAnew {
			return nil
		}
	}
	return out
}

// key is by what a version is called: the word and the number, or the letter.
func key(text string, m []int) string {
	if m[4] >= 0 {
		return strings.ToLower(text[m[4]:m[5]])
	}
	return strings.ToLower(text[m[0]:m[1]] + text[m[2]:m[3]])
}

// kindOf is the word of a version, without its number.
func kindOf(key string) string {
	if len(key) == 1 {
		return ""
	}
	return key[:len(key)-1]
}

// chosenVersion leaves of several versions the one that the text says to go with, in full.
func (c *corrector) chosenVersion() (edits []edit, notes []string) {
	all := versionsOf(c.text)
	if len(all) < 2 {
		return nil, nil
	}
	chosen, said := c.verdict(all)
	if chosen < 0 {
		return nil, nil
	}
	tail := len(c.text)
	last := &all[len(all)-1]
	if at := strings.IndexByte(c.text[last.from:], '\n'); at >= 0 {
		tail = last.from + at
	} else if said.Start > last.from {
		tail = said.Start
	}
	var passed []string
	for i, v := range all {
		switch {
		case i == chosen:
			edits = append(edits, edit{entry.Span{Start: v.at.Start, End: v.from}, ""})
			continue
		case i+1 == len(all):
			v.at.End = tail
		}
		edits = append(edits, edit{v.at, ""})
		passed = append(passed, "“"+c.said(v.at)+"”")
	}
	if !said.Empty() {
		edits = append(edits, edit{said, ". "})
	}
	return edits, []string{strings.Join(passed, " and ") + " passed over: the text goes with “" + all[chosen].written + "”"}
}

// verdict returns which of some versions a text goes with, and where it says so; −1 if it does not, or says
// it of several.
func (c *corrector) verdict(all []version) (chosen int, said entry.Span) {
	chosen = -1
	for _, m := range chooses.FindAllStringSubmatchIndex(c.text, -1) {
		name := ""
		for _, g := range [...]int{2, 8} {
			if m[g] >= 0 {
				name = strings.ToLower(strings.Map(dense, c.text[m[g]:m[g+1]]))
			}
		}
		for i := range all {
			if all[i].key != name {
				continue
			}
			if chosen >= 0 && chosen != i {
				return -1, said
			}
			chosen, said = i, entry.Span{Start: m[0], End: m[1]}
		}
	}
	if chosen >= 0 {
		return chosen, said
	}
	for i := range all {
		m := liked.FindStringSubmatchIndex(c.text[all[i].from:all[i].at.End])
		if m == nil {
			continue
		}
		if chosen >= 0 {
			return -1, said
		}
		chosen, said = i, entry.Span{Start: all[i].from + m[2], End: all[i].from + m[3]}
	}
	return chosen, said
}

// dense drops what stands between the word and the number of a version.
func dense(r rune) rune {
	if strings.ContainsRune(" \t.#", r) {
		return -1
	}
	return r
}
