package access

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"log/slog"
	"net/http"
	"net/http/httptest"
	"net/netip"
	"net/url"
	"strings"
	"sync"
	"sync/atomic"
	"testing"
	"testing/synctest"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func request(ctx context.Context, from string) *http.Request {
	r := httptest.NewRequestWithContext(ctx, http.MethodPost, LoginPath, nil)
	r.RemoteAddr = from + ":4711"
	return r
}

func TestSignInByArgon2id(t *testing.T) {
	b, err := Parse("lead Ana " + hashed(anaPasscode, derive))
	require.NoError(t, err)
	g := NewGuard(b, Options{Log: quiet})
	assert.NoError(t, g.SignIn(httptest.NewRecorder(), request(t.Context(), "192.0.2.1"), "Ana", anaPasscode))
	assert.ErrorIs(t, g.SignIn(httptest.NewRecorder(), request(t.Context(), "192.0.2.1"), "Ana", boPasscode), ErrWrong)
}

// A name that nobody has costs the same work as a passcode that is wrong: one
// hash at the cost of somebody who is in the roster.
func TestUnknownNameCostsTheSame(t *testing.T) {
	dear := strings.Replace(boHash(), "t=5", "t=6", 1)
	b, err := Parse("lead Ana " + anaHash() + "\nfloor Bo " + dear + "\n")
	require.NoError(t, err)
	g, clock := NewGuard(b, Options{Log: quiet}), newClock()
	g.now = clock.now
	var worked []cost
	g.derive = func(passcode string, h *hash) []byte {
		worked = append(worked, h.cost)
		return quick(passcode, h)
	}
	passes := map[uint32]int{}
	for i, name := range []string{"Ana", "Bo", "Nobody", "no name", "", "\x00", "nil", "xi", "yu", "zed", "quill", "wren", strings.Repeat("x", 1000)} {
		worked = nil
		clock.pass(limitByName.forget)
		w := httptest.NewRecorder()
		for _, passcode := range []string{"not that one", "\xff"} {
			err := g.SignIn(w, request(t.Context(), fmt.Sprintf("192.0.2.%d", i)), name, passcode)
			assert.ErrorIs(t, err, ErrWrong, "%.20q", name)
		}
		assert.Empty(t, w.Result().Cookies())
		require.Len(t, worked, 2, "%.20q", name)
		assert.Equal(t, worked[0], worked[1], "a name always costs the same")
		if i > 1 {
			passes[worked[0].passes]++
		}
	}
	t.Logf("hashes worked out for strangers, by passes: %v", passes)
	for p := range passes {
		assert.Contains(t, []uint32{5, 6}, p)
	}
}

// The passcode of somebody else does not open a name that nobody has.
func TestRightPasscodeWithAWrongName(t *testing.T) {
	g, _ := testGuard(t, Options{})
	for i, name := range []string{"Nobody", "Bo", "till-script", ""} {
		err := g.SignIn(httptest.NewRecorder(), request(t.Context(), fmt.Sprintf("192.0.2.%d", i)), name, anaPasscode)
		assert.ErrorIs(t, err, ErrWrong, "%q", name)
	}
	assert.Empty(t, g.sessions.open)
}

func TestBookWithoutPeople(t *testing.T) {
	_, sum := scriptToken()
	b, err := Parse("lead script " + sum)
	require.NoError(t, err)
	g := NewGuard(b, Options{Log: quiet})
	assert.ErrorIs(t, g.SignIn(httptest.NewRecorder(), request(t.Context(), "192.0.2.1"), "script", anaPasscode), ErrWrong)
}

