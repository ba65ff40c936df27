package access

import (
	"sync"
	"time"
)

// limit is how often one key, a name or an address, may fail.
type limit struct {
	free        int           // failures before there is a wait
	first, most time.Duration // the wait after them, and what it doubles up to
	forget      time.Duration // how long nothing must have failed for all to be forgotten; not below most
	keys        int           // how many keys are kept apart
}

// The limits of a sign-in: common practice, no source. From one address, or on one
// known device, a name can be guessed at 23 times in the first hour and 12 times in
// each one after it. Behind one address there may be a whole bar. From all
// addresses together, known devices left out, a name has 68 guesses in the first
// hour and 12 in each one after it.
var (
	limitByName     = limit{free: 5, first: 2 * time.Second, most: 5 * time.Minute, forget: time.Hour, keys: 4096}
	limitByAddress  = limit{free: 20, first: 2 * time.Second, most: 15 * time.Minute, forget: time.Hour, keys: 4096}
	limitEverywhere = limit{free: 50, first: 2 * time.Second, most: 5 * time.Minute, forget: time.Hour, keys: 4096}
)

// wait is how long to wait after so many failures.
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

// tries is how often a key failed, and when it was last let through.
type tries struct {
	failed int
	last   time.Time
}

// throttle holds keys to a limit. A key that is let through has failed until it
// is forgiven, so that tries at the same time count as well. Once there are as
// many keys as are kept apart, further ones share their failures: who fills it
// makes strangers wait, but nobody forgotten.
type throttle struct {
	limit limit

	mu    sync.Mutex
	keys  map[string]*tries
	rest  tries // of the keys that are not kept apart
	swept time.Time
}

func newThrottle(l limit) *throttle { return &throttle{limit: l, keys: map[string]*tries{}} }

// admit lets a key through, or says how long it has to wait. What it returns may
// be forgiven.
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

// forgive takes back one failure.
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
	e := t.rest // it may have failed among the others, and must not begin anew
	t.keys[key] = &e
	return &e
}

// sweep leaves out the keys that have nothing to answer for, once a minute at
// most, since it looks at all of them.
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
