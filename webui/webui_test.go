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
