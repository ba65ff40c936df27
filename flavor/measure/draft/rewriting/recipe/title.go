package recipe

import (
	"strings"

	"counterpour/flavor/measure/pattern"
)

// mostTitle is the most words of the name of a drink.
const mostTitle = 7

// findTitle marks the line that is the name of the drink: one above the list that is set as a
// heading, else the first, if it is short and no sentence.
func (r *reader) findTitle() {
	for i := range r.lines {
		l := &r.lines[i]
		if l.is == listed {
			break
		}
		if w := r.written(l); head.MatchString(w) && r.mayName(w) {
			l.is = titled
			return
		}
	}
	if l := &r.lines[0]; l.is != listed && r.mayName(r.written(l)) {
		l.is = titled
	}
}

// head is a line set as a heading.
var head = pattern.Of(`^(?:#+[ \t]|\*\*[^*]+\*\*$|__[^_]+__$)`)

// mayName reports whether a line may be the name of a drink.
func (r *reader) mayName(w string) bool {
	return len(strings.Fields(w)) <= mostTitle && !sentence(w) && !heading.MatchString(w)
}

// trimmed is what stands around the name of a drink and is none of it.
var trimmed = pattern.Of(`^[#*_ \t]+|(?i)[ \t]+recipe[*_ \t]*$|[*_ \t]+$`)

// trimTitle blanks the signs of a heading and the word "recipe".
func (r *reader) trimTitle(l *line) {
	for _, at := range trimmed.FindAllStringIndex(r.written(l), -1) {
		r.blank(l.Start+at[0], l.Start+at[1])
	}
}

// unmark blanks the marks of notes below at a name of the list.
func (r *reader) unmark(l *line) {
	if at := marked.FindStringIndex(r.written(l)); at != nil {
		for i := l.Start + at[0]; i < l.Start+at[1]; {
			w := r.text[i:]
			n := len("*")
			switch {
			case strings.HasPrefix(w, "*"):
				r.blank(i, i+n)
			case strings.HasPrefix(w, "†"), strings.HasPrefix(w, "‡"):
				n = len("†")
				r.blank(i, i+n)
			}
			i += n
		}
	}
}

// blank puts blanks in place of text[from:to].
func (r *reader) blank(from, to int) {
	for i := from; i < to; i++ {
		r.out[i] = ' '
	}
	r.changed = r.changed || to > from
}
