package frame

import (
	"compress/gzip"
	"context"
	"errors"
	"fmt"
	"io"
	"log/slog"
	"net/http"
	"net/http/httptest"
	"strings"
	"testing"
	"testing/fstest"

	"counterpour/api/admission"
	"counterpour/data/house"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestCancelledRequestGetsNoAnswer(t *testing.T) {
	ctx, cancel := context.WithCancel(t.Context())
	cancel()
	p := &Frame{}
	w := httptest.NewRecorder()
	p.fail(w, httptest.NewRequest(http.MethodPost, "/", nil).WithContext(ctx), fmt.Errorf("cover: %w", ctx.Err()))
	assert.Empty(t, w.Body.String())
}

func TestTroubleOf(t *testing.T) {
	seen := map[string]bool{}
	for _, k := range troubles() {
		got := TroubleOf(fmt.Errorf("doing a thing: %w", k.kind))
		assert.Equal(t, k.Trouble, got)
		assert.GreaterOrEqual(t, got.Status, 400)
		assert.NotEmpty(t, got.Title)
		assert.NotEmpty(t, got.Text)
		assert.False(t, seen[got.Title], "%q twice", got.Title)
		seen[got.Title] = true
	}
	assert.Equal(t, http.StatusInternalServerError, TroubleOf(errors.New("anything else")).Status)
}

// A store that takes no write for now is told as such, not as a break of ours.
func TestStoreErrorsKeepTheirMessage(t *testing.T) {
	for _, kind := range []error{house.ErrFull, house.ErrReadOnly, house.ErrBusy, house.ErrUnavailable} {
		got := TroubleOf(fmt.Errorf("mark: %w", &house.Error{Kind: kind, Op: "write", Message: "there is no room left"}))
		assert.Equal(t, http.StatusServiceUnavailable, got.Status)
		assert.Equal(t, "There is no room left.", got.Text)
	}
	inside := TroubleOf(&house.Error{Kind: house.ErrInternal, Message: "a detail for the log"})
	assert.Equal(t, http.StatusInternalServerError, inside.Status)
	assert.NotContains(t, inside.Text, "detail")
}

// Who is refused a search is told when to ask again.
func TestOverloadHasItsOwnMessage(t *testing.T) {
	got := TroubleOf(fmt.Errorf("covers: %w", admission.ErrFull))
	assert.Equal(t, http.StatusServiceUnavailable, got.Status)
	assert.Contains(t, got.Text, "in a second")
	assert.Equal(t, 1, admission.RetryAfter, "a second is what the page says")
}

// A long page travels packed to whoever takes it so, and is the same page; a short one does not.
func TestLongPagesArePacked(t *testing.T) {
	files := fstest.MapFS{
		"static/a.css":          {Data: []byte("a{}")},
		"templates/layout.html": {Data: []byte(`{{define "layout"}}{{template "main" .}}{{end}}`)},
		"templates/list.html":   {Data: []byte(`{{define "main"}}{{.}}{{end}}`)},
	}
	statics, err := LoadStatics(files)
	require.NoError(t, err)
	f, err := New(files, statics, false, func() bool { return false }, slog.New(slog.DiscardHandler))
	require.NoError(t, err)
	long := strings.Repeat("2 oz London dry gin, ", 500)
	for _, c := range []struct {
		page, accept string
		packed       bool
	}{{long, "gzip, br", true}, {long, "", false}, {"short", "gzip", false}, {long[:len(long)/2], "gzip", true}} {
		r, w := httptest.NewRequest(http.MethodGet, "/", nil), httptest.NewRecorder()
		r.Header.Set("Accept-Encoding", c.accept)
		require.NoError(t, f.Write(w, r, http.StatusOK, "list", "layout", c.page))
		assert.Contains(t, w.Header().Values("Vary"), "Accept-Encoding")
		assert.Equal(t, c.packed, w.Header().Get("Content-Encoding") == "gzip")
		body := io.Reader(w.Body)
		if c.packed {
			assert.Less(t, w.Body.Len(), len(c.page)/4)
			body, err = gzip.NewReader(w.Body)
			require.NoError(t, err)
		}
		page, err := io.ReadAll(body)
		require.NoError(t, err)
		assert.Equal(t, c.page, string(page))
	}
}
