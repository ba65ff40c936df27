package access

import (
	"encoding/json"
	"net/http"
	"net/url"
	"strings"

	"counterpour/api/journal"
)

// mostNext is the most characters of an address to go on to; a draft may be in it.
const mostNext = 4096

// Local returns next if it is an address within this server to which a browser
// may be sent after signing in, and / for anything else: another host, whatever
// a browser might read as one, or the login itself.
func Local(next string) string {
	// Browsers read \ as / and pass over line ends and tabs.
	odd := strings.ContainsFunc(next, func(r rune) bool { return r <= ' ' || r == '\\' || r == 0x7f })
	if odd || len(next) > mostNext || !strings.HasPrefix(next, "/") || strings.HasPrefix(next, "//") {
		return "/"
	}
	u, err := url.Parse(next)
	if err != nil || u.Scheme != "" || u.Host != "" || u.User != nil || u.Path == LoginPath || u.Path == LogoutPath {
		return "/"
	}
	return next
}

// LoginFor returns the address of the login page that goes on to next.
func LoginFor(next string) string {
	if next = Local(next); next == "/" {
		return LoginPath
	}
	return LoginPath + "?next=" + url.QueryEscape(next)
}

// isFragment reports whether a script asks for part of a page.
func isFragment(r *http.Request) bool { return r.Header.Get("HX-Request") == "true" }

// turnAway answers who has not signed in, in the way that the asker can follow: a
// page leads to the login page, part of a page makes the script go there, and a
// program is told what is missing. A token that is wrong is a program's.
func turnAway(w http.ResponseWriter, r *http.Request, token bool) {
	isGet := r.Method == http.MethodGet || r.Method == http.MethodHead
	isAPI := r.URL.Path == "/v1" || strings.HasPrefix(r.URL.Path, "/v1/")
	switch {
	case token:
		w.Header().Set("WWW-Authenticate", `Bearer realm="counterpour", error="invalid_token"`)
		refuse(w, http.StatusUnauthorized, "the token is not right; look in the file of passcodes, or make another with: counterpour house token")
		return
	case isFragment(r) && !isAPI:
		w.Header().Set("HX-Redirect", LoginFor(shownPage(r)))
	case isGet && !isAPI && strings.Contains(r.Header.Get("Accept"), "text/html"):
		w.Header().Set("Cache-Control", "no-store")
		http.Redirect(w, r, LoginFor(r.URL.RequestURI()), http.StatusSeeOther)
		return
	}
	w.Header().Set("WWW-Authenticate", `Bearer realm="counterpour"`)
	refuse(w, http.StatusUnauthorized, "sign in at "+LoginPath+" and send this again, or send a token as Authorization: Bearer")
}

// shownPage is the address of the page that a script asks from.
func shownPage(r *http.Request) string {
	u, err := url.Parse(r.Header.Get("HX-Current-URL"))
	if err != nil || u.Host != r.Host {
		return "/"
	}
	return u.RequestURI()
}

// problem is an error as RFC 9457 describes it, in the shape of the API.
type problem struct {
	Type   string     `json:"type"`
	Title  string     `json:"title"`
	Status int        `json:"status"`
	Detail string     `json:"detail"`
	Errors []struct{} `json:"errors"` // the API lists faults of a request here; there are none

	RequestID string `json:"request_id,omitempty"`
}

func refuse(w http.ResponseWriter, status int, detail string) {
	// Texts and numbers always have words in JSON.
	text, _ := json.Marshal(problem{"about:blank", http.StatusText(status), status, detail, []struct{}{}, w.Header().Get(journal.Header)})
	h := w.Header()
	h.Set("Content-Type", "application/problem+json")
	h.Set("Cache-Control", "no-store")
	h.Set("X-Content-Type-Options", "nosniff")
	w.WriteHeader(status)
	_, _ = w.Write(text) // the client may have gone
}
