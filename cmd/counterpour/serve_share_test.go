package main

import (
	"database/sql"
	"io"
	"net/http"
	"net/http/cookiejar"
	neturl "net/url"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/cmd/counterpour/terminal"
	"counterpour/data/house/pgtest"
)

// person is a browser, which sends its cookies to every server of this machine.
type person struct {
	t      *testing.T
	client *http.Client
}

func newPerson(t *testing.T) *person {
	t.Helper()
	jar, err := cookiejar.New(nil)
	require.NoError(t, err)
	return &person{t, &http.Client{Jar: jar, CheckRedirect: func(*http.Request, []*http.Request) error { return http.ErrUseLastResponse }}}
}

func (p *person) ask(method, url string, form neturl.Values) (code int, body string) {
	p.t.Helper()
	r, err := http.NewRequest(method, url, strings.NewReader(form.Encode()))
	require.NoError(p.t, err)
	r.Header.Set("Accept", "text/html")
	if form != nil {
		r.Header.Set("Content-Type", "application/x-www-form-urlencoded")
	}
	a, err := p.client.Do(r)
	require.NoError(p.t, err)
	defer a.Body.Close()
	text, err := io.ReadAll(a.Body)
	require.NoError(p.t, err)
	return a.StatusCode, string(text)
}

func (p *person) signIn(url, name string) {
	p.t.Helper()
	code, body := p.ask(http.MethodPost, url+"/login", neturl.Values{"name": {name}, "passcode": {name + " pours well"}})
	require.Equal(p.t, http.StatusSeeOther, code, body)
}

// A sign-in at one server is valid at the other. A sign-out at one ends the session and
// its event stream at the other within seconds.
func TestSessionsAreSharedByServers(t *testing.T) {
	if testing.Short() {
		t.Skip("takes half a minute")
	}
	t.Parallel()
	at := pgtest.NewServer(t).DSN() + "&venue=bar"
	roster, _ := lines(t)
	here, _, stopHere := serveHouse(t, at, "--passcodes", roster)
	defer stopHere()
	there, _, stopThere := serveHouse(t, at, "--passcodes", roster)
	defer stopThere()
	wren := newPerson(t)
	wren.signIn(here, "Wren")
	code, _ := wren.ask(http.MethodGet, there+"/board", nil)
	require.Equal(t, http.StatusOK, code)

	line, err := wren.client.Get(there + "/board/events")
	require.NoError(t, err)
	defer line.Body.Close()
	require.Equal(t, http.StatusOK, line.StatusCode)
	ended := make(chan time.Time, 1)
	go func() {
		_, _ = io.Copy(io.Discard, line.Body)
		ended <- time.Now()
	}()
	code, _ = wren.ask(http.MethodPost, here+"/logout", nil)
	require.Equal(t, http.StatusSeeOther, code)
	out := time.Now()
	select {
	case when := <-ended:
		t.Logf("signed out at one server, the line at the other ended after %v", when.Sub(out).Round(time.Millisecond))
	case <-time.After(patience):
		require.Fail(t, "the line at the other server is still open")
	}
	code, _ = wren.ask(http.MethodGet, there+"/board", nil)
	assert.Equal(t, http.StatusSeeOther, code, "to the login")
}

// Sessions survive a restart. A person who is removed from the file of passcodes,
// meanwhile or later, loses access.
func TestSessionsSurviveARestart(t *testing.T) {
	if testing.Short() {
		t.Skip("works out argon2id several times")
	}
	t.Parallel()
	bar := filepath.Join(t.TempDir(), "bar.house")
	roster, _ := lines(t)
	url, _, stop := serveHouse(t, bar, "--passcodes", roster)
	ana, wren := newPerson(t), newPerson(t)
	ana.signIn(url, "Ana")
	wren.signIn(url, "Wren")
	stop()
	url, _, stop = serveHouse(t, bar, "--passcodes", roster)
	defer stop()
	for _, p := range []*person{ana, wren} {
		code, _ := p.ask(http.MethodGet, url+"/board", nil)
		assert.Equal(t, http.StatusOK, code)
	}
	text, err := os.ReadFile(roster)
	require.NoError(t, err)
	var kept []string
	for line := range strings.Lines(string(text)) {
		if !strings.Contains(line, " Wren ") {
			kept = append(kept, line)
		}
	}
	require.NoError(t, os.WriteFile(roster, []byte(strings.Join(kept, "")), 0o600))
	require.Eventually(t, func() bool {
		code, _ := wren.ask(http.MethodGet, url+"/board", nil)
		return code == http.StatusSeeOther
	}, patience, 200*time.Millisecond, "out without a restart")
	code, _ := ana.ask(http.MethodGet, url+"/board", nil)
	assert.Equal(t, http.StatusOK, code, "the others stay in")
}

// A house that a later version wrote is served read only, and the pages say so.
func TestNewerHouseIsServedReadOnly(t *testing.T) {
	bar := filepath.Join(t.TempDir(), "bar.house")
	stock := file(t, "stock.csv", houseStock)
	code, _, message := try(t, "", "house", "import", "--house", bar, "--as", "stock", stock)
	require.Equal(t, terminal.ExitDone, code, message)
	db, err := sql.Open("sqlite", bar)
	require.NoError(t, err)
	_, err = db.Exec(`ALTER TABLE record ADD COLUMN shelf TEXT; PRAGMA user_version = 99`)
	require.NoError(t, err)
	require.NoError(t, db.Close())

	code, _, message = try(t, "", "house", "mark", "--out", "falernum", "--house", bar)
	assert.Equal(t, terminal.ExitFailed, code)
	assert.Contains(t, message, "use the program that wrote it")
	var log logged
	url, line, stop := serveLogged(t, &log, bar)
	defer stop()
	assert.Contains(t, line, "open for reading only")
	log.line(t, "level=WARN", "a later version of this program wrote the house")
	status, body, _ := status(t, url+"/stock")
	assert.Equal(t, http.StatusOK, status)
	assert.Contains(t, body, "Dock falernum")
	r, err := http.PostForm(url+"/board", neturl.Values{"out": {"falernum"}})
	require.NoError(t, err)
	defer r.Body.Close()
	text, err := io.ReadAll(r.Body)
	require.NoError(t, err)
	assert.Equal(t, http.StatusServiceUnavailable, r.StatusCode)
	assert.Contains(t, string(text), "so this one only reads it")
}
