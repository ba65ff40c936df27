package bartest

import (
	"flag"
	"testing"

	_ "pgregory.net/rapid" // registers the flag that is set here
)

// Seeded runs the tests of a package with a fixed seed for rapid, so that properties draw
// the same drafts each time; -rapid.seed sets another. It returns the exit code for
// os.Exit.
func Seeded(m *testing.M) int {
	flag.Parse()
	if seed := flag.Lookup("rapid.seed"); seed.Value.String() == seed.DefValue {
		if err := flag.Set("rapid.seed", "7"); err != nil {
			panic(err)
		}
	}
	return m.Run()
}
