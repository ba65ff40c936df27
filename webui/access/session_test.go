package access

import (
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/data/house"
)

// ours are the sessions of the tests' roster, in some commons or in none.
func ours(t *testing.T, idle, whole time.Duration, commons house.Commons) *sessions {
	t.Helper()
	g, _ := testGuard(t, Options{Idle: idle, Whole: whole, Commons: commons})
	return g.sessions
}

func began(t *testing.T, s *sessions, key string, now time.Time) (id string) {
	t.Helper()
	id, err := s.begin(t.Context(), key, now)
	require.NoError(t, err)
	return id
}

func found(t *testing.T, s *sessions, id string, now time.Time) *lasting {
	t.Helper()
	l, err := s.find(t.Context(), id, now)
	require.NoError(t, err)
	return l
}

func TestSessionsExpire(t *testing.T) {
	const idle, whole = time.Hour, 3 * time.Hour
	now := newClock().at
	for _, c := range []struct {
		name  string
		after []time.Duration // between one use and the next
		open  bool            // at the last of them
	}{
		{"at once", []time.Duration{0}, true},
		{"just not idle", []time.Duration{idle - 1}, true},
		{"idle", []time.Duration{idle}, false},
		{"used in between", []time.Duration{idle - 1, idle - 1, idle - 1}, true},
		{"too old, however much used", []time.Duration{idle - 1, idle - 1, idle - 1, 3}, false},
		{"a clock set back", []time.Duration{-2 * time.Hour}, true},
		{"a clock set back, and the week over", []time.Duration{-2 * time.Hour, 5*time.Hour + 1}, false},
	} {
		t.Run(c.name, func(t *testing.T) {
			s := ours(t, idle, whole, nil)
			id, at := began(t, s, "ana", now), now
			for i, d := range c.after {
				at = at.Add(d)
				l := found(t, s, id, at)
				if i < len(c.after)-1 {
					assert.NotNil(t, l)
					continue
				}
				assert.Equal(t, c.open, l != nil && l.person == Person{"Ana", Lead})
			}
			assert.Equal(t, c.open, len(s.open) == 1, "what has run out is not kept")
		})
	}
}

func TestSessionsAreBounded(t *testing.T) {
	s, now := ours(t, Idle, Whole, nil), newClock().at
	bos := began(t, s, "bo", now)
	var ids []string
	for range mostSessions {
		ids = append(ids, began(t, s, "ana", now))
	}
	assert.NotNil(t, found(t, s, ids[0], now.Add(time.Second))) // the first is no longer the one longest unused
	ids = append(ids, began(t, s, "ana", now.Add(2*time.Second)))
	assert.Len(t, s.open, mostSessions+1)
	for i, id := range ids {
		assert.Equal(t, i != 1, found(t, s, id, now.Add(3*time.Second)) != nil, "session %d", i)
	}
	assert.NotNil(t, found(t, s, bos, now.Add(3*time.Second)), "somebody else's is left alone")

	began(t, s, "ana", now.Add(Whole))
	assert.Len(t, s.open, 1, "what has run out makes room")
}

func TestSessionIDsAreStoredHashed(t *testing.T) {
	s, now := ours(t, Idle, Whole, nil), newClock().at
	id := began(t, s, "ana", now)
	assert.Len(t, id, 43, "256 bits in base64")
	assert.NotEqual(t, id, began(t, s, "ana", now))
	for at := range s.open {
		assert.Nil(t, found(t, s, string(at[:]), now), "what is kept opens nothing")
		assert.Nil(t, found(t, s, tokenCode.EncodeToString(at[:]), now))
	}
	require.NoError(t, s.end(t.Context(), id, now))
	assert.Nil(t, found(t, s, id, now))
	require.NoError(t, s.end(t.Context(), id, now), "once more does no harm")
	assert.Len(t, s.open, 1)
	_, err := s.begin(t.Context(), "nobody", now)
	assert.ErrorIs(t, err, errNobody)
}
