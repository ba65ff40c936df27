package specs_test

import (
	"net/http"
	"net/http/httptest"
	"testing"

	"github.com/stretchr/testify/assert"

	"counterpour/webui/webuitest"
)

// The address is the one that this browser used, plain or by https.
func TestASpecIsShared(t *testing.T) {
	pages := webuitest.NewPages(t)
	for proto, want := range map[string]string{"": "http://bar.example:8080/specs/spindrift", "https": "https://bar.example:8080/specs/spindrift"} {
		r := httptest.NewRequest(http.MethodGet, "http://bar.example:8080/specs/spindrift", nil)
		r.Header.Set("X-Forwarded-Proto", proto)
		w := httptest.NewRecorder()
		pages.ServeHTTP(w, r)
		assert.Equal(t, http.StatusOK, w.Code)
		webuitest.Says(t, w, []string{want + "</pre>", `<svg class="code"`, "A code that opens Spindrift"}, nil)
	}
}
