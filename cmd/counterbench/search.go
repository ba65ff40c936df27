package main

import (
	"context"
	"fmt"
	"io"
	"os/exec"
	"regexp"
)

// ratioLine matches a line of benchmark output with a ratio.
var ratioLine = regexp.MustCompile(`(?m)^BenchmarkAgainst\w+/(\S+?)(?:-\d+)?\s.*?([\d.]+) ratio`)

// search compares the search for ingredients with a plain bleve query, with the benchmark
// of package index.
func (r *ratios) search(ctx context.Context, out io.Writer) error {
	return r.against(ctx, out, "search for ingredients, against bleve's own query alone", "AgainstBleve", "./index", "300x")
}

// solver compares the least squares of the search for covers with scipy's, with the
// benchmark of its package. A test beside that benchmark checks that both find the same
// optimum.
func (r *ratios) solver(ctx context.Context, out io.Writer) error {
	return r.against(ctx, out, "amounts of up to three parts by least squares: how many times as long scipy takes to the same optimum", "AgainstSciPy", "./flavor/cover/search", "100000x")
}

// against runs a benchmark that reports ratios, and prints them under a heading.
func (r *ratios) against(ctx context.Context, out io.Writer, heading, name, folder, times string) error {
	if r.rounds == 1 {
		times = "1x"
	}
	cmd := exec.CommandContext(ctx, "go", "test", "-run", "^$", "-bench", name, "-benchtime", times, folder)
	said, err := cmd.CombinedOutput()
	if err != nil {
		return fmt.Errorf("%s: %w: %s", cmd, err, said)
	}
	found := ratioLine.FindAllStringSubmatch(string(said), -1)
	if len(found) == 0 {
		fmt.Fprintf(out, "\nNot measured, since there is nothing to hold it against here: %s.\n", heading)
		return nil
	}
	fmt.Fprintf(out, "\n| %s | ratio |\n| --- | ---: |\n", heading)
	for _, m := range found {
		fmt.Fprintf(out, "| %s | %s |\n", m[1], m[2])
	}
	return nil
}
