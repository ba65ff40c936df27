package file

import (
	"errors"
	"os"

	"golang.org/x/sys/windows"
)

// tryLock takes the lock on an open file; false if another holds it. The
// system frees it when the process ends, however it ends. The byte is far past
// the text, so that others can read whose lock it is.
func tryLock(f *os.File) (bool, error) {
	at := &windows.Overlapped{Offset: 1 << 30}
	err := windows.LockFileEx(windows.Handle(f.Fd()), windows.LOCKFILE_EXCLUSIVE_LOCK|windows.LOCKFILE_FAIL_IMMEDIATELY, 0, 1, 0, at)
	if errors.Is(err, windows.ERROR_LOCK_VIOLATION) {
		return false, nil
	}
	return err == nil, err
}

// SyncDir does nothing: folders cannot be synced here, names are journalled.
func SyncDir(string) error { return nil }

// names is the number of names that a file has; what the system says of a path
// does not tell.
func names(os.FileInfo) int { return 1 }
