package access

import (
	"crypto/sha256"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"log/slog"
	"net/http"
	"net/http/cookiejar"
	"net/http/httptest"
	"net/url"
	"slices"
	"strconv"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/stretchr/testify/require"
)

// cheap is the least that a roster may ask for, so that tests are quick.
var cheap = cost{memory: leastMemory, passes: 5, lanes: 1}

const (
	anaPasscode = "harbour lamp nine"
	boPasscode  = "copper jigger"
)

// quick stands in for argon2id, whose work is most of what a test takes under the
// race detector. TestHashIsArgon2id and TestSignInByArgon2id do that work.
func quick(passcode string, h *hash) []byte {
	sum := sha256.Sum256(append(slices.Clone(h.salt), passcode...))
	return sum[:]
}

// hashed is a hash of a passcode that says it is of the least cost.
func hashed(passcode string, work deriver) string {
	h := &hash{cost: cheap, salt: []byte("salt of a test"), sum: make([]byte, usualSum)}
	text, err := prepare(passcode)
	if err != nil {
		panic(err)
	}
	h.sum = work(text, h)
	return h.String()
}

// What the tests' roster holds is made once.
var (
	anaHash     = sync.OnceValue(func() string { return hashed(anaPasscode, quick) })
	boHash      = sync.OnceValue(func() string { return hashed(boPasscode, quick) })
	scriptToken = sync.OnceValues(NewToken)
)

func bookText() string {
	_, sum := scriptToken()
	return fmt.Sprintf("# the Test Room\nlead Ana %s\nfloor Bo %s # nights\n\nfloor till-script %s\n", anaHash(), boHash(), sum)
}

func testRoster(t testing.TB) *Roster {
	t.Helper()
	b, err := Parse(bookText())
	require.NoError(t, err)
	return b
}

var quiet = slog.New(slog.NewTextHandler(io.Discard, nil))

// clock is a time that a test moves.
type clock struct {
	mu sync.Mutex
	at time.Time
}

func (c *clock) now() time.Time {
	c.mu.Lock()
	defer c.mu.Unlock()
	return c.at
}

func (c *clock) pass(d time.Duration) {
	c.mu.Lock()
	defer c.mu.Unlock()
	c.at = c.at.Add(d)
}

func newClock() *clock { return &clock{at: time.Date(2026, 3, 1, 18, 0, 0, 0, time.UTC)} }

// testGuard is a guard over the tests' roster, and its clock.
func testGuard(t testing.TB, opts Options) (*Guard, *clock) {
	t.Helper()
	if opts.Log == nil {
		opts.Log = quiet
	}
	g, c := NewGuard(testRoster(t), opts), newClock()
	g.now, g.derive = c.now, quick
	return g, c
}

// behind is what the guard stands before: a login that speaks in statuses, and
// otherwise who asked and what they may do.
func behind(g *Guard) http.Handler {
	mux := http.NewServeMux()
	mux.HandleFunc("POST /login", func(w http.ResponseWriter, r *http.Request) {
		err := g.SignIn(w, r, r.FormValue("name"), r.FormValue("passcode"))
		var wait *WaitError
		switch {
		case errors.As(err, &wait):
			w.Header().Set("Retry-After", strconv.FormatFloat(wait.After.Seconds(), 'f', -1, 64))
			w.WriteHeader(http.StatusTooManyRequests)
		case err != nil:
			w.WriteHeader(http.StatusUnprocessableEntity)
		default:
			http.Redirect(w, r, Local(r.FormValue("next")), http.StatusSeeOther)
		}
	})
	mux.HandleFunc("/", func(w http.ResponseWriter, r *http.Request) {
		p, known := PersonOf(r.Context())
		_ = json.NewEncoder(w).Encode(map[string]any{"path": r.URL.Path, "name": p.Name, "known": known,
			"floor": May(r.Context(), Floor), "lead": May(r.Context(), Lead)})
	})
	return mux
}

// visitor is a browser or a script: it keeps cookies and follows nothing.
type visitor struct {
	t      testing.TB
	base   string
	client *http.Client
}

func visit(t testing.TB, g *Guard) *visitor {
	t.Helper()
	server := httptest.NewServer(g.Wrap(behind(g)))
	t.Cleanup(server.Close)
	return newVisitor(t, server)
}

func newVisitor(t testing.TB, server *httptest.Server) *visitor {
	t.Helper()
	jar, err := cookiejar.New(nil)
	require.NoError(t, err)
	client := *server.Client()
	client.Jar = jar
	client.CheckRedirect = func(*http.Request, []*http.Request) error { return http.ErrUseLastResponse }
	return &visitor{t, server.URL, &client}
}

// answer is what came back.
type answer struct {
	*http.Response
	body string
}

func (a answer) says(t testing.TB) map[string]any {
	t.Helper()
	var m map[string]any
	require.NoError(t, json.Unmarshal([]byte(a.body), &m), a.body)
	return m
}

// send sends a request with headers given as name, value, …
func (v *visitor) send(method, path string, form url.Values, headers ...string) (answer, error) {
	r, err := http.NewRequest(method, v.base+path, strings.NewReader(form.Encode()))
	if err != nil {
		return answer{}, err
	}
	if form != nil {
		r.Header.Set("Content-Type", "application/x-www-form-urlencoded")
	}
	for i := 0; i+1 < len(headers); i += 2 {
		r.Header.Set(headers[i], headers[i+1])
	}
	w, err := v.client.Do(r)
	if err != nil {
		return answer{}, err
	}
	defer w.Body.Close()
	body, err := io.ReadAll(w.Body)
	return answer{w, string(body)}, err
}

func (v *visitor) ask(method, path string, form url.Values, headers ...string) answer {
	v.t.Helper()
	a, err := v.send(method, path, form, headers...)
	require.NoError(v.t, err)
	return a
}

func (v *visitor) signIn(name, passcode string, headers ...string) answer {
	v.t.Helper()
	return v.ask(http.MethodPost, LoginPath, url.Values{"name": {name}, "passcode": {passcode}}, headers...)
}
