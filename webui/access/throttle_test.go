package access

import (
	"fmt"
	"sync"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

func TestWaits(t *testing.T) {
	for failed, want := range map[int]time.Duration{0: 0, 4: 0, 5: 2 * time.Second, 6: 4 * time.Second, 9: 32 * time.Second, 12: 256 * time.Second,
		13: 5 * time.Minute, 14: 5 * time.Minute, 1 << 40: 5 * time.Minute} {
		assert.Equal(t, want, limitByName.wait(failed), "after %d", failed)
	}
	for _, l := range []limit{limitByName, limitByAddress} {
		assert.GreaterOrEqual(t, l.forget, l.most, "else waiting it out would be forgotten")
		for n := range 100 {
			assert.LessOrEqual(t, l.wait(n), l.wait(n+1))
		}
	}
}

// A guesser who never rests gets as many guesses as the comment on the limits
// says.
func TestGuessesInAnHour(t *testing.T) {
	th, now := newThrottle(limitByName), newClock().at
	var perHour [3]int
	for s := range 3 * 3600 {
		if _, wait := th.admit("ana", now.Add(time.Duration(s)*time.Second)); wait == 0 {
			perHour[s/3600]++
		}
	}
	assert.Equal(t, [3]int{23, 12, 12}, perHour)
}

func TestThrottle(t *testing.T) {
	l := limit{free: 2, first: time.Second, most: 4 * time.Second, forget: time.Minute, keys: 2}
	th, now := newThrottle(l), newClock().at
	admit := func(key string, want time.Duration) *tries {
		t.Helper()
		e, wait := th.admit(key, now)
		require.Equal(t, want, wait)
		require.Equal(t, want == 0, e != nil)
		return e
	}
	admit("ana", 0)
	admit("ana", 0)
	admit("ana", time.Second)
	admit("bo", 0)
	now = now.Add(999 * time.Millisecond)
	admit("ana", time.Millisecond)
	now = now.Add(time.Millisecond)
	third := admit("ana", 0)
	admit("ana", 2*time.Second)
	th.forgive(third)
	admit("ana", time.Second)
	now = now.Add(time.Minute)
	for range 2 { // all is forgotten
		admit("ana", 0)
	}
	admit("ana", time.Second)

	// Ana and Bo take both places, and Bo's are swept once they are old.
	admit("cy", 0)
	admit("di", 0)
	admit("ey", 0)
	assert.LessOrEqual(t, len(th.keys), 2)
	now = now.Add(time.Second)
	admit("ana", 0)
}

// Keys beyond what is kept apart share one limit, and no key is forgotten for
// their sake.
func TestThrottleInAFlood(t *testing.T) {
	l := limitByName
	l.keys = 10
	th, now := newThrottle(l), newClock().at
	for range l.free {
		_, wait := th.admit("ana", now)
		require.Zero(t, wait)
	}
	let := 0
	for i := range 5000 {
		if _, wait := th.admit(fmt.Sprint("stranger ", i), now.Add(time.Duration(i)*time.Microsecond)); wait == 0 {
			let++
		}
	}
	assert.Len(t, th.keys, l.keys)
	assert.Equal(t, l.keys-1+l.free, let, "one each for those kept apart, and what is free for all others")
	_, wait := th.admit("ana", now.Add(time.Second))
	assert.Equal(t, time.Second, wait)
}

// A key that failed among the others does not begin anew once it is kept apart.
func TestThrottleAfterAFlood(t *testing.T) {
	l := limitByName
	l.keys = 1
	th, now := newThrottle(l), newClock().at
	ana, _ := th.admit("ana", now)
	for range l.free {
		_, wait := th.admit("bo", now)
		require.Zero(t, wait)
	}
	require.NotContains(t, th.keys, "bo")
	th.forgive(ana)
	now = now.Add(time.Minute)
	_, wait := th.admit("bo", now)
	require.Zero(t, wait)
	require.Contains(t, th.keys, "bo", "Ana's place was free")
	_, wait = th.admit("bo", now)
	assert.Equal(t, l.wait(l.free+1), wait)
}

// mostIn is the most checks of one key that may fail within a stretch of time no
// longer than what is forgotten: counted one by one, as the waits are written.
func mostIn(l limit, window time.Duration) int {
	n := 0
	for at := time.Duration(0); at <= window; n++ {
		at += l.wait(n + 1)
	}
	return n
}

// Whatever is tried and whenever, within any stretch of time no more checks of a
// key fail than the limit says, and what was right never adds to them.
func TestThrottleNeverLetsTooManyThrough(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		l := limit{free: rapid.IntRange(1, 6).Draw(t, "free"), first: time.Duration(rapid.IntRange(1, 20).Draw(t, "first")) * time.Second,
			keys: rapid.IntRange(1, 3).Draw(t, "keys")}
		l.most = l.first * time.Duration(rapid.SampledFrom([]int{1, 4, 16, 40}).Draw(t, "most"))
		l.forget = l.most + time.Duration(rapid.IntRange(0, 600).Draw(t, "forget"))*time.Second
		window := time.Duration(rapid.Int64Range(0, int64(l.forget)-1).Draw(t, "window"))
		th, now := newThrottle(l), newClock().at
		failed := map[string][]time.Time{}
		most := mostIn(l, window)
		right := rapid.IntRange(0, 2).Draw(t, "right, of 4")
		for range rapid.IntRange(50, 200).Draw(t, "tries") {
			step := rapid.SampledFrom([]time.Duration{0, time.Second, l.first, l.first, l.first, 2 * l.first, l.most, l.forget}).Draw(t, "step")
			now = now.Add(step)
			key := rapid.SampledFrom([]string{"ana", "ana", "ana", "ana", "bo", "cy", "di"}).Draw(t, "key")
			e, wait := th.admit(key, now)
			if wait < 0 || wait > l.most || (wait == 0) != (e != nil) {
				t.Fatalf("wait of %v, most %v", wait, l.most)
			}
			if e == nil {
				continue
			}
			if rapid.IntRange(0, 3).Draw(t, "try") < right {
				th.forgive(e)
				continue
			}
			failed[key] = append(failed[key], now)
			n := 0
			for _, at := range failed[key] {
				if now.Sub(at) <= window {
					n++
				}
			}
			if n > most {
				t.Fatalf("%d failed within %v; at most %d may (%+v)", n, window, most, l)
			}
			if len(th.keys) > l.keys {
				t.Fatalf("%d keys are kept apart, %d may be", len(th.keys), l.keys)
			}
		}
	})
}

// Tries at the same time count as if they were made one after another.
func TestThrottleConcurrently(t *testing.T) {
	th, now := newThrottle(limitByName), newClock().at
	var wg sync.WaitGroup
	var mu sync.Mutex
	let := 0
	for range 50 {
		wg.Go(func() {
			if _, wait := th.admit("ana", now); wait == 0 {
				mu.Lock()
				defer mu.Unlock()
				let++
			}
		})
	}
	wg.Wait()
	assert.Equal(t, limitByName.free, let)
}
