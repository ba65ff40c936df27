package access

import (
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
)

func TestSessionsRunOut(t *testing.T) {
	const idle, whole = time.Hour, 3 * time.Hour
	ana, now := Person{"Ana", Lead}, newClock().at
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
	} {
		t.Run(c.name, func(t *testing.T) {
			s := newSessions(idle, whole)
			id, at := s.begin(ana, now), now
			for i, d := range c.after {
				at = at.Add(d)
				l, ok := s.find(id, at)
				if i < len(c.after)-1 {
					assert.True(t, ok)
					continue
				}
				assert.Equal(t, c.open, ok)
				assert.Equal(t, c.open, l != nil && l.person == ana)
			}
			assert.Equal(t, c.open, len(s.open) == 1, "what has run out is not kept")
		})
	}
}

func TestSessionsAreBounded(t *testing.T) {
	s, now := newSessions(Idle, Whole), newClock().at
	ana, bo := Person{"Ana", Lead}, Person{"Bo", Floor}
	bos := s.begin(bo, now)
	var ids []string
	for range mostSessions {
		ids = append(ids, s.begin(ana, now))
	}
	_, ok := s.find(ids[0], now.Add(time.Second)) // the first is no longer the one longest unused
	assert.True(t, ok)
	ids = append(ids, s.begin(ana, now.Add(2*time.Second)))
	assert.Len(t, s.open, mostSessions+1)
	for i, id := range ids {
		_, ok := s.find(id, now.Add(3*time.Second))
		assert.Equal(t, i != 1, ok, "session %d", i)
	}
	_, ok = s.find(bos, now.Add(3*time.Second))
	assert.True(t, ok, "somebody else's is left alone")

	s.begin(ana, now.Add(Whole))
	assert.Len(t, s.open, 1, "what has run out makes room")
}

func TestIDsAreNotKept(t *testing.T) {
	s, now := newSessions(Idle, Whole), newClock().at
	id := s.begin(Person{"Ana", Lead}, now)
	assert.Len(t, id, 43, "256 bits in base64")
	assert.NotEqual(t, id, s.begin(Person{"Ana", Lead}, now))
	for sum := range s.open {
		_, ok := s.find(string(sum[:]), now)
		assert.False(t, ok, "what is kept opens nothing")
		_, ok = s.find(tokenCode.EncodeToString(sum[:]), now)
		assert.False(t, ok)
	}
	s.end(id)
	_, ok := s.find(id, now)
	assert.False(t, ok)
	s.end(id) // once more does no harm
	assert.Len(t, s.open, 1)
}
