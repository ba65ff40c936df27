package frame

import "bytes"

// commas writes the decimal points of what a page shows as commas: of its text, and of the
// names that a screen reader says. What somebody typed stays as it is, and so do addresses,
// versions and what only the program reads.
func commas(page []byte) []byte {
	out := make([]byte, 0, len(page))
	for len(page) > 0 {
		at := bytes.IndexByte(page, '<')
		if at < 0 {
			return appendCommas(out, page)
		}
		out = appendCommas(out, page[:at])
		tag := page[at : at+tagEnd(page[at:])]
		out, page = appendTag(out, tag), page[at+len(tag):]
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
func appendTag(out, tag []byte) []byte {
	before, after, labelled := bytes.Cut(tag, label)
	if !labelled {
		return append(out, tag...)
	}
	said, rest, _ := bytes.Cut(after, []byte{'"'})
	out = appendCommas(append(append(out, before...), label...), said)
	return append(out, tag[len(tag)-len(rest)-1:]...)
}

// quoteMark is the mark, as it stands in a page, between which messages quote what somebody typed.
var quoteMark = []byte("&#34;")

// appendCommas appends a text with a comma in place of each point between two digits, but for
// what it quotes.
func appendCommas(out, text []byte) []byte {
	for {
		before, after, quotes := bytes.Cut(text, quoteMark)
		end := bytes.Index(after, quoteMark)
		if !quotes || end < 0 {
			return appendPlainCommas(out, text)
		}
		end += len(before) + 2*len(quoteMark)
		out = append(appendPlainCommas(out, before), text[len(before):end]...)
		text = text[end:]
	}
}

// appendPlainCommas appends a text that quotes nothing: each point between two digits becomes a
// comma, but for numbers of more than two parts, such as addresses and versions.
func appendPlainCommas(out, text []byte) []byte {
	from := len(out)
	out = append(out, text...)
	for i := 1; i < len(text)-1; i++ {
		if text[i] != '.' || !digit(text[i-1]) || !digit(text[i+1]) {
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

func digit(c byte) bool { return c >= '0' && c <= '9' }
