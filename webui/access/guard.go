package access

import (
	"context"
	"crypto/hmac"
	"crypto/sha256"
	"hash/maphash"
	"log/slog"
	"net/http"
	"net/netip"
	"path"
	"strings"
	"sync/atomic"
	"time"

	"counterpour/api/accesslog"
	"counterpour/data/house"
)

// Default lifetimes of a session: unused for a long shift, and a week in all. Common
// practice, no source.
const (
	Idle  = 12 * time.Hour
	Whole = 7 * 24 * time.Hour
)

// Paths that the guard and the login page share.
const (
	LoginPath  = "/login"
	logoutPath = "/logout"
)

// Options configure a guard. The zero value is valid.
type Options struct {
	// Secure says that browsers use https, to a reverse proxy in front of this server.
	// TLS of this server itself is detected without it.
	Secure bool
	// Proxies are the addresses of reverse proxies in front. From them, the client's
	// address is read from the X-Forwarded-For header; from any other client that header
	// is ignored.
	Proxies []netip.Prefix
	// Idle is how long a session lasts unused; 0 is [Idle].
	Idle time.Duration
	// Whole is the total lifetime of a session; 0 is [Whole].
	Whole time.Duration
	// Commons stores sessions, so that all servers of a house share them and they survive
	// a restart. With nil, sessions are kept in memory.
	Commons house.Commons
	// Log receives sign-ins, sign-outs and failed sign-ins with their address; nil is
	// slog.Default. Passcodes are never logged, nor are unknown names, since people type
	// one in place of the other.
	Log *slog.Logger
}

// Guard authenticates requests against a roster. It is safe for concurrent use.
type Guard struct {
	roster     atomic.Pointer[Roster]
	opts       Options
	cross      *http.CrossOriginProtection
	page       atomic.Pointer[page]
	sessions   *sessions
	names      *throttle // by name and address, or by name and known device
	addresses  *throttle
	everywhere *throttle     // by name, from all addresses
	heldUp     atomic.Int64  // refused sign-ins that must wait
	working    chan struct{} // semaphore for passcode checks
	derive     deriver
	seed       maphash.Seed
	now        func() time.Time
}

// NewGuard returns a guard with a roster, which must not be nil.
func NewGuard(b *Roster, opts Options) *Guard {
	if opts.Idle <= 0 {
		opts.Idle = Idle
	}
	if opts.Whole <= 0 {
		opts.Whole = Whole
	}
	if opts.Log == nil {
		opts.Log = slog.Default()
	}
	g := &Guard{opts: opts, cross: http.NewCrossOriginProtection(),
		names: newThrottle(limitByName), addresses: newThrottle(limitByAddress), everywhere: newThrottle(limitEverywhere),
		working: make(chan struct{}, mostWorking), derive: derive, seed: maphash.MakeSeed(), now: time.Now}
	g.sessions = newSessions(opts.Idle, opts.Whole, g.vouch, opts.Commons)
	g.use(b)
	return g
}

// use replaces the roster. Sessions of people who are not in it, or who have another
// passcode, end at once, and so do their open connections.
func (g *Guard) use(b *Roster) {
	g.roster.Store(b)
	page := &page{}
	page.turned, page.turn = context.WithCancel(context.Background())
	if before := g.page.Swap(page); before != nil {
		before.turn()
	}
	g.sessions.review(g.now())
}

// page holds a roster while it is in use. Connections of scripts end with it.
type page struct {
	turned context.Context
	turn   context.CancelFunc
}

// vouch returns the person with a name key and the proof of a session. The proof is an
// HMAC (RFC 2104) with the person's passcode hash as its key, so neither read nor write
// access to the stored sessions is enough to sign in.
func (g *Guard) vouch(key string, s sum) (Person, []byte, bool) {
	b := g.roster.Load()
	at, ok := b.byName[key]
	if !ok {
		return Person{}, nil, false
	}
	h := hmac.New(sha256.New, b.people[at].hash.sum)
	h.Write([]byte("counterpour session\x00" + key + "\x00"))
	h.Write(s[:])
	return b.people[at].Person, h.Sum(nil), true
}

// Wrap returns a handler that authenticates requests to next. Requests that are let
// through carry the user (see [PersonOf] and [May]). Without a session or a token, only
// the login page, static files and the two health checks are answered; other requests are
// told to sign in. Wrap handles POST /logout itself.
func (g *Guard) Wrap(next http.Handler) http.Handler {
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		r = g.noteSecure(r)
		c, err := g.callerOf(r)
		if err != nil && !open(r.URL.Path) {
			g.opts.Log.ErrorContext(r.Context(), "a session could not be looked up", "err", err)
			refuse(w, http.StatusServiceUnavailable, "the store of the house does not answer, so this page cannot see whether you are signed in; try again in a moment")
			return
		}
		// CSRF needs a cookie; a token is always sent on purpose.
		if !c.token || !c.known {
			if err := g.cross.Check(r); err != nil {
				g.opts.Log.WarnContext(r.Context(), "refused a form from another site", "path", r.URL.Path, "from", g.addressOf(r))
				refuse(w, http.StatusForbidden, "this was sent from another site; open the page itself and send it from there")
				return
			}
		}
		switch {
		case r.URL.Path == logoutPath:
			g.signOut(w, r)
		case c.known:
			// A shared cache must not show the answer to another user.
			w.Header().Add("Vary", "Authorization, Cookie")
			accesslog.SetRole(r.Context(), c.person.Role.String())
			ctx, leave := c.within(With(r.Context(), c.person))
			defer leave()
			next.ServeHTTP(w, r.WithContext(ctx))
		case open(r.URL.Path):
			next.ServeHTTP(w, r.WithContext(withNobody(r.Context())))
		default:
			turnAway(w, r, c.token)
		}
	})
}

// caller is the user of a request and how they authenticated.
type caller struct {
	person Person
	known  bool
	token  bool // they sent a token, valid or not

	session *lasting        // nil if there is none
	turned  context.Context // for a token: cancelled when another roster is in use
}

// within returns a context that is cancelled when the caller loses access.
func (c *caller) within(ctx context.Context) (context.Context, func()) {
	if c.session != nil {
		return c.session.within(ctx)
	}
	ctx, stop := context.WithCancel(ctx)
	unhook := context.AfterFunc(c.turned, stop)
	return ctx, func() { unhook(); stop() }
}

// callerOf authenticates a request by its token or, without one, by its session. It fails
// if the session cannot be looked up.
func (g *Guard) callerOf(r *http.Request) (caller, error) {
	scheme, token, _ := strings.Cut(r.Header.Get("Authorization"), " ")
	if strings.EqualFold(scheme, "Bearer") {
		turned := g.page.Load().turned // read before the roster, which may be replaced in between
		p, ok := g.roster.Load().byToken(strings.TrimSpace(token))
		return caller{person: p, known: ok, token: true, turned: turned}, nil
	}
	id := g.sessionOf(r)
	if id == "" {
		return caller{}, nil
	}
	l, err := g.sessions.find(r.Context(), id, g.now())
	if err != nil || l == nil {
		return caller{}, err
	}
	return caller{person: l.person, known: true, session: l}, nil
}

// open reports whether a path is public. A path that is not in its shortest form is not,
// since a handler may interpret it differently.
func open(p string) bool {
	switch p {
	case LoginPath, "/healthz", "/readyz", "/offline.js":
		return true
	}
	return strings.HasPrefix(p, "/static/") && strings.TrimSuffix(p, "/") == path.Clean(p)
}
