package access

import (
	"context"
	"crypto/hmac"
	"encoding/hex"
	"encoding/json"
	"maps"
	"slices"
	"strings"
	"time"

	"counterpour/data/house"
)

// sessionKind is the kind of ephemeral that stores a session.
const sessionKind = "session"

// How often the shared sessions are read, the timeout of that, and how often the last use
// of a session is written to them.
const (
	beat        = 2 * time.Second
	answerTime  = 3 * time.Second
	tellUseFrom = time.Minute
)

// kept is a session as stored in the commons. Its id is the hash of the cookie, and its
// proof can only be made with the roster. So neither read nor write access to the commons
// is enough to sign in.
type kept struct {
	Key   string    `json:"key"`
	Proof []byte    `json:"proof"`
	Begun time.Time `json:"begun"`
	Used  time.Time `json:"used"`
}

// ephemeral encodes a session for the commons.
func (s *sessions) ephemeral(at sum, o *session) (house.Ephemeral, error) {
	body, err := json.Marshal(kept{o.key, o.proof, o.begun.UTC(), o.used.UTC()})
	until := o.used.Add(s.idle)
	if end := o.begun.Add(s.whole); end.Before(until) {
		until = end
	}
	return house.Ephemeral{Kind: sessionKind, ID: at.String(), Body: string(body), Until: until}, err
}

// session decodes a session from the commons; nil if it is invalid or its proof does not
// match the roster.
func (s *sessions) session(e house.Ephemeral) (at sum, o *session) {
	raw, err := hex.DecodeString(e.ID)
	if err != nil || len(raw) != len(at) {
		return at, nil
	}
	at = sum(raw)
	var k kept
	if json.Unmarshal([]byte(e.Body), &k) != nil {
		return at, nil
	}
	p, proof, ok := s.vouch(k.Key, at)
	if !ok || !hmac.Equal(proof, k.Proof) {
		return at, nil
	}
	return at, &session{key: k.Key, person: p, proof: proof, begun: k.Begun, used: k.Used, told: k.Used}
}

func (s *sessions) share(ctx context.Context, now time.Time, at sum, o *session) error {
	if s.commons == nil {
		return nil
	}
	e, err := s.ephemeral(at, o)
	if err != nil {
		return err
	}
	ctx, stop := context.WithTimeout(ctx, answerTime)
	defer stop()
	return s.commons.Share(ctx, now, e)
}

// unshare deletes sessions from the commons.
func (s *sessions) unshare(ctx context.Context, gone ...sum) error {
	if s.commons != nil && len(gone) > 0 {
		ids := make([]string, len(gone))
		for i, at := range gone {
			ids[i] = at.String()
		}
		ctx, stop := context.WithTimeout(ctx, answerTime)
		defer stop()
		if err := s.commons.Unshare(ctx, sessionKind, ids...); err != nil {
			return err
		}
	}
	s.mu.Lock()
	defer s.mu.Unlock()
	for _, at := range gone {
		delete(s.leaving, at)
	}
	return nil
}

// fetch reads one session from the commons; nil if there is none.
func (s *sessions) fetch(ctx context.Context, now time.Time, at sum) (*session, error) {
	ctx, stop := context.WithTimeout(ctx, answerTime)
	defer stop()
	e, found, err := s.commons.Shared(ctx, now, sessionKind, at.String())
	if err != nil || !found {
		return nil, err
	}
	_, o := s.session(e)
	return o, nil
}

// look reads the shared sessions: it adds those that other servers began or used, and
// drops those that they ended.
func (s *sessions) look(ctx context.Context, now time.Time) error {
	if s.commons == nil {
		return nil
	}
	s.mu.Lock()
	known := s.number // sessions with a higher number may be too new for the list
	s.mu.Unlock()
	ctx, stop := context.WithTimeout(ctx, answerTime)
	defer stop()
	list, err := s.commons.AllShared(ctx, now, sessionKind)
	if err != nil {
		return err
	}
	there := map[sum]*session{}
	for _, e := range list {
		if at, o := s.session(e); o != nil {
			there[at] = o
		}
	}
	s.mu.Lock()
	defer s.mu.Unlock()
	for at, o := range s.open {
		if there[at] == nil && o.number <= known {
			s.drop(at)
		}
	}
	for at, o := range there {
		here := s.open[at]
		switch {
		case here == nil && s.leaving[at].IsZero():
			s.add(at, o)
		case here != nil && o.used.After(here.told):
			here.told = o.used
			if o.used.After(here.used) {
				here.used = o.used
			}
		}
	}
	return nil
}

// keep writes what is due to the commons and reads the changes of other servers.
func (s *sessions) keep(ctx context.Context, now time.Time) error {
	if s.commons == nil {
		return nil
	}
	s.mu.Lock()
	maps.DeleteFunc(s.leaving, func(_ sum, until time.Time) bool { return !until.After(now) })
	gone := slices.Collect(maps.Keys(s.leaving))
	s.mu.Unlock()
	if err := s.unshare(ctx, gone...); err != nil {
		return err
	}
	if err := s.look(ctx, now); err != nil {
		return err
	}
	return s.tellUse(ctx, now)
}

// tellUse writes the time of last use of sessions to the commons.
func (s *sessions) tellUse(ctx context.Context, now time.Time) error {
	var list []house.Ephemeral
	used := map[sum]time.Time{}
	s.mu.Lock()
	for at, o := range s.open {
		if o.used.Sub(o.told) < tellUseFrom || s.over(o, now) {
			continue
		}
		e, err := s.ephemeral(at, o)
		if err != nil {
			s.mu.Unlock()
			return err
		}
		list = append(list, e)
		used[at] = o.used
	}
	s.mu.Unlock()
	slices.SortFunc(list, func(a, b house.Ephemeral) int { return strings.Compare(a.ID, b.ID) }) // all servers lock rows in the same order
	ctx, stop := context.WithTimeout(ctx, answerTime)
	defer stop()
	if err := s.commons.Renew(ctx, now, list...); err != nil {
		return err
	}
	s.mu.Lock()
	defer s.mu.Unlock()
	for at, told := range used {
		if o := s.open[at]; o != nil {
			o.told = told
		}
	}
	return nil
}
