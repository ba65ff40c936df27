package main

import (
	"os"
	"testing"

	"counterpour/data/house/pgtest"
)

func TestMain(m *testing.M) {
	code := m.Run()
	pgtest.Stop()
	os.Exit(code)
}
