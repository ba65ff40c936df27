package say

import (
	"testing"
	"testing/fstest"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A sentence is said with its values, each number with the form of the word that goes with it.
func TestSentencesAreSaid(t *testing.T) {
	for _, c := range []struct {
		name, sentence string
		values         []any
		want           string
	}{
		{"plain", "Nothing is out.", nil, "Nothing is out."},
		{"a space that no line breaks at", "in&nbsp;mL", nil, "in\u00a0mL"},
		{"values in the order of the language", "{{.Of}}: {{.N}}", []any{"N", 2, "Of", "rum"}, "rum: 2"},
		{"one", `{{count .N "drink is" "drinks are"}} touched`, []any{"N", 1}, "1 drink is touched"},
		{"none", `{{count .N "drink is" "drinks are"}} touched`, []any{"N", 0}, "0 drinks are touched"},
		{"more", `{{count .N "drink is" "drinks are"}} touched`, []any{"N", 22}, "22 drinks are touched"},
		{"one form for all", `{{count .N "fish"}}`, []any{"N", 2}, "2 fish"},
		{"a choice", `{{if .Lost}}{{.Lost}} lost{{else}}all there{{end}}`, []any{"Lost", 0}, "all there"},
		{"what a guest wrote is not read", `“{{.Text}}”`, []any{"Text", "{{.N}}&nbsp;"}, "“{{.N}}&nbsp;”"},
	} {
		got, err := newSentence(c.sentence).with(named(c.values))
		require.NoError(t, err, c.name)
		assert.Equal(t, c.want, got, c.name)
	}
	for _, broken := range []string{"{{.Missing}}", "{{count .N}}", "{{nothing}}", "{{"} {
		_, err := newSentence(broken).with(named([]any{"N", 1, "odd"}))
		assert.Error(t, err, broken)
	}
}

// What is not there shows by its key, not as nothing.
func TestASentenceThatIsMissingShowsByItsKey(t *testing.T) {
	assert.Equal(t, "nowhere.nothing", It("nowhere.nothing", "N", 1))
}

// A key stands behind the name of its file, and what cannot be read is told with its place.
func TestEveryFileOfAFolderIsRead(t *testing.T) {
	all, err := readAll(fstest.MapFS{"v/a.txt": {Data: []byte("one: One\n")}, "v/b.txt": {Data: []byte("one: Another\n")}}, "v")
	require.NoError(t, err)
	assert.Equal(t, sentences{"a.one": "One", "b.one": "Another"}, all)
	_, err = readAll(fstest.MapFS{"v/a.txt": {Data: []byte("One\n")}}, "v")
	assert.ErrorContains(t, err, "v/a.txt: line 1")
}
