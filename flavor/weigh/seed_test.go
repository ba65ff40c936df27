package weigh_test

import (
	"os"
	"testing"

	"counterpour/data/bartest"
)

func TestMain(m *testing.M) { os.Exit(bartest.Seeded(m)) }
