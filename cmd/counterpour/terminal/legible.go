package terminal

import (
	"fmt"
	"strings"
	"unicode"
)

// mostQuoted is how many characters of one word a message repeats.
const mostQuoted = 200

// Legible returns a message that is safe to print on a terminal. Text from a file may
// contain control characters, which move the cursor or rename the window; they are
// escaped as in Go, such as \x1b. Very long words are cut.
func Legible(message string) string {
	var b strings.Builder
	run := 0 // length of the current word
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
