package access

import "net/http"

// Names of the session cookie. Browsers accept the first only over https and for this
// host alone.
const (
	secureCookie = "__Host-counterpour-session"
	plainCookie  = "counterpour-session"
)

// secure reports whether the browser uses https: to this server, or to a reverse proxy in
// front of it, which only the options can tell.
func (g *Guard) secure(r *http.Request) bool { return r.TLS != nil || g.opts.Secure }

// cookie returns the session cookie with a lifetime in seconds. A negative lifetime
// deletes the cookie.
func (g *Guard) cookie(r *http.Request, id string, seconds int) *http.Cookie {
	c := &http.Cookie{Name: plainCookie, Value: id, Path: "/", MaxAge: seconds, HttpOnly: true, SameSite: http.SameSiteStrictMode}
	if g.secure(r) {
		c.Name, c.Secure = secureCookie, true
	}
	return c
}

// sessionOf returns the session id in a request's cookie; "" if there is none.
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
