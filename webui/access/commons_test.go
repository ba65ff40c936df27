package access

import (
	"context"
	"errors"
	"net/http"
	"net/http/httptest"
	"net/url"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/data/house"
	"counterpour/data/house/storetest"
)

// at sends what a visitor has to another server of the same house.
func (v *visitor) at(g *Guard) *visitor {
	other := visit(v.t, g)
	other.client.Jar = v.client.Jar // cookies go by host, whichever the port
	return other
}

// A sign-in at one server is valid at every other and after a restart; a sign-out ends
// the session and its connections at all of them.
func TestSessionsAreSharedByGuards(t *testing.T) {
	commons := storetest.Memory(t)
	here, clock := testGuard(t, Options{Commons: commons})
	there, _ := testGuard(t, Options{Commons: commons})
	there.now = clock.now
	v := visit(t, here)
	require.Equal(t, http.StatusSeeOther, v.signIn("Bo", boPasscode).StatusCode)
	said := v.at(there).ask("GET", "/", nil).says(t)
	assert.Equal(t, []any{"Bo", true, false}, []any{said["name"], said["floor"], said["lead"]})

	// What is used there counts here, and the other way round.
	clock.pass(Idle - time.Minute)
	require.Equal(t, http.StatusOK, v.at(there).ask("GET", "/", nil).StatusCode)
	require.NoError(t, there.sessions.keep(t.Context(), clock.now()))
	clock.pass(time.Hour)
	require.NoError(t, here.sessions.keep(t.Context(), clock.now()))
	require.Equal(t, http.StatusOK, v.ask("GET", "/", nil).StatusCode)
	again, _ := testGuard(t, Options{Commons: commons}) // a server that was not there before
	again.now = clock.now
	require.Equal(t, http.StatusOK, v.at(again).ask("GET", "/", nil).StatusCode)

	id := there.sessionOf(asked(v))
	held, err := there.sessions.find(t.Context(), id, clock.now())
	require.NoError(t, err)
	require.NotNil(t, held)
	require.Equal(t, http.StatusSeeOther, v.ask("POST", logoutPath, nil).StatusCode)
	require.NoError(t, held.ended.Err(), "not told yet")
	require.NoError(t, there.sessions.keep(t.Context(), clock.now()))
	assert.Error(t, held.ended.Err(), "what it holds open has ended")
	l, err := there.sessions.find(t.Context(), id, clock.now())
	require.NoError(t, err)
	assert.Nil(t, l)

	// What has run out is gone from the commons too, once somebody signs in.
	clock.pass(Whole)
	require.Equal(t, http.StatusSeeOther, v.signIn("Bo", boPasscode).StatusCode)
	list, err := commons.AllShared(t.Context(), time.Unix(0, 0), sessionKind)
	require.NoError(t, err)
	assert.Len(t, list, 1)
}

// asked is a request with the cookies of a visitor.
func asked(v *visitor) *http.Request {
	r := httptest.NewRequest(http.MethodGet, v.base, nil)
	u, err := url.Parse(v.base)
	require.NoError(v.t, err)
	for _, c := range v.client.Jar.Cookies(u) {
		r.AddCookie(c)
	}
	return r
}

// Neither read nor write access to the stored sessions is enough to sign in.
func TestCommonsAloneGrantNoAccess(t *testing.T) {
	commons := storetest.Memory(t)
	g, clock := testGuard(t, Options{Commons: commons})
	v := visit(t, g)
	require.Equal(t, http.StatusSeeOther, v.signIn("Bo", boPasscode).StatusCode)
	list, err := commons.AllShared(t.Context(), clock.now(), sessionKind)
	require.NoError(t, err)
	require.Len(t, list, 1)
	cookie := g.sessionOf(asked(v))
	assert.NotContains(t, list[0].ID+list[0].Body, cookie)

	other, _ := testGuard(t, Options{Commons: commons}) // which has looked nothing up yet
	other.now = clock.now
	own := strings.Repeat("A", 43)
	for name, body := range map[string]string{
		"copied":               list[0].Body,
		"of another":           strings.Replace(list[0].Body, `"bo"`, `"ana"`, 1),
		"of nobody":            strings.Replace(list[0].Body, `"bo"`, `"eve"`, 1),
		"without a proof":      `{"key":"ana","begun":"2026-03-01T18:00:00Z","used":"2026-03-01T18:00:00Z"}`,
		"not even in its form": "ana",
	} {
		require.NoError(t, commons.Share(t.Context(), clock.now(), house.Ephemeral{Kind: sessionKind, ID: sumOf(own).String(), Body: body, Until: clock.now().Add(time.Hour)}))
		l, err := other.sessions.find(t.Context(), own, clock.now())
		require.NoError(t, err, name)
		assert.Nil(t, l, name)
		require.NoError(t, other.sessions.keep(t.Context(), clock.now()), name)
	}
}

// broken are commons that do not answer.
type broken struct{ house.Commons }

var errSilent = &house.Error{Kind: house.ErrUnavailable, Op: "share", Message: "the database server does not answer"}

func (broken) Share(context.Context, time.Time, ...house.Ephemeral) error { return errSilent }
func (broken) Unshare(context.Context, string, ...string) error           { return errSilent }
func (broken) Shared(context.Context, time.Time, string, string) (house.Ephemeral, bool, error) {
	return house.Ephemeral{}, false, errSilent
}
func (broken) AllShared(context.Context, time.Time, string) ([]house.Ephemeral, error) {
	return nil, errSilent
}

