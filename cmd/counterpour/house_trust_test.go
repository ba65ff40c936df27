package main

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Only serve, import and restore make a house; whatever else is told of a path
// where there is none fails, and leaves nothing there.
func TestAMistypedHouseIsNotMade(t *testing.T) {
	dir := t.TempDir()
	nowhere, backup := filepath.Join(dir, "bra.house"), filepath.Join(t.TempDir(), "monday.backup")
	for _, args := range [][]string{
		{"house", "backup", backup}, {"house", "check"}, {"house", "export"}, {"house", "cost", "Negroni"},
		{"house", "batch", "Negroni", "--serves", "20"}, {"house", "right"}, {"house", "right", "Negroni"},
		{"outs", "--out", "falernum"},
	} {
		code, _, message := try(t, "", append(args, "--house", nowhere)...)
		assert.Equal(t, exitFailed, code, "%v: %s", args, message)
		assert.Contains(t, message, "there is no house in this place", args)
		left, err := os.ReadDir(dir)
		require.NoError(t, err)
		require.Empty(t, left, args)
		require.NoFileExists(t, backup)
	}
	stock := filepath.Join(t.TempDir(), "stock.csv")
	require.NoError(t, os.WriteFile(stock, []byte(houseStock), 0o600))
	for _, want := range []string{"there was no house; made bra", "5 the same"} {
		code, out, message := try(t, "", "house", "import", "--as", "stock", stock, "--house", nowhere)
		require.Equal(t, exitDone, code, message)
		assert.Contains(t, out, want)
	}
}
