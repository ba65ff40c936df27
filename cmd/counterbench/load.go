package main

import (
	"context"
	"fmt"
	"io"
	"net/http"
	"strings"
	"sync"
	"sync/atomic"
	"time"
)

// traffic is the mix of requests, in per cent. Common practice, no source: a bar reads
// far more often than it writes.
var traffic = []struct {
	name, method, path, kind, body string
	share                          int
}{
	{"board", "GET", "/board", "", "", 20},
	{"tonight", "GET", "/tonight", "", "", 10},
	{"search", "GET", "/v1/ingredients?q=lem&limit=5", "", "", 25},
	{"score", "POST", "/v1/score", jsonBody, `{"text":"2 oz white rum\n3/4 oz lime juice\n1/2 oz simple syrup\nshake, up"}`, 20},
	{"cover", "POST", "/v1/cover", jsonBody, `{"text":"2 oz white rum\n3/4 oz lime juice\n1/2 oz falernum\nshake, up","missing":"falernum"}`, 10},
	{"out", "POST", "/v1/marks", jsonBody, `{"out":["grenadine"]}`, 5},
	{"back", "POST", "/v1/marks", jsonBody, `{"back":["grenadine"]}`, 5},
	{tasting, "POST", "/v1/tastings", jsonBody, `{"text":"Draft B\n2 oz white rum\n3/4 oz lime juice\n1/2 oz honey syrup\nshake, up","missing":"falernum","score":%s}`, 5},
}

const (
	jsonBody = "application/json"
	tasting  = "tasting" // writes that can be recognised afterwards by their score

	mostUnderWay = 512 // concurrent requests; beyond it, people at the bar wait
	requestTime  = 30 * time.Second
)

// load sends the traffic to a server.
type load struct {
	base   string
	client *http.Client
	number atomic.Int64 // requests so far
	scores atomic.Int64
}

func newLoad(base string) *load {
	return &load{base: base, client: &http.Client{Timeout: requestTime, Transport: &http.Transport{MaxIdleConnsPerHost: mostUnderWay}}}
}

// one sends the next request of the mix.
func (l *load) one(ctx context.Context, t *tally) {
	at := int(l.number.Add(1)*37) % 100 // 37 and 100 are coprime, so every share appears, well mixed
	ask := &traffic[0]
	for i := range traffic {
		if at < traffic[i].share {
			ask = &traffic[i]
			break
		}
		at -= traffic[i].share
	}
	body, score := ask.body, 0.0
	if ask.name == tasting {
		score = float64(l.scores.Add(1)) / 1e6 // unique and within 0 to 10 for up to ten million
		body = fmt.Sprintf(body, fmt.Sprint(score))
	}
	r, err := http.NewRequestWithContext(ctx, ask.method, l.base+ask.path, strings.NewReader(body))
	if err != nil {
		t.note(ask.name, 0, 0, err.Error())
		return
	}
	if ask.kind != "" {
		r.Header.Set("Content-Type", ask.kind)
	}
	begun := time.Now()
	a, err := l.client.Do(r)
	if err != nil {
		t.note(ask.name, 0, time.Since(begun), "")
		return
	}
	defer a.Body.Close()
	text, err := io.ReadAll(io.LimitReader(a.Body, 1<<22))
	if err != nil {
		t.note(ask.name, 0, time.Since(begun), "")
		return
	}
	t.note(ask.name, a.StatusCode, time.Since(begun), string(text[:min(len(text), 300)]))
	if ask.name == tasting && a.StatusCode == http.StatusOK {
		t.acknowledge(score)
	}
}

// served returns the rate of answers when a few clients each send their next request
// after the answer to the last.
func (l *load) served(ctx context.Context, length time.Duration) float64 {
	const people = 8
	ctx, stop := context.WithTimeout(ctx, length)
	defer stop()
	t := newTally()
	var all sync.WaitGroup
	for range people {
		all.Go(func() {
			for ctx.Err() == nil {
				l.one(context.WithoutCancel(ctx), t)
			}
		})
	}
	all.Wait()
	return float64(t.answered()) / length.Seconds()
}

// send sends requests at a fixed rate, however long answers take, and waits for the last
// answer.
func (l *load) send(ctx context.Context, t *tally, rate float64, length time.Duration) {
	every := time.NewTicker(time.Duration(float64(time.Second) / max(rate, 1)))
	defer every.Stop()
	late := time.After(length)
	places := make(chan struct{}, mostUnderWay)
	var all sync.WaitGroup
	defer all.Wait()
	for {
		select {
		case <-ctx.Done():
			return
		case <-late:
			return
		case <-every.C:
		}
		select {
		case places <- struct{}{}:
			all.Go(func() {
				defer func() { <-places }()
				l.one(ctx, t)
			})
		default:
			t.unsent()
		}
	}
}
