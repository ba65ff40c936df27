package access

import (
	"io"
	"net/http"
	"net/http/httptest"
	"testing"

	"github.com/stretchr/testify/require"
)

// What the guard adds to each request of somebody who has signed in.
func BenchmarkGuard(b *testing.B) {
	g := NewGuard(testRoster(b), Options{Log: quiet})
	g.derive = quick
	h := g.Wrap(http.HandlerFunc(func(w http.ResponseWriter, _ *http.Request) { _, _ = io.WriteString(w, "x") }))
	w := httptest.NewRecorder()
	require.NoError(b, g.SignIn(w, httptest.NewRequest(http.MethodPost, LoginPath, nil), "Ana", anaPasscode))
	r := httptest.NewRequest(http.MethodGet, "/board", nil)
	r.AddCookie(w.Result().Cookies()[0])
	b.ReportAllocs()
	for b.Loop() {
		w := httptest.NewRecorder()
		h.ServeHTTP(w, r)
		if w.Code != http.StatusOK {
			b.Fatal(w.Code)
		}
	}
}

// What one check of a passcode costs at the usual setting.
func BenchmarkUsualHash(b *testing.B) {
	h := &hash{cost: usual, salt: make([]byte, usualSalt), sum: make([]byte, usualSum)}
	b.ReportAllocs()
	for b.Loop() {
		derive(anaPasscode, h)
	}
}
