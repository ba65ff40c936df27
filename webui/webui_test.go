package webui_test

import (
	"net/http"
	"net/http/httptest"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"counterpour/webui"
	"counterpour/webui/webuitest"
)

func TestFormsOfOtherSitesAreRefused(t *testing.T) {
	r := httptest.NewRequest(http.MethodPost, "/", strings.NewReader("text=x"))
	r.Header.Set("Sec-Fetch-Site", "cross-site")
	w := httptest.NewRecorder()
	webuitest.NewPages(t).ServeHTTP(w, r)
	assert.Equal(t, http.StatusForbidden, w.Code)
	assert.Contains(t, w.Body.String(), "another site")
}

func TestNewNeedsItsParts(t *testing.T) {
	_, err := webui.New(nil, nil)
	assert.Error(t, err)
}

// Whatever page it is, somebody who reads it is told that it may be old.
func TestAPageSaysThatItMayBeOld(t *testing.T) {
	const said = "This page may be old."
	h := webuitest.NewHouse()
	pages := webuitest.PagesOf(t, h)
	for _, path := range []string{"/", "/tonight", "/bench", "/riffs", "/board", "/specs", "/stock", "/map", "/training", "/tools", "/nowhere"} {
		h.Old = true
		assert.Contains(t, webuitest.Get(pages, path, "").Body.String(), said+"</strong> The store of the house", path)
		h.Old = false
		assert.NotContains(t, webuitest.Get(pages, path, "").Body.String(), said+"</strong> The store of the house", path)
	}
}
