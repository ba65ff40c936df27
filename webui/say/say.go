package say

import (
	"bytes"
	"fmt"
	"path"
	"strings"
	"sync"
	"text/template"
)

// It returns a sentence of english/views by the name of its file and its key, such as
// "board.touched", with values by their names in turn: a name, its value, and so on. What is
// not there shows by its key; a test looks for all that Go code asks for.
func It(key string, values ...any) string {
	all, err := views()
	if err != nil {
		return key
	}
	s, found := all[key]
	if !found {
		return key
	}
	said, err := s.with(named(values))
	if err != nil {
		return key
	}
	return said
}

// Views are the sentences that Go code asks for, by key. It fails if a file of them cannot be
// read.
func Views() (map[string]string, error) {
	return readAll(embedded, path.Join(tongue, "views"))
}

// named puts values under their names.
func named(values []any) map[string]any {
	out := make(map[string]any, len(values)/2)
	for i := 0; i+1 < len(values); i += 2 {
		out[fmt.Sprint(values[i])] = values[i+1]
	}
	return out
}

// views are read when the first of them is asked for.
var views = sync.OnceValues(func() (map[string]*sentence, error) {
	all, err := Views()
	if err != nil {
		return nil, err
	}
	out := make(map[string]*sentence, len(all))
	for key, text := range all {
		out[key] = newSentence(text)
	}
	return out, nil
})

// sentence is one that is parsed when it is first said.
type sentence struct {
	plain  string // the whole of one that nothing is filled in
	filled func() (*template.Template, error)
}

func newSentence(text string) *sentence {
	text = strings.ReplaceAll(text, "&nbsp;", "\u00a0")
	if !strings.Contains(text, "{{") {
		return &sentence{plain: text}
	}
	return &sentence{filled: sync.OnceValues(func() (*template.Template, error) { return Parse(text) })}
}

// with fills in values.
func (s *sentence) with(values map[string]any) (string, error) {
	if s.filled == nil {
		return s.plain, nil
	}
	t, err := s.filled()
	if err != nil {
		return "", err
	}
	var b bytes.Buffer
	if err := t.Execute(&b, values); err != nil {
		return "", err
	}
	return b.String(), nil
}

// Parse parses a sentence that values are filled in.
func Parse(text string) (*template.Template, error) {
	return template.New("").Funcs(template.FuncMap{"count": count}).Option("missingkey=error").Parse(text)
}
