package access

import (
	"context"
	"crypto/hmac"
	"crypto/rand"
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"sync"
	"time"

	"counterpour/data/house"
)

const (
	sessionBytes = 32 // length of a random id
	mostSessions = 20 // per person; a further one replaces the one longest unused
)

// sum is the hash of a session's id, by which it is stored.
type sum [sha256.Size]byte

func sumOf(id string) sum { return sha256.Sum256([]byte(id)) }

// sessions are the open sessions. They are also stored in the commons, if there are any,
// which all servers of the house share.
type sessions struct {
	idle, whole time.Duration // lifetime unused, and in all
	vouch       voucher
	commons     house.Commons // nil: sessions are in memory only

	mu      sync.Mutex
	open    map[sum]*session
	leaving map[sum]time.Time // ended here but still in the commons, with the time at which they expire there
	number  uint64
}

// voucher returns the person with a name key, and the proof that a session of theirs was
// begun with their current passcode.
type voucher func(key string, s sum) (p Person, proof []byte, ok bool)

type session struct {
	key         string // name key
	person      Person
	proof       []byte
	begun, used time.Time
	told        time.Time // last use that the commons know
	number      uint64    // order in which this server learnt of it

	ended context.Context // cancelled when the session ends
	end   context.CancelFunc
}

// lasting is a session during one request.
type lasting struct {
	person Person
	ended  context.Context
	left   time.Duration // remaining lifetime
}

// within returns a context that ends at the latest with the session, so that no
// connection outlives it.
func (l *lasting) within(ctx context.Context) (context.Context, func()) {
	ctx, stop := context.WithTimeout(ctx, l.left)
	unhook := context.AfterFunc(l.ended, stop)
	return ctx, func() { unhook(); stop() }
}

func newSessions(idle, whole time.Duration, vouch voucher, commons house.Commons) *sessions {
	return &sessions{idle: idle, whole: whole, vouch: vouch, commons: commons, open: map[sum]*session{}, leaving: map[sum]time.Time{}}
}

// errNobody: the roster no longer has this name.
var errNobody = errors.New("access: nobody in the roster has this name")

// begin opens a session for a name key and returns its id. It fails if the commons do not
// store it.
func (s *sessions) begin(ctx context.Context, key string, now time.Time) (id string, err error) {
	raw := make([]byte, sessionBytes)
	rand.Read(raw) // never fails
	id = tokenCode.EncodeToString(raw)
	at := sumOf(id)
	p, proof, ok := s.vouch(key, at)
	if !ok {
		return "", errNobody
	}
	if err := s.look(ctx, now); err != nil {
		return "", err
	}
	o := &session{key: key, person: p, proof: proof, begun: now, used: now, told: now}
	if err := s.share(ctx, now, at, o); err != nil {
		return "", err
	}
	s.mu.Lock()
	gone := s.makeRoom(key, now)
	s.add(at, o)
	s.mu.Unlock()
	return id, s.unshare(ctx, gone...)
}

// add adds an open session. The caller holds the lock.
func (s *sessions) add(at sum, o *session) {
	s.number++
	o.number = s.number
	o.ended, o.end = context.WithCancel(context.Background())
	s.open[at] = o
}

// makeRoom closes expired sessions, and one more of a person who has too many, and
// returns them. The caller holds the lock.
func (s *sessions) makeRoom(key string, now time.Time) (gone []sum) {
	var unused sum
	count := 0
	for at, o := range s.open {
		if s.over(o, now) {
			s.drop(at)
			continue
		}
		if o.key != key {
			continue
		}
		if count++; count == 1 || o.before(s.open[unused]) {
			unused = at
		}
	}
	if count >= mostSessions {
		s.drop(unused)
		gone = append(gone, unused)
	}
	return gone
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

// drop closes a session, if it is open, and its connections. The caller holds the lock.
func (s *sessions) drop(at sum) {
	if o, ok := s.open[at]; ok {
		o.end()
		delete(s.open, at)
	}
}

// find returns the session with an id and notes its use; nil if there is none. It fails
// if the commons must be asked and do not answer.
func (s *sessions) find(ctx context.Context, id string, now time.Time) (*lasting, error) {
	at := sumOf(id)
	if l, known := s.atHand(at, now); known || s.commons == nil {
		return l, nil
	}
	o, err := s.fetch(ctx, now, at)
	if err != nil || o == nil {
		return nil, err
	}
	s.mu.Lock()
	if s.open[at] == nil && s.leaving[at].IsZero() {
		s.add(at, o)
	}
	s.mu.Unlock()
	l, _ := s.atHand(at, now)
	return l, nil
}

// atHand is find without the commons. known is true also if the session ended here.
func (s *sessions) atHand(at sum, now time.Time) (l *lasting, known bool) {
	s.mu.Lock()
	defer s.mu.Unlock()
	o, ok := s.open[at]
	if !ok {
		return nil, !s.leaving[at].IsZero()
	}
	if s.over(o, now) {
		s.drop(at)
		return nil, true
	}
	o.used = now
	return &lasting{o.person, o.ended, s.whole - now.Sub(o.begun)}, true
}

// end closes a session, if it is open. If the commons fail, [sessions.keep] retries.
func (s *sessions) end(ctx context.Context, id string, now time.Time) error {
	at := sumOf(id)
	s.mu.Lock()
	s.drop(at)
	s.leaving[at] = now.Add(s.whole)
	s.mu.Unlock()
	return s.unshare(ctx, at)
}

// review ends the sessions of people who are no longer in the roster or have another
// passcode, and updates roles.
func (s *sessions) review(now time.Time) {
	s.mu.Lock()
	defer s.mu.Unlock()
	for at, o := range s.open {
		p, proof, ok := s.vouch(o.key, at)
		if !ok || !hmac.Equal(proof, o.proof) {
			s.drop(at)
			s.leaving[at] = now.Add(s.whole)
			continue
		}
		if p != o.person {
			o.end() // connections were opened in the former role
			o.person = p
			o.ended, o.end = context.WithCancel(context.Background())
		}
	}
}

func (at sum) String() string { return hex.EncodeToString(at[:]) }
