package main

import (
	"bufio"
	"context"
	"errors"
	"fmt"
	"io"
	"net/http"
	"strconv"
	"strings"
	"sync"
	"time"
)

// coverBodies ask for covers of up to three parts over the whole catalogue.
func coverBodies() []string {
	var out []string
	for _, missing := range []string{"London dry gin", "lemon juice", "simple syrup", "maraschino liqueur", "aromatic bitters"} {
		out = append(out, fmt.Sprintf(`{"text":"2 oz London dry gin\n3/4 oz lemon juice\n1/2 oz simple syrup\n1/4 oz maraschino liqueur\n2 dashes aromatic bitters\nshake, up","missing":%q,"max_parts":3}`, missing))
	}
	return out
}

// crowd compares the covers answered for forty clients with those for two, and measures
// the latency of light requests meanwhile: at the same rate beside two clients as beside
// forty.
func (r *ratios) crowd(ctx context.Context, out io.Writer) error {
	s := &server{program: r.program}
	if err := s.start(ctx); err != nil {
		return err
	}
	defer s.end()
	const few, times = 2, 20
	length := time.Duration(max(1, r.rounds)) * r.each
	alone := with(s.besides(ctx, few, length).covers, http.StatusOK)
	var most float64
	var err error
	var all sync.WaitGroup
	all.Go(func() { most, err = s.mostMemory(ctx, length) })
	many := s.besides(ctx, few*times, length)
	all.Wait()
	served, refused := with(many.covers, http.StatusOK), with(many.covers, http.StatusServiceUnavailable)
	if err != nil || len(alone) == 0 || len(served) == 0 {
		return errors.Join(err, fmt.Errorf("covers: %d answers to two clients, %d to forty", len(alone), len(served)))
	}
	fmt.Fprintf(out, "\n| %d clients that ask for covers of three parts, against %d (%.1f covers a second), beside a score and a page of specs %d times a second | |\n| --- | ---: |\n", few*times, few, float64(len(alone))/length.Seconds(), lightRate)
	fmt.Fprintf(out, "| covers a second | %.1f |\n| ratio | %.2f |\n", float64(len(served))/length.Seconds(), float64(len(served))/float64(len(alone)))
	fmt.Fprintf(out, "| refused, half of them within, 99 in 100 within | %d, %s ms, %s ms |\n", len(refused), quantile(refused, 0.5), quantile(refused, 0.99))
	fmt.Fprintf(out, "| answered otherwise | %d |\n", len(many.covers)-len(served)-len(refused))
	fmt.Fprintf(out, "| most memory | %.0f MB |\n", most/1e6)
	for _, light := range []struct {
		name string
		list []answered
	}{{"score", many.scores}, {"page of specs", many.pages}} {
		fmt.Fprintf(out, "| meanwhile a %s, median, 99 in 100 | %s ms, %s ms |\n", light.name, quantile(with(light.list, http.StatusOK), 0.5), quantile(with(light.list, http.StatusOK), 0.99))
	}
	return nil
}

// lightRate is the rate of each kind of light request beside the covers, per second.
const lightRate = 10

// mixed holds the answers to requests of several kinds, sent during the same time.
type mixed struct{ covers, scores, pages []answered }

// besides lets clients ask for covers, and sends light requests at the same time.
func (s *server) besides(ctx context.Context, clients int, length time.Duration) (m mixed) {
	light := func(path string, body func(int64) string) []answered {
		return driveAt(ctx, lightRate, 1, length, s.base+path, body)
	}
	var all sync.WaitGroup
	all.Go(func() { m.covers = drive(ctx, clients, length, s.base+"/v1/cover", same(coverBodies()...)) })
	all.Go(func() { m.scores = light("/v1/score", another(22)) })
	all.Go(func() { m.pages = light("/specs", nil) })
	all.Wait()
	return m
}

// mostMemory returns the largest memory of the server during a time, in bytes.
func (s *server) mostMemory(ctx context.Context, length time.Duration) (most float64, err error) {
	for end := time.Now().Add(length); time.Now().Before(end) && ctx.Err() == nil; time.Sleep(250 * time.Millisecond) {
		now, err := s.memory()
		if err != nil {
			return most, err
		}
		most = max(most, now)
	}
	return most, ctx.Err()
}

// memory returns the server's resident memory, in bytes.
func (s *server) memory() (float64, error) {
	a, err := http.Get(s.base + "/metrics")
	if err != nil {
		return 0, err
	}
	defer a.Body.Close()
	for lines := bufio.NewScanner(a.Body); lines.Scan(); {
		if value, found := strings.CutPrefix(lines.Text(), "process_resident_memory_bytes "); found {
			return strconv.ParseFloat(value, 64)
		}
	}
	return 0, errors.New("the server does not say how much memory it holds")
}
