//go:build unix

package access

import (
	"path/filepath"
	"syscall"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestReadFileDoesNotBlockOnAPipe(t *testing.T) {
	pipe := filepath.Join(t.TempDir(), "passcodes")
	require.NoError(t, syscall.Mkfifo(pipe, 0o600))
	_, err := ReadFile(pipe)
	assert.ErrorContains(t, err, "this is no file")
}
