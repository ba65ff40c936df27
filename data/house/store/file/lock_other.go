//go:build !linux

package file

import "os"

// LockItself does nothing on systems where flock would block the engine's own lock.
func LockItself(string) (*os.File, error) { return nil, nil }
