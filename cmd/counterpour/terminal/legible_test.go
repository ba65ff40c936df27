package terminal

import (
	"strings"
	"testing"

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
		assert.Equal(t, want, Legible(text))
	}
}
