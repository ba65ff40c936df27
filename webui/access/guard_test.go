package access

import (
	"net/http"
	"net/http/httptest"
	"net/url"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

const (
	html     = "text/html,application/xhtml+xml;q=0.9,*/*;q=0.8"
	problems = "application/problem+json"
)

// What somebody gets who has not signed in.
func TestWithoutASession(t *testing.T) {
	g, _ := testGuard(t, Options{})
	v := visit(t, g)
	for _, c := range []struct {
		name, method, path string
		headers            []string
		status             int
		location           string // of a redirect
		fragment           string // where a script is sent
	}{
		{name: "a page", method: "GET", path: "/", headers: []string{"Accept", html}, status: 303, location: "/login"},
		{name: "a page with a query", method: "GET", path: "/board?avoid=tree+nuts&x=%2F", headers: []string{"Accept", html}, status: 303,
			location: "/login?next=%2Fboard%3Favoid%3Dtree%2Bnuts%26x%3D%252F"},
		{name: "a page, only its head", method: "HEAD", path: "/board", headers: []string{"Accept", html}, status: 303, location: "/login?next=%2Fboard"},
		{name: "metrics in a browser", method: "GET", path: "/metrics", headers: []string{"Accept", html}, status: 303, location: "/login?next=%2Fmetrics"},
		{name: "an address that looks like another host", method: "GET", path: "//elsewhere.example/x", headers: []string{"Accept", html}, status: 303, location: "/login"},
		{name: "part of a page", method: "POST", path: "/", headers: []string{"HX-Request", "true", "Accept", "text/html", "HX-Current-URL", "BASE/?text=gin"}, status: 401,
			fragment: "/login?next=%2F%3Ftext%3Dgin"},
		{name: "part of a page, from another host", method: "GET", path: "/names", headers: []string{"HX-Request", "true", "HX-Current-URL", "http://elsewhere.example/board"}, status: 401, fragment: "/login"},
		{name: "part of a page, from nowhere", method: "GET", path: "/names", headers: []string{"HX-Request", "true"}, status: 401, fragment: "/login"},
		{name: "a form", method: "POST", path: "/board", headers: []string{"Accept", html}, status: 401},
		{name: "the API", method: "POST", path: "/v1/score", status: 401},
		{name: "the API in a browser", method: "GET", path: "/v1/ingredients", headers: []string{"Accept", html, "HX-Request", "true"}, status: 401},
		{name: "all of the API", method: "GET", path: "/v1", headers: []string{"Accept", html}, status: 401},
		{name: "metrics", method: "GET", path: "/metrics", status: 401},
		{name: "the API's description", method: "GET", path: "/openapi.json", headers: []string{"Accept", "application/json"}, status: 401},
		{name: "the board's events", method: "GET", path: "/board/events", headers: []string{"Accept", "text/event-stream"}, status: 401},
		{name: "another method", method: "DELETE", path: "/", status: 401},
		{name: "a token that is wrong", method: "GET", path: "/board", headers: []string{"Accept", html, "Authorization", "Bearer cpt_x"}, status: 401},
		{name: "no more than the word", method: "GET", path: "/board", headers: []string{"Accept", html, "Authorization", "bearer"}, status: 401},
		{name: "another scheme", method: "GET", path: "/board", headers: []string{"Accept", html, "Authorization", "Basic QW5hOng="}, status: 303, location: "/login?next=%2Fboard"},
		{name: "a session that is none", method: "GET", path: "/board", headers: []string{"Accept", html, "Cookie", plainCookie + "=" + strings.Repeat("A", 43)}, status: 303, location: "/login?next=%2Fboard"},
		{name: "a cookie that is none", method: "GET", path: "/v1/templates", headers: []string{"Cookie", plainCookie + "=" + strings.Repeat("A", 5000)}, status: 401},
		{name: "the secure cookie, where it is not in use", method: "GET", path: "/v1/templates", headers: []string{"Cookie", secureCookie + "=" + strings.Repeat("A", 43)}, status: 401},
		{name: "out of the static files", method: "GET", path: "/static/../metrics", status: 401},
		{name: "out of them, hidden", method: "GET", path: "/static/%2e%2e/metrics", status: 401},
		{name: "out of them, hidden well", method: "GET", path: "/static/a%2f..%2f..%2fmetrics", status: 401},
		{name: "out of them, doubly", method: "GET", path: "/static//..//metrics", status: 401},
		{name: "beside the login", method: "GET", path: "/login/x", status: 401},
		{name: "beside health", method: "GET", path: "/healthz/../metrics", status: 401},

		{name: "the login", method: "GET", path: "/login", status: 200},
		{name: "static files", method: "GET", path: "/static/vendor/x.js", status: 200},
		{name: "the list of static files", method: "GET", path: "/static/", status: 200},
		{name: "health", method: "GET", path: "/healthz", status: 200},
		{name: "readiness", method: "GET", path: "/readyz", headers: []string{"Authorization", "Bearer cpt_x"}, status: 200},
	} {
		t.Run(c.name, func(t *testing.T) {
			for i := range c.headers {
				c.headers[i] = strings.ReplaceAll(c.headers[i], "BASE", v.base)
			}
			a := v.ask(c.method, c.path, nil, c.headers...)
			require.Equal(t, c.status, a.StatusCode, a.body)
			assert.Equal(t, c.location, a.Header.Get("Location"))
			assert.Equal(t, c.fragment, a.Header.Get("HX-Redirect"))
			switch c.status {
			case http.StatusUnauthorized:
				assert.Equal(t, problems, a.Header.Get("Content-Type"))
				assert.True(t, strings.HasPrefix(a.Header.Get("WWW-Authenticate"), "Bearer "), "RFC 6750")
				said := a.says(t)
				assert.Equal(t, []any{"about:blank", "Unauthorized", 401.0, []any{}}, []any{said["type"], said["title"], said["status"], said["errors"]})
				assert.NotEmpty(t, said["detail"])
				assert.Equal(t, "no-store", a.Header.Get("Cache-Control"))
			case http.StatusOK:
				said := a.says(t)
				assert.Equal(t, []any{false, false, false}, []any{said["known"], said["floor"], said["lead"]}, "nobody may do nothing")
			}
		})
	}
}

func TestASession(t *testing.T) {
	g, clock := testGuard(t, Options{})
	v := visit(t, g)
	a := v.ask("POST", LoginPath, url.Values{"name": {" ana"}, "passcode": {anaPasscode}}, "Accept", html)
	require.Equal(t, http.StatusUnprocessableEntity, a.StatusCode, "a page trims a name; the guard takes it as it is")
	a = v.ask("POST", LoginPath, url.Values{"name": {"aNA"}, "passcode": {anaPasscode}, "next": {"/board?avoid=eggs"}})
	require.Equal(t, http.StatusSeeOther, a.StatusCode)
	assert.Equal(t, "/board?avoid=eggs", a.Header.Get("Location"))

	for _, path := range []string{"/board", "/metrics", "/openapi.json", "/v1/templates", "/login", "/healthz"} {
		a = v.ask("GET", path, nil)
		require.Equal(t, http.StatusOK, a.StatusCode, path)
		said := a.says(t)
		assert.Equal(t, []any{"Ana", true, true, true}, []any{said["name"], said["known"], said["floor"], said["lead"]}, path)
		assert.Contains(t, a.Header.Get("Vary"), "Cookie", path)
	}

	// It is used until it has been left alone for too long.
	clock.pass(Idle - time.Second)
	assert.Equal(t, http.StatusOK, v.ask("GET", "/", nil).StatusCode)
	clock.pass(Idle)
	assert.Equal(t, http.StatusUnauthorized, v.ask("GET", "/", nil).StatusCode)

	// Somebody else signs in on the same screen; the floor is no lead.
	require.Equal(t, http.StatusSeeOther, v.signIn("bo", boPasscode).StatusCode)
	said := v.ask("GET", "/", nil).says(t)
	assert.Equal(t, []any{"Bo", true, false}, []any{said["name"], said["floor"], said["lead"]})
	require.Equal(t, http.StatusSeeOther, v.signIn("Ana", anaPasscode).StatusCode)
	assert.Equal(t, "Ana", v.ask("GET", "/", nil).says(t)["name"])
	assert.Len(t, g.sessions.open, 1, "whoever signs in ends the session that was there")
}

func TestSigningOut(t *testing.T) {
	g, _ := testGuard(t, Options{})
	v := visit(t, g)
	require.Equal(t, http.StatusSeeOther, v.signIn("Bo", boPasscode).StatusCode)
	id := v.client.Jar.Cookies(mustURL(t, v.base))[0]

	a := v.ask("GET", logoutPath, nil)
	assert.Equal(t, http.StatusMethodNotAllowed, a.StatusCode, "a link must not sign out")
	assert.Equal(t, "POST", a.Header.Get("Allow"))
	assert.Equal(t, http.StatusOK, v.ask("GET", "/", nil).StatusCode)

	a = v.ask("POST", logoutPath, nil)
	assert.Equal(t, http.StatusSeeOther, a.StatusCode)
	assert.Equal(t, "/login", a.Header.Get("Location"))
	left := v.client.Jar.Cookies(mustURL(t, v.base))
	require.Len(t, left, 1, "the browser drops the cookie of the session")
	assert.Equal(t, plainDevice, left[0].Name)
	assert.Equal(t, http.StatusUnauthorized, v.ask("GET", "/", nil, "Cookie", id.String()).StatusCode, "and one that kept it is out")
	assert.Empty(t, g.sessions.open)

	a = v.ask("POST", logoutPath, nil, "HX-Request", "true")
	assert.Equal(t, http.StatusNoContent, a.StatusCode)
	assert.Equal(t, "/login", a.Header.Get("HX-Redirect"))
}

func mustURL(t testing.TB, address string) *url.URL {
	t.Helper()
	u, err := url.Parse(address)
	require.NoError(t, err)
	return u
}

func TestTheCookie(t *testing.T) {
	for _, c := range []struct {
		name         string
		secure, tls  bool
		want, unlike string
	}{
		{"plain", false, false, plainCookie, secureCookie},
		{"a server in front speaks TLS", true, false, secureCookie, plainCookie},
		{"TLS", false, true, secureCookie, plainCookie},
	} {
		t.Run(c.name, func(t *testing.T) {
			g, _ := testGuard(t, Options{Secure: c.secure})
			server := httptest.NewUnstartedServer(g.Wrap(behind(g)))
			if c.tls {
				server.StartTLS()
			} else {
				server.Start()
			}
			t.Cleanup(server.Close)
			v := newVisitor(t, server)
			// A header alone makes nothing secure.
			a := v.signIn("Ana", anaPasscode, "X-Forwarded-Proto", "https", "Forwarded", "proto=https")
			require.Len(t, a.Cookies(), 2, "the session, and the device")
			assert.Equal(t, strings.Replace(c.want, "session", "device", 1), a.Cookies()[1].Name)
			assert.Equal(t, c.secure || c.tls, a.Cookies()[1].Secure)
			assert.True(t, a.Cookies()[1].HttpOnly)
			k := a.Cookies()[0]
			assert.Equal(t, c.want, k.Name)
			assert.Equal(t, c.secure || c.tls, k.Secure)
			assert.True(t, k.HttpOnly)
			assert.Equal(t, http.SameSiteStrictMode, k.SameSite)
			assert.Equal(t, "/", k.Path)
			assert.Empty(t, k.Domain)
			assert.Equal(t, int(Whole.Seconds()), k.MaxAge)
			assert.Len(t, k.Value, 43)

			assert.Equal(t, http.StatusOK, v.ask("GET", "/", nil, "Cookie", c.want+"="+k.Value).StatusCode)
			other := newVisitor(t, server)
			assert.Equal(t, http.StatusUnauthorized, other.ask("GET", "/", nil, "Cookie", c.unlike+"="+k.Value).StatusCode)
		})
	}
}

// A browser says where a form came from; a program says nothing.
func TestFormsFromOtherSites(t *testing.T) {
	token, _ := scriptToken()
	g, _ := testGuard(t, Options{})
	v := visit(t, g)
	require.Equal(t, http.StatusSeeOther, v.signIn("Ana", anaPasscode).StatusCode)
	session := plainCookie + "=" + v.client.Jar.Cookies(mustURL(t, v.base))[0].Value
	login := url.Values{"name": {"Bo"}, "passcode": {boPasscode}}
	for _, c := range []struct {
		name, method, path string
		form               url.Values
		headers            []string
		status             int
	}{
		{"a session, from this site", "POST", "/board", nil, []string{"Cookie", session, "Sec-Fetch-Site", "same-origin"}, 200},
		{"a session, from an old browser on this site", "POST", "/board", nil, []string{"Cookie", session, "Origin", "BASE"}, 200},
		{"a session, from no browser", "POST", "/board", nil, []string{"Cookie", session}, 200},
		{"a session, from another site", "POST", "/board", nil, []string{"Cookie", session, "Sec-Fetch-Site", "cross-site"}, 403},
		{"a session, from a sibling", "POST", "/board", nil, []string{"Cookie", session, "Sec-Fetch-Site", "same-site"}, 403},
		{"a session, from an old browser elsewhere", "POST", "/board", nil, []string{"Cookie", session, "Origin", "https://elsewhere.example"}, 403},
		{"a session, the API from another site", "POST", "/v1/score", nil, []string{"Cookie", session, "Sec-Fetch-Site", "cross-site"}, 403},
		{"a link from another site", "GET", "/board", nil, []string{"Cookie", session, "Sec-Fetch-Site", "cross-site"}, 200},
		{"no session, from another site", "POST", "/board", nil, []string{"Sec-Fetch-Site", "cross-site"}, 403},
		{"the login from this site", "POST", "/login", login, []string{"Sec-Fetch-Site", "same-origin"}, 303},
		{"the login from another site", "POST", "/login", login, []string{"Sec-Fetch-Site", "cross-site"}, 403},
		{"the login from an old browser elsewhere", "POST", "/login", login, []string{"Origin", "null"}, 403},
		{"signing out from another site", "POST", "/logout", nil, []string{"Cookie", session, "Sec-Fetch-Site", "cross-site"}, 403},
		{"a token", "POST", "/v1/score", nil, []string{"Authorization", "Bearer " + token}, 200},
		{"a token, from a page that was given it", "POST", "/v1/score", nil, []string{"Authorization", "Bearer " + token, "Sec-Fetch-Site", "cross-site", "Origin", "https://elsewhere.example"}, 200},
		{"a wrong token with a session, from another site", "POST", "/board", nil, []string{"Authorization", "Bearer x", "Cookie", session, "Sec-Fetch-Site", "cross-site"}, 403},
		{"a wrong token with a session", "POST", "/board", nil, []string{"Authorization", "Bearer x", "Cookie", session}, 401},
	} {
		t.Run(c.name, func(t *testing.T) {
			v := visitorWithout(v)
			for i := range c.headers {
				c.headers[i] = strings.ReplaceAll(c.headers[i], "BASE", v.base)
			}
			a := v.ask(c.method, c.path, c.form, c.headers...)
			assert.Equal(t, c.status, a.StatusCode, a.body)
			if c.status == http.StatusForbidden {
				assert.Equal(t, problems, a.Header.Get("Content-Type"))
				assert.Contains(t, a.says(t)["detail"], "another site")
				assert.Empty(t, a.Cookies())
			}
		})
	}
	assert.Equal(t, "Ana", v.ask("GET", "/", nil).says(t)["name"], "nobody was signed out")
}

// visitorWithout is a visitor of the same server without cookies.
func visitorWithout(v *visitor) *visitor {
	client := *v.client
	client.Jar = nil
	return &visitor{v.t, v.base, &client}
}

func TestATokenOnEveryRequest(t *testing.T) {
	token, _ := scriptToken()
	g, _ := testGuard(t, Options{})
	v := visit(t, g)
	for _, scheme := range []string{"Bearer ", "bearer ", "BEARER  "} {
		a := v.ask("POST", "/v1/outs", nil, "Authorization", scheme+token)
		require.Equal(t, http.StatusOK, a.StatusCode)
		said := a.says(t)
		assert.Equal(t, []any{"till-script", true, false}, []any{said["name"], said["floor"], said["lead"]})
		assert.Empty(t, a.Cookies(), "a token begins no session")
		assert.Contains(t, a.Header.Get("Vary"), "Authorization")
	}
	assert.Equal(t, http.StatusUnauthorized, v.ask("POST", "/v1/outs", nil).StatusCode)

	// A token is who it says, whatever the cookie says.
	require.Equal(t, http.StatusSeeOther, v.signIn("Ana", anaPasscode).StatusCode)
	assert.Equal(t, "till-script", v.ask("GET", "/", nil, "Authorization", "Bearer "+token).says(t)["name"])
}

func TestDefaults(t *testing.T) {
	g := NewGuard(testRoster(t), Options{})
	assert.Equal(t, []time.Duration{Idle, Whole}, []time.Duration{g.sessions.idle, g.sessions.whole})
	assert.WithinDuration(t, time.Now(), g.now(), time.Minute)
	g = NewGuard(testRoster(t), Options{Idle: time.Minute, Whole: time.Hour})
	assert.Equal(t, []time.Duration{time.Minute, time.Hour}, []time.Duration{g.sessions.idle, g.sessions.whole})
}