func TestWaitAfterFailures(t *testing.T) {
	g, clock := testGuard(t, Options{})
	v := visit(t, g)
	for range limitByName.free {
		require.Equal(t, http.StatusUnprocessableEntity, v.signIn("ana", "not that one").StatusCode)
	}
	a := v.signIn("Ana", anaPasscode)
	require.Equal(t, http.StatusTooManyRequests, a.StatusCode, "the right passcode waits too, or it would be told apart")
	assert.Equal(t, "2", a.Header.Get("Retry-After"))
	require.Equal(t, http.StatusSeeOther, v.signIn("Bo", boPasscode).StatusCode, "somebody else does not wait")
	clock.pass(2 * time.Second)
	require.Equal(t, http.StatusUnprocessableEntity, v.signIn("ana", "not that one").StatusCode)
	assert.Equal(t, "4", v.signIn("ana", "not that one").Header.Get("Retry-After"), "the wait doubles")
	clock.pass(4 * time.Second)
	require.Equal(t, http.StatusSeeOther, v.signIn("Ana", anaPasscode).StatusCode)

	// A stranger's name waits alike.
	for range limitByName.free {
		require.Equal(t, http.StatusUnprocessableEntity, v.signIn("nobody", "not that one").StatusCode)
	}
	assert.Equal(t, http.StatusTooManyRequests, v.signIn("nobody", "not that one").StatusCode)
}

// Many names from one address are guesses as well.
func TestWaitPerAddress(t *testing.T) {
	g, clock := testGuard(t, Options{})
	try := func(from, name, passcode string) error {
		return g.SignIn(httptest.NewRecorder(), request(t.Context(), from), name, passcode)
	}
	for i := range limitByAddress.free {
		require.ErrorIs(t, try("192.0.2.1", fmt.Sprint("stranger-", i), "not that one"), ErrWrong)
	}
	var wait *WaitError
	require.ErrorAs(t, try("192.0.2.1", "Ana", anaPasscode), &wait)
	assert.Equal(t, 2*time.Second, wait.After)
	assert.Contains(t, wait.Error(), "2s")
	assert.NoError(t, try("192.0.2.2", "Ana", anaPasscode))
	clock.pass(2 * time.Second)
	assert.NoError(t, try("192.0.2.1", "Ana", anaPasscode))

	// Signing in oneself does not make further guesses free.
	clock.pass(2 * time.Second)
	require.ErrorIs(t, try("192.0.2.1", "stranger-x", "not that one"), ErrWrong)
	assert.ErrorAs(t, try("192.0.2.1", "Ana", anaPasscode), &wait)
}

// Who comes when every place is taken is told to come again, and has failed
// nothing.
func TestTooManyConcurrentSignIns(t *testing.T) {
	b := testRoster(t)
	synctest.Test(t, func(t *testing.T) {
		g := NewGuard(b, Options{Log: quiet})
		release := make(chan struct{})
		g.derive = func(passcode string, h *hash) []byte {
			<-release
			return h.sum
		}
		var wg sync.WaitGroup
		for i := range mostWorking {
			wg.Go(func() {
				assert.NoError(t, g.SignIn(httptest.NewRecorder(), request(t.Context(), fmt.Sprintf("192.0.2.%d", i)), "Ana", anaPasscode))
			})
		}
		synctest.Wait()
		start := time.Now()
		for range 2 * limitByName.free {
			err := g.SignIn(httptest.NewRecorder(), request(t.Context(), "192.0.2.9"), "Bo", boPasscode)
			var wait *WaitError
			require.ErrorAs(t, err, &wait)
			assert.Equal(t, askAgain, wait.After)
		}
		assert.Equal(t, 2*time.Duration(limitByName.free)*waitForTurn, time.Since(start))

		gone, leave := context.WithCancel(t.Context())
		leave()
		assert.ErrorIs(t, g.SignIn(httptest.NewRecorder(), request(gone, "192.0.2.9"), "Bo", boPasscode), context.Canceled)
		close(release)
		wg.Wait()
		assert.NoError(t, g.SignIn(httptest.NewRecorder(), request(t.Context(), "192.0.2.9"), "Bo", boPasscode))
	})
}

