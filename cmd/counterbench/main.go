// Counterbench is a load test of a built program. It sends requests at twice the rate
// that the program can serve, with thousands of connections open, and stops the program
// in the middle. Then it checks that every acknowledged write is in the house.
//
//	counterbench --program ./counterpour --for 10m
//
// It fails if a write is lost, the house is damaged, the program does not shut down
// properly, or a request is answered with an internal error.
//
// The subcommand ratios measures the program against simple alternatives, under overload,
// and over generated catalogues and menus. It writes the section of DEVELOPERS.md that
// reports this, and sets no limits.
//
//	counterbench ratios --program ./counterpour --write DEVELOPERS.md
package main

import (
	"context"
	"errors"
	"flag"
	"fmt"
	"os"
	"os/signal"
	"time"
)

// plan is the configuration of a run.
type plan struct {
	program     string
	house       string // empty for a temporary file
	length      time.Duration
	measured    time.Duration // how long the served rate is measured first
	times       float64       // load as a multiple of the served rate
	connections int
}

func main() {
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt)
	defer stop()
	if err := runArgs(ctx, os.Args[1:]); err != nil && !errors.Is(err, flag.ErrHelp) {
		fmt.Fprintln(os.Stderr, "counterbench:", err)
		os.Exit(1)
	}
}

// runArgs executes the command in the arguments.
func runArgs(ctx context.Context, args []string) error {
	switch {
	case len(args) > 0 && args[0] == "ratios":
		return runRatios(ctx, args[1:])
	case len(args) == 2 && args[0] == bareArg:
		return serveBare(args[1], os.Stdin)
	}
	var p plan
	flags := flag.NewFlagSet("counterbench", flag.ContinueOnError)
	flags.StringVar(&p.program, "program", "./counterpour", "the built program")
	flags.StringVar(&p.house, "house", "", "a new file or the postgres:// address of an empty venue; a file of its own if empty")
	flags.DurationVar(&p.length, "for", 10*time.Minute, "how long the traffic lasts")
	flags.DurationVar(&p.measured, "measure", 15*time.Second, "how long the rate that is served is measured before")
	flags.Float64Var(&p.times, "times", 2, "how many times that rate is sent")
	flags.IntVar(&p.connections, "connections", 2000, "connections that are held open beside the traffic")
	if err := parse(flags, args); err != nil {
		return err
	}
	return p.run(ctx)
}

// parse parses flags and refuses further arguments.
func parse(flags *flag.FlagSet, args []string) error {
	if err := flags.Parse(args); err != nil {
		return err
	}
	if flags.NArg() > 0 {
		return fmt.Errorf("%q is no flag; see --help", flags.Arg(0))
	}
	return nil
}

// run executes the plan and prints the result.
func (p *plan) run(ctx context.Context) error {
	if p.house == "" {
		dir, err := os.MkdirTemp("", "counterbench")
		if err != nil {
			return err
		}
		defer os.RemoveAll(dir)
		p.house = dir + "/bar.house"
	}
	if err := p.stock(ctx); err != nil {
		return err
	}
	s := &server{program: p.program, house: p.house}
	if err := s.start(ctx); err != nil {
		return err
	}
	defer s.end()
	load := newLoad(s.base)
	rate := load.served(ctx, p.measured)
	fmt.Printf("served: %.0f requests a second\n", rate)
	held := hold(ctx, s.base, p.connections)
	defer held.drop()
	tally := newTally()
	sent := make(chan struct{})
	go func() {
		defer close(sent)
		load.send(ctx, tally, rate*p.times, p.length)
	}()
	select {
	case <-time.After(p.length / 2):
	case <-ctx.Done():
		return ctx.Err()
	}
	fmt.Printf("held open: %s\n", held)
	stopped, err := s.stop() // under full load
	if err != nil {
		return fmt.Errorf("stopping in the middle: %w", err)
	}
	if err := s.start(ctx); err != nil {
		return fmt.Errorf("starting again: %w", err)
	}
	<-sent
	if _, err := s.stop(); err != nil {
		return fmt.Errorf("stopping at the end: %w", err)
	}
	fmt.Printf("stopped in the middle within %v\n%s", stopped.Round(time.Millisecond), tally)
	lost, err := p.lost(tally.acknowledged())
	return errors.Join(err, lost, tally.broken())
}
