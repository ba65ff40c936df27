package recipe

import (
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/measure/draft/names/naming"
	"counterpour/flavor/measure/draft/words/entry"
	"counterpour/flavor/measure/draft/words/label"
	"counterpour/flavor/measure/draft/words/parting"
	"counterpour/flavor/measure/draft/words/token"
	"counterpour/flavor/measure/pattern"
)

// Page is a recipe of which the list is left, and what of the prose says more than it.
type Page struct {
	Text   string
	Steps  []string // what tells how the drink is made, in order
	Passed []string // what tells of it otherwise, in order
	Aside  []string // what tells of something else, in order: whatever it names is not poured
}

// MostText is the most bytes of a page: a longer one holds more than one drink.
const MostText = 4000

// leastListed is the fewest pours of a list that prose stands around.
const leastListed = 2

// Of returns the page of a text, and false for a text that is none: that has no list with prose
// around it, or whose prose says two things of the service.
func Of(text string, b *naming.Resolver) (Page, bool) {
	if len(text) > MostText {
		return Page{}, false
	}
	r := reader{text: text, resolver: b, lines: linesOf(text)}
	if !r.findList() {
		return Page{}, false
	}
	r.findTitle()
	r.out = []byte(text)
	for i := range r.lines {
		switch l := &r.lines[i]; l.is {
		case listed:
			r.unmark(l)
		case titled:
			r.trimTitle(l)
		default:
			r.tell(l)
		}
	}
	if !r.changed || !r.say() {
		return Page{}, false
	}
	return Page{string(r.out), r.steps, r.passed, r.aside}, true
}

// reader reads one page.
type reader struct {
	text     string
	resolver *naming.Resolver
	lines    []line
	out      []byte // the text with its prose blanked
	names    []*flavor.Profile
	marks    bool // a name of the list has the mark of a note below
	said     said
	steps    []string
	passed   []string
	aside    []string
	changed  bool
}

// line is a line of a page that holds something, without blanks around it.
type line struct {
	entry.Span
	is    kind
	after bool // a blank line stands before it
	above bool // it stands above the list
	close bool // no blank line parts it from the list
}

// kind is what a line of a page is.
type kind int

const (
	prose kind = iota
	listed
	titled
)

// linesOf returns the lines of a text that hold something.
func linesOf(text string) []line {
	var out []line
	from, gap := 0, false
	for from < len(text) {
		end := len(text)
		if at := strings.IndexByte(text[from:], '\n'); at >= 0 {
			end = from + at
		}
		w := strings.TrimSpace(text[from:end])
		if w == "" {
			gap = true
		} else {
			start := from + strings.Index(text[from:end], w)
			out = append(out, line{Span: entry.Span{Start: start, End: start + len(w)}, after: gap})
			gap = false
		}
		from = end + 1
	}
	return out
}

// written is a line to the letter.
func (r *reader) written(l *line) string { return r.text[l.Start:l.End] }

// findList marks the lines of the list: those with an amount, what stands between them, and what
// follows them without a blank line and is no sentence. It is false if there is no list, or nothing
// but one.
func (r *reader) findList() bool {
	first, last, n := -1, -1, 0
	for i := range r.lines {
		if r.measured(&r.lines[i]) {
			if first < 0 {
				first = i
			}
			last, n = i, n+1
		}
	}
	if n < leastListed {
		return false
	}
	for last+1 < len(r.lines) && !r.lines[last+1].after && r.named(&r.lines[last+1]) {
		last++
	}
	for i := range first {
		r.lines[i].above = true
	}
	for i := first - 1; i >= 0 && !r.lines[i+1].after; i-- {
		r.lines[i].close = true
	}
	for i := last + 1; i < len(r.lines) && !r.lines[i].after; i++ {
		r.lines[i].close = true
	}
	for i := first; i <= last; i++ {
		if l := &r.lines[i]; r.measured(l) || r.named(l) {
			l.is = listed
			r.names = append(r.names, r.resolver.Mentioned(strings.Trim(r.written(l), "*†‡"))...)
			r.marks = r.marks || marked.MatchString(r.written(l))
		}
	}
	return first > 0 || last+1 < len(r.lines)
}

