//go:build ignore

// Command reached reads what govulncheck found, as JSON, and prints the faults
// that the code reaches, a line each. It exits with 1 if one of them is in a
// module: those of the standard library are mended by the patch of Go that
// builds, and are listed only.
package main

import (
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"os"
	"slices"
)

// message is the part of a line of govulncheck that is read here.
type message struct {
	Finding *struct {
		OSV          string `json:"osv"`
		FixedVersion string `json:"fixed_version"`
		Trace        []struct {
			Module   string `json:"module"`
			Version  string `json:"version"`
			Function string `json:"function"`
		} `json:"trace"`
	} `json:"finding"`
}

func main() {
	library, modules, err := reached(os.Stdin)
	if err != nil {
		fmt.Fprintln(os.Stderr, "the findings cannot be read:", err)
		os.Exit(2)
	}
	fmt.Printf("reached in the standard library: %d, in modules: %d\n", len(library), len(modules))
	for _, line := range slices.Concat(library, modules) {
		fmt.Println("  " + line)
	}
	if len(modules) > 0 {
		os.Exit(1)
	}
}

// reached returns the faults whose function the code calls, each once, in order.
func reached(in io.Reader) (library, modules []string, err error) {
	for dec := json.NewDecoder(in); ; {
		var m message
		if err := dec.Decode(&m); errors.Is(err, io.EOF) {
			break
		} else if err != nil {
			return nil, nil, err
		}
		if m.Finding == nil || len(m.Finding.Trace) == 0 || m.Finding.Trace[0].Function == "" {
			continue
		}
		at := m.Finding.Trace[0]
		line := fmt.Sprintf("%s %s %s, mended in %s", m.Finding.OSV, at.Module, at.Version, m.Finding.FixedVersion)
		if at.Module == "stdlib" {
			library = append(library, line)
		} else {
			modules = append(modules, line)
		}
	}
	slices.Sort(library)
	slices.Sort(modules)
	return slices.Compact(library), slices.Compact(modules), nil
}
