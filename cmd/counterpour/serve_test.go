package main

import (
	"bufio"
	"bytes"
	"context"
	"fmt"
	"io"
	"net/http"
	"net/http/httptest"
	neturl "net/url"
	"path/filepath"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/cmd/counterpour/terminal"
	"counterpour/data/house"
	"counterpour/data/house/pgtest"
)

// patience is how long what is waited for may take on a busy machine before a test
// gives it up; no test passes or fails by less.
const patience = time.Minute

// logged is a buffer that may be read while it is written.
type logged struct {
	mu   sync.Mutex
	text bytes.Buffer
}

func (l *logged) Write(p []byte) (int, error) {
	l.mu.Lock()
	defer l.mu.Unlock()
	return l.text.Write(p)
}

// line waits for a line that holds all of the words.
func (l *logged) line(t *testing.T, words ...string) string {
	t.Helper()
	var found string
	require.Eventually(t, func() bool {
		l.mu.Lock()
		defer l.mu.Unlock()
	lines:
		for line := range strings.Lines(l.text.String()) {
			for _, w := range words {
				if !strings.Contains(line, w) {
					continue lines
				}
			}
			found = line
			return true
		}
		return false
	}, patience, 10*time.Millisecond, "no line with %q", words)
	return found
}

// status is how an address answers.
func status(t *testing.T, url string) (code int, body string, header http.Header) {
	t.Helper()
	r, err := http.Get(url)
	require.NoError(t, err)
	defer r.Body.Close()
	text, err := io.ReadAll(r.Body)
	require.NoError(t, err)
	return r.StatusCode, string(text), r.Header
}

// Every request to a page or the API, also a refused one, is one line in the log, with
// its route and not its path.
func TestEveryRequestIsLogged(t *testing.T) {
	var log logged
	roster, token := lines(t)
	url, _, stop := serveLogged(t, &log, filepath.Join(t.TempDir(), "bar.house"), "--passcodes", roster)
	defer stop()
	for _, c := range []struct {
		path, token  string
		route, role  string
		status       int
		namesItsLine bool
	}{
		{"/v1/ingredients/orgeat", token, "/v1/ingredients/:id", "floor", 200, false},
		{"/v1/ingredients/moon-dust", token, "/v1/ingredients/:id", "floor", 404, true},
		{"/board", token, "/board", "floor", 200, false},
		{"/made-up-by-a-stranger", token, "route=/ ", "floor", 404, false},
		{"/v1/marks", "", "none", "none", 401, true},
	} {
		r, err := http.NewRequest(http.MethodGet, url+c.path, nil)
		require.NoError(t, err)
		r.Header.Set("Accept-Encoding", "identity") // a page is packed for who takes that, and the log says what was sent
		if c.token != "" {
			r.Header.Set("Authorization", "Bearer "+c.token)
		}
		a, err := http.DefaultClient.Do(r)
		require.NoError(t, err)
		body, err := io.ReadAll(a.Body)
		require.NoError(t, err)
		require.NoError(t, a.Body.Close())
		assert.Equal(t, c.status, a.StatusCode, c.path)
		id := a.Header.Get("X-Request-Id")
		require.NotEmpty(t, id, c.path)
		line := log.line(t, "msg=request", "request_id="+id)
		for _, want := range []string{c.route, "role=" + c.role, fmt.Sprintf("status=%d", c.status), fmt.Sprintf("bytes=%d", len(body)), "ms="} {
			assert.Contains(t, line, want, c.path)
		}
		assert.NotContains(t, line, "moon-dust")
		assert.NotContains(t, line, "stranger")
		if c.namesItsLine {
			assert.Contains(t, string(body), `"request_id":"`+id+`"`)
		}
	}
}

// What monitoring asks for: routes, the store by what it did and how that ended, how
// far behind it the house may be, lines of events, and searches.
func TestMeters(t *testing.T) {
	bar, stock := filepath.Join(t.TempDir(), "bar.house"), file(t, "stock.csv", houseStock)
	code, _, message := try(t, "", "house", "import", "--house", bar, "--as", "stock", stock)
	require.Equal(t, terminal.ExitDone, code, message)
	url, _, stop := serveHouse(t, bar)
	defer stop()
	next(t, events(t.Context(), t, url), "board")
	r, err := http.PostForm(url+"/board", neturl.Values{"out": {"falernum"}})
	require.NoError(t, err)
	require.NoError(t, r.Body.Close())
	require.Equal(t, http.StatusOK, r.StatusCode)
	_, body, _ := status(t, url+"/metrics")
	for _, want := range []string{
		`counterpour_http_requests_total{method="POST",route="/board",status="303"} 1`, `counterpour_store_seconds_count{does="write",ended="well"} 1`,
		"\ncounterpour_store_age_seconds ", "\ncounterpour_listeners 1\n", "\ncounterpour_searches_in_flight ", "\ncounterpour_searches_refused_total ",
	} {
		assert.True(t, strings.Contains(body, want), want)
	}
	for want, err := range map[string]error{"well": nil, "cut off": context.Canceled, "full": &house.Error{Kind: house.ErrFull}, "internal": io.EOF} {
		assert.Equal(t, want, endOf(err))
	}
}

