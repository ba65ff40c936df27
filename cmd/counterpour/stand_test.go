package main

import (
	"os"
	"testing"

	"counterpour/data/house/pgtest"
)

// childEnv makes the test's own binary be the program.
const childEnv = "COUNTERPOUR_AS_PROGRAM"

func TestMain(m *testing.M) {
	if os.Getenv(childEnv) != "" {
		main()
	}
	code := m.Run()
	pgtest.Stop()
	os.Exit(code)
}