// While the store does not answer, sessions stay open and nobody can sign in. A sign-out
// takes effect here at once, and elsewhere once the store answers.
func TestSilentCommons(t *testing.T) {
	commons := storetest.Memory(t)
	g, clock := testGuard(t, Options{Commons: commons})
	there, _ := testGuard(t, Options{Commons: commons})
	there.now = clock.now
	v := visit(t, g)
	require.Equal(t, http.StatusSeeOther, v.signIn("Bo", boPasscode).StatusCode)
	id := g.sessionOf(asked(v))
	g.sessions.commons = broken{commons}
	assert.Equal(t, http.StatusOK, v.ask("GET", "/", nil).StatusCode)
	a := v.ask("GET", "/", nil, "Cookie", plainCookie+"="+strings.Repeat("A", 43))
	assert.Equal(t, http.StatusServiceUnavailable, a.StatusCode)
	assert.Contains(t, a.body, "does not answer")
	assert.Equal(t, http.StatusOK, v.ask("GET", LoginPath, nil, "Cookie", plainCookie+"="+strings.Repeat("A", 43)).StatusCode)
	err := g.SignIn(httptest.NewRecorder(), request(t.Context(), "192.0.2.1"), "Ana", anaPasscode)
	assert.ErrorIs(t, err, house.ErrUnavailable)

	require.Equal(t, http.StatusSeeOther, v.ask("POST", logoutPath, nil).StatusCode)
	l, err := g.sessions.find(t.Context(), id, clock.now())
	require.NoError(t, err)
	assert.Nil(t, l, "out here")
	assert.Error(t, g.sessions.keep(t.Context(), clock.now()))
	g.sessions.commons = commons
	require.NoError(t, g.sessions.keep(t.Context(), clock.now()))
	l, err = there.sessions.find(t.Context(), id, clock.now())
	require.NoError(t, err)
	assert.Nil(t, l, "and elsewhere")
	assert.Empty(t, g.sessions.leaving)
}

// A change of a person's line in the roster, or its removal, takes effect without a
// restart.
func TestChangedBook(t *testing.T) {
	path := filepath.Join(t.TempDir(), "passcodes")
	token, inRoster := scriptToken()
	put := func(text string) { require.NoError(t, os.WriteFile(path, []byte(text), 0o600)) }
	ana, script := "lead Ana "+anaHash()+"\n", "floor till-script "+inRoster+"\n"
	put(ana + "floor Bo " + boHash() + "\n" + script)
	b, err := ReadFile(path)
	require.NoError(t, err)
	g := NewGuard(b, Options{Log: quiet, Commons: storetest.Memory(t)})
	g.derive = quick
	file := following{path: path, roster: b}
	v := visit(t, g)
	require.Equal(t, http.StatusSeeOther, v.signIn("Bo", boPasscode).StatusCode)
	held := func() *lasting {
		l, err := g.sessions.find(t.Context(), g.sessionOf(asked(v)), g.now())
		require.NoError(t, err)
		return l
	}
	before, turned := held(), g.page.Load().turned

	g.reread(&file)
	assert.NoError(t, before.ended.Err(), "nothing has changed")
	put("nonsense")
	g.reread(&file)
	assert.NoError(t, before.ended.Err())
	assert.Contains(t, file.trouble, "nonsense")
	assert.Equal(t, http.StatusOK, v.ask("GET", "/", nil).StatusCode, "the roster stays as it was")

	put(ana + "lead Bo " + boHash() + "\n" + script)
	g.reread(&file)
	assert.Equal(t, true, v.ask("GET", "/", nil).says(t)["lead"])
	assert.Error(t, before.ended.Err(), "what was opened in the role before has ended")
	assert.Error(t, turned.Err(), "and what scripts hold open")
	bearer := []string{"Authorization", "Bearer " + token}
	assert.Equal(t, http.StatusOK, v.ask("GET", "/", nil, bearer...).StatusCode)

	before = held()
	put(ana + "lead Bo " + hashed("another jigger", quick) + "\n")
	g.reread(&file)
	assert.Error(t, before.ended.Err())
	assert.Equal(t, http.StatusUnauthorized, v.ask("GET", "/", nil).StatusCode)
	assert.Equal(t, http.StatusUnauthorized, v.ask("GET", "/", nil, bearer...).StatusCode)
	assert.Equal(t, http.StatusUnprocessableEntity, v.signIn("Bo", boPasscode).StatusCode)
	require.Equal(t, http.StatusSeeOther, v.signIn("Bo", "another jigger").StatusCode)

	put(ana)
	g.reread(&file)
	assert.Equal(t, http.StatusUnauthorized, v.ask("GET", "/", nil).StatusCode)
	require.NoError(t, g.sessions.keep(t.Context(), g.now()))
	list, err := g.opts.Commons.AllShared(t.Context(), g.now(), sessionKind)
	require.NoError(t, err)
	assert.Empty(t, list, "what is over is not kept")
}

// An error in the upkeep is logged, and the program goes on.
func TestKeepRecoversFromPanics(t *testing.T) {
	err := safely(func() error { panic("spilt") })
	assert.ErrorContains(t, err, "spilt")
	want := errors.New("told")
	assert.Equal(t, want, safely(func() error { return want }))
}
