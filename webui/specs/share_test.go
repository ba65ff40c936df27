package specs_test

import (
	"net/http"
	"net/http/httptest"
	"strings"
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

// An address by which a machine calls itself is no way for a phone: the page says so, and
// shows no code, on paper neither.
func TestNoPhoneOpensALoopback(t *testing.T) {
	pages := webuitest.NewPages(t)
	for host, here := range map[string]bool{"127.0.0.1:8086": true, "localhost:8086": true, "bar.localhost": true, "[::1]:8086": true, "192.168.1.20:8086": false, "bar.example": false} {
		for _, path := range []string{"/specs/spindrift", "/specs/spindrift/card"} {
			w := httptest.NewRecorder()
			pages.ServeHTTP(w, httptest.NewRequest(http.MethodGet, "http://"+host+path, nil))
			assert.Equal(t, http.StatusOK, w.Code)
			assert.Equal(t, !here, strings.Contains(w.Body.String(), `<svg class="code"`), "%s%s", host, path)
			assert.Equal(t, here && path == "/specs/spindrift", strings.Contains(w.Body.String(), "No phone opens this"), "%s%s", host, path)
		}
	}
}

// The card that is printed carries the same code; a draft has no spec to lead to.
func TestTheCardCarriesTheCode(t *testing.T) {
	pages := webuitest.NewPages(t)
	webuitest.Says(t, webuitest.Get(pages, "/specs/spindrift/card", ""), []string{`<svg class="code"`, "A code that opens Spindrift"}, nil)
	webuitest.Says(t, webuitest.Get(pages, "/card?text=2+oz+gin", ""), []string{"A drink without a name"}, []string{`<svg class="code"`})
}
