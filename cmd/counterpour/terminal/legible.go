package terminal

import (
	"fmt"
	"strings"
	"unicode"
)

// mostQuoted is how many characters of one word a message repeats.
const mostQuoted = 200

// Legible is a message as a terminal may show it. It quotes what was in a file, and
// a control character of a file's would move the cursor or rename the window; each
// is written as Go writes it, such as \x1b. Of a word that goes on and on the
// beginning is shown.
func Legible(message string) string {
	var b strings.Builder
	run := 0 // characters of the word so far
	for _, r := range strings.ToValidUTF8(message, "\ufffd") {
		if run++; unicode.IsSpace(r) {
			run = 0
		}
		switch {
		case run == mostQuoted+1:
			b.WriteRune('…')
		case run > mostQuoted:
		case r != '\n' && r != '\t' && unicode.In(r, unicode.Cc, unicode.Bidi_Control):
			b.WriteString(strings.Trim(fmt.Sprintf("%+q", r), "'"))
		default:
			b.WriteRune(r)
		}
	}
	return b.String()
}
