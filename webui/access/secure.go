package access

import (
	"context"
	"net/http"
	"net/url"
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

// At is the whole address of a page of this server: at the name by which this browser
// reached it, plain or by https. What a header says of a server in front is believed only
// as far as [Secure] believes it.
func At(r *http.Request, path string, query url.Values) url.URL {
	at := url.URL{Scheme: "http", Host: r.Host, Path: path, RawQuery: query.Encode()}
	if Secure(r) {
		at.Scheme = "https"
	}
	return at
}
