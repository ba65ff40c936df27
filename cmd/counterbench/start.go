package main

import (
	"context"
	"fmt"
	"io"
	"net/http"
	"os/exec"
	"slices"
	"strings"
	"time"
)

// start measures the time to the first answer, of a server and of a command.
func (r *ratios) start(ctx context.Context, out io.Writer) error {
	var first, score, find []time.Duration
	var rest []float64
	for range 2*r.rounds + 1 {
		took, memory, err := r.firstAnswer(ctx)
		if err != nil {
			return err
		}
		first, rest = append(first, took), append(rest, memory)
		for _, c := range []struct {
			to   *[]time.Duration
			args []string
			in   string
		}{{&score, []string{"score", "-"}, "2 oz London dry gin\n3/4 oz lemon juice\n3/4 oz simple syrup\nshake, up\n"}, {&find, []string{"find", "orange"}, ""}} {
			cmd := exec.CommandContext(ctx, r.program, c.args...)
			cmd.Stdin = strings.NewReader(c.in)
			begun := time.Now()
			if said, err := cmd.CombinedOutput(); err != nil {
				return fmt.Errorf("%s: %w: %s", cmd, err, said)
			}
			*c.to = append(*c.to, time.Since(begun))
		}
	}
	fmt.Fprintf(out, "\n| from the start | median |\n| --- | ---: |\n")
	for _, row := range []struct {
		name string
		list []time.Duration
	}{{"a server's first score", first}, {"`counterpour score`", score}, {"`counterpour find`, which opens the index", find}} {
		slices.Sort(row.list)
		fmt.Fprintf(out, "| %s | %s ms |\n", row.name, quantile(row.list, 0.5))
	}
	fmt.Fprintf(out, "| memory of a server at rest | %.0f MB |\n", median(rest)/1e6)
	return nil
}

// firstAnswer starts a server, requests a score until it answers, and reads its memory
// once the full-text index is built.
func (r *ratios) firstAnswer(ctx context.Context) (took time.Duration, memory float64, err error) {
	s := &server{program: r.program}
	if err := s.choose(); err != nil {
		return 0, 0, err
	}
	if _, err := s.prepare(ctx); err != nil {
		return 0, 0, err
	}
	begun := time.Now()
	if err := s.cmd.Start(); err != nil {
		return 0, 0, err
	}
	defer s.end()
	for ask(http.DefaultClient, http.MethodPost, s.base+"/v1/score", balancedDraft).status != http.StatusOK {
		if time.Since(begun) > time.Minute || ctx.Err() != nil {
			return 0, 0, fmt.Errorf("no answer within %v", time.Since(begun).Round(time.Second))
		}
		time.Sleep(time.Millisecond)
	}
	took = time.Since(begun)
	for {
		said, err := fetchedPage(s.base + "/readyz")
		if err != nil {
			return 0, 0, err
		}
		if strings.Contains(said, `"search":"ready"`) {
			break
		}
		time.Sleep(10 * time.Millisecond)
	}
	time.Sleep(time.Second) // give the runtime time to return memory
	memory, err = s.memory()
	return took, memory, err
}

func fetchedPage(url string) (string, error) {
	a, err := http.Get(url)
	if err != nil {
		return "", err
	}
	defer a.Body.Close()
	text, err := io.ReadAll(a.Body)
	return string(text), err
}
