package access

import "net/http"

// Names of the cookie. Browsers take the first only from an https address, for
// this host alone.
const (
	secureCookie = "__Host-counterpour-session"
	plainCookie  = "counterpour-session"
)

// secure reports whether the browser speaks https: to this server, or to one in
// front of it, which only the options can tell.
func (g *Guard) secure(r *http.Request) bool { return r.TLS != nil || g.opts.Secure }

// cookie is the cookie of a request's session, to be kept for so many seconds;
// below zero a browser drops it.
func (g *Guard) cookie(r *http.Request, id string, seconds int) *http.Cookie {
	c := &http.Cookie{Name: plainCookie, Value: id, Path: "/", MaxAge: seconds, HttpOnly: true, SameSite: http.SameSiteStrictMode}
	if g.secure(r) {
		c.Name, c.Secure = secureCookie, true
	}
	return c
}

// sessionOf is the id of a request's session, empty if it names none.
func (g *Guard) sessionOf(r *http.Request) string {
	name := plainCookie
	if g.secure(r) {
		name = secureCookie
	}
	c, err := r.Cookie(name)
	if err != nil || len(c.Value) != tokenCode.EncodedLen(sessionBytes) {
		return ""
	}
	return c.Value
}
