package main

import (
	"os"
	"path/filepath"
	"runtime"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestTrafficSumsToAHundred(t *testing.T) {
	all := 0
	for _, a := range traffic {
		all += a.share
	}
	assert.Equal(t, 100, all)
}

// A write that was acknowledged and is not in the house is told; so is a house that
// is damaged, and an answer that is a fault.
func TestLostWritesAreReported(t *testing.T) {
	if runtime.GOOS == "windows" {
		t.Skip("a script stands in for the program")
	}
	script := func(check string) *plan {
		path := filepath.Join(t.TempDir(), "program")
		require.NoError(t, os.WriteFile(path, []byte("#!/bin/sh\n[ $2 = check ] && exit "+check+"\n"+
			`echo '{"records":[{"kind":"cover","record":{"score":0.000001}},{"kind":"cover","record":{"verdict":"kept"}},{"kind":"right","record":{"score":0.000002}}]}'`+"\n"), 0o700))
		return &plan{program: path, house: "bar"}
	}
	lost, err := script("0").lost([]float64{1e-6})
	require.NoError(t, err)
	assert.NoError(t, lost)
	lost, err = script("0").lost([]float64{1e-6, 2e-6})
	require.NoError(t, err)
	assert.ErrorContains(t, lost, "2e-06")
	_, err = script("1").lost(nil)
	assert.ErrorContains(t, err, "checking the house")

	tally := newTally()
	tally.note("board", 200, time.Millisecond, "")
	tally.note("board", 503, time.Millisecond, "come again")
	tally.note("board", 0, 0, "")
	assert.NoError(t, tally.broken())
	tally.note("board", 500, time.Millisecond, "it broke")
	assert.ErrorContains(t, tally.broken(), "it broke")
	assert.Equal(t, 1, tally.answered())
	assert.Contains(t, tally.String(), "| board | 1 | 1 | 1 | 1 | 1.0 | 1.0 |")
}
