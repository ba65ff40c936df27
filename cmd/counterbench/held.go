package main

import (
	"bufio"
	"context"
	"fmt"
	"net"
	"net/http"
	"strings"
	"sync"
	"sync/atomic"
	"time"
)

// held keeps connections open beside the traffic: boards that follow changes, as many as
// the program allows, and quiet browsers that send a request now and then.
type held struct {
	stop                   context.CancelFunc
	all                    sync.WaitGroup
	boards, quiet, refused atomic.Int64
}

const (
	mostBoards = 500              // the program allows 512
	sayEvery   = 30 * time.Second // less than the idle timeout
	holdAgain  = 2 * time.Second
)

// hold opens connections, and opens each again whenever it ends.
func hold(ctx context.Context, base string, n int) *held {
	ctx, stop := context.WithCancel(ctx)
	h := &held{stop: stop}
	host := strings.TrimPrefix(base, "http://")
	for i := range n {
		path, say, count := "/healthz", sayEvery, &h.quiet
		if i < mostBoards {
			path, say, count = "/board/events", 0, &h.boards
		}
		h.all.Go(func() {
			for ctx.Err() == nil {
				h.one(ctx, host, path, say, count)
				select {
				case <-time.After(holdAgain):
				case <-ctx.Done():
				}
			}
		})
	}
	return h
}

// one holds a connection until it ends. It requests a path once, or again and again every
// say.
func (h *held) one(ctx context.Context, host, path string, say time.Duration, count *atomic.Int64) {
	c, err := (&net.Dialer{}).DialContext(ctx, "tcp", host)
	if err != nil {
		return // the program is restarting
	}
	defer c.Close()
	defer context.AfterFunc(ctx, func() { c.Close() })()
	counted := false
	for from := bufio.NewReader(c); ; {
		if _, err := fmt.Fprintf(c, "GET %s HTTP/1.1\r\nHost: %s\r\n\r\n", path, host); err != nil {
			break
		}
		a, err := http.ReadResponse(from, nil)
		if err != nil {
			break
		}
		if a.StatusCode != http.StatusOK {
			h.refused.Add(1)
			break
		}
		if !counted {
			counted = true
			count.Add(1)
			defer count.Add(-1)
		}
		for line := bufio.NewReader(a.Body); err == nil; {
			_, err = line.ReadString('\n') // a board stays open until the program closes it
		}
		a.Body.Close()
		if say == 0 {
			break
		}
		select {
		case <-time.After(say):
		case <-ctx.Done():
			return
		}
	}
}

func (h *held) drop() {
	h.stop()
	h.all.Wait()
}

func (h *held) String() string {
	return fmt.Sprintf("%d boards and %d quiet connections; %d were refused", h.boards.Load(), h.quiet.Load(), h.refused.Load())
}
