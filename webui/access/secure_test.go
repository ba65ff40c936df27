package access

import (
	"net/http"
	"net/http/httptest"
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestSecureIgnoresHeaders(t *testing.T) {
	for _, c := range []struct {
		name, address   string
		behindHTTPS, is bool
	}{
		{"plain", "http://bar.example/healthz", false, false},
		{"behind a server that speaks it", "http://bar.example/healthz", true, true},
		{"to this server", "https://bar.example/healthz", false, true},
	} {
		g, _ := testGuard(t, Options{Secure: c.behindHTTPS})
		r := httptest.NewRequest(http.MethodGet, c.address, nil)
		r.Header.Set("X-Forwarded-Proto", "https")
		asked := false
		g.Wrap(http.HandlerFunc(func(_ http.ResponseWriter, r *http.Request) {
			asked = true
			assert.Equal(t, c.is, Secure(r), c.name)
		})).ServeHTTP(httptest.NewRecorder(), r)
		assert.True(t, asked, c.name)
	}
}
