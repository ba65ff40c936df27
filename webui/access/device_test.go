package access

import (
	"fmt"
	"net/http"
	"net/http/httptest"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Failed sign-ins with a name by others, from the same address or any, neither end an
// open session nor block a known device.
func TestKnownDeviceIsNotLockedOut(t *testing.T) {
	g, clock := testGuard(t, Options{})
	server := httptest.NewServer(g.Wrap(behind(g)))
	defer server.Close()
	known, fresh, stranger := newVisitor(t, server), newVisitor(t, server), newVisitor(t, server)
	require.Equal(t, http.StatusSeeOther, known.signIn("Ana", anaPasscode).StatusCode)
	for i := range limitByAddress.free + 10 { // at the address of the bar
		stranger.signIn("Ana", "not that one")
		stranger.signIn(fmt.Sprint("stranger-", i), "not that one")
	}
	for i := range 20 * limitEverywhere.free {
		_ = g.SignIn(httptest.NewRecorder(), request(t.Context(), fmt.Sprintf("198.51.%d.%d", i/250, i%250)), "Ana", "not that one")
	}
	assert.Equal(t, http.StatusOK, known.ask("GET", "/board", nil).StatusCode, "the session is open")
	assert.Equal(t, http.StatusTooManyRequests, fresh.signIn("Ana", anaPasscode).StatusCode, "a device that is not known waits")
	require.Equal(t, http.StatusSeeOther, known.ask("POST", logoutPath, nil).StatusCode)
	assert.Equal(t, http.StatusSeeOther, known.signIn("Ana", anaPasscode).StatusCode)

	// A known device guesses no oftener than an address may, and vouches for nobody else.
	for range limitByName.free {
		require.Equal(t, http.StatusUnprocessableEntity, known.signIn("Ana", "not that one").StatusCode)
	}
	assert.Equal(t, http.StatusTooManyRequests, known.signIn("Ana", anaPasscode).StatusCode)
	assert.Equal(t, http.StatusTooManyRequests, known.signIn("Bo", boPasscode).StatusCode, "Bo has not signed in on it")
	clock.pass(time.Hour)
	assert.Equal(t, http.StatusSeeOther, known.signIn("Bo", boPasscode).StatusCode)

	// On a tablet that several people share, each of them is known.
	for i := range limitByAddress.free + 10 {
		stranger.signIn(fmt.Sprint("stranger-", i), "not that one")
	}
	assert.Equal(t, http.StatusTooManyRequests, fresh.signIn("Bo", boPasscode).StatusCode)
	assert.Equal(t, http.StatusSeeOther, known.signIn("Ana", anaPasscode).StatusCode)
	assert.Equal(t, http.StatusSeeOther, known.signIn("Bo", boPasscode).StatusCode)
}

// Six wrong passcodes from another address do not make the owner wait on a new device.
func TestSixFailuresFromOtherAddresses(t *testing.T) {
	g, _ := testGuard(t, Options{})
	for range 6 {
		_ = g.SignIn(httptest.NewRecorder(), request(t.Context(), "198.51.100.7"), "Ana", "not that one")
	}
	assert.NoError(t, g.SignIn(httptest.NewRecorder(), request(t.Context(), "192.0.2.1"), "Ana", anaPasscode))
}

// A forged device cookie, and one from before a change of the passcode, are ignored.
func TestForgedDeviceCookies(t *testing.T) {
	g, _ := testGuard(t, Options{})
	roster := g.roster.Load()
	ana, bo := roster.people[roster.byName["ana"]].hash, roster.people[roster.byName["bo"]].hash
	r := request(t.Context(), "192.0.2.1")
	c := g.knowDevice(r, ana, "ana")
	with := func(value string) *http.Request {
		r := request(t.Context(), "192.0.2.1")
		r.AddCookie(&http.Cookie{Name: plainDevice, Value: value})
		return r
	}
	assert.NotEmpty(t, g.deviceOf(with(c.Value), ana, "ana"))
	assert.Empty(t, g.deviceOf(with(c.Value), bo, "bo"))
	other := "x"
	if c.Value[0] == 'x' {
		other = "y"
	}
	for _, made := range []string{"", ".", c.Value + "A", c.Value[1:], other + c.Value[1:], c.Value[:len(c.Value)-1]} {
		assert.Empty(t, g.deviceOf(with(made), ana, "ana"), made)
	}
	ana.sum[0] ^= 1
	assert.Empty(t, g.deviceOf(with(c.Value), ana, "ana"), "another passcode")
}

// Connections of a session end with it.
func TestConnectionEndsWithItsSession(t *testing.T) {
	const tooOld = "too old in whole"
	for name, end := range map[string]func(t *testing.T, v *visitor){
		"signed out": func(_ *testing.T, v *visitor) { v.ask("POST", logoutPath, nil) },
		"signed in anew": func(t *testing.T, v *visitor) {
			require.Equal(t, http.StatusSeeOther, v.signIn("Bo", boPasscode).StatusCode)
		},
		tooOld: func(*testing.T, *visitor) {},
	} {
		t.Run(name, func(t *testing.T) {
			g, clock := testGuard(t, Options{Idle: 2 * time.Hour, Whole: time.Hour})
			begun, ended := make(chan struct{}), make(chan struct{})
			pages := behind(g)
			server := httptest.NewServer(g.Wrap(http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
				if r.URL.Path != "/board/events" {
					pages.ServeHTTP(w, r)
					return
				}
				close(begun)
				<-r.Context().Done()
				close(ended)
			})))
			defer server.Close()
			v := newVisitor(t, server)
			require.Equal(t, http.StatusSeeOther, v.signIn("Ana", anaPasscode).StatusCode)
			if name == tooOld {
				clock.pass(time.Hour - 50*time.Millisecond) // what is left of it passes by the real clock
			}
			go func() { _, _ = v.send("GET", "/board/events", nil) }()
			<-begun
			end(t, v)
			select {
			case <-ended:
			case <-time.After(time.Minute):
				assert.Fail(t, "the line is still open")
			}
		})
	}
}