func TestHTTPSOnly(t *testing.T) {
	next := http.HandlerFunc(func(http.ResponseWriter, *http.Request) {})
	for _, c := range []struct {
		door door
		host string
		want string
	}{
		{door{cert: "a.pem"}, "bar.example", hstsValue},
		{door{proxies: []string{"10.0.0.1"}}, "bar.example:443", hstsValue},
		{door{cert: "a.pem"}, "LocalHost:8086", ""},
		{door{}, "bar.example", ""},
	} {
		w := httptest.NewRecorder()
		r := httptest.NewRequest(http.MethodGet, "/", nil)
		r.Host = c.host
		c.door.withHSTS(next).ServeHTTP(w, r)
		assert.Equal(t, c.want, w.Header().Get("Strict-Transport-Security"), c.host)
	}
	assert.True(t, loopback("LOCALHOST:8086"))
	assert.False(t, loopback("localhost.example:8086"))
}

// events are the names of what the board's line tells, as it tells it.
func events(ctx context.Context, t *testing.T, url string) <-chan string {
	t.Helper()
	r, err := http.NewRequestWithContext(ctx, http.MethodGet, url+"/board/events", nil)
	require.NoError(t, err)
	a, err := http.DefaultClient.Do(r)
	require.NoError(t, err)
	require.Equal(t, http.StatusOK, a.StatusCode)
	out := make(chan string, 100)
	go func() {
		defer a.Body.Close()
		defer close(out)
		for scan := bufio.NewScanner(a.Body); scan.Scan(); {
			if name, ok := strings.CutPrefix(scan.Text(), "event: "); ok {
				out <- name
			}
		}
	}()
	return out
}

// next waits for an event.
func next(t *testing.T, from <-chan string, want string) {
	t.Helper()
	late := time.After(patience)
	for {
		select {
		case got, open := <-from:
			require.True(t, open, "the line ended before %q", want)
			if got == want {
				return
			}
		case <-late:
			require.Fail(t, "not told", want)
		}
	}
}

// Two servers share a database: what is marked at one is out at the other. While the
// database is gone both say so; afterwards both agree, and no acknowledged write is lost.
func TestTwoServersOverOneDatabase(t *testing.T) {
	if testing.Short() {
		t.Skip("takes half a minute")
	}
	t.Parallel()
	database := pgtest.NewServer(t)
	at := database.DSN() + "&venue=bar"
	stock := file(t, "stock.csv", houseStock)
	code, _, message := try(t, "", "house", "import", "--house", at, "--as", "stock", stock)
	require.Equal(t, terminal.ExitDone, code, message)
	var log logged
	here, _, stopHere := serveLogged(t, &log, at)
	defer stopHere()
	there, _, stopThere := serveHouse(t, at)
	defer stopThere()
	told := events(t.Context(), t, there)
	next(t, told, "board")
	mark := func(url, field, id string) int {
		r, err := http.PostForm(url+"/board", neturl.Values{field: {id}})
		require.NoError(t, err)
		require.NoError(t, r.Body.Close())
		return r.StatusCode
	}
	isOut := func(url string) bool {
		_, body, _ := status(t, url+"/board")
		return strings.Contains(body, "back-falernum")
	}

	require.Equal(t, http.StatusOK, mark(here, "out", "falernum"))
	marked := time.Now()
	next(t, told, "board")
	t.Logf("marked at one server, told at the other after %v", time.Since(marked).Round(time.Millisecond))
	assert.True(t, isOut(there))

	require.NoError(t, database.Stop())
	assert.Equal(t, http.StatusServiceUnavailable, mark(here, "back", "falernum"), "nothing is acknowledged that is not kept")
	next(t, told, "stale")
	for _, url := range []string{here, there} {
		require.Eventually(t, func() bool { code, _, _ := status(t, url+"/readyz"); return code == http.StatusServiceUnavailable }, patience, 100*time.Millisecond)
		code, body, _ := status(t, url+"/board")
		assert.Equal(t, http.StatusOK, code)
		assert.Contains(t, body, "This page may be old.</strong> The store of the house")
	}
	log.line(t, "level=ERROR", "does not answer")

	require.NoError(t, database.Start())
	next(t, told, "board")
	for _, url := range []string{here, there} {
		require.Eventually(t, func() bool { code, _, _ := status(t, url+"/readyz"); return code == http.StatusOK }, patience, 100*time.Millisecond)
	}
	assert.True(t, isOut(here), "the mark is kept")
	assert.True(t, isOut(there))
	require.Equal(t, http.StatusOK, mark(there, "back", "falernum"))
	require.Eventually(t, func() bool { return !isOut(here) }, patience, 20*time.Millisecond)
	log.line(t, "answers again")
}
