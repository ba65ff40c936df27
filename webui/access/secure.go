package access

import (
	"context"
	"net/http"
)

type secureKey struct{}

// Secure reports whether the browser uses https: to this server, or to a reverse proxy
// that the options name. Headers of the request are not trusted.
func Secure(r *http.Request) bool {
	told, _ := r.Context().Value(secureKey{}).(bool)
	return told || r.TLS != nil
}

// noteSecure stores the result of [Secure] in the request's context.
func (g *Guard) noteSecure(r *http.Request) *http.Request {
	return r.WithContext(context.WithValue(r.Context(), secureKey{}, g.secure(r)))
}
