package frame

import (
	"compress/gzip"
	"io"
	"io/fs"
	"net/http"
	"net/http/httptest"
	"strings"
	"testing"
	"testing/fstest"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestPagesAreKnown(t *testing.T) {
	s, err := LoadStatics(fstest.MapFS{"static": {Mode: fs.ModeDir}})
	require.NoError(t, err)
	_, err = s.link("nothing.css")
	assert.Error(t, err)
	v := &views{}
	assert.Error(t, v.render(nil, "nowhere", "layout", nil))
}

// What shrinks goes packed to who takes it, under a tag of its own; the rest as it is.
func TestStaticFilesArePacked(t *testing.T) {
	style := strings.Repeat("p { margin: 0; }\n", 100)
	s, err := LoadStatics(fstest.MapFS{"static/long.css": {Data: []byte(style)}, "static/tiny.css": {Data: []byte("p{}")}})
	require.NoError(t, err)
	get := func(name, accept string) *http.Response {
		r := httptest.NewRequest(http.MethodGet, "/static/"+name, nil)
		r.Header.Set("Accept-Encoding", accept)
		w := httptest.NewRecorder()
		require.NoError(t, s.send(w, r, name, AskFirst))
		assert.Equal(t, "Accept-Encoding", w.Header().Get("Vary"))
		return w.Result()
	}
	for accept, packed := range map[string]bool{"gzip": true, "br, GZIP;q=0.5": true, "gzip;q=0": false, "gzip;q=x": false, "br": false, "": false, "xgzip": false} {
		got := get("long.css", accept)
		assert.Equal(t, packed, got.Header.Get("Content-Encoding") == "gzip", accept)
		body := io.Reader(got.Body)
		if packed {
			body, err = gzip.NewReader(got.Body)
			require.NoError(t, err)
		}
		text, err := io.ReadAll(body)
		require.NoError(t, err)
		assert.Equal(t, style, string(text), accept)
	}
	assert.NotEqual(t, get("long.css", "gzip").Header.Get("ETag"), get("long.css", "").Header.Get("ETag"))
	assert.Empty(t, get("tiny.css", "gzip").Header.Get("Content-Encoding"))
}
