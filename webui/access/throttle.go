package access

import (
	"sync"
	"time"
)

// limit is how often one key, a name or an address, may fail.
type limit struct {
	free        int           // failures without a wait
	first, most time.Duration // the first wait, and the longest; each failure doubles it
	forget      time.Duration // time without a failure after which the count is reset; at least most
	keys        int           // keys that are counted separately
}

// The limits of a sign-in: common practice, no source. From one address, or on one known
// device, a name can be guessed 23 times in the first hour and 12 times in each later
// one. One address may be a whole bar. From all addresses together, without known
// devices, a name can be guessed 68 times in the first hour and 12 times in each later
// one.
var (
	limitByName     = limit{free: 5, first: 2 * time.Second, most: 5 * time.Minute, forget: time.Hour, keys: 4096}
	limitByAddress  = limit{free: 20, first: 2 * time.Second, most: 15 * time.Minute, forget: time.Hour, keys: 4096}
	limitEverywhere = limit{free: 50, first: 2 * time.Second, most: 5 * time.Minute, forget: time.Hour, keys: 4096}
)

// wait returns the wait after a number of failures.
func (l *limit) wait(failed int) time.Duration {
	if failed < l.free {
		return 0
	}
	d := l.first
	for ; failed > l.free && d < l.most; failed-- {
		d *= 2
	}
	return min(d, l.most)
}

// tries is how often a key has failed, and when it was last admitted.
type tries struct {
	failed int
	last   time.Time
}

// throttle applies a limit to keys. An admitted try counts as failed until it is
// forgiven, so that concurrent tries count too. If there are more keys than the limit
// allows, further keys share one count: a flood makes strangers wait, but resets nobody's
// count.
type throttle struct {
	limit limit

	mu    sync.Mutex
	keys  map[string]*tries
	rest  tries // of keys beyond the limit
	swept time.Time
}

func newThrottle(l limit) *throttle { return &throttle{limit: l, keys: map[string]*tries{}} }

// admit admits a try of a key, or returns how long the key must wait. The result can be
// passed to forgive.
func (t *throttle) admit(key string, now time.Time) (*tries, time.Duration) {
	t.mu.Lock()
	defer t.mu.Unlock()
	e := t.of(key, now)
	if t.old(e, now) {
		e.failed = 0
	}
	if wait := t.limit.wait(e.failed) - now.Sub(e.last); e.failed > 0 && wait > 0 {
		return nil, wait
	}
	e.failed++
	e.last = now
	return e, 0
}

// forgive removes one failure.
func (t *throttle) forgive(e *tries) {
	t.mu.Lock()
	defer t.mu.Unlock()
	e.failed = max(e.failed-1, 0)
}

func (t *throttle) old(e *tries, now time.Time) bool { return now.Sub(e.last) >= t.limit.forget }

// of returns the tries of a key.
func (t *throttle) of(key string, now time.Time) *tries {
	if e, ok := t.keys[key]; ok {
		return e
	}
	if len(t.keys) >= t.limit.keys {
		t.sweep(now)
	}
	if len(t.keys) >= t.limit.keys {
		return &t.rest
	}
	e := t.rest // it may have failed among the others; do not reset that
	t.keys[key] = &e
	return &e
}

// sweep removes keys whose count has expired. It looks at all keys, so it runs once a
// minute at most.
func (t *throttle) sweep(now time.Time) {
	if now.Sub(t.swept) < time.Minute {
		return
	}
	t.swept = now
	for key, e := range t.keys {
		if e.failed == 0 || t.old(e, now) {
			delete(t.keys, key)
		}
	}
}
