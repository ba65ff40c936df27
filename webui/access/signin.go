package access

import (
	"context"
	"errors"
	"fmt"
	"hash/maphash"
	"net/http"
	"time"
)

// ErrWrong: the name or the passcode is not right. Which of them, nobody is told.
var ErrWrong = errors.New("access: the name or the passcode is not right")

// WaitError says that too much went wrong before, or that too many are signing
// in at once. Nothing was checked.
type WaitError struct {
	After time.Duration // how long to wait, above zero
}

// Error says how long to wait.
func (e *WaitError) Error() string {
	return fmt.Sprintf("access: signing in has to wait for %v", e.After)
}

// How many checks of passcodes run at once, how long one waits for its place, and
// what is said if it got none.
const (
	mostWorking = 2
	waitForTurn = 5 * time.Second
	askAgain    = 3 * time.Second
)

// SignIn checks a name and a passcode and begins a session: it sets the cookie
// and leaves the rest of the answer to the caller. It fails with [ErrWrong], with
// a [*WaitError], or with the error of the request's context; nothing is set
// then.
func (g *Guard) SignIn(w http.ResponseWriter, r *http.Request, name, passcode string) error {
	now := g.now()
	p, err := g.verify(r, now, name, passcode)
	if err != nil {
		g.opts.Log.WarnContext(r.Context(), "sign-in failed", "name", p.Name, "from", g.addressOf(r), "err", err)
		return err
	}
	if old := g.sessionOf(r); old != "" {
		g.sessions.end(old)
	}
	http.SetCookie(w, g.cookie(r, g.sessions.begin(p, now), int(g.opts.Whole/time.Second)))
	g.opts.Log.InfoContext(r.Context(), "signed in", "name", p.Name, "role", p.Role.String(), "from", g.addressOf(r))
	return nil
}

// verify holds a sign-in to the limits and checks it. It returns who has the
// name, if somebody has, with an error as well.
func (g *Guard) verify(r *http.Request, now time.Time, name, passcode string) (Person, error) {
	key, err := nameKey(name)
	if err != nil {
		key = "" // what is no name counts together
	}
	at, known := g.book.byName[key]
	var p Person
	if known {
		p = g.book.people[at].Person
	}
	byAddress, wait := g.addresses.admit(g.addressOf(r), now)
	if wait > 0 {
		return p, &WaitError{wait}
	}
	byName, wait := g.names.admit(key, now)
	if wait > 0 {
		g.addresses.forgive(byAddress)
		return p, &WaitError{wait}
	}
	if !known {
		at = g.standIn(key)
	}
	right, err := g.check(r.Context(), at, passcode)
	if err != nil || right && known {
		g.addresses.forgive(byAddress)
		g.names.forgive(byName)
		return p, err
	}
	return p, ErrWrong
}

// standIn is the place of whose hash is worked out for a name that nobody has:
// always the same one for the same name, as it would be if somebody had it.
func (g *Guard) standIn(key string) int {
	if len(g.book.people) == 0 {
		return -1
	}
	return int(maphash.String(g.seed, key) % uint64(len(g.book.people)))
}

// check works out a hash once there is a place for it. A place below zero is
// nobody's: there are only scripts in the book.
func (g *Guard) check(ctx context.Context, at int, passcode string) (bool, error) {
	if at < 0 {
		return false, nil
	}
	if err := g.takeTurn(ctx); err != nil {
		return false, err
	}
	defer func() { <-g.working }()
	text, err := prepare(passcode)
	if err != nil {
		text = "" // wrong, at the same cost
	}
	h := g.book.people[at].hash
	return h.matches(g.derive(text, h)) && err == nil, nil
}

func (g *Guard) takeTurn(ctx context.Context) error {
	late := time.NewTimer(waitForTurn)
	defer late.Stop()
	select {
	case g.working <- struct{}{}:
		return nil
	case <-late.C:
		return &WaitError{askAgain}
	case <-ctx.Done():
		return ctx.Err()
	}
}

// signOut ends the session of a request, if it has one.
func (g *Guard) signOut(w http.ResponseWriter, r *http.Request) {
	if r.Method != http.MethodPost {
		w.Header().Set("Allow", http.MethodPost)
		refuse(w, http.StatusMethodNotAllowed, "signing out takes POST; the login page has the button")
		return
	}
	if id := g.sessionOf(r); id != "" {
		if p, ok := g.sessions.find(id, g.now()); ok {
			g.opts.Log.InfoContext(r.Context(), "signed out", "name", p.Name, "from", g.addressOf(r))
		}
		g.sessions.end(id)
	}
	http.SetCookie(w, g.cookie(r, "", -1))
	w.Header().Set("Cache-Control", "no-store")
	if isFragment(r) {
		w.Header().Set("HX-Redirect", LoginPath)
		w.WriteHeader(http.StatusNoContent)
		return
	}
	http.Redirect(w, r, LoginPath, http.StatusSeeOther)
}
