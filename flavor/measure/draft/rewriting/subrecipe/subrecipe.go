// Package subrecipe finds what of a text tells how something is made that the drink pours, and
// what tells of another version of the drink: neither is poured.
package subrecipe

import (
	"slices"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/measure/draft/words/entry"
	"counterpour/flavor/measure/draft/words/label"
	"counterpour/flavor/measure/draft/words/parting"
	"counterpour/flavor/measure/draft/words/serving"
	"counterpour/flavor/measure/draft/words/token"
	"counterpour/flavor/measure/pattern"
	"counterpour/flavor/measure/vocabulary"
)

// made ends the names of what bars make themselves.
var made = vocabulary.Words(`syrup syrups cordial shrub oleo saccharum sherbet orgeat grenadine falernum solution saline tincture infusion infused brine puree purée honey
tea stock kombucha vinegar jam compote reduction gomme demerara sirup sirop jarabe sciroppo almíbar xarope siroop`)

// leads stand before the name of what is made, at the start of a heading.
var leads = pattern.Of(`(?i)^(?:for (?:the |your |our |my )?|(?:how )?to make (?:the |your |our )?|(?:prep|recipe)(?: for(?: the)?)?:? +)`)

// drinks head what is poured.
var drinks = pattern.Of(`(?i)^\W*(?:for )?(?:the |your )?(?:drink|cocktail|serve|build|glass|shaker|to (?:serve|finish|assemble))\W*$`)

// another begins a line that tells what another version has, or what it would have.
var another = pattern.Of(`(?i)^\W*(?:same (?:thing |drink |spec |again )?(?:but|with|w/)|(?:also|equally) (?:good|nice|great|works?) with|works? (?:well )?with|(?:for (?:the |a |an )?)?(?:n/?a|non[- ]?alc(?:oholic)?|zero[- ]?proof|virgin|mocktail|alcohol[- ]free|alc[- ]free|0 ?%)(?: version| one)?\s*[:–—-]\s+(?:swap|sub|replace|use|leave|drop|omit|skip))`)

// ratioOf is a line that says by which shares something is made: "honey 3:1 = 3 honey 1 water".
var ratioOf = pattern.Of(`(?i)^\W*\pL[\pL ]*\d ?: ?\d\s*(?:=|is|means)\s*\d.*$`)

// inBrackets is the same behind a name: "honey 3:1 (3 honey 1 water)".
var inBrackets = pattern.Of(`(?i)\(\s*\d+(?:\.\d+)?\s*(?:parts? +)?\pL[\pL ]*[ ,/&+]+(?:and +)?\d+(?:\.\d+)?\s*(?:parts? +)?(?:hot +|warm +)?water[^()\n]*\)`)

// perOne tells how much of a batch above it one glass has.
var perOne = pattern.Of(`(?i)^\W*per (?:cup|glass|serve|serving|drink|portion|person)\s*:`)

// Of returns the stretches of a text that tell how something is made, or of another version, in
// order; none if nothing else of the text states an amount. Where the text tells how much of a
// batch one glass has, they are those of the batch, and restated is true: the glass may name
// what it pours less closely.
func Of(text string) (out []entry.Span, restated bool) {
	lines := linesOf(text)
	for i := 0; i < len(lines); i++ {
		written := text[lines[i].Start:lines[i].End]
		switch {
		case heads(text, lines, i):
			end := i + 1
			if _, behind, _ := strings.Cut(written, ":"); strings.TrimSpace(behind) == "" || leads.MatchString(written) {
				end = listEnd(text, lines, i)
			}
			out = append(out, entry.Span{Start: lines[i].Start, End: lines[end-1].End})
			i = end - 1
		case i > 0 && (another.MatchString(written) || strings.Contains(written, ":") && ratioOf.MatchString(written)):
			out = append(out, lines[i])
		case i > 2 && strings.Contains(written, ":") && perOne.MatchString(written):
			out, restated = append(batched(text, lines[:i]), around(text, lines[i])...), true
		case strings.Contains(written, "("):
			for _, at := range inBrackets.FindAllStringIndex(written, -1) {
				out = append(out, entry.Span{Start: lines[i].Start + at[0], End: lines[i].Start + at[1]})
			}
		}
	}
	if len(out) == 0 {
		return nil, false
	}
	if slices.ContainsFunc(lines, func(l entry.Span) bool { return drinks.MatchString(text[l.Start:l.End]) }) {
		for _, l := range lines {
			if w := text[l.Start:l.End]; drinks.MatchString(w) && strings.HasSuffix(w, ":") {
				out = append(out, l)
			}
		}
		slices.SortFunc(out, func(a, b entry.Span) int { return a.Start - b.Start })
	}
	if !poursBeside(text, lines, out) {
		return nil, false
	}
	return out, restated
}

