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

	"counterpour/api/journal"
	"counterpour/data/house"
)

// How long a session lasts, unless the options say otherwise: a long shift
// unused, a week in all. Common practice, no source.
const (
	Idle  = 12 * time.Hour
	Whole = 7 * 24 * time.Hour
)

// Addresses that the guard and the login page share.
const (
	LoginPath  = "/login"
	LogoutPath = "/logout"
)

// Options set up a guard. The zero value is legal.
type Options struct {
	// Secure says that browsers reach the server by https, though a server in
	// front of it speaks it. Where this one does, it is seen without.
	Secure bool
	// Proxies are the servers in front: who asks is then read from the
	// X-Forwarded-For header that they add to. From any other it is not believed.
	Proxies []netip.Prefix
	// Idle is how long a session lasts unused; 0 is [Idle].
	Idle time.Duration
	// Whole is how long a session lasts in all; 0 is [Whole].
	Whole time.Duration
	// Commons are where sessions are kept, so that every server of a house knows
	// them and they outlive the program; nil keeps them here until it ends.
	Commons house.Commons
	// Log gets who signed in and out, and where from it failed; nil is
	// slog.Default. No passcode is logged, nor a name that is not in the book,
	// since people write the one in place of the other.
	Log *slog.Logger
}

// Guard lets in who is in a book. It is safe for concurrent use.
type Guard struct {
	book       atomic.Pointer[Book]
	opts       Options
	cross      *http.CrossOriginProtection
	page       atomic.Pointer[page]
	sessions   *sessions
	names      *throttle // by name and where from, or on which device
	addresses  *throttle
	everywhere *throttle     // by name alone
	heldUp     atomic.Int64  // sign-ins that had to wait
	working    chan struct{} // a place for each check of a passcode that may run
	derive     deriver
	seed       maphash.Seed
	now        func() time.Time
}

// NewGuard returns a guard with a book, which must not be nil.
func NewGuard(b *Book, opts Options) *Guard {
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

// use lets in who is in a book from now on, and nobody else: whoever is not in it,
// or not with the same passcode, is out at once, and so is whatever they hold open.
func (g *Guard) use(b *Book) {
	g.book.Store(b)
	page := &page{}
	page.turned, page.turn = context.WithCancel(context.Background())
	if before := g.page.Swap(page); before != nil {
		before.turn()
	}
	g.sessions.review(g.now())
}

// page lasts as long as a book is in use. Lines that scripts hold open end with it.
type page struct {
	turned context.Context
	turn   context.CancelFunc
}

// vouch proves that a session was begun by who knew the passcode that is in the
// book now: by an HMAC (RFC 2104) under what the book keeps of it, so that neither
// reading nor writing where sessions are kept lets anybody in.
func (g *Guard) vouch(key string, s sum) (Person, []byte, bool) {
	b := g.book.Load()
	at, ok := b.byName[key]
	if !ok {
		return Person{}, nil, false
	}
	h := hmac.New(sha256.New, b.people[at].hash.sum)
	h.Write([]byte("counterpour session\x00" + key + "\x00"))
	h.Write(s[:])
	return b.people[at].Person, h.Sum(nil), true
}

// Wrap puts the guard in front of a handler. What is let through carries who asks
// (see [PersonOf] and [May]). Without a session or a token only the login page,
// static files and the two addresses that say whether the program runs are
// answered; the rest is told to sign in. It answers POST /logout itself.
func (g *Guard) Wrap(next http.Handler) http.Handler {
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		r = g.noteSecure(r)
		c, err := g.callerOf(r)
		if err != nil && !open(r.URL.Path) {
			g.opts.Log.ErrorContext(r.Context(), "a session could not be looked up", "err", err)
			refuse(w, http.StatusServiceUnavailable, "the store of the house does not answer, so this page cannot see whether you are signed in; try again in a moment")
			return
		}
		// A token is sent by who means to; only a cookie goes along unasked.
		if !c.token || !c.known {
			if err := g.cross.Check(r); err != nil {
				g.opts.Log.WarnContext(r.Context(), "refused a form from another site", "path", r.URL.Path, "from", g.addressOf(r))
				refuse(w, http.StatusForbidden, "this was sent from another site; open the page itself and send it from there")
				return
			}
		}
		switch {
		case r.URL.Path == LogoutPath:
			g.signOut(w, r)
		case c.known:
			// What is kept on the way must not be shown to somebody else.
			w.Header().Add("Vary", "Authorization, Cookie")
			journal.SetRole(r.Context(), c.person.Role.String())
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

// caller is who asks, and what they showed.
type caller struct {
	person Person
	known  bool
	token  bool // it was a token, good or not

	session *lasting        // nil if there is none
	turned  context.Context // of a token: ends when another book is in use
}

// within returns a context that ends when the caller is no longer let in.
func (c *caller) within(ctx context.Context) (context.Context, func()) {
	if c.session != nil {
		return c.session.within(ctx)
	}
	ctx, stop := context.WithCancel(ctx)
	unhook := context.AfterFunc(c.turned, stop)
	return ctx, func() { unhook(); stop() }
}

// callerOf looks at a token if there is one, and at the session only if not. It
// fails if a session cannot be looked up.
func (g *Guard) callerOf(r *http.Request) (caller, error) {
	scheme, token, _ := strings.Cut(r.Header.Get("Authorization"), " ")
	if strings.EqualFold(scheme, "Bearer") {
		turned := g.page.Load().turned // before the book, which may be another one by then
		p, ok := g.book.Load().byToken(strings.TrimSpace(token))
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

// open reports whether a path tells nobody anything that is the house's. A path
// that is not in its shortest form may mean another one further on.
func open(p string) bool {
	switch p {
	case LoginPath, "/healthz", "/readyz", "/offline.js":
		return true
	}
	return strings.HasPrefix(p, "/static/") && strings.TrimSuffix(p, "/") == path.Clean(p)
}
