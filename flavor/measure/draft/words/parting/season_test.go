package parting

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"counterpour/flavor/measure/draft/words/token"
)

// Seasonings stand in a row with or without signs; a word that is none makes them a name.
func TestSeasonings(t *testing.T) {
	for text, want := range map[string][]string{
		"salt pepper":            {"salt", "black pepper"},
		"celery salt, pepper":    {"celery salt", "black pepper"},
		"s&p":                    {"salt", "black pepper"},
		"salt and black pepper":  {"salt", "black pepper"},
		"salt chilli rim":        nil,
		"celery":                 nil,
		"pink pepper":            nil,
		"salt, lime":             nil,
		"smoked paprika cayenne": {"smoked paprika", "cayenne"},
	} {
		var got []string
		for _, s := range Seasonings(token.Lex(nil, text, 0, len(text))) {
			got = append(got, s.Name)
		}
		assert.Equal(t, want, got, text)
	}
}