// batched returns the lines that state the amounts of a batch, of which one glass is told below.
func batched(text string, above []entry.Span) []entry.Span {
	var out []entry.Span
	for _, l := range above[1:] {
		toks := token.Lex(nil, text, l.Start, l.End)
		if toks = parting.Unlist(toks); len(toks) > 1 && toks[0].Kind == token.Numeral && measured(text, l) {
			out = append(out, l)
		}
	}
	return out
}

// around returns what stands around the list behind "per cup:", the words and the brackets.
func around(text string, l entry.Span) []entry.Span {
	colon := l.Start + strings.IndexByte(text[l.Start:l.End], ':') + 1
	out := []entry.Span{{Start: l.Start, End: colon}}
	if text[l.Start] == '(' && text[l.End-1] == ')' {
		out = append(out, entry.Span{Start: l.End - 1, End: l.End})
	}
	return out
}

// heads reports whether a line heads the list of what something is made of: it says so, or it is
// the name of what another line pours, with a colon behind it.
func heads(text string, lines []entry.Span, i int) bool {
	written := strings.Trim(text[lines[i].Start:lines[i].End], " *_#-•\t")
	if written == "" || token.Digit(written[0]) {
		return false // a name has no figures
	}
	name, behind, colon := strings.Cut(written, ":")
	led := leads.MatchString(written)
	if led {
		name, behind, colon = strings.Cut(leads.ReplaceAllString(written, ""), ":")
	}
	name = strings.ToLower(strings.TrimSpace(name))
	told := led || strings.HasSuffix(name, " recipe") || strings.HasSuffix(name, " prep")
	if !told && !colon {
		return false
	}
	words := strings.Fields(strings.TrimSuffix(strings.TrimSuffix(name, " recipe"), " prep"))
	if len(words) == 0 || len(words) > mostName || strings.ContainsAny(name, "0123456789,;+/") || !slices.ContainsFunc(words, made.Has) {
		return false
	}
	switch {
	case told:
		return colon || i+1 < len(lines) && measured(text, lines[i+1])
	case !poured(text, lines, i, words):
		return false
	case strings.TrimSpace(behind) == "":
		return i+1 < len(lines) && measured(text, lines[i+1])
	}
	return shares.MatchString(behind)
}

// mostName is the most words of the name of what is made.
const mostName = 5

// shares say what something is made of without a measure: "2 parts honey, 1 part water".
var shares = pattern.Of(`(?i)^\s*(?:\d+(?:\.\d+)? parts? .*\d+(?:\.\d+)? parts? |equal parts? |\d ?: ?\d )`)

// poured reports whether another line names what a heading does.
func poured(text string, lines []entry.Span, i int, words []string) bool {
	for k := range lines {
		other := strings.ToLower(text[lines[k].Start:lines[k].End])
		if k != i && !slices.ContainsFunc(words, func(w string) bool { return !strings.Contains(other, w) }) {
			return true
		}
	}
	return false
}

// listEnd returns the line behind the list that a heading has: it ends at a blank line, at the
// heading of what is poured, and where the text goes on to how the drink is served.
func listEnd(text string, lines []entry.Span, head int) int {
	for i := head + 1; i < len(lines); i++ {
		gap := strings.Count(text[lines[i-1].End:lines[i].Start], "\n") > 1
		toks := token.Lex(nil, text, lines[i].Start, lines[i].End)
		said, _ := parting.Header(text, toks)
		served := serving.Read(toks)
		ends := said == label.Glass || said == label.Garnish || said == label.Serving || said == label.Name
		ends = ends || served.Service != "" || served.Glass != "" || serving.Mixes(served.Method) == serving.Mixes(flavor.Shake)
		if gap && i > head+1 || ends || drinks.MatchString(text[lines[i].Start:lines[i].End]) {
			return i
		}
	}
	return len(lines)
}

// measured reports whether a line states an amount with its unit.
func measured(text string, l entry.Span) bool {
	toks := token.Lex(nil, text, l.Start, l.End)
	return slices.ContainsFunc(toks, func(t token.Token) bool { return t.Kind == token.Numeral })
}

// poursBeside reports whether a line outside all stretches states an amount.
func poursBeside(text string, lines, out []entry.Span) bool {
	return slices.ContainsFunc(lines, func(l entry.Span) bool {
		inside := slices.ContainsFunc(out, func(s entry.Span) bool { return s.Start <= l.Start && l.End <= s.End })
		return !inside && measured(text, l)
	})
}

// linesOf returns the lines of a text that hold something, without blanks around it.
func linesOf(text string) []entry.Span {
	var out []entry.Span
	for from := 0; from < len(text); {
		end := len(text)
		if at := strings.IndexByte(text[from:], '\n'); at >= 0 {
			end = from + at
		}
		if w := strings.TrimSpace(text[from:end]); w != "" {
			start := from + strings.Index(text[from:end], w)
			out = append(out, entry.Span{Start: start, End: start + len(w)})
		}
		from = end + 1
	}
	return out
}
