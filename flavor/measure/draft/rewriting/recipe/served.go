package recipe

import (
	"slices"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/measure/draft/words/entry"
	"counterpour/flavor/measure/draft/words/serving"
	"counterpour/flavor/measure/draft/words/token"
)

// said is what the prose says of making and serving.
type said struct {
	method  flavor.Method
	service flavor.Service
	weak    bool // the service is that of a glass
	glass   string
	two     bool // it says two things of the service
}

// parts part what is done from what is done next.
var parts = map[string]bool{",": true, ";": true, "/": true, "(": true, ")": true, ".": true, ":": true}

// then are words that part what is done from what is done next.
var then = token.Words(`then and before until till`)

// serves takes in what a sentence says of making and serving, and reports whether it says anything.
func (r *reader) serves(toks []token.Token) bool {
	any := false
	for start := 0; start < len(toks); {
		end := start + 1
		for end < len(toks) && !parts[toks[end].Text] && !then[toks[end].Text] {
			end++
		}
		any = r.said.add(toks[start:end]) || any
		start = end
	}
	return any
}

// add takes in what is said at once. Of methods the one that takes most work mixes the drink; of
// services one that is stated outright comes before that of a glass.
func (s *said) add(toks []token.Token) bool {
	is := serving.Read(toks)
	if is.Conflict != nil {
		return false
	}
	if serving.Mixes(is.Method) > serving.Mixes(s.method) {
		s.method = is.Method
	}
	if is.Glass != "" && is.Glass != "mug" {
		s.glass = is.Glass
	}
	switch {
	case is.Service == "":
	case s.service == "" || s.weak && !is.Weak:
		s.service, s.weak = is.Service, is.Weak
	case s.service != is.Service && !is.Weak:
		s.two = true
	}
	return is.States()
}

// words are what is said, as a line of a draft.
func (s *said) words() string {
	var out []string
	for _, w := range []string{string(s.method), string(s.service), s.glass} {
		if w != "" {
			out = append(out, strings.ReplaceAll(w, "-", " "))
		}
	}
	return strings.Join(out, ", ")
}

// say writes what the prose says of making and serving into a line that was blanked. It is false if
// it says two things, or if no line has room for it.
func (r *reader) say() bool {
	w := r.said.words()
	if r.said.two {
		return false
	}
	if w == "" {
		return true
	}
	for _, l := range slices.Backward(r.lines) {
		if at, ok := r.room(&l, len(w)+len(apart)); ok && l.is == prose {
			if strings.TrimSpace(string(r.out[at.End:l.End])) != "" {
				copy(r.out[at.End-len(apart):], apart)
			}
			copy(r.out[at.Start:], w)
			return true
		}
	}
	return false
}

// apart parts what is said from what is left of its line.
const apart = ";"

// room returns blanks of a line before which nothing is left of it, and which are as long.
func (r *reader) room(l *line, long int) (entry.Span, bool) {
	end := l.Start
	for end < l.End && r.out[end] == ' ' {
		end++
	}
	return entry.Span{Start: l.Start, End: end}, end-l.Start >= long || end == l.End && end-l.Start >= long-len(apart)
}
