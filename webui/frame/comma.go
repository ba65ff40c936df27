package frame

import (
	"bytes"
	"html"
	"net/url"
	"regexp"
	"strings"
	"unicode"
)

// commas are the decimal points of a page that become commas: all but those of what somebody
// named or typed, of addresses and of versions.
type commas struct {
	names [][]byte // as they stand in a page, without their first letter, which a sentence may make large
}

// pointed matches a point between two digits.
var pointed = regexp.MustCompile(`[0-9]\.[0-9]`)

// newCommas returns the commas of a page that shows names, or what was typed in a form: a line of it
// that does not begin with an amount, to its colon, may be a name.
func newCommas(names []string, typed url.Values) (c commas) {
	for _, values := range typed {
		for _, v := range values {
			for line := range strings.Lines(v) {
				line = strings.TrimSpace(line)
				if line != "" && !digit(line[0]) {
					head, _, _ := strings.Cut(line, ":")
					names = append(names, line, head)
				}
			}
		}
	}
	for _, n := range names {
		if !pointed.MatchString(n) {
			continue
		}
		if r := []rune(n); !unicode.IsDigit(r[0]) {
			n = string(r[1:])
		}
		c.names = append(c.names, asInPage(n))
	}
	return c
}

// asInPage writes a text as a template does.
func asInPage(text string) []byte {
	return []byte(strings.ReplaceAll(html.EscapeString(text), "+", "&#43;"))
}

// write writes the decimal points of what a page shows as commas: of its text, and of the
// names that a screen reader says. What somebody typed stays as it is, and so do names, addresses,
// versions and what only the program reads.
func (c commas) write(page []byte) []byte {
	out := make([]byte, 0, len(page))
	for len(page) > 0 {
		at := bytes.IndexByte(page, '<')
		if at < 0 {
			return c.appendTo(out, page)
		}
		out = c.appendTo(out, page[:at])
		tag := page[at : at+tagEnd(page[at:])]
		out, page = c.appendTag(out, tag), page[at+len(tag):]
		if name := typed(tag); name != "" {
			end := bytes.Index(page, []byte("</"+name))
			if end < 0 {
				end = len(page)
			}
			out, page = append(out, page[:end]...), page[end:]
		}
	}
	return out
}

// tagEnd is the length of a tag that a text begins with: a mark of its end that is quoted is
// part of it.
func tagEnd(text []byte) int {
	var quote byte
	for i, c := range text {
		switch {
		case quote != 0:
			if c == quote {
				quote = 0
			}
		case c == '"' || c == '\'':
			quote = c
		case c == '>':
			return i + 1
		}
	}
	return len(text)
}

// typedIn are the elements that hold what somebody typed, or what the program reads.
var typedIn = []string{"textarea", "script", "style", "code", "pre", "kbd", "q"}

// typed returns the name of the element that a tag opens if it is one of typedIn, else "".
func typed(tag []byte) string {
	for _, name := range typedIn {
		if rest, is := bytes.CutPrefix(tag, []byte("<"+name)); is && len(rest) > 0 && (rest[0] == '>' || rest[0] == ' ' || rest[0] == '\n') {
			return name
		}
	}
	return ""
}

var label = []byte(`aria-label="`)

// appendTag appends a tag, with commas in the name that a screen reader says.
func (c commas) appendTag(out, tag []byte) []byte {
	before, after, labelled := bytes.Cut(tag, label)
	if !labelled {
		return append(out, tag...)
	}
	said, rest, _ := bytes.Cut(after, []byte{'"'})
	out = c.appendTo(append(append(out, before...), label...), said)
	return append(out, tag[len(tag)-len(rest)-1:]...)
}

// quoteMark is the mark, as it stands in a page, between which messages quote what somebody typed.
var quoteMark = []byte("&#34;")

// appendTo appends a text with a comma in place of each point between two digits, but for
// what it quotes.
func (c commas) appendTo(out, text []byte) []byte {
	for {
		before, after, quotes := bytes.Cut(text, quoteMark)
		end := bytes.Index(after, quoteMark)
		if !quotes || end < 0 {
			return c.appendPlain(out, text)
		}
		end += len(before) + 2*len(quoteMark)
		out = append(c.appendPlain(out, before), text[len(before):end]...)
		text = text[end:]
	}
}

// appendPlain appends a text that quotes nothing: each point between two digits becomes a
// comma, but for those of names, and of numbers of more than two parts, such as addresses and
// versions.
func (c commas) appendPlain(out, text []byte) []byte {
	from := len(out)
	out = append(out, text...)
	for i := 1; i < len(text)-1; i++ {
		if text[i] != '.' || !digit(text[i-1]) || !digit(text[i+1]) || c.named(text, i) {
			continue
		}
		left, right := i-1, i+1
		for left > 0 && digit(text[left-1]) {
			left--
		}
		for right < len(text)-1 && digit(text[right+1]) {
			right++
		}
		if left > 1 && text[left-1] == '.' && digit(text[left-2]) || right < len(text)-2 && text[right+1] == '.' && digit(text[right+2]) {
			continue
		}
		out[from+i] = ','
	}
	return out
}

// named reports whether a point of a text is in a name.
func (c commas) named(text []byte, point int) bool {
	for _, name := range c.names {
		for from := max(0, point-len(name)+1); from <= point; from++ {
			if bytes.HasPrefix(text[from:], name) {
				return true
			}
		}
	}
	return false
}

func digit(c byte) bool { return c >= '0' && c <= '9' }
