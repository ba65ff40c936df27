package webuitest

import (
	"bytes"
	"mime/multipart"
	"net/http"
	"net/http/httptest"
	"net/url"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// Ask asks fresh pages, as a script does if a fragment is wanted.
func Ask(t *testing.T, method, path string, form url.Values, fragment bool) *httptest.ResponseRecorder {
	t.Helper()
	if method == "" {
		method = http.MethodGet
	}
	r := httptest.NewRequest(method, path, strings.NewReader(form.Encode()))
	if form != nil {
		r.Header.Set("Content-Type", "application/x-www-form-urlencoded")
	}
	if fragment {
		r.Header.Set("HX-Request", "true")
	}
	w := httptest.NewRecorder()
	NewPages(t).ServeHTTP(w, r)
	return w
}

// Post sends a form, as a script does or as a browser without.
func Post(h http.Handler, path string, form url.Values, script bool) *httptest.ResponseRecorder {
	r := httptest.NewRequest(http.MethodPost, path, strings.NewReader(form.Encode()))
	r.Header.Set("Content-Type", "application/x-www-form-urlencoded")
	if script {
		r.Header.Set("HX-Request", "true")
	}
	w := httptest.NewRecorder()
	h.ServeHTTP(w, r)
	return w
}

// Get opens a page; an etag says which copy is there already.
func Get(h http.Handler, path, etag string) *httptest.ResponseRecorder {
	r := httptest.NewRequest(http.MethodGet, path, nil)
	if etag != "" {
		r.Header.Set("If-None-Match", etag)
	}
	w := httptest.NewRecorder()
	h.ServeHTTP(w, r)
	return w
}

// Follow asks for a page, and for the one that it leads on to.
func Follow(h http.Handler, path string) *httptest.ResponseRecorder {
	w := Get(h, path, "")
	if to := w.Header().Get("Location"); to != "" {
		return Get(h, to, "")
	}
	return w
}

// SendNamed sends a form with a file, or without one if it has no name and holds
// nothing.
func SendNamed(t *testing.T, h http.Handler, path, name, file string, form url.Values) *httptest.ResponseRecorder {
	t.Helper()
	var b bytes.Buffer
	m := multipart.NewWriter(&b)
	for key, values := range form {
		for _, v := range values {
			require.NoError(t, m.WriteField(key, v))
		}
	}
	if name != "" || file != "" {
		part, err := m.CreateFormFile("file", name)
		require.NoError(t, err)
		_, err = part.Write([]byte(file))
		require.NoError(t, err)
	}
	require.NoError(t, m.Close())
	r := httptest.NewRequest(http.MethodPost, path, &b)
	r.Header.Set("Content-Type", m.FormDataContentType())
	w := httptest.NewRecorder()
	h.ServeHTTP(w, r)
	return w
}
