package main

import (
	"context"
	"errors"
	"flag"
	"fmt"
	"io"
	"os"
	"runtime"
	"slices"
	"strings"
	"time"
)

// ratios measures the program against simple alternatives, over loopback, and prints the
// section of DEVELOPERS.md.
type ratios struct {
	program string
	write   string        // file whose section is replaced; empty for none
	each    time.Duration // duration of each measurement of a rate
	rounds  int           // the median of the rounds counts
	sizes   []int         // ingredients of the generated catalogues
	houses  []int         // specs of the generated houses
	only    string        // the only part to measure; empty for all
}

// Markers around the section in the file.
const (
	sectionBegins = "<!-- Written by counterbench ratios; do not edit. -->\n"
	sectionEnds   = "<!-- The end of what counterbench writes. -->\n"
)

// runRatios measures, prints and writes.
//
//	go run ./cmd/counterbench ratios --program ./counterpour --write DEVELOPERS.md
func runRatios(ctx context.Context, args []string) error {
	r := ratios{sizes: []int{1_000, 10_000, 100_000}, houses: []int{100, 1_000, 10_000}}
	flags := flag.NewFlagSet("ratios", flag.ContinueOnError)
	flags.StringVar(&r.program, "program", "./counterpour", "the built program")
	flags.StringVar(&r.write, "write", "", "file whose section is written, such as DEVELOPERS.md")
	flags.DurationVar(&r.each, "each", 4*time.Second, "how long each rate is measured")
	flags.IntVar(&r.rounds, "rounds", 3, "how often, of which the median counts")
	largest := flags.Int("largest", 100_000, "most ingredients of a generated catalogue")
	flags.StringVar(&r.only, "only", "", "measure only rates, crowd, search, solver, start, catalogues or menus; nothing is then written")
	once := flags.Bool("once", false, "everything once and small, to see that it runs")
	if err := parse(flags, args); err != nil {
		return err
	}
	r.sizes = slices.DeleteFunc(r.sizes, func(n int) bool { return n > *largest })
	if *once {
		r.each, r.rounds, r.sizes, r.houses = 200*time.Millisecond, 1, []int{1_000}, []int{100}
	}
	var text strings.Builder
	if err := r.section(ctx, io.MultiWriter(os.Stdout, &text)); err != nil || r.write == "" || r.only != "" {
		return err
	}
	return writeSection(r.write, text.String())
}

// section measures everything, ratios first.
func (r *ratios) section(ctx context.Context, out io.Writer) error {
	if _, err := fmt.Fprintf(out, "Measured %s.\n", machine()); err != nil {
		return err
	}
	measured := false
	for _, part := range []struct {
		name    string
		measure func(context.Context, io.Writer) error
	}{{"rates", r.rates}, {"crowd", r.crowd}, {"search", r.search}, {"solver", r.solver}, {"start", r.start}, {"catalogues", r.catalogues}, {"menus", r.menus}} {
		if r.only != "" && part.name != r.only {
			continue
		}
		measured = true
		if err := part.measure(ctx, out); err != nil {
			return err
		}
	}
	if !measured {
		return errors.New("--only " + r.only + " is no part that is measured")
	}
	return nil
}

// writeSection replaces the text between the markers in a file.
func writeSection(path, text string) error {
	old, err := os.ReadFile(path)
	if err != nil {
		return err
	}
	before, rest, found := strings.Cut(string(old), sectionBegins)
	_, after, ends := strings.Cut(rest, sectionEnds)
	if !found || !ends {
		return errors.New(path + " has no place for the section: put the two marks there, each on a line")
	}
	return os.WriteFile(path, []byte(before+sectionBegins+text+sectionEnds+after), 0o644)
}

// machine describes the machine and its load.
func machine() string {
	said := fmt.Sprintf("with %s on %d cores (%s/%s%s), client and server on the same", runtime.Version(), runtime.NumCPU(), runtime.GOOS, runtime.GOARCH, processor())
	load, err := os.ReadFile("/proc/loadavg")
	if err != nil {
		return said
	}
	var last float64
	if _, err := fmt.Sscan(string(load), &last); err != nil {
		return said
	}
	said += fmt.Sprintf("; the load of the machine was %.1f before", last)
	if last > float64(runtime.NumCPU())/2 {
		said += ", so that times are longer than they are on an idle one, and ratios rough"
	}
	return said
}

// processor returns the model of the processor, if the system tells it.
func processor() string {
	text, err := os.ReadFile("/proc/cpuinfo")
	if err != nil {
		return ""
	}
	for line := range strings.Lines(string(text)) {
		if name, value, found := strings.Cut(line, ":"); found && strings.TrimSpace(name) == "model name" {
			return ", " + strings.TrimSpace(value)
		}
	}
	return ""
}
