package access

import (
	"context"
	"net/http"
)

type secureKey struct{}

// Secure reports whether the browser of a request speaks https: to this server, or
// to one in front of it, which the guard was told of. A header alone makes nothing
// secure.
func Secure(r *http.Request) bool {
	told, _ := r.Context().Value(secureKey{}).(bool)
	return told || r.TLS != nil
}

// noteSecure notes on a request what [Secure] reports.
func (g *Guard) noteSecure(r *http.Request) *http.Request {
	return r.WithContext(context.WithValue(r.Context(), secureKey{}, g.secure(r)))
}
