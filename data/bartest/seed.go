package bartest

import (
	"flag"
	"testing"

	_ "pgregory.net/rapid" // whose flag is set
)

// Seeded runs the tests of a package so that its properties draw the same drafts
// each time, and a change is judged by what it changes; -rapid.seed tries others.
// It returns what the process exits with.
func Seeded(m *testing.M) int {
	flag.Parse()
	if seed := flag.Lookup("rapid.seed"); seed.Value.String() == seed.DefValue {
		if err := flag.Set("rapid.seed", "7"); err != nil {
			panic(err)
		}
	}
	return m.Run()
}
