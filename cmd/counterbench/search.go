package main

import (
	"context"
	"fmt"
	"io"
	"os/exec"
	"regexp"
)

// ratioLine is a line of a benchmark that reports a ratio.
var ratioLine = regexp.MustCompile(`(?m)^BenchmarkAgainstBleve/(\S+?)(?:-\d+)?\s.*?([\d.]+) ratio`)

// search compares the search for ingredients with bleve's own query, as the
// benchmark of package index does.
func (r *ratios) search(ctx context.Context, out io.Writer) error {
	times := "300x"
	if r.rounds == 1 {
		times = "1x"
	}
	cmd := exec.CommandContext(ctx, "go", "test", "-run", "^$", "-bench", "AgainstBleve", "-benchtime", times, "./index")
	said, err := cmd.CombinedOutput()
	if err != nil {
		return fmt.Errorf("%s: %w: %s", cmd, err, said)
	}
	fmt.Fprintf(out, "\n| search for ingredients, against bleve's own query alone | ratio |\n| --- | ---: |\n")
	for _, m := range ratioLine.FindAllStringSubmatch(string(said), -1) {
		fmt.Fprintf(out, "| %s | %s |\n", m[1], m[2])
	}
	return nil
}