// Fifty people come on shift at the same minute.
func TestFiftyAtOnce(t *testing.T) {
	token, _ := scriptToken()
	g, _ := testGuard(t, Options{Proxies: []netip.Prefix{netip.MustParsePrefix("127.0.0.0/8")}})
	var now, most, worked atomic.Int64
	g.derive = func(passcode string, h *hash) []byte {
		n := now.Add(1)
		defer now.Add(-1)
		worked.Add(1)
		for m := most.Load(); n > m && !most.CompareAndSwap(m, n); m = most.Load() {
		}
		time.Sleep(5 * time.Millisecond) // so that there is a queue
		return quick(passcode, h)
	}
	server := httptest.NewServer(g.Wrap(behind(g)))
	t.Cleanup(server.Close)
	var wg sync.WaitGroup
	var busy atomic.Int64
	for i := range 50 {
		wg.Go(func() {
			v := newVisitor(t, server)
			assert.NoError(t, shift(v, i, token, &busy))
		})
	}
	wg.Wait()
	assert.LessOrEqual(t, most.Load(), int64(mostWorking))
	assert.GreaterOrEqual(t, worked.Load(), int64(50))
	assert.LessOrEqual(t, len(g.sessions.open), 2*mostSessions)
	t.Logf("%d hashes worked out, at most %d at once; %d were told to come again", worked.Load(), most.Load(), busy.Load())
}

// shift is what one person does: a slip, a sign-in, a look, a script, and out.
func shift(v *visitor, i int, token string, busy *atomic.Int64) error {
	from := []string{"X-Forwarded-For", fmt.Sprintf("192.0.2.%d", i)}
	if i%5 == 0 {
		if _, err := v.send("POST", LoginPath, url.Values{"name": {fmt.Sprint("nobody-", i)}, "passcode": {"not that one"}}, from...); err != nil {
			return err
		}
	}
	name, passcode := "Ana", anaPasscode
	if i%2 == 1 {
		name, passcode = "Bo", boPasscode
	}
	for {
		a, err := v.send("POST", LoginPath, url.Values{"name": {name}, "passcode": {passcode}}, from...)
		if err != nil {
			return err
		}
		if a.StatusCode == http.StatusSeeOther {
			break
		}
		if a.StatusCode != http.StatusTooManyRequests {
			return fmt.Errorf("%s: status %d", name, a.StatusCode)
		}
		busy.Add(1)
		time.Sleep(10 * time.Millisecond)
	}
	for _, c := range []struct {
		headers []string
		want    string
	}{{nil, name}, {[]string{"Authorization", "Bearer " + token}, "till-script"}} {
		a, err := v.send("GET", "/board", nil, c.headers...)
		if err != nil {
			return err
		}
		// Of more than twenty sessions of one person the oldest are closed.
		if a.StatusCode == http.StatusUnauthorized && c.headers == nil {
			continue
		}
		if !strings.Contains(a.body, `"name":"`+c.want+`"`) {
			return fmt.Errorf("%s: status %d: %s", name, a.StatusCode, a.body)
		}
	}
	a, err := v.send("POST", logoutPath, nil)
	if err == nil && a.StatusCode != http.StatusSeeOther {
		err = errors.New("not signed out")
	}
	return err
}

// The log says who and where from, and no passcode; not even one that was written
// in place of the name.
func TestTheLog(t *testing.T) {
	var log bytes.Buffer
	g, _ := testGuard(t, Options{Log: slog.New(slog.NewTextHandler(&log, nil))})
	v := visit(t, g)
	v.signIn(anaPasscode, "Ana")
	v.signIn("ana", boPasscode)
	require.Equal(t, http.StatusSeeOther, v.signIn("ana", anaPasscode).StatusCode)
	id := v.client.Jar.Cookies(mustURL(t, v.base))[0].Value
	v.ask("POST", logoutPath, nil)
	v.ask("POST", "/board", nil, "Sec-Fetch-Site", "cross-site")
	for _, want := range []string{`msg="sign-in failed" name="" from=127.0.0.1`, `msg="sign-in failed" name=Ana from=127.0.0.1`,
		`msg="signed in" name=Ana role=lead from=127.0.0.1`, `msg="signed out" name=Ana`, `msg="refused a form from another site" path=/board`} {
		assert.Contains(t, log.String(), want)
	}
	for _, secret := range []string{anaPasscode, boPasscode, id} {
		assert.NotContains(t, log.String(), secret)
	}
}
