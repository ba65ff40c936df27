package main

import (
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/stretchr/testify/assert"
)

// A bad line of a file reaches the terminal harmless and short.
func TestBadLineIsLegible(t *testing.T) {
	path := file(t, "bad.txt", "Bad\n"+strings.Repeat("y", 1000)+" frobs\n2 oz gin\nshake, up\n")
	_, _, message := try(t, "", "house", "import", "--house", file(t, "x", "")+".house", "--as", "text", path)
	assert.Contains(t, message, strings.Repeat("y", 190))
	assert.Less(t, utf8.RuneCountInString(message), 600)
}
