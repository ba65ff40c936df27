package frame

import (
	"log/slog"
	"testing"
	"testing/fstest"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A page that does not fit is told when it is shown, and does not hinder the others;
// one that breaks the layout is told at once.
func TestBrokenTemplates(t *testing.T) {
	files := fstest.MapFS{
		"static/a.css":           {Data: []byte("a{}")},
		"templates/layout.html":  {Data: []byte(`{{define "layout"}}{{here}}: {{template "main" .}}{{end}}`)},
		"templates/parts/p.html": {Data: []byte(`{{define "p"}}p{{end}}`)},
		"templates/sound.html":   {Data: []byte(`{{define "main"}}sound{{end}}`)},
		"templates/unsound.html": {Data: []byte(`{{define "main"}}{{if}}{{end}}`)},
		"templates/another.html": {Data: []byte(`{{define "main"}}{{template "p"}}{{end}}`)},
	}
	statics, err := LoadStatics(files)
	require.NoError(t, err)
	f, err := New(files, statics, false, func() bool { return false }, slog.New(slog.DiscardHandler))
	require.NoError(t, err)
	for page, want := range map[string]string{"sound": "sound: sound", "another": "another: p"} {
		var b testWriter
		require.NoError(t, f.leads.render(&b, page, "layout", nil))
		assert.Equal(t, want, string(b))
	}
	assert.ErrorContains(t, f.leads.render(nil, "unsound", "layout", nil), "unsound")

	files["templates/parts/p.html"] = &fstest.MapFile{Data: []byte(`{{define "p"}}{{if}}{{end}}`)}
	_, err = New(files, statics, false, func() bool { return false }, slog.New(slog.DiscardHandler))
	assert.Error(t, err)
}

type testWriter []byte

func (w *testWriter) Write(p []byte) (int, error) {
	*w = append(*w, p...)
	return len(p), nil
}
