package webui_test

import (
	"errors"
	"html"
	"io"
	"log/slog"
	"net/http"
	"net/http/cookiejar"
	"net/http/httptest"
	"net/url"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/webui"
	"counterpour/webui/access"
	"counterpour/webui/frame"
	"counterpour/webui/webuitest"
)

const (
	anaPasscode = "harbour lamp nine"
	boPasscode  = "copper jigger"
)

// doorBook is a book of a lead and somebody of the floor, made once.
var doorBook = sync.OnceValues(func() (*access.Roster, error) {
	var text strings.Builder
	for _, p := range []struct {
		role           access.Role
		name, passcode string
	}{{access.Lead, "Ana", anaPasscode}, {access.Floor, "Bo", boPasscode}} {
		hash, err := access.HashPasscode(p.passcode)
		if err != nil {
			return nil, err
		}
		line, err := access.Line(p.role, p.name, hash)
		if err != nil {
			return nil, err
		}
		text.WriteString(line + "\n")
	}
	return access.Parse(text.String())
})

var noLog = slog.New(slog.NewTextHandler(io.Discard, nil))

// guarded serves the pages of a house behind a guard, until the test ends.
func guarded(t *testing.T) (address string) {
	t.Helper()
	book, err := doorBook()
	require.NoError(t, err)
	guard := access.NewGuard(book, access.Options{Log: noLog})
	pages, err := webui.NewWithLogin(webuitest.Visit(webuitest.NewHouse()), guard, noLog)
	require.NoError(t, err)
	server := httptest.NewServer(guard.Wrap(pages))
	t.Cleanup(server.Close)
	return server.URL
}

// fakeDoor answers by the name.
type fakeDoor struct{}

func (fakeDoor) SignIn(w http.ResponseWriter, _ *http.Request, name, passcode string) error {
	switch {
	case name == "hasty":
		return &access.WaitError{After: 7200 * time.Millisecond}
	case name == "hastier":
		return &access.WaitError{After: 5 * time.Minute}
	case name == "broken":
		return errors.New("the lock is broken")
	case name != "Ana" || passcode != anaPasscode:
		return access.ErrWrong
	}
	http.SetCookie(w, &http.Cookie{Name: "here", Value: "x"})
	return nil
}

