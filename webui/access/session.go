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
	sessionBytes = 32 // of a random id
	mostSessions = 20 // of one person; who begins another loses the one longest unused
)

// sum is the hash of the id of a session, under which it is kept.
type sum [sha256.Size]byte

func sumOf(id string) sum { return sha256.Sum256([]byte(id)) }

// sessions are the open ones. Those in the commons, if there are any, are known to
// every server of the house; what each was asked for is at hand here as well.
type sessions struct {
	idle, whole time.Duration // how long one lasts unused, and in all
	vouch       voucher
	commons     house.Commons // nil: sessions end with the program

	mu      sync.Mutex
	open    map[sum]*session
	leaving map[sum]time.Time // ended here, and in the commons not yet; until when they last there
	number  uint64
}

// voucher says who has the key of a name, and what proves that a session of theirs
// was begun with the passcode that they have now.
type voucher func(key string, s sum) (p Person, proof []byte, ok bool)

type session struct {
	key         string // of the name
	person      Person
	proof       []byte
	begun, used time.Time
	told        time.Time // the last use that the commons know of
	number      uint64    // in the order in which they came to be known here

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

func newSessions(idle, whole time.Duration, vouch voucher, commons house.Commons) *sessions {
	return &sessions{idle: idle, whole: whole, vouch: vouch, commons: commons, open: map[sum]*session{}, leaving: map[sum]time.Time{}}
}

// errNobody: nobody in the book has the name any more.
var errNobody = errors.New("access: nobody in the book has this name")

// begin opens a session for the key of a name and returns its id. It fails with
// the commons' error if they do not take it.
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

// add notes a session as open. The lock is held.
func (s *sessions) add(at sum, o *session) {
	s.number++
	o.number = s.number
	o.ended, o.end = context.WithCancel(context.Background())
	s.open[at] = o
}

// makeRoom closes what has run out, and one more of a person who has too many,
// which it returns. The lock is held.
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

// drop closes a session, if it is open, and whatever line it holds open. The lock
// is held.
func (s *sessions) drop(at sum) {
	if o, ok := s.open[at]; ok {
		o.end()
		delete(s.open, at)
	}
}

// find returns the session of an id, and notes that it was used; nil if there is
// none. It fails with the commons' error if they have to be asked and do not answer.
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

// atHand is find without the commons. It knows a session that has ended here.
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

// end closes a session, if it is open. If the commons do not take it, [sessions.keep]
// tells them again.
func (s *sessions) end(ctx context.Context, id string, now time.Time) error {
	at := sumOf(id)
	s.mu.Lock()
	s.drop(at)
	s.leaving[at] = now.Add(s.whole)
	s.mu.Unlock()
	return s.unshare(ctx, at)
}

// review ends every session that the book no longer vouches for: of somebody who is
// not in it any more, or who has another passcode. Another role begins to count.
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
			o.end() // what is open was opened in the role before
			o.person = p
			o.ended, o.end = context.WithCancel(context.Background())
		}
	}
}

func (at sum) String() string { return hex.EncodeToString(at[:]) }
