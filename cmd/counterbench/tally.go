package main

import (
	"fmt"
	"maps"
	"net/http"
	"slices"
	"strings"
	"sync"
	"time"
)

// tally counts the outcomes of the requests.
type tally struct {
	mu     sync.Mutex
	rows   map[string]*row
	acked  []float64
	waited int
	faults []string // answers that should not occur
}

type row struct {
	answered, refused, cut, broken int
	times                          []time.Duration
}

func newTally() *tally { return &tally{rows: map[string]*row{}} }

// note counts the outcome of a request; status 0 means no answer.
func (t *tally) note(name string, status int, took time.Duration, text string) {
	t.mu.Lock()
	defer t.mu.Unlock()
	r := t.rows[name]
	if r == nil {
		r = &row{}
		t.rows[name] = r
	}
	switch {
	case status == 0:
		r.cut++
	case status == http.StatusServiceUnavailable, status == http.StatusTooManyRequests:
		r.refused++
	case status >= http.StatusBadRequest:
		r.broken++
		if len(t.faults) < 10 {
			t.faults = append(t.faults, fmt.Sprintf("%s: %d: %s", name, status, text))
		}
	default:
		r.answered++
		r.times = append(r.times, took)
	}
}

func (t *tally) acknowledge(score float64) {
	t.mu.Lock()
	defer t.mu.Unlock()
	t.acked = append(t.acked, score)
}

// acknowledged returns the scores of the acknowledged writes.
func (t *tally) acknowledged() []float64 {
	t.mu.Lock()
	defer t.mu.Unlock()
	return slices.Clone(t.acked)
}

func (t *tally) unsent() {
	t.mu.Lock()
	defer t.mu.Unlock()
	t.waited++
}

func (t *tally) answered() (n int) {
	t.mu.Lock()
	defer t.mu.Unlock()
	for _, r := range t.rows {
		n += r.answered
	}
	return n
}

// broken returns an error if a request was answered with an internal error.
func (t *tally) broken() error {
	t.mu.Lock()
	defer t.mu.Unlock()
	if len(t.faults) == 0 {
		return nil
	}
	return fmt.Errorf("answered with errors:\n%s", strings.Join(t.faults, "\n"))
}

// String returns a table. "Refused" means told to come again, "cut off" got no answer,
// and "waited" was not sent because too many requests were in progress.
func (t *tally) String() string {
	t.mu.Lock()
	defer t.mu.Unlock()
	var b strings.Builder
	fmt.Fprintf(&b, "| asked | answered | refused | cut off | broken | median ms | 99 in 100 ms |\n| --- | ---: | ---: | ---: | ---: | ---: | ---: |\n")
	for _, name := range slices.Sorted(maps.Keys(t.rows)) {
		r := t.rows[name]
		slices.Sort(r.times)
		fmt.Fprintf(&b, "| %s | %d | %d | %d | %d | %s | %s |\n", name, r.answered, r.refused, r.cut, r.broken, quantile(r.times, 0.5), quantile(r.times, 0.99))
	}
	fmt.Fprintf(&b, "not sent, since %d were under way: %d\n", mostUnderWay, t.waited)
	return b.String()
}

// quantile returns a quantile of sorted times, in milliseconds.
func quantile(sorted []time.Duration, share float64) string {
	if len(sorted) == 0 {
		return "–"
	}
	return fmt.Sprintf("%.1f", float64(sorted[int(share*float64(len(sorted)-1))].Microseconds())/1000)
}
