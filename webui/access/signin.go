package access

import (
	"context"
	"errors"
	"fmt"
	"hash/maphash"
	"net/http"
	"time"
)

// ErrWrong: the name or the passcode is wrong. Nobody is told which.
var ErrWrong = errors.New("access: the name or the passcode is not right")

// WaitError says that there were too many failures, or that too many sign-ins run at the
// moment. Nothing was checked.
type WaitError struct {
	After time.Duration // time to wait, above zero
}

// Error says how long to wait.
func (e *WaitError) Error() string {
	return fmt.Sprintf("access: signing in has to wait for %v", e.After)
}

// How many passcode checks run concurrently, how long a check waits for its turn, and the
// wait that is stated if it does not get one.
const (
	mostWorking = 2
	waitForTurn = 5 * time.Second
	askAgain    = 3 * time.Second
)

// SignIn checks a name and a passcode, begins a session and sets its cookies; the caller
// writes the rest of the answer. It fails with [ErrWrong], a [*WaitError], the error of
// the commons if they do not store the session, or that of the request's context. Then no
// cookie is set.
func (g *Guard) SignIn(w http.ResponseWriter, r *http.Request, name, passcode string) error {
	now := g.now()
	p, device, err := g.verify(r, now, name, passcode)
	var wait *WaitError
	if errors.As(err, &wait) {
		g.heldUp.Add(1) // not logged: an attacker could fill the log
		return err
	}
	if err != nil {
		g.opts.Log.WarnContext(r.Context(), "sign-in failed", "name", p.Name, "from", g.addressOf(r), "err", err)
		return err
	}
	if old := g.sessionOf(r); old != "" {
		if err := g.sessions.end(r.Context(), old, now); err != nil {
			return err
		}
	}
	key, err := nameKey(p.Name)
	if err != nil {
		return err
	}
	id, err := g.sessions.begin(r.Context(), key, now)
	if err != nil {
		return err
	}
	http.SetCookie(w, g.cookie(r, id, int(g.opts.Whole/time.Second)))
	http.SetCookie(w, device)
	g.opts.Log.InfoContext(r.Context(), "signed in", "name", p.Name, "role", p.Role.String(), "from", g.addressOf(r))
	return nil
}

// HeldUp returns how many sign-ins were told to wait.
func (g *Guard) HeldUp() int64 { return g.heldUp.Load() }

// verify checks a sign-in within the limits. It returns the person with the name, if
// there is one, also together with an error. Without an error it returns the device
// cookie to set.
func (g *Guard) verify(r *http.Request, now time.Time, name, passcode string) (Person, *http.Cookie, error) {
	key, err := nameKey(name)
	if err != nil {
		key = "" // all invalid names share one count
	}
	roster := g.roster.Load()
	at, known := roster.byName[key]
	var p Person
	device := ""
	if known {
		p = roster.people[at].Person
		device = g.deviceOf(r, roster.people[at].hash, key)
	}
	forgive, err := g.admit(now, key, g.addressOf(r), device)
	if err != nil {
		return p, nil, err
	}
	if !known {
		at = g.standIn(roster, key)
	}
	right, err := g.check(r.Context(), roster, at, passcode)
	if err != nil || right && known {
		forgive()
		if err != nil {
			return p, nil, err
		}
		return p, g.knowDevice(r, roster.people[at].hash, key), nil
	}
	return p, nil, ErrWrong
}

// admit counts a try against the limits, or fails with a [*WaitError]. forgive removes
// the try again. A device on which the person has signed in before has limits of its own,
// so that somebody who knows the name cannot lock its owner out. Any other device shares
// the limits of its address and of the name.
func (g *Guard) admit(now time.Time, key, address, device string) (forgive func(), err error) {
	type door struct {
		throttle *throttle
		key      string
	}
	doors := []door{{g.addresses, address}, {g.names, key + "\x00at " + address}, {g.everywhere, key}}
	if device != "" {
		doors = []door{{g.names, key + "\x00on " + device}}
	}
	var taken []func()
	forgive = func() {
		for _, f := range taken {
			f()
		}
	}
	for _, d := range doors {
		e, wait := d.throttle.admit(d.key, now)
		if wait > 0 {
			forgive()
			return nil, &WaitError{wait}
		}
		taken = append(taken, func() { d.throttle.forgive(e) })
	}
	return forgive, nil
}

// standIn returns whose hash is computed for an unknown name. It is always the same one
// for a name, as if the name existed.
func (g *Guard) standIn(b *Roster, key string) int {
	if len(b.people) == 0 {
		return -1
	}
	return int(maphash.String(g.seed, key) % uint64(len(b.people)))
}

// check computes a hash when its turn comes. With at < 0 the roster contains only scripts,
// and the check fails at once.
func (g *Guard) check(ctx context.Context, b *Roster, at int, passcode string) (bool, error) {
	if at < 0 {
		return false, nil
	}
	if err := g.takeTurn(ctx); err != nil {
		return false, err
	}
	defer func() { <-g.working }()
	text, err := prepare(passcode)
	if err != nil {
		text = "" // wrong, but at the same cost
	}
	h := b.people[at].hash
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
		if l, err := g.sessions.find(r.Context(), id, g.now()); err == nil && l != nil {
			g.opts.Log.InfoContext(r.Context(), "signed out", "name", l.person.Name, "from", g.addressOf(r))
		}
		if err := g.sessions.end(r.Context(), id, g.now()); err != nil {
			g.opts.Log.ErrorContext(r.Context(), "signed out here; other servers are told once the store answers", "err", err)
		}
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
