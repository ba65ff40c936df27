package webuitest

import (
	"context"
	"html"
	"net/http/httptest"
	"net/url"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/data/house"
)

// Tells asserts on the text of a page, which is too long to be printed.
func Tells(t *testing.T, w *httptest.ResponseRecorder, status int, want ...string) {
	t.Helper()
	assert.Equal(t, status, w.Code)
	said := w.Body.String() + html.UnescapeString(w.Body.String())
	for _, s := range want {
		assert.True(t, strings.Contains(said, s), "should hold %q", s)
	}
}

// Lacks asserts that a page does not say something.
func Lacks(t *testing.T, w *httptest.ResponseRecorder, not ...string) {
	t.Helper()
	for _, s := range not {
		assert.False(t, strings.Contains(w.Body.String(), s), "should not hold %q", s)
	}
}

// Fields is a form of names and values in turn.
func Fields(pairs ...string) url.Values {
	v := url.Values{}
	for i := 0; i < len(pairs); i += 2 {
		v.Add(pairs[i], pairs[i+1])
	}
	return v
}

// KeptSpec is a spec as the store has it.
func KeptSpec(t *testing.T, h *House, slug string) house.Kept[house.Spec] {
	t.Helper()
	k, err := house.Get[house.Spec](context.Background(), h.Store(), slug)
	require.NoError(t, err)
	return k
}

// Says checks what a page says, as it is sent or as a browser reads it.
func Says(t *testing.T, w *httptest.ResponseRecorder, want, not []string) {
	t.Helper()
	said := w.Body.String() + html.UnescapeString(w.Body.String())
	for _, s := range want {
		assert.True(t, strings.Contains(said, s), "should hold %q", s)
	}
	for _, s := range not {
		assert.False(t, strings.Contains(w.Body.String(), s), "should not hold %q", s)
	}
}

// Holds checks how a page was answered, and what it says and does not say.
func Holds(t *testing.T, w *httptest.ResponseRecorder, status int, want, not []string) {
	t.Helper()
	assert.Equal(t, status, w.Code)
	Says(t, w, want, not)
}
