package access

import (
	"encoding/json"
	"net/http"
	"net/url"
	"strings"

	"counterpour/api/accesslog"
)

// mostNext is the longest address, in characters, to return to after signing in. It may
// contain a draft.
const mostNext = 4096

// Local returns next if it is safe to redirect to after signing in: a path on this
// server. For anything else it returns "/": another host, anything that a browser might
// read as one, or the login page.
func Local(next string) string {
	// Browsers read \ as / and ignore line ends and tabs.
	odd := strings.ContainsFunc(next, func(r rune) bool { return r <= ' ' || r == '\\' || r == 0x7f })
	if odd || len(next) > mostNext || !strings.HasPrefix(next, "/") || strings.HasPrefix(next, "//") {
		return "/"
	}
	u, err := url.Parse(next)
	if err != nil || u.Scheme != "" || u.Host != "" || u.User != nil || u.Path == LoginPath || u.Path == logoutPath {
		return "/"
	}
	return next
}

// loginFor returns the address of the login page that returns to next afterwards.
func loginFor(next string) string {
	if next = Local(next); next == "/" {
		return LoginPath
	}
	return LoginPath + "?next=" + url.QueryEscape(next)
}

// isFragment reports whether htmx requests part of a page.
func isFragment(r *http.Request) bool { return r.Header.Get("HX-Request") == "true" }

// turnAway answers a client that has not signed in: a page request is redirected to the
// login page, an htmx request gets a redirect for htmx, and a program gets a 401. A wrong
// token (token is true) always gets a 401.
func turnAway(w http.ResponseWriter, r *http.Request, token bool) {
	isGet := r.Method == http.MethodGet || r.Method == http.MethodHead
	isAPI := r.URL.Path == "/v1" || strings.HasPrefix(r.URL.Path, "/v1/")
	switch {
	case token:
		w.Header().Set("WWW-Authenticate", `Bearer realm="counterpour", error="invalid_token"`)
		refuse(w, http.StatusUnauthorized, "the token is not right; look in the file of passcodes, or make another with: counterpour house token")
		return
	case isFragment(r) && !isAPI:
		w.Header().Set("HX-Redirect", loginFor(shownPage(r)))
	case isGet && !isAPI && strings.Contains(r.Header.Get("Accept"), "text/html"):
		w.Header().Set("Cache-Control", "no-store")
		http.Redirect(w, r, loginFor(r.URL.RequestURI()), http.StatusSeeOther)
		return
	}
	w.Header().Set("WWW-Authenticate", `Bearer realm="counterpour"`)
	refuse(w, http.StatusUnauthorized, "sign in at "+LoginPath+" and send this again, or send a token as Authorization: Bearer")
}

// shownPage returns the address of the page that sent an htmx request.
func shownPage(r *http.Request) string {
	u, err := url.Parse(r.Header.Get("HX-Current-URL"))
	if err != nil || u.Host != r.Host {
		return "/"
	}
	return u.RequestURI()
}

// problem is an error of RFC 9457, in the same form as in the API.
type problem struct {
	Type   string     `json:"type"`
	Title  string     `json:"title"`
	Status int        `json:"status"`
	Detail string     `json:"detail"`
	Errors []struct{} `json:"errors"` // always empty; the API lists faults here

	RequestID string `json:"request_id,omitempty"`
}

func refuse(w http.ResponseWriter, status int, detail string) {
	// Strings and numbers can always be encoded.
	text, _ := json.Marshal(problem{"about:blank", http.StatusText(status), status, detail, []struct{}{}, w.Header().Get(accesslog.Header)})
	h := w.Header()
	h.Set("Content-Type", "application/problem+json")
	h.Set("Cache-Control", "no-store")
	h.Set("X-Content-Type-Options", "nosniff")
	w.WriteHeader(status)
	_, _ = w.Write(text) // fails only if the client has gone
}
