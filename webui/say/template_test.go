package say

import (
	"testing"
	"testing/fstest"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestSentencesAreFilledIn(t *testing.T) {
	for _, c := range []struct {
		name, template, sentences string // a file of sentences that is "-" is not there
		want, fault               string
	}{
		{name: "in their places", template: `<p title="{{say "a"}}">{{say "b-2"}}</p>`, sentences: "a: Ready\nb-2: <b>{{.N}}</b> of: all\n", want: `<p title="Ready"><b>{{.N}}</b> of: all</p>`},
		{name: "one that goes on", template: `{{say "a"}}`, sentences: "a: One\n\ttwo\n\t three\n", want: "One\ntwo\n three"},
		{name: "one without words", template: `{{.}}`, sentences: "-", want: `{{.}}`},
		{name: "one that is missing", template: `{{say "b"}}`, sentences: "a: One\n", fault: `english/pages/parts/p.txt has no sentence "b"; write it there`},
		{name: "a file that is missing", template: `{{say "b"}}`, sentences: "-", fault: `has no sentence "b"`},
		{name: "a key twice", template: ``, sentences: "a: One\na: Two\n", fault: `line 2: "a: Two" is not a new key`},
		{name: "no key", template: ``, sentences: "One two\n", fault: `line 1: "One two" is not a new key`},
		{name: "a key that no template can name", template: ``, sentences: "One two: three\n", fault: "line 1"},
		{name: "what begins by going on", template: ``, sentences: "\tOne\n", fault: "line 1"},
	} {
		t.Run(c.name, func(t *testing.T) {
			files := fstest.MapFS{}
			if c.sentences != "-" {
				files["english/pages/parts/p.txt"] = &fstest.MapFile{Data: []byte(c.sentences)}
			}
			got, err := inTemplate(files, "templates/parts/p.html", c.template)
			if c.fault != "" {
				assert.ErrorContains(t, err, c.fault)
				return
			}
			require.NoError(t, err)
			assert.Equal(t, c.want, got)
		})
	}
}
