package main

import (
	"bytes"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/cmd/counterpour/terminal"
)

// Only serve, import and restore make a house; whatever else is told of a path
// where there is none fails, and leaves nothing there.
func TestMistypedHouseIsNotCreated(t *testing.T) {
	dir := t.TempDir()
	nowhere, backup := filepath.Join(dir, "bra.house"), filepath.Join(t.TempDir(), "monday.backup")
	for _, args := range [][]string{
		{"house", "backup", backup}, {"house", "check"}, {"house", "export"}, {"house", "cost", "Negroni"},
		{"house", "batch", "Negroni", "--serves", "20"}, {"house", "right"}, {"house", "right", "Negroni"},
		{"house", "mark", "--out", "falernum"}, {"outs", "--out", "falernum"},
	} {
		code, _, message := try(t, "", append(args, "--house", nowhere)...)
		assert.Equal(t, terminal.ExitFailed, code, "%v: %s", args, message)
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
		require.Equal(t, terminal.ExitDone, code, message)
		assert.Contains(t, out, want)
	}
}

// What check rejects is not served, nor written to.
func TestADamagedHouseIsNotServed(t *testing.T) {
	dir := t.TempDir()
	bar, stock := filepath.Join(dir, "bar.house"), filepath.Join(dir, "stock.csv")
	require.NoError(t, os.WriteFile(stock, []byte(houseStock), 0o600))
	code, _, message := try(t, "", "house", "import", "--as", "stock", stock, "--house", bar)
	require.Equal(t, terminal.ExitDone, code, message)
	text, err := os.ReadFile(bar)
	require.NoError(t, err)
	require.NoError(t, os.WriteFile(bar, bytes.Replace(text, []byte("Dock falernum"), []byte("Dock Falernum"), 1), 0o600))
	for _, args := range [][]string{{"house", "check"}, {"serve", "--listen", "127.0.0.1:0"}, {"house", "import", "--as", "stock", stock}} {
		code, _, message := try(t, "", append(args, "--house", bar)...)
		assert.Equal(t, terminal.ExitFailed, code, args)
		assert.Contains(t, message, "it is damaged", args)
	}
	require.NoError(t, os.Truncate(bar, 0))
	code, _, message = try(t, "", "serve", "--listen", "127.0.0.1:0", "--house", bar)
	assert.Equal(t, terminal.ExitFailed, code)
	assert.Contains(t, message, "the file is empty")
}

// A copy by other means than backup, made while the house is in use, is not called
// sound, served or written to; whoever has nothing else can restore it, and is told.
func TestCopyOfAHouseInUseIsRefused(t *testing.T) {
	dir := t.TempDir()
	path := func(name string) string { return filepath.Join(dir, name) }
	require.NoError(t, os.WriteFile(path("stock.csv"), []byte(houseStock), 0o600))
	code, _, message := try(t, "", "house", "import", "--as", "stock", path("stock.csv"), "--house", path("bar.house"))
	require.Equal(t, terminal.ExitDone, code, message)
	_, _, stop := serveHouse(t, path("bar.house"))
	text, err := os.ReadFile(path("bar.house"))
	require.NoError(t, err)
	stop()
	require.NoError(t, os.WriteFile(path("copy.house"), text, 0o600))
	for _, args := range [][]string{{"house", "check"}, {"serve", "--listen", "127.0.0.1:0"}, {"house", "import", "--as", "stock", path("stock.csv")}} {
		code, _, message := try(t, "", append(args, "--house", path("copy.house"))...)
		assert.Equal(t, terminal.ExitFailed, code, args)
		assert.Contains(t, message, "the last changes may be missing", args)
	}
	code, out, message := try(t, "", "house", "restore", path("copy.house"), "--house", path("again.house"))
	require.Equal(t, terminal.ExitDone, code, message)
	assert.Contains(t, out, "the last changes may be missing")
	code, out, message = try(t, "", "house", "check", "--house", path("again.house"))
	require.Equal(t, terminal.ExitDone, code, message)
	assert.Contains(t, out, "is sound: 5 records")
}