func TestLoginScenarios(t *testing.T) {
	pages, err := webui.NewWithLogin(webuitest.Visit(webuitest.NewHouse()), fakeDoor{}, noLog)
	require.NoError(t, err)
	form := func(name, passcode, next string) url.Values {
		return url.Values{"name": {name}, "passcode": {passcode}, "next": {next}}
	}
	for _, c := range []struct {
		name, method, path string
		form               url.Values
		by                 *access.Person
		header             string // as name: value
		status             int
		to, retry          string
		want, not          []string
	}{
		{name: "the form", method: "GET", path: "/login", status: 200, want: []string{"Who are you?", `type="password"`, `autocomplete="current-password"`, `autocomplete="username"`,
			`name="next" value="/"`, webuitest.FootLine}, not: []string{`role="alert"`, "Sign out", "another site"}},
		{name: "with where to go on to", method: "GET", path: "/login?next=%2Fboard%3Favoid%3Deggs", status: 200, want: []string{`name="next" value="/board?avoid=eggs"`}},
		{name: "not to another host", method: "GET", path: "/login?next=%2F%2Felsewhere.example", status: 200, want: []string{`name="next" value="/"`}, not: []string{"elsewhere"}},
		{name: "from a link elsewhere", method: "GET", path: "/login?next=%2Fboard", header: "Sec-Fetch-Site: cross-site", status: 200, want: []string{`<a href="/board">go on if you have</a>`}},
		{name: "right", method: "POST", path: "/login", form: form(" Ana ", anaPasscode, "/board?avoid=eggs"), status: 303, to: "/board?avoid=eggs"},
		{name: "right, to another host", method: "POST", path: "/login", form: form("Ana", anaPasscode, `/\elsewhere.example`), status: 303, to: "/"},
		{name: "right, to nowhere", method: "POST", path: "/login?next=//elsewhere.example", form: url.Values{"name": {"Ana"}, "passcode": {anaPasscode}}, status: 303, to: "/"},
		{name: "wrong", method: "POST", path: "/login", form: form(`<Ana>`, "s3cret passcode", "/board"), status: 422,
			want: []string{"The name or the passcode is not right", `value="&lt;Ana&gt;"`, `name="next" value="/board"`, `role="alert"`, `aria-describedby="amiss"`}, not: []string{"s3cret"}},
		{name: "nothing written", method: "POST", path: "/login", form: form("", "", ""), status: 422, want: []string{"Write your name and your passcode."}},
		{name: "no passcode", method: "POST", path: "/login", form: form("Ana", "   ", "/"), status: 422, want: []string{"Write your name and your passcode.", `value="Ana"`}},
		{name: "a passcode in the address", method: "POST", path: "/login?name=Ana&passcode=" + url.QueryEscape(anaPasscode), form: url.Values{}, status: 422, want: []string{"Write your name"}, not: []string{anaPasscode, "Ana"}},
		{name: "too hasty", method: "POST", path: "/login", form: form("hasty", "s3cret passcode", "/"), status: 429, retry: "8",
			want: []string{"Wait 8 seconds and try again", `value="hasty"`}, not: []string{"s3cret"}},
		{name: "far too hasty", method: "POST", path: "/login", form: form("hastier", "s3cret passcode", "/"), status: 429, retry: "300", want: []string{"Wait 5 minutes"}},
		{name: "a lock that breaks", method: "POST", path: "/login", form: form("broken", "s3cret passcode", "/"), status: 500, want: []string{"Something broke"}, not: []string{"lock", "s3cret"}},
		{name: "from another site", method: "POST", path: "/login", form: form("Ana", anaPasscode, "/"), header: "Sec-Fetch-Site: cross-site", status: 403, want: []string{"came from another site"}},
		{name: "a form too long", method: "POST", path: "/login", form: form("Ana", strings.Repeat("x", frame.MaxBody), "/"), status: 413},
		{name: "another method", method: "PUT", path: "/login", status: 405},
		{name: "a lead has signed in", method: "GET", path: "/login?next=%2Fboard", by: &access.Person{Name: "Ana", Role: access.Lead}, status: 200,
			want: []string{"<h2 id=\"who\">Ana</h2>", "A lead may do everything", `action="/logout"`, `href="/board">Go on`}, not: []string{"password"}},
		{name: "the floor has signed in", method: "GET", path: "/login", by: &access.Person{Name: "Bo", Role: access.Floor}, status: 200, want: []string{"marks what ran out"}, not: []string{"may do everything"}},
	} {
		t.Run(c.name, func(t *testing.T) {
			r := httptest.NewRequest(c.method, c.path, strings.NewReader(c.form.Encode()))
			if c.form != nil {
				r.Header.Set("Content-Type", "application/x-www-form-urlencoded")
			}
			if name, value, ok := strings.Cut(c.header, ": "); ok {
				r.Header.Set(name, value)
			}
			if c.by != nil {
				r = r.WithContext(access.With(r.Context(), *c.by))
			}
			w := httptest.NewRecorder()
			pages.ServeHTTP(w, r)
			assert.Equal(t, c.status, w.Code)
			assert.Equal(t, c.to, w.Header().Get("Location"))
			assert.Equal(t, c.retry, w.Header().Get("Retry-After"))
			assert.Equal(t, c.status == http.StatusSeeOther, len(w.Result().Cookies()) > 0)
			if c.status == http.StatusOK || c.status == http.StatusUnprocessableEntity {
				assert.Equal(t, "no-store", w.Header().Get("Cache-Control"))
			}
			said := w.Body.String()
			for _, want := range c.want {
				assert.Contains(t, said, want)
			}
			for _, not := range c.not {
				assert.NotContains(t, said, not)
				assert.NotContains(t, html.UnescapeString(said), not)
			}
		})
	}
}

// Pages without a door have no login.
func TestNoDoorNoLogin(t *testing.T) {
	assert.Equal(t, http.StatusNotFound, webuitest.Get(webuitest.NewPages(t), "/login", "").Code)
}

func TestWaitWords(t *testing.T) {
	for d, want := range map[time.Duration]string{time.Millisecond: "1 second", 1001 * time.Millisecond: "2 seconds", 90 * time.Second: "90 seconds",
		91 * time.Second: "2 minutes", 5 * time.Minute: "5 minutes", 15*time.Minute + 1: "16 minutes"} {
		assert.Equal(t, want, webui.WaitWords(d), "%v", d)
	}
}

