package specs_test

import (
	"net/http"
	"net/http/httptest"
	"testing"

	"github.com/stretchr/testify/assert"

	"counterpour/webui/webuitest"
)

// The address is the one that this browser used, plain or by https; what it says of
// a server in front is not believed.
func TestASpecIsShared(t *testing.T) {
	pages := webuitest.NewPages(t)
	for _, want := range []string{"http://bar.example:8080/specs/spindrift", "https://bar.example:8080/specs/spindrift"} {
		r := httptest.NewRequest(http.MethodGet, want, nil)
		r.Header.Set("X-Forwarded-Proto", "https")
		w := httptest.NewRecorder()
		pages.ServeHTTP(w, r)
		assert.Equal(t, http.StatusOK, w.Code)
		webuitest.Says(t, w, []string{want + "</pre>", `<svg class="code"`, "A code that opens Spindrift"}, nil)
	}
}

// The card that is printed carries the same code; a draft has no spec to lead to.
func TestTheCardCarriesTheCode(t *testing.T) {
	pages := webuitest.NewPages(t)
	webuitest.Says(t, webuitest.Get(pages, "/specs/spindrift/card", ""), []string{`<svg class="code"`, "A code that opens Spindrift"}, nil)
	webuitest.Says(t, webuitest.Get(pages, "/card?text=2+oz+gin", ""), []string{"A drink without a name"}, []string{`<svg class="code"`})
}
