package access

import (
	"context"
	"crypto/rand"
	"crypto/sha256"
	"net/http"
	"sync"
	"time"
)

const (
	sessionBytes = 32 // of a random id
	mostSessions = 20 // of one person; who begins another loses the one longest unused
)

// Names of the cookie. Browsers take the first only from an https address, for
// this host alone.
const (
	secureCookie = "__Host-counterpour-session"
	plainCookie  = "counterpour-session"
)

// sessions are the open ones, by the hash of their ids. There are at most
// mostSessions for each person in the book.
type sessions struct {
	idle, whole time.Duration // how long one lasts unused, and in all

	mu     sync.Mutex
	open   map[[sha256.Size]byte]*session
	number uint64
}

type session struct {
	person      Person
	begun, used time.Time
	number      uint64 // in the order in which they began

	ended context.Context // ends with the session
	end   context.CancelFunc
}

// lasting is a session as one request finds it.
type lasting struct {
	person Person
	ended  context.Context
	left   time.Duration // that the session lasts at most
}

// within returns a context that ends with the session at the latest, so that a
// line which stays open is not open longer than the person is let in.
func (l *lasting) within(ctx context.Context) (context.Context, func()) {
	ctx, stop := context.WithTimeout(ctx, l.left)
	unhook := context.AfterFunc(l.ended, stop)
	return ctx, func() { unhook(); stop() }
}

func newSessions(idle, whole time.Duration) *sessions {
	return &sessions{idle: idle, whole: whole, open: map[[sha256.Size]byte]*session{}}
}

// begin opens a session and returns its id.
func (s *sessions) begin(p Person, now time.Time) (id string) {
	raw := make([]byte, sessionBytes)
	rand.Read(raw) // never fails
	id = tokenCode.EncodeToString(raw)
	s.mu.Lock()
	defer s.mu.Unlock()
	s.makeRoom(p, now)
	s.number++
	ended, end := context.WithCancel(context.Background())
	s.open[sha256.Sum256([]byte(id))] = &session{p, now, now, s.number, ended, end}
	return id
}

// makeRoom closes what has run out, and one more of a person who has too many.
func (s *sessions) makeRoom(p Person, now time.Time) {
	var unused [sha256.Size]byte
	count := 0
	for sum, o := range s.open {
		if s.over(o, now) {
			s.drop(sum)
			continue
		}
		if o.person != p {
			continue
		}
		if count++; count == 1 || o.before(s.open[unused]) {
			unused = sum
		}
	}
	if count >= mostSessions {
		s.drop(unused)
	}
}

func (o *session) before(other *session) bool {
	if o.used.Equal(other.used) {
		return o.number < other.number
	}
	return o.used.Before(other.used)
}

func (s *sessions) over(o *session, now time.Time) bool {
	return now.Sub(o.used) >= s.idle || now.Sub(o.begun) >= s.whole
}

// drop closes a session, if it is open, and whatever line it holds open.
func (s *sessions) drop(sum [sha256.Size]byte) {
	if o, ok := s.open[sum]; ok {
		o.end()
		delete(s.open, sum)
	}
}

// find returns the session of an id, and notes that it was used.
func (s *sessions) find(id string, now time.Time) (*lasting, bool) {
	sum := sha256.Sum256([]byte(id))
	s.mu.Lock()
	defer s.mu.Unlock()
	o, ok := s.open[sum]
	if !ok {
		return nil, false
	}
	if s.over(o, now) {
		s.drop(sum)
		return nil, false
	}
	o.used = now
	return &lasting{o.person, o.ended, s.whole - now.Sub(o.begun)}, true
}

// end closes a session, if it is open.
func (s *sessions) end(id string) {
	s.mu.Lock()
	defer s.mu.Unlock()
	s.drop(sha256.Sum256([]byte(id)))
}

// secure reports whether the browser speaks https: to this server, or to one in
// front of it, which only the options can tell.
func (g *Guard) secure(r *http.Request) bool { return r.TLS != nil || g.opts.Secure }

// cookie is the cookie of a request's session, to be kept for so many seconds;
// below zero a browser drops it.
func (g *Guard) cookie(r *http.Request, id string, seconds int) *http.Cookie {
	c := &http.Cookie{Name: plainCookie, Value: id, Path: "/", MaxAge: seconds, HttpOnly: true, SameSite: http.SameSiteStrictMode}
	if g.secure(r) {
		c.Name, c.Secure = secureCookie, true
	}
	return c
}

// sessionOf is the id of a request's session, empty if it names none.
func (g *Guard) sessionOf(r *http.Request) string {
	name := plainCookie
	if g.secure(r) {
		name = secureCookie
	}
	c, err := r.Cookie(name)
	if err != nil || len(c.Value) != tokenCode.EncodedLen(sessionBytes) {
		return ""
	}
	return c.Value
}