// step is the number of a step, and what follows it is no amount.
var step = pattern.Of(`^(?i:step[ \t]*)?\d{1,2}[ \t]*[.):][ \t]+[^\d\s½¼¾⅓⅔.]`)

// behindName is an amount with its unit at the end of a line: "London dry gin | 60 ml".
var behindName = pattern.Of(`(?i)[ \t|:.–—-](?:\d*[.,]?\d+|\d+/\d+|\d*[ \t]*[½¼¾⅓⅔])[ \t]*(?:ml|cl|oz|ounces?|dash(?:es)?|drops?|tsp|tbsp|barspoons?|parts?)\.?[ \t|]*$`)

// mostName is the most words of a line of the list.
const mostName = 12

// measured reports whether a line begins with an amount or ends in one, and is no step.
func (r *reader) measured(l *line) bool {
	w := r.written(l)
	if step.MatchString(w) || len(strings.Fields(w)) > mostName+2 {
		return false
	}
	toks := parting.Unlist(token.Lex(nil, strings.TrimLeft(w, "*·●◦▪|"), 0, len(strings.TrimLeft(w, "*·●◦▪|"))))
	if len(toks) < 2 || toks[0].Kind != token.Numeral {
		return behindName.MatchString(w) && !sentence(w)
	}
	return !entry.AgeWords[toks[1].Text] && (entry.StartsMeasure(toks) || len(r.resolver.Mentioned(r.written(l))) > 0) && !sentence(w)
}

// leastNumbered is the fewest numbered steps of what is nothing but a page.
const leastNumbered = 2

// Numbered reports whether a text has numbered steps, which is nothing but a page if it has a list too.
func Numbered(text string) bool {
	n := 0
	for line := range strings.Lines(text) {
		w := strings.TrimSpace(line)
		if w == "" || !token.Digit(w[0]) && w[0] != 's' && w[0] != 'S' || !step.MatchString(w) {
			continue
		}
		if n++; n == leastNumbered {
			return true
		}
	}
	return false
}

// named reports whether a line may stand in the list without an amount: it is short, and no sentence.
func (r *reader) named(l *line) bool {
	w := r.written(l)
	if step.MatchString(w) || sentence(w) || len(strings.Fields(w)) > mostName || heading.MatchString(w) {
		return false
	}
	is, _ := parting.Header(r.text, token.Lex(nil, r.text, l.Start, l.End))
	return is == label.None || is == label.Pours
}

// sentence reports whether a line ends as a sentence does, or holds one that does.
func sentence(w string) bool {
	return strings.HasSuffix(w, ".") && !abbreviated.MatchString(w) || strings.HasSuffix(w, "!") || strings.Contains(w, ". ") && len(strings.Fields(w)) > mostName
}

// abbreviated is a unit with a stop behind it at the end of a line.
var abbreviated = pattern.Of(`(?i)\b(?:oz|ml|cl|tsp|tbsp|bsp|dash)\.$`)

// marked is a name with the mark of a note below.
var marked = pattern.Of(`[\pL)][*†‡]+[ \t]*$`)

// heading is the head of a part of a page.
var heading = pattern.Of(`(?i)^[#*_ \t]*(?:ingredients?|you(?:'|’)?(?: wi)?ll need|you need|what you need|method|steps?|directions?|instructions?|how to(?: make(?: it| the drink)?)?|preparation|to make|to serve|(?:editor'?s |cook'?s |bartender'?s )?notes?|tips?|equipment|the drink|the build|the spec|recipe|for (?:the (?:drink|cocktail)|one)|do this|here'?s how|what to do)[:*_ \t]*$`)
