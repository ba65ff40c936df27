package main

import (
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/stretchr/testify/assert"
)

func TestMessagesAreLegible(t *testing.T) {
	for text, want := range map[string]string{
		"line 2: \"crémant\" is unknown\nline 3": "line 2: \"crémant\" is unknown\nline 3",
		"\x1b]0;mine\a":                 `\x1b]0;mine\a`,
		"a\u009bb\u202ec\rd\x00":        `a\u009bb\u202ec\rd\x00`,
		"\xff":                          "\ufffd",
		strings.Repeat("é", 200) + " x": strings.Repeat("é", 200) + " x",
		strings.Repeat("é", 900) + " x": strings.Repeat("é", 200) + "… x",
	} {
		assert.Equal(t, want, legible(text))
	}
	// A bad line of a file reaches the terminal harmless and short.
	path := file(t, "bad.txt", "Bad\n"+strings.Repeat("y", 1000)+" frobs\n2 oz gin\nshake, up\n")
	_, _, message := try(t, "", "house", "import", "--house", file(t, "x", "")+".house", "--as", "text", path)
	assert.Contains(t, message, strings.Repeat("y", 190))
	assert.Less(t, utf8.RuneCountInString(message), 600)
}