// Pages, guard and cookies together: in, about, and out.
func TestPagesBehindAGuard(t *testing.T) {
	address := guarded(t)
	jar, err := cookiejar.New(nil)
	require.NoError(t, err)
	client := &http.Client{Jar: jar} // follows where it is sent, as a browser does
	send := func(method, path string, form url.Values) (status int, at, body string) {
		t.Helper()
		r, err := http.NewRequestWithContext(t.Context(), method, address+path, strings.NewReader(form.Encode()))
		require.NoError(t, err)
		r.Header.Set("Content-Type", "application/x-www-form-urlencoded")
		r.Header.Set("Accept", "text/html")
		w, err := client.Do(r)
		require.NoError(t, err)
		defer w.Body.Close()
		text, err := io.ReadAll(w.Body)
		require.NoError(t, err)
		return w.StatusCode, w.Request.URL.RequestURI(), string(text)
	}
	status, at, body := send("GET", "/board?avoid=tree+nuts", nil)
	assert.Equal(t, http.StatusOK, status)
	assert.Equal(t, "/login?next=%2Fboard%3Favoid%3Dtree%2Bnuts", at)
	assert.Contains(t, body, `name="next" value="/board?avoid=tree&#43;nuts"`)
	for _, m := range webuitest.Loads.FindAllStringSubmatch(body, -1) {
		status, _, _ := send("GET", m[1], nil)
		assert.Equal(t, http.StatusOK, status, "%s, before anybody has signed in", m[1])
	}

	status, at, body = send("POST", "/login", url.Values{"name": {"Bo"}, "passcode": {boPasscode}, "next": {"/board?avoid=tree+nuts"}})
	assert.Equal(t, http.StatusOK, status)
	assert.Equal(t, "/board?avoid=tree+nuts", at)
	assert.Contains(t, body, "Nothing is out")
	_, _, body = send("GET", "/login", nil)
	assert.Contains(t, body, `<h2 id="who">Bo</h2>`)

	_, at, body = send("POST", "/logout", nil)
	assert.Equal(t, "/login", at)
	assert.Contains(t, body, "Who are you?")
	_, at, _ = send("GET", "/specs", nil)
	assert.Equal(t, "/login?next=%2Fspecs", at)
}

func TestLoginIsLight(t *testing.T) {
	pages, err := webui.NewWithLogin(webuitest.Visit(webuitest.NewHouse()), fakeDoor{}, noLog)
	require.NoError(t, err)
	w := webuitest.Get(pages, "/login", "")
	weight := w.Body.Len()
	for _, m := range webuitest.Loads.FindAllStringSubmatch(w.Body.String(), -1) {
		weight += webuitest.Get(pages, m[1], "").Body.Len()
	}
	t.Logf("/login: %d bytes", weight)
	assert.Less(t, weight, webuitest.MaxLoad)
}

func TestLoginInABrowser(t *testing.T) {
	script := webuitest.Axe(t)
	b := webuitest.NewBrowser(t, 360)
	address := guarded(t)
	const atLogin = `location.pathname === '/login' && document.readyState === 'complete'`
	fill := func(b *webuitest.Browser, name, passcode string) {
		b.Do(chromedp.SetValue(chromedp.ID("name"), name), chromedp.SendKeys(chromedp.ID("passcode"), passcode))
		b.Click("main button.main")
	}
	b.Open(address, "/board?avoid=tree+nuts")
	b.Until(atLogin)
	b.Accessible(script, "the form")

	// What was typed as a name is still there; the passcode is not.
	fill(b, "Ana", "not that one")
	b.Until(`document.getElementById('amiss')?.textContent.includes('not right')`)
	b.Until(`document.getElementById('name').value === 'Ana' && document.getElementById('passcode').value === ''`)
	b.Until(`document.getElementById('passcode').offsetHeight >= 44`)
	b.Accessible(script, "the form with a fault")
	fill(b, "ana", anaPasscode)
	b.Until(`location.pathname + location.search === '/board?avoid=tree+nuts'`)
	b.Until(`document.cookie === ''`) // no script sees the session
	b.Open(address, "/login")
	b.Until(`document.getElementById('who').textContent === 'Ana'`)
	b.Accessible(script, "who has signed in")

	// Signed out on one screen, a draft on another leads to the login and back,
	// and is not lost.
	bench := b.Tab(360)
	bench.Open(address, "/bench")
	bench.Typed("2 oz gin")
	bench.Until(webuitest.Shown + `'Balanced'`)
	b.Open(address, "/login")
	b.Click("main button.main")
	b.Until(`document.getElementById('who').textContent === 'Who are you?'`)
	bench.Adds("\n3/4 oz lemon juice")
	bench.Until(atLogin)
	fill(bench, "Bo", boPasscode)
	bench.Until(`location.pathname === '/bench'`)
	bench.Until(webuitest.Shown + `'Balanced'`)
	assert.Equal(t, "2 oz gin\n3/4 oz lemon juice", bench.Text())
	for _, said := range append(b.Complaints(), bench.Complaints()...) {
		assert.Regexp(t, `status of (401|422)`, said, "the console should have nothing to say")
	}
}

// The form works without scripts.
func TestLoginWithoutScripts(t *testing.T) {
	b := webuitest.NewBrowser(t, 360)
	b.WithoutScripts()
	b.Open(guarded(t), "/specs")
	b.Do(chromedp.SetValue(chromedp.ID("name"), "Bo"), chromedp.SendKeys(chromedp.ID("passcode"), boPasscode))
	b.Click("main button.main")
	b.Until(`location.pathname === '/specs'`)
	b.Quiet()
}
