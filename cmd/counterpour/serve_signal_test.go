//go:build unix

package main

import (
	"bufio"
	"os"
	"os/exec"
	"path/filepath"
	"syscall"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// SIGHUP, which a closed terminal sends, SIGTERM and SIGINT shut the program down properly,
// so that the house needs no WAL.
func TestSignalsShutDown(t *testing.T) {
	for _, signal := range []syscall.Signal{syscall.SIGHUP, syscall.SIGTERM, syscall.SIGINT} {
		t.Run(signal.String(), func(t *testing.T) {
			bar := filepath.Join(t.TempDir(), "bar.house")
			cmd := exec.Command(os.Args[0], "serve", "--listen", "127.0.0.1:0", "--house", bar)
			cmd.Env = append(os.Environ(), childEnv+"=1")
			out, err := cmd.StdoutPipe()
			require.NoError(t, err)
			require.NoError(t, cmd.Start())
			defer func() { _ = cmd.Process.Kill() }()
			lines := bufio.NewScanner(out)
			require.True(t, lines.Scan(), "it serves")
			require.FileExists(t, bar+"-wal")
			require.NoError(t, cmd.Process.Signal(signal))
			for lines.Scan() { // until it ends
			}
			assert.NoError(t, cmd.Wait(), "it ended by itself, and well")
			assert.NoFileExists(t, bar+"-wal")
		})
	}
}
