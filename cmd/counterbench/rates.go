package main

import (
	"bytes"
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"net"
	"net/http"
	"os"
	"os/exec"
	"slices"
	"strings"
	"sync"
	"sync/atomic"
	"time"

	"github.com/gin-gonic/gin"

	"counterpour/api/shape"
)

// balancedDraft is a draft that is sent again and again: common practice, no source.
const balancedDraft = `{"text":"2 oz London dry gin\n3/4 oz lemon juice\n3/4 oz simple syrup\nshake, up"}`

// another returns a function that makes drafts that nobody has asked for before: the nth
// has an amount of gin of its own. With twice the syrup the draft needs fixes.
func another(syrupML int) func(n int64) string {
	return func(n int64) string {
		return fmt.Sprintf(`{"text":"%d.%04d ml London dry gin\n22.5 ml lemon juice\n%d ml simple syrup\nshake, up"}`, 55+n/10000%10, n%10000, syrupML)
	}
}

// same returns a function that returns the bodies in turn.
func same(bodies ...string) func(n int64) string {
	return func(n int64) string { return bodies[n%int64(len(bodies))] }
}

// answered is the outcome of one request.
type answered struct {
	status int
	took   time.Duration
}

// drive lets clients send requests for some time, each its next one after the answer to
// the last, and returns the outcomes within that time. body returns the nth request body
// overall; if it is nil, requests are GETs.
func drive(ctx context.Context, clients int, length time.Duration, url string, body func(n int64) string) []answered {
	return driveAt(ctx, 0, clients, length, url, body)
}

// driveAt is like drive, with a limit on the requests per second of each client; 0 is no
// limit.
func driveAt(ctx context.Context, rate, clients int, length time.Duration, url string, body func(n int64) string) []answered {
	ctx, stop := context.WithTimeout(ctx, length)
	defer stop()
	client := &http.Client{Transport: &http.Transport{MaxIdleConnsPerHost: clients}, Timeout: requestTime}
	defer client.CloseIdleConnections()
	lists := make([][]answered, clients)
	var sent atomic.Int64
	var all sync.WaitGroup
	for c := range clients {
		all.Go(func() {
			for next := time.Now(); ctx.Err() == nil; {
				if rate > 0 {
					time.Sleep(time.Until(next))
					next = next.Add(time.Second / time.Duration(rate))
				}
				method, text := http.MethodGet, ""
				if body != nil {
					method, text = http.MethodPost, body(sent.Add(1))
				}
				if a := ask(client, method, url, text); ctx.Err() == nil { // drop answers that arrive after the time
					lists[c] = append(lists[c], a)
				}
			}
		})
	}
	all.Wait()
	return slices.Concat(lists...)
}

// ask sends a request. Status 0 means that there was no answer.
func ask(client *http.Client, method, url, body string) answered {
	r, err := http.NewRequest(method, url, strings.NewReader(body))
	if err != nil {
		return answered{}
	}
	r.Header.Set("Content-Type", jsonBody)
	begun := time.Now()
	a, err := client.Do(r)
	if err != nil {
		return answered{0, time.Since(begun)}
	}
	defer a.Body.Close()
	if _, err := io.Copy(io.Discard, a.Body); err != nil {
		return answered{0, time.Since(begun)}
	}
	return answered{a.StatusCode, time.Since(begun)}
}

// with returns the sorted latencies of the answers with a status.
func with(list []answered, status int) []time.Duration {
	var out []time.Duration
	for _, a := range list {
		if a.status == status {
			out = append(out, a.took)
		}
	}
	slices.Sort(out)
	return out
}

// rates compares scoring over HTTP with a handler that returns a fixed answer.
func (r *ratios) rates(ctx context.Context, out io.Writer) error {
	s := &server{program: r.program}
	if err := s.start(ctx); err != nil {
		return err
	}
	defer s.end()
	scored, err := fetched(s.base+"/v1/score", balancedDraft)
	if err != nil {
		return err
	}
	bare, err := startBare(ctx, scored)
	if err != nil {
		return err
	}
	defer bare.end()
	const clients = 8
	rate := func(base string, draft func(int64) string, round int) float64 {
		next := func(n int64) string { return draft(n + int64(round)*20000) } // no round repeats the drafts of another
		return float64(len(with(drive(ctx, clients, r.each, base+"/v1/score", next), http.StatusOK))) / r.each.Seconds()
	}
	var alone, score, spoilt, again []float64
	for round := range r.rounds {
		alone = append(alone, rate(bare.base, another(22), round))
		score = append(score, rate(s.base, another(22), round))
		spoilt = append(spoilt, rate(s.base, another(45), round))
		again = append(again, rate(s.base, same(balancedDraft), round))
	}
	a, b, c, d := median(alone), median(score), median(spoilt), median(again)
	if a == 0 || b == 0 || c == 0 || d == 0 {
		return errors.New("a rate is zero: the server does not answer")
	}
	fmt.Fprintf(out, "\n| against a bare gin handler that reads the draft and answers the same JSON (%.0f a second) | a second | ratio |\n| --- | ---: | ---: |\n", a)
	fmt.Fprintf(out, "| score of a balanced draft, another each time | %.0f | %.2f |\n| of one that is not, with its fixes, another each time | %.0f | %.2f |\n| of the same balanced draft again and again | %.0f | %.2f |\n", b, b/a, c, c/a, d, d/a)
	return nil
}

// fetched returns the answer to a draft.
func fetched(url, body string) ([]byte, error) {
	a, err := http.Post(url, jsonBody, strings.NewReader(body))
	if err != nil {
		return nil, err
	}
	defer a.Body.Close()
	text, err := io.ReadAll(a.Body)
	if err == nil && a.StatusCode != http.StatusOK {
		err = fmt.Errorf("%s: %s: %s", url, a.Status, text)
	}
	return text, err
}

// bareArg makes this program run as the bare handler.
const bareArg = "bare"

// startBare starts this program again, as a server with a fixed answer.
func startBare(ctx context.Context, scored []byte) (*server, error) {
	self, err := os.Executable()
	if err != nil {
		return nil, err
	}
	l, err := net.Listen("tcp", "127.0.0.1:0")
	if err != nil {
		return nil, err
	}
	s := &server{address: l.Addr().String(), base: "http://" + l.Addr().String()}
	if err := l.Close(); err != nil {
		return nil, err
	}
	s.cmd = exec.CommandContext(ctx, self, bareArg, s.address)
	s.cmd.Stdin, s.cmd.Stderr = bytes.NewReader(scored), os.Stderr
	if err := s.cmd.Start(); err != nil {
		return nil, err
	}
	for range 3000 {
		if a, err := http.Get(s.base + "/"); err == nil {
			a.Body.Close()
			return s, nil
		}
		time.Sleep(10 * time.Millisecond)
	}
	s.end()
	return nil, errors.New("the bare handler does not answer")
}

// serveBare decodes drafts and answers each with the score that it read from in.
func serveBare(address string, in io.Reader) error {
	var answer shape.ScoreAnswer
	if err := json.NewDecoder(in).Decode(&answer); err != nil {
		return err
	}
	engine := gin.New()
	engine.POST("/v1/score", func(c *gin.Context) {
		var body shape.ScoreBody
		if err := c.BindJSON(&body); err == nil {
			c.JSON(http.StatusOK, &answer)
		}
	})
	return http.ListenAndServe(address, engine)
}

func median(list []float64) float64 {
	sorted := slices.Sorted(slices.Values(list))
	if len(sorted) == 0 {
		return 0
	}
	return sorted[len(sorted)/2]
}
